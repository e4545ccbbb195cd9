import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from '@playwright/test';
import { readSpotFile } from '../../lib/design/spotFile.ts';
import {
  expectNoSidewaysScrolling,
  findViolations,
  openDocument,
  readInputs,
  settled,
} from './stepwellPage.ts';

const name = 'rain-gauge-spots.csv';
const text = readFileSync(fileURLToPath(new URL(`../../data/measured/${name}`, import.meta.url)), 'utf8');
const broken = text.replace('\n14,0;46,4;', '\n14,0;wide;');
const rows = readSpotFile(broken, name);

for (const viewport of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]) {
  test.describe(`at ${viewport.width} × ${viewport.height}`, () => {
    test.use({ viewport });

    test('a row in error and an outlier are left out by the keyboard, with their reasons, and stay out', async ({
      page,
    }) => {
      await openDocument(page, 'threshold');
      const field = page.locator('#block-spot-table-controls .field[data-input="threshold.spotTable"]');
      await field.locator('summary', { hasText: 'Paste a table' }).click();
      await field.locator('textarea').fill(broken);
      await page.keyboard.press('Control+Enter');
      const list = page.locator('#block-spot-rows');
      await expect(list.locator('caption')).toHaveText('Spots in "pasted table"');
      const summary = list.locator('.choices-summary').first();
      await expect(summary).toHaveText(
        `${rows.rows.length} of 22 rows count; 1 in error, to be corrected in the file or left out before anything is fitted.`,
      );
      await expect(list.locator('tr[data-bad]')).toContainText('Row 15, column dx (µm) holds "wide"');
      await settled(page);
      await expectNoSidewaysScrolling(page);
      expect(await findViolations(page, '#block-spot-rows')).toEqual([]);
      const choice = (row: number) => list.getByLabel(`counts, row ${row}`, { exact: true });
      await choice(15).selectOption('row');
      await choice(18).focus();
      await page.keyboard.press('ArrowDown');
      await expect(choice(18)).toHaveValue('outlier');
      await expect(choice(18)).toBeFocused();
      await expect(summary).toHaveText('20 of 22 rows count; 2 left out.');
      await page.keyboard.press('Control+z');
      await expect(choice(18)).toHaveValue('in');
      await page.keyboard.press('Control+Shift+z');
      await expect(choice(18)).toHaveValue('outlier');
      await settled(page);
      // The journal is written a moment after.
      await page.waitForTimeout(800);
      await page.reload();
      await settled(page);
      expect((await readInputs(page))['threshold.leftOut']).toEqual([
        { 'threshold.leftOutRow': 15, 'threshold.leftOutReason': 'row' },
        { 'threshold.leftOutRow': 18, 'threshold.leftOutReason': 'outlier' },
      ]);
      await expect(choice(18)).toHaveValue('outlier');
    });
  });
}
