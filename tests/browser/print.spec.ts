import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { openMatching, settled } from './stepwellPage.ts';

const fixture = fileURLToPath(new URL('../fixtures/design-v2.json', import.meta.url));

/** Names of what stands on the paper and is a control, other than a number or a link in the text. */
const controls = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('button, input, select, textarea, summary, label')]
      .filter((element) => element.checkVisibility() && element.getClientRects().length > 0)
      .filter((element) => !element.matches('.value, .sets-link, .off-screen, .question button'))
      .filter((element) => !element.closest('.beam-path, svg'))
      .map((element) => `${element.className} ${element.textContent}`),
  );

for (const colorScheme of ['light', 'dark'] as const) {
  test(`the ${colorScheme} page is printed whole: white, without controls, every figure and every value`, async ({
    page,
  }) => {
    await page.emulateMedia({ colorScheme });
    await openMatching(page);
    await page.setInputFiles('#design-file', fixture);
    await expect(page.locator('.notice')).toBeVisible();
    await settled(page);
    await page.evaluate(() => {
      addEventListener('beforeprint', () => document.documentElement.setAttribute('data-told', ''));
    });
    const pdf = await page.pdf({ format: 'A4', printBackground: true });
    expect(pdf.length).toBeGreaterThan(50_000);
    await expect(page.locator('html')).toHaveAttribute('data-told', '');
    // What waits until it comes into view has been drawn for the paper.
    for (const figure of await page.locator('.figure-block:not([hidden]) figure:not([hidden])').all())
      await expect(figure.locator('svg').first()).toBeAttached();

    await page.emulateMedia({ media: 'print', colorScheme });
    expect(await controls(page)).toEqual([]);
    expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe(
      'rgb(255, 255, 255)',
    );
    const printed = page.locator('.printed');
    await expect(printed.first()).toContainText('Rain-gauge funnel');
    await expect(printed.first()).toContainText('Stainless sheet');
    const values = printed.last();
    await expect(values).toContainText(/step diameter\s*8\smm/);
    await expect(values).toContainText(/camera image of the raw beam\s*beam\.png, 40 × 40 pixels/);
    await expect(values).toContainText(/stop\s*round/);
    await expect(values).toContainText('Class 4 laser.');
    await expect(values).not.toContainText(/undefined|NaN/);
    await page.emulateMedia({ media: 'screen' });
    await expect(values).toBeHidden();
  });
}

test('the button prints', async ({ page }) => {
  await page.addInitScript(() => {
    window.print = () => document.documentElement.setAttribute('data-printed', '');
  });
  await openMatching(page);
  await page.locator('.design-menu summary').click();
  await page.getByRole('button', { name: 'Print' }).click();
  await expect(page.locator('html')).toHaveAttribute('data-printed', '');
});
