import { expect, test } from '@playwright/test';
import {
  expectNoSidewaysScrolling,
  findViolations,
  openMatching,
  readInputs,
  settled,
} from './stepwellPage.ts';

// A waist of 196 µm whose Rayleigh length is 25 mm: M² of 1.2 at 1030 nm.
const table =
  'z [mm]\tdiameter [µm]\r\n-90\t732\r\n-30\t306\r\n-15\t228,6\r\n0\t196\r\n15\t229\r\n30\t305,5\r\n90\t731\r\n';

for (const viewport of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]) {
  test.describe(`at ${viewport.width} × ${viewport.height}`, () => {
    test.use({ viewport });

    test('a table is pasted from a spreadsheet by the keyboard alone, undone, and there after a reload', async ({
      page,
    }) => {
      await openMatching(page);
      const field = page.locator('.field[data-input="laser.causticTable"]');
      const summary = field.locator('summary', { hasText: 'Paste a table' });
      await summary.focus();
      await page.keyboard.press('Enter');
      const area = field.locator('textarea');
      await expect(area).toBeFocused();
      await page.keyboard.insertText('z;diameter\n1;2\n');
      await page.keyboard.press('Control+Enter');
      await expect(field.locator('.problem')).toContainText(
        '"pasted table" is no table of a caustic: Row 1, column z names no unit.',
      );
      await expect(area).toHaveValue('z;diameter\n1;2\n');
      expect((await readInputs(page))['laser.causticTable']).toBeNull();
      await expectNoSidewaysScrolling(page);
      expect(await findViolations(page)).toEqual([]);
      await page.keyboard.press('Control+a');
      await page.keyboard.insertText(table);
      await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      await expect(field).toContainText('pasted table');
      await expect(field.locator('.problem')).toBeEmpty();
      await expect(summary).toBeFocused();
      await settled(page);
      const given = (await readInputs(page))['laser.causticTable'] as { diameter: number[] };
      expect(given.diameter[2]).toBeCloseTo(228.6e-6, 12);
      await page.keyboard.press('Control+z');
      await expect(field).toContainText('No file yet.');
      await page.keyboard.press('Control+Shift+z');
      await expect(field).toContainText('pasted table');
      await settled(page);
      // The journal is written a moment after.
      await page.waitForTimeout(800);
      await page.reload();
      await settled(page);
      await expect(field).toContainText('pasted table');
      expect((await readInputs(page))['laser.causticTable']).toEqual(given);
    });
  });
}
