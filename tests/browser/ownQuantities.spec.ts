import { expect, type Page, test } from '@playwright/test';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { ownGraph } from '../../lib/studies/ownGraph.ts';
import { cases } from '../cases.ts';
import {
  expectNoSidewaysScrolling,
  findViolations,
  openDocument,
  readInputs,
  settled,
} from './stepwellPage.ts';

const ownNumbers = (page: Page) => page.getByRole('region', { name: 'Numbers of your own' });
const form = (page: Page) => page.getByRole('form', { name: 'An own number' });
const linesOf = (page: Page) =>
  page.evaluate(() => (window.stepwell.state().studies?.ownLines ?? []).map(({ id }) => id));

/** Writes an own number by mouse. */
async function write(page: Page, name: string, formula: string, unit = ''): Promise<void> {
  await form(page).getByLabel('Name').fill(name);
  await form(page).getByLabel('Formula', { exact: true }).fill(formula);
  await form(page).getByLabel('Unit to show it in').fill(unit);
  await form(page).getByRole('button', { name: 'Keep' }).click();
}

for (const size of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]) {
  test.describe(`at ${size.width} × ${size.height}`, () => {
    test.use({ viewport: size });

    test('a number of one’s own is written by keyboard alone, follows the design, is opened and taken out', async ({
      page,
    }) => {
      await openDocument(page, 'what-if');
      await form(page).getByLabel('Name').focus();
      await page.keyboard.type('twice the focal length');
      await page.keyboard.press('Tab');
      await page.keyboard.type('2 * ');
      await page.keyboard.press('Tab');
      await page.keyboard.type('focal length');
      await expect(form(page).getByRole('option').first()).toContainText('lens.focalLength');
      await page.keyboard.press('Enter');
      await expect(form(page).getByLabel('Formula', { exact: true })).toHaveValue('2 * lens.focalLength');
      await expect(form(page).locator('.own-feedback')).toHaveText('= 200\u202fmm');
      await page.keyboard.press('Enter');
      const row = ownNumbers(page).locator('.own-lines > li');
      await expect(row).toContainText('twice the focal length');
      await expect(row.locator('.value')).toHaveText('200\u202fmm');
      expect(await linesOf(page)).toEqual(['own.twiceTheFocalLength']);
      await page.evaluate(() => window.stepwell.set({ 'lens.focalLength': 0.15 }));
      await settled(page);
      await expect(row.locator('.value')).toHaveText('300\u202fmm');
      await row.locator('.value').focus();
      await page.keyboard.press('Enter');
      await expect(page.locator('.trace h2')).toHaveText('twice the focal length');
      await expect(page.locator('.trace')).toContainText('focal length');
      await page.keyboard.press('Escape');
      await expectNoSidewaysScrolling(page);
      await row.getByRole('button', { name: 'Take twice the focal length out' }).focus();
      await page.keyboard.press('Enter');
      await expect(row).toHaveCount(0);
      await expect(ownNumbers(page).locator('.own-said').first()).toContainText('has been taken out');
      await page.keyboard.press('Control+z');
      await expect(row).toHaveCount(1);
      await page.keyboard.press('Control+z');
      await page.keyboard.press('Control+z');
      expect(await linesOf(page)).toEqual([]);
    });
  });
}

test('a mistake is told with its place and never changes the design', async ({ page }) => {
  await openDocument(page, 'what-if');
  await write(page, 'nonsense', 'spot.width + 3 J * foo');
  await expect(form(page).locator('.own-echo mark')).toHaveText('foo');
  await expect(form(page).locator('.own-feedback')).toContainText('At character 20');
  await expect(form(page).locator('.problem').last()).toContainText('At character 20');
  expect(await linesOf(page)).toEqual([]);
  await write(page, 'nonsense', 'spot.width + 3 um', 'J');
  await expect(form(page).locator('.problem').last()).toContainText('cannot be shown in');
  await write(page, '<img src=x onerror=alert(1)>', '1 + 1');
  await expect(ownNumbers(page).locator('.own-lines strong')).toHaveText('<img src=x onerror=alert(1)>');
  expect(await ownNumbers(page).locator('img').count()).toBe(0);
});

