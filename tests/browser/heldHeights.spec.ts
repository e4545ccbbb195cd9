import { expect, test } from '@playwright/test';
import { openMatching, settled } from './stepwellPage.ts';

for (const width of [1440, 390]) {
  test(`while M² is dragged the page, ${width} px wide, never becomes shorter, and grows by a few lines at most`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height: 900 });
    await openMatching(page);
    const field = page.locator('.field[data-input="laser.beamPropagationRatio"]').first();
    const slider = field.locator('input[type="range"]');
    await slider.scrollIntoViewIfNeeded();
    const { x, y, width: length, height } = (await slider.boundingBox())!;
    const readHeight = () => page.evaluate(() => document.documentElement.scrollHeight);
    const to = async (part: number) => {
      await page.mouse.move(x + 9 + (length - 18) * part, y + height / 2);
      await settled(page);
    };
    await to(0);
    const before = await readHeight();
    await page.mouse.down();
    const heights = [before];
    for (let i = 0; i <= 40; i++) {
      await to(1 - Math.abs(1 - i / 20));
      heights.push(await readHeight());
    }
    await page.waitForTimeout(400);
    heights.push(await readHeight());
    heights.slice(1).forEach((now, i) => {
      expect(now, `step ${i} of ${heights.join(', ')}`).toBeGreaterThanOrEqual(heights[i]!);
    });
    // Without the room held it moves by twelve lines to and fro.
    expect(heights.at(-1)! - before).toBeLessThan(100);
    await page.mouse.up();
    await expect.poll(() => page.locator('main > [style*="--held"]').count()).toBe(0);
  });
}
