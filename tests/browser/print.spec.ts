import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { openDocument, openMatching, settled } from './stepwellPage.ts';

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
    const wide = await page.locator('#block-beam-on-plate svg.figure-svg').boundingBox();
    const pdf = await page.pdf({ format: 'A4', printBackground: true });
    expect(pdf.length).toBeGreaterThan(50_000);
    // Figures are drawn narrower for the paper, and afterwards as they were.
    expect(await page.locator('#block-beam-on-plate svg.figure-svg').boundingBox()).toEqual(wide);
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
    // A guess that nobody made is not printed; one that was made is, with the answer chosen in bold.
    const guess = page.locator('#block-guess');
    await expect(guess).toBeHidden();
    await page.emulateMedia({ media: 'screen', colorScheme });
    await guess.getByRole('button', { name: 'It gets deeper' }).click();
    await page.emulateMedia({ media: 'print', colorScheme });
    await expect(guess).toBeVisible();
    await expect(guess.locator('[aria-pressed="true"]')).toHaveCSS('font-weight', '600');
    await page.emulateMedia({ media: 'screen' });
    await expect(values).toBeHidden();
  });
}

test('the family is printed without what only a hand can do, its first figure on the first page', async ({
  page,
}) => {
  await page.setViewportSize({ width: 794 - 136, height: 1123 - 106 });
  await openDocument(page, 'through-focus');
  const hints = page.locator(':is(.figure-hint, .choices-hint):not(:empty)');
  await expect(hints).toHaveText([/^Drag the line/, /^Choosing a plane/]);
  // A window of the size of what A4 leaves between the margins: what ends in it ends on the first page.
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  for (const hint of await hints.all()) await expect(hint).toBeHidden();
  const figure = page.locator('#block-map figure');
  const { y, height } = (await figure.boundingBox())!;
  expect(y + height).toBeLessThan(1123 - 106);
});

test('the button prints', async ({ page }) => {
  await page.addInitScript(() => {
    window.print = () => document.documentElement.setAttribute('data-printed', '');
  });
  await openMatching(page);
  await page.locator('.design-menu summary').click();
  await page.getByRole('button', { name: 'Print' }).click();
  await expect(page.locator('html')).toHaveAttribute('data-printed', '');
});
