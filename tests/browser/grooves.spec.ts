import { expect, test } from '@playwright/test';
import {
  expectNoSidewaysScrolling,
  findViolations,
  openDocument,
  readInputs,
  settled,
  typeInto,
} from './stepwellPage.ts';

for (const viewport of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]) {
  test.describe(`at ${viewport.width} × ${viewport.height}`, () => {
    test.use({ viewport });

    test('the groove follows the passes by keyboard, and what cannot cut says so', async ({ page }) => {
      await openDocument(page, 'grooves');
      await settled(page);
      const said = page.locator('#block-groove');
      await expect(said).toContainText(/After 4 passes the groove is 27\.\d\sµm deep/);
      const slider = page.locator(
        '#block-groove-controls .field[data-input="groove.passes"] input[type="range"]',
      );
      await slider.focus();
      for (let i = 0; i < 40; i++) await page.keyboard.press('ArrowRight');
      await settled(page);
      const passes = Math.round((await readInputs(page))['groove.passes'] as number);
      expect(passes).toBeGreaterThan(4);
      await expect(said).toContainText(`After ${passes} passes the groove is`);
      await expect(page.locator('#block-groove-section')).toContainText(`after ${passes} passes`);
      await typeInto(page, 'laser.pulseEnergy', '0.1 µJ');
      await settled(page);
      await expect(page.locator('main')).toContainText(
        /Nothing is cut: raise the pulse energy or choose another plane/,
      );
      await typeInto(page, 'laser.pulseEnergy', '20 µJ');
      await settled(page);
      await expect(said).toContainText(`After ${passes} passes the groove is`);
      await expectNoSidewaysScrolling(page);
    });

    test('a sheet that is too thick says how deep the groove gets; all is readable', async ({ page }) => {
      await openDocument(page, 'grooves');
      await settled(page);
      await expect(page.locator('#block-sheet')).toContainText(
        /The sheet of 30\sµm is through after 5 passes/,
      );
      await typeInto(page, 'sheet.thickness', '5 mm');
      await settled(page);
      await expect(page.locator('main')).toContainText(
        /The sheet of 5\smm is not through in 10000 passes: after \d+ the groove is/,
      );
      await typeInto(page, 'sheet.thickness', '20 µm');
      await settled(page);
      await expect(page.locator('#block-sheet')).toContainText(
        /The sheet of 20\sµm is through after 3 passes/,
      );
      await expect(page.locator('#block-groove-equal')).toContainText(
        /In the first plane (both are|only the (walls|centre) (are|is)|neither is) better than with the plain beam/,
      );
      for (const figure of await page.locator('.figure-block:visible').all())
        await figure.scrollIntoViewIfNeeded();
      await settled(page);
      expect(await findViolations(page)).toEqual([]);
      await expectNoSidewaysScrolling(page);
    });
  });
}
