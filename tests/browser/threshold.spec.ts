import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { handbookMaterials } from '../../lib/process/handbook.ts';
import { expectNoSidewaysScrolling, openDocument, readInputs, settled, typeInto } from './stepwellPage.ts';

/** The design that the invented table belongs to: the rain-gauge funnel. */
const funnel = {
  'laser.beamDiameter': 2.5e-3,
  'laser.beamPropagationRatio': 1.15,
  'expander.magnification': 3,
  'plate.stepDiameter': 8e-3,
  'plate.apertureDiameter': 12e-3,
  'lens.focalLength': 160e-3,
};
const table = readFileSync(new URL('../../data/measured/rain-gauge-spots.csv', import.meta.url), 'utf8');

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

    test('a table is pasted, its odd row left out, the threshold read, used, seen on the map and kept', async ({
      page,
    }) => {
      await openDocument(page, 'threshold');
      await page.evaluate((patch) => window.stepwell.set(patch), funnel);
      const field = page.locator('.field[data-input="threshold.spotTable"]');
      await field.locator('summary', { hasText: 'Paste a table' }).click();
      await field.locator('textarea').fill(table);
      await field.getByRole('button', { name: 'Read it' }).click();
      await settled(page);
      const said = page.locator('#block-fit-said');
      await expect(said).toContainText('It does not describe the marks');
      await expect(page.locator('#block-residuals')).toContainText('The mark in row 18');
      await page.locator('#block-spot-rows select[aria-label$="row 18"]').selectOption({ index: 1 });
      await settled(page);
      await expect(said).toContainText('It describes the marks.');
      const threshold = /give a threshold of 0\.208\sJ\/cm² with a standard uncertainty of 0\.0027/;
      await expect(said).toContainText(threshold);
      await said.getByText('Let this threshold count').click();
      await settled(page);
      await expect(page.locator('#block-threshold')).toContainText('fitted to your measured spots');
      await expect(page.locator('#block-map .figure-summary').first()).toContainText(/threshold of 0\.208/);
      await expectNoSidewaysScrolling(page);
      await page.waitForTimeout(600);
      await page.reload();
      await settled(page);
      await expect(said).toContainText(threshold);
      await expect(page.locator('#block-map .figure-summary').first()).toContainText(/threshold of 0\.208/);
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
      // Blocks out of view are laid out again once the hand rests: where they stand is known then.
      await expect(page.locator('main.moving')).toHaveCount(0);
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
