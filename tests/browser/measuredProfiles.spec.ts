import { expect, type Locator, type Page, test } from '@playwright/test';
import { planes, predictedTable } from '../design/profileFamily.ts';
import {
  expectNoSidewaysScrolling,
  findViolations,
  openDocument,
  settled,
  typeInto,
} from './stepwellPage.ts';

test.setTimeout(60_000);

const files = planes.map((z) => ({
  name: `spot z=${(z * 1e3).toFixed(3)} mm.csv`,
  mimeType: 'text/csv',
  buffer: Buffer.from(predictedTable(z)),
}));
const list = '#block-measured-profiles';
const rows = (page: Page): Locator => page.locator(`${list} tbody tr:not(.choices-rest)`);
const panels = (page: Page): Locator => page.locator('#block-measured-profiles-figures .figure');
const give = (page: Page, id: string, given: typeof files) =>
  page.locator(`.field[data-input="${id}"] input[type="file"]`).setInputFiles(given);
const names = (page: Page) => page.locator(`${list} tbody th .sets-link`).allTextContents();
const undo = (page: Page) => page.getByRole('button', { name: 'Undo', exact: true }).click();

for (const [width, scheme] of [
  [1440, 'light'],
  [390, 'dark'],
] as const) {
  test.describe(`at ${width} px, ${scheme}`, () => {
    test.use({ viewport: { width, height: 900 }, colorScheme: scheme });

    test('several measured profiles: given, looked at, renamed, taken out, and undone', async ({ page }) => {
      await openDocument(page, 'through-focus');
      await expect(page.locator(list)).toBeHidden();
      await give(page, 'spot.measuredProfile', [files[1]!]);
      await expect(rows(page)).toHaveCount(1);
      await expect(panels(page)).toHaveCount(0);
      await give(page, 'spot.otherProfiles', [files[0]!, files[2]!]);
      await expect(rows(page)).toHaveCount(3);
      await settled(page);
      expect(await names(page)).toEqual([files[0]!.name, files[1]!.name, files[2]!.name]);
      await expect(rows(page).nth(0)).toContainText('−0.12 mm');
      await expect(rows(page).nth(0)).toHaveAttribute('aria-current', 'true');
      await expect(panels(page)).toHaveCount(3);

      await rows(page).nth(1).locator('.sets-link').click();
      await expect(page.locator(`${list} caption`)).toContainText(files[1]!.name);
      await typeInto(page, 'spot.measuredProfileZ', '0.3 mm');
      await settled(page);
      await expect(page.locator(`${list} .choices-summary:not(.choices-hint)`)).toContainText(
        'Of 3 profiles 1 differs in width',
      );
      await undo(page);
      await settled(page);
      await expect(page.locator(`${list} .choices-summary:not(.choices-hint)`)).toContainText(
        'All 3 profiles are as wide as predicted to 5',
      );
      await expectNoSidewaysScrolling(page);
      await panels(page).last().scrollIntoViewIfNeeded();
      expect(await findViolations(page, '#block-measured-profiles-figures')).toEqual([]);

      await rows(page).nth(2).locator('.choices-toggle').click();
      const rest = page.locator(`${list} tr.choices-rest`).nth(2);
      await rest.locator('input').fill('at the end');
      await page.keyboard.press('Enter');
      await expect.poll(() => names(page)).toEqual([files[0]!.name, files[1]!.name, 'at the end']);
      await rest.locator('input').fill('');
      await page.keyboard.press('Enter');
      await expect(rest.locator('.problem')).toContainText('The name of the profile is empty');
      expect(await findViolations(page, list)).toEqual([]);
      await rest.getByRole('button', { name: 'Take out at the end' }).click();
      await expect(rows(page)).toHaveCount(2);
      await undo(page);
      await expect(rows(page)).toHaveCount(3);
      await undo(page);
      await expect.poll(() => names(page)).toEqual(files.map(({ name }) => name));
    });
  });
}

test('what is open in a row stays with its profile when the list is sorted again, and long names fit', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await openDocument(page, 'through-focus');
  const long = { ...files[0]!, name: `${'a_name_without_a_break'.repeat(3).slice(0, 56)}.csv` };
  await give(page, 'spot.otherProfiles', [long, files[1]!, files[2]!]);
  await expect(rows(page)).toHaveCount(3);
  await settled(page);
  await rows(page).nth(1).locator('.choices-toggle').click();
  await page.locator(`${list} tr.choices-rest:visible input`).fill('typed');
  await rows(page).nth(2).locator('.sets-link').click();
  await typeInto(page, 'spot.measuredProfileZ', '-0.3 mm');
  await settled(page);
  await expect.poll(() => names(page)).toEqual([files[2]!.name, long.name, files[1]!.name]);
  const open = page.locator(`${list} tr.choices-rest:visible`);
  await expect(open).toHaveCount(1);
  await expect(open.locator('input')).toHaveValue('typed');
  await expectNoSidewaysScrolling(page);
  await open.getByRole('button', { name: `Take out ${files[1]!.name}` }).click();
  await expect.poll(() => names(page)).toEqual([files[2]!.name, long.name]);
  await expect(page.locator(`${list} tbody .sets-link`).nth(1)).toBeFocused();
  await rows(page).nth(1).locator('.choices-toggle').click();
  await expectNoSidewaysScrolling(page);
});

test('a damaged second file is refused with its name, and nothing changes; a reload brings the list back', async ({
  page,
}) => {
  await openDocument(page, 'through-focus');
  await give(page, 'spot.otherProfiles', [files[0]!, files[1]!]);
  await expect(rows(page)).toHaveCount(2);
  const torn = { ...files[2]!, name: 'torn.csv', buffer: Buffer.from('r (um);counts\n0;1\n1;x\n') };
  await give(page, 'spot.otherProfiles', [files[2]!, torn]);
  await expect(page.locator('.field[data-input="spot.otherProfiles"] .problem')).toContainText(
    /"torn\.csv".*The profiles given before stay as they were\./,
  );
  await expect(rows(page)).toHaveCount(2);
  await page.waitForTimeout(1200);
  await page.reload();
  await settled(page);
  await expect.poll(() => names(page)).toEqual([files[0]!.name, files[1]!.name]);
});

test('each of the charts shows a kept design over it', async ({ page }) => {
  await openDocument(page, 'through-focus');
  await give(page, 'spot.measuredProfile', [files[1]!]);
  await give(page, 'spot.otherProfiles', [files[0]!, files[2]!]);
  await expect(panels(page)).toHaveCount(3);
  await page.evaluate(() => {
    location.hash = 'what-if';
  });
  await page.locator('#alternative-name').fill('Narrower beam');
  await page.keyboard.press('Enter');
  await page.evaluate(() => window.stepwell.set({ 'expander.magnification': 2.4 }));
  await page.getByRole('checkbox', { name: 'Show Narrower beam in charts' }).check();
  await page.evaluate(() => {
    location.hash = 'through-focus';
  });
  await expect(panels(page)).toHaveCount(3);
  for (const panel of await panels(page).all())
    await expect(panel).toContainText('In thin dashes also drawn: ‘Narrower beam’.', { timeout: 30_000 });
});
