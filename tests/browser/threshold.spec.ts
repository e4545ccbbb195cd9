import { expect, test } from '@playwright/test';
import { handbookMaterials } from '../../lib/process/handbook.ts';
import { expectNoSidewaysScrolling, openDocument, readInputs, settled, typeInto } from './stepwellPage.ts';

for (const viewport of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]) {
  test.describe(`at ${viewport.width} × ${viewport.height}`, () => {
    test.use({ viewport });

    test('from the handbook to a mark with an unmarked centre, and the map follows', async ({ page }) => {
      await openDocument(page, 'threshold');
      await expectNoSidewaysScrolling(page);
      await expect(page.locator('#block-conditions')).toContainText('Measure your own threshold.');
      await page.locator('#block-handbook tbody tr').first().getByRole('button').first().click();
      await settled(page);
      const inputs = await readInputs(page);
      expect(inputs['threshold.source']).toBe('typed');
      expect(inputs['threshold.typedFluence']).toBe(handbookMaterials[0]!.rows[0]!.fluence);
      await expect(page.locator('#block-conditions')).toBeHidden();
      await typeInto(page, 'threshold.typedFluence', '4.9 J/cm²');
      await settled(page);
      const mark = page.locator('#block-mark');
      await expect(mark.locator('.figure-summary').first()).toContainText('its centre stays unmarked');
      await expect(page.locator('#block-mark-said')).toContainText('It is a ring');
      await expect(page.locator('#block-map .figure-summary').first()).toContainText('4.9');
      await expectNoSidewaysScrolling(page);
    });

    test('without a threshold the top says why, and what needs none stays', async ({ page }) => {
      await openDocument(page, 'threshold');
      await page
        .locator('#block-threshold-controls')
        .getByText('fitted to measured spots', { exact: true })
        .click();
      await settled(page);
      await expect(page.locator('.result-missing')).toContainText('No table of measured spots');
      await expect(page.locator('#block-one-pulse')).toContainText('The pulse energy is');
      await page.getByRole('button', { name: 'Go to: table of measured spots' }).click();
      const table = page.locator('.field[data-input="threshold.spotTable"] input[type="file"]');
      await expect(table).toBeFocused();
      await expect(page.locator('#block-spot-table-controls')).toBeInViewport();
      await page.keyboard.press('ControlOrMeta+Z');
      await settled(page);
      await expect(page.locator('.result-missing')).toBeHidden();
    });
  });
}