test('a changed formula moves what rests on it, in its new unit, also in an open trace', async ({ page }) => {
  await openDocument(page, 'what-if');
  await write(page, 'first', 'lens.focalLength');
  await write(page, 'second', '2 * own.first');
  const row = (name: string) => ownNumbers(page).locator('.own-lines > li').filter({ hasText: name }).first();
  await expect(row('own.first =')).toContainText('Used by ‘second’.');
  await row('own.second =').locator('.value').click();
  await ownNumbers(page).getByRole('button', { name: 'Change first' }).dispatchEvent('click');
  await write(page, 'first', 'laser.pulseEnergy', 'uJ');
  const doubled = await page.evaluate(
    () => 2e6 * (window.stepwell.state().inputs['laser.pulseEnergy'] as number),
  );
  await expect(row('own.second =').locator('.value')).toHaveText(`${doubled}\u202fµJ`);
  await expect(page.locator('.trace-value')).toContainText('µJ');
  await page.keyboard.press('Escape');
  await ownNumbers(page).getByRole('button', { name: 'Take first out' }).click();
  await expect(ownNumbers(page).locator('.own-said').first()).toContainText('‘second’ lacks it now');
  await expect(row('own.second =').locator('.problem')).toContainText('own.first');
});

test('own numbers on the page equal those without one, after every random change', async ({ page }) => {
  test.setTimeout(300_000);
  const lines: readonly (readonly [name: string, formula: string, unit: string])[] = [
    ['a length', 'lens.focalLength * spot.width / plate.stepDiameter', 'um'],
    ['a share', 'own.aLength / spot.width + spot.dip', '%'],
    ['a choice', 'if(lens.focalLength > 120 mm, laser.pulseEnergy, 2 * laser.pulseEnergy)', 'uJ'],
    ['a root', 'sqrt((lens.focalLength - 100 mm) / 1 mm)', ''],
  ];
  await openDocument(page, 'what-if');
  for (const one of lines) await write(page, ...one);
  const ownLines = await page.evaluate(() => window.stepwell.state().studies!.ownLines);
  expect(ownLines.map(({ formula }) => formula)).toEqual(lines.map(([, formula]) => formula));
  const { graph, own } = ownGraph(designGraph, ownLines);
  const engine = createEngine(graph);
  const random = createRandom(31);
  for (let i = 0; i < cases(60, 15); i++) {
    const patch = {
      'lens.focalLength': random.between(0.05, 0.2),
      'plate.stepDiameter': random.between(4e-3, 12e-3),
      'plate.apertureDiameter': random.between(5e-3, 14e-3),
      'laser.pulseEnergy': random.between(1e-6, 9e-5),
    };
    await page.evaluate((change) => window.stepwell.set(change), patch);
    await settled(page);
    engine.setInputs(await readInputs(page));
    const outcomes = engine.evaluate([...own.keys()]);
    const expected = [...own.values()].map((quantity) => shownValue(quantity, outcomes[quantity.id]!));
    expect(await ownNumbers(page).locator('.own-value').allTextContents(), JSON.stringify(patch)).toEqual(
      expected,
    );
  }
});

for (const colorScheme of ['light', 'dark'] as const)
  test.describe(`${colorScheme} page`, () => {
    test.use({ colorScheme });

    test('axe finds nothing in the list, the form, its mistakes and what is found', async ({ page }) => {
      await openDocument(page, 'what-if');
      await write(page, 'first', 'lens.focalLength');
      await form(page).getByLabel('Formula', { exact: true }).fill('1 + foo');
      await form(page).locator('summary').click();
      expect(await findViolations(page)).toEqual([]);
      await form(page).getByRole('combobox').fill('width');
      await expect(form(page).getByRole('option').first()).toBeVisible();
      expect(await findViolations(page, '.own-numbers')).toEqual([]);
    });
  });
