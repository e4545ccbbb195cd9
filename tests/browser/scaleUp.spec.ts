import { expect, test } from '@playwright/test';
import {
  expectNoSidewaysScrolling,
  findViolations,
  openDocument,
  readInputs,
  settled,
  typeInto,
} from './stepwellPage.ts';

for (const viewport of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]) {
  test.describe(`at ${viewport.width} × ${viewport.height}`, () => {
    test.use({ viewport });

    test('the number of spots follows mouse and keys, and sentence and chart follow it', async ({ page }) => {
      await openDocument(page, 'scale-up');
      await expectNoSidewaysScrolling(page);
      const said = page.locator('#block-scale-up');
      await expect(said).toContainText(/4 spots side by side.* scans 429 times/, { timeout: 30_000 });
      const chart = page.locator('#block-scale-up-spots');
      await chart.scrollIntoViewIfNeeded();
      const handle = chart.getByRole('slider');
      await handle.focus();
      await page.keyboard.press('ArrowRight');
      await settled(page);
      expect((await readInputs(page))['scaleUp.spots']).toBe(5);
      await expect(said).toContainText(/5 spots side by side.* scans 347 times/);
      await page.keyboard.press('End');
      await settled(page);
      await expect(said).toContainText('20 spots side by side');
      await expect(handle).toHaveAttribute('aria-valuetext', '20');

      const box = (await chart.locator('.figure-moves').boundingBox())!;
      const at = (spots: number) => box.x + (box.width * spots) / 20.4;
      await page.mouse.move(at(20), box.y + box.height / 2);
      await page.mouse.down();
      for (const spots of [16, 12.3, 10.2]) await page.mouse.move(at(spots), box.y + box.height / 2);
      await page.mouse.up();
      await settled(page);
      expect((await readInputs(page))['scaleUp.spots']).toBe(10);
      await expect(said).toContainText(/10 spots side by side.* scans 182 times/);
      await expect(chart).toContainText(/10 bring 0\.00\d+\sm²\/h/);
      await expectNoSidewaysScrolling(page);
    });

    test('spots for a target are taken by a link; too many are said with their input', async ({ page }) => {
      await openDocument(page, 'scale-up');
      await typeInto(page, 'scaleUp.target', '0.005 m²/h');
      await settled(page);
      const limits = page.locator('#block-scale-up-limits');
      await expect(limits).toContainText(/13 spots would do for 0\.005\sm²\/h/, { timeout: 30_000 });
      await limits.getByText('Use as many spots as the target needs').click();
      await settled(page);
      expect((await readInputs(page))['scaleUp.spots']).toBe(13);
      await expect(limits).toContainText(/The 0\.005\sm²\/h wanted are met/);
      await typeInto(page, 'scaleUp.spots', '30');
      await settled(page);
      await expect(page.locator('main')).toContainText(
        /For 30 spots of 20\sµJ the laser must give pulses of 750\sµJ/,
      );
      await typeInto(page, 'scaleUp.spots', '13');
      await settled(page);
      await expect(limits).toContainText(/The 0\.005\sm²\/h wanted are met/);
      for (const figure of await page.locator('.figure-block:visible').all())
        await figure.scrollIntoViewIfNeeded();
      await settled(page);
      expect(await findViolations(page)).toEqual([]);
      await expectNoSidewaysScrolling(page);
    });
  });
}
