import { expect, type Page, test } from '@playwright/test';
import { openDocument, settled } from './stepwellPage.ts';

const ownNumbers = (page: Page) => page.getByRole('region', { name: 'Numbers of your own' });
const form = (page: Page) => page.getByRole('form', { name: 'An own number' });
const name = (page: Page) => form(page).getByLabel('Name');
const formula = (page: Page) => form(page).getByLabel('Formula', { exact: true });
const keep = (page: Page) => form(page).getByRole('button', { name: 'Keep' });
const undo = (page: Page) => page.getByRole('button', { name: 'Undo', exact: true });
const row = (page: Page, id: string) =>
  ownNumbers(page)
    .locator('.own-lines > li')
    .filter({ hasText: `${id} =` });
const linesOf = (page: Page) =>
  page.evaluate(() => (window.stepwell.state().studies?.ownLines ?? []).map((line) => line.formula));

async function write(page: Page, words: string, text: string): Promise<void> {
  await name(page).fill(words);
  await formula(page).fill(text);
  await keep(page).click();
  await expect(name(page)).toHaveValue('');
}

/** Goes to another document and back, without loading the page again. */
async function awayAndBack(page: Page): Promise<void> {
  for (const id of ['matching', 'what-if']) {
    await page.evaluate((next) => {
      window.location.hash = next;
    }, id);
    await expect(page.locator(`main#${id}`)).toBeVisible();
  }
  await settled(page);
}

test('a number and a name that are half typed stay while one looks elsewhere', async ({ page }) => {
  await openDocument(page, 'what-if');
  await name(page).fill('depth to width');
  await formula(page).fill('spot.width / ');
  await form(page).getByLabel('Unit to show it in').fill('%');
  await form(page).getByLabel('What it is for').fill('for the talk');
  await page.getByLabel('Name of what is kept').fill('with the long lens');
  await awayAndBack(page);
  await expect(name(page)).toHaveValue('depth to width');
  await expect(formula(page)).toHaveValue('spot.width / ');
  await expect(form(page).getByLabel('Unit to show it in')).toHaveValue('%');
  await expect(form(page).getByLabel('What it is for')).toHaveValue('for the talk');
  await expect(form(page).getByLabel('Its id')).toHaveValue('own.depthToWidth');
  await expect(page.getByLabel('Name of what is kept')).toHaveValue('with the long lens');
  await page.getByRole('button', { name: 'Keep the design as it stands' }).click();
  await expect(page.getByLabel('Name of what is kept')).not.toHaveValue('with the long lens');
  await formula(page).fill('spot.width / lens.focalLength');
  await keep(page).click();
  await awayAndBack(page);
  await expect(name(page)).toHaveValue('');
  await expect(row(page, 'own.depthToWidth')).toHaveCount(1);
});

test('a change that is half typed stays, also when its number goes, and is kept before another one is changed', async ({
  page,
}) => {
  await openDocument(page, 'what-if');
  await write(page, 'first', 'lens.focalLength');
  await write(page, 'second', 'spot.width');
  await ownNumbers(page).getByRole('button', { name: 'Change first' }).click();
  await formula(page).fill('3 * ');
  await awayAndBack(page);
  await expect(form(page).locator('h3')).toHaveText('Change ‘first’');
  await expect(formula(page)).toHaveValue('3 * ');
  await ownNumbers(page).getByRole('button', { name: 'Change second' }).click();
  await expect(form(page).locator('h3')).toHaveText('Change ‘first’');
  await expect(form(page).locator('.problem').last()).toContainText('character');
  await formula(page).fill('3 * lens.focalLength');
  await ownNumbers(page).getByRole('button', { name: 'Change second' }).click();
  await expect(form(page).locator('h3')).toHaveText('Change ‘second’');
  expect(await linesOf(page)).toEqual(['3 * lens.focalLength', 'spot.width']);
  await formula(page).fill('spot.width / 2');
  await undo(page).click();
  await expect(formula(page)).toHaveValue('spot.width / 2');
  await undo(page).click();
  await expect(ownNumbers(page).locator('.own-said').first()).toContainText(
    'is gone; what you wrote is kept',
  );
  await expect(form(page).locator('h3')).toHaveText('A new number');
  await keep(page).click();
  expect(await linesOf(page)).toEqual(['lens.focalLength', 'spot.width / 2']);
});

test('an empty form asks for name and formula, and a number without value says why', async ({ page }) => {
  await openDocument(page, 'what-if');
  await keep(page).click();
  await expect(form(page).locator('.problem').last()).toContainText('has no name yet');
  await expect(name(page)).toBeFocused();
  await page.keyboard.type('a root');
  await keep(page).click();
  await expect(form(page).locator('.problem').last()).toContainText('‘a root’ has no formula yet');
  await expect(formula(page)).toBeFocused();
  await page.keyboard.type('sqrt((lens.focalLength - 90 mm) / 1 mm)');
  await keep(page).click();
  const reason = row(page, 'own.aRoot').locator('.problem');
  await expect(ownNumbers(page).locator('.own-said').first()).toContainText('‘a root’ is kept');
  await expect(reason).toBeHidden();
  await page.evaluate(() => window.stepwell.set({ 'lens.focalLength': 0.08 }));
  await expect(row(page, 'own.aRoot').locator('.own-value')).toHaveText('—');
  await expect(reason).toContainText('root');
  // What was said before is not about the design as it is now.
  await expect(ownNumbers(page).locator('.own-said').first()).toHaveText('');
  await undo(page).click();
  await expect(reason).toBeHidden();
});
