import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { readPartsFile } from '../../lib/design/ownPartsFile.ts';
import {
  chooseElement,
  findViolations,
  openMatching,
  readInputs,
  settled,
  typeInto,
} from './stepwellPage.ts';

const focalLength = async (page: Page) => (await readInputs(page))['lens.focalLength'];
const ownParts = (page: Page) => page.locator('.own-parts');
const list = (page: Page) => ownParts(page).getByRole('combobox');
const shownName = (page: Page) => list(page).locator('option:checked');
const more = (page: Page) => ownParts(page).locator('summary');

/** Opens the panel of the lens and keeps today’s lens, by keyboard alone. */
async function keepLens(page: Page, name: string): Promise<void> {
  await more(page).focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  await page.keyboard.type(name);
  await page.keyboard.press('Enter');
  await expect(shownName(page)).toHaveText(name);
}

for (const [width, height, colorScheme] of [
  [1440, 900, 'light'],
  [390, 844, 'dark'],
] as const) {
  test.describe(`own parts at ${width} × ${height}, ${colorScheme}`, () => {
    test.use({ viewport: { width, height }, colorScheme });

    test('a lens is kept, chosen again, undone once, and still there after a reload', async ({ page }) => {
      await openMatching(page);
      await chooseElement(page, 'lens');
      await expect(list(page)).toBeHidden();
      await keepLens(page, 'Scan lens, drawer 3');
      await expect(list(page)).toBeFocused();
      await expect(ownParts(page).getByRole('status')).toHaveText('Kept as ‘Scan lens, drawer 3’.');

      await typeInto(page, 'lens.focalLength', '163 mm');
      await settled(page);
      await expect(shownName(page)).toHaveText('not from your list');
      await list(page).focus();
      await page.keyboard.press('ArrowDown');
      await expect(shownName(page)).toHaveText('Scan lens, drawer 3');
      expect(await focalLength(page)).toBe(0.1);
      await settled(page);
      await expect(page.locator('.beam-place[data-element="lens"] .beam-value')).toHaveText(/100\smm/);
      await page.keyboard.press('ControlOrMeta+Z');
      expect(await focalLength(page)).toBeCloseTo(0.163, 12);
      await expect(shownName(page)).toHaveText('not from your list');

      await page.reload();
      await settled(page);
      await chooseElement(page, 'lens');
      await expect(list(page).getByRole('option', { name: 'Scan lens, drawer 3' })).toBeAttached();
      const widths = await page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
      expect(widths[0]).toBeLessThanOrEqual(widths[1]!);
    });

    test('axe finds nothing: open, with a list, with a refused name', async ({ page }) => {
      await openMatching(page);
      await chooseElement(page, 'plate');
      await more(page).click();
      expect(await findViolations(page, '.path-inputs')).toEqual([]);
      await chooseElement(page, 'lens');
      await keepLens(page, 'A');
      await more(page).click();
      expect(await findViolations(page, '.path-inputs')).toEqual([]);
      await typeInto(page, 'lens.focalLength', '163 mm');
      await ownParts(page).getByLabel('Keep this lens as').fill('a');
      await page.keyboard.press('Enter');
      await expect(ownParts(page).locator('.problem').first()).toContainText('already has the lens ‘A’');
      expect(await findViolations(page, '.path-inputs')).toEqual([]);
    });
  });
}

test('the list follows another tab, and goes to a file and back', async ({ page, context }) => {
  await openMatching(page);
  await chooseElement(page, 'lens');
  const other = await context.newPage();
  await openMatching(other);
  await chooseElement(other, 'lens');
  await keepLens(page, 'A');
  await expect(shownName(other)).toHaveText('A');

  await more(page).click();
  const waiting = page.waitForEvent('download');
  await ownParts(page).getByRole('button', { name: 'Save the list to a file' }).click();
  const saved = await (await waiting).path();
  expect(readPartsFile(readFileSync(saved, 'utf8'), 'saved').parts).toEqual([
    { kind: 'lens', name: 'A', note: '', values: { 'lens.focalLength': 0.1 } },
  ]);

  await ownParts(page).getByRole('button', { name: 'Remove from the list' }).click();
  await expect(list(other)).toBeHidden();
  const file = { name: 'own.json', mimeType: 'application/json', buffer: readFileSync(saved) };
  await ownParts(page).getByLabel('Open a list from a file').setInputFiles(file);
  await expect(ownParts(page).getByRole('status')).toHaveText('‘own.json’: added ‘A’.');
  await expect(shownName(other)).toHaveText('A');
});

test('where the browser keeps nothing, the list says so and lasts until the page closes', async ({
  page,
}) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'localStorage', {
      get: () => {
        throw new DOMException('The operation is insecure.', 'SecurityError');
      },
    });
  });
  await openMatching(page);
  await chooseElement(page, 'lens');
  await keepLens(page, 'A');
  await expect(ownParts(page).getByText('the list lasts until the page closes')).toBeVisible();
  await typeInto(page, 'lens.focalLength', '163 mm');
  await list(page).selectOption('A');
  expect(await focalLength(page)).toBe(0.1);
});
