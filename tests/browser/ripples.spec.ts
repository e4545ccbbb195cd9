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

    test('the polarisation turns the ridges, and the ambient shortens them', async ({ page }) => {
      await openDocument(page, 'ripples');
      await expectNoSidewaysScrolling(page);
      const said = page.locator('#block-what-ripples-are');
      await expect(said).toContainText(/period of 1026\snm/);
      await expect(said).toContainText('The ridges run across the scan');
      await typeInto(page, 'laser.polarisationAngle', '30');
      await settled(page);
      await expect(said).toContainText('The ridges run at 120° to the scan');
      await expect(page.locator('#block-direction .figure-summary').first()).toContainText(
        'at 120° to the scan',
      );
      await page.locator('#block-ripple-links').getByText('water', { exact: true }).click();
      await settled(page);
      await expect(said).toContainText(/period of 769\.3\snm/);
      await expectNoSidewaysScrolling(page);
    });

    test('the energy set to the window brings the field inside, and a pasted series is judged', async ({
      page,
    }) => {
      await openDocument(page, 'ripples');
      const field = page.locator('#block-field-said');
      await expect(field).toContainText('next to nothing with either');
      await page.locator('#block-window').getByText('set the pulse energy so that').click();
      await settled(page);
      expect((await readInputs(page))['laser.pulseEnergy']).toBeLessThan(2e-6);
      await expect(field).toContainText('more with the plate');
      const table = page.locator('.field[data-input="ripples.series"]');
      await table.locator('summary', { hasText: 'Paste a table' }).click();
      await table.locator('textarea').fill('N;period (nm)\n10;960\n100;880\n');
      await table.getByRole('button', { name: 'Read it' }).click();
      await settled(page);
      await expect(page.locator('#block-series-said')).toContainText('2 lie inside what is expected');
      for (const figure of await page.locator('.figure-block:visible').all())
        await figure.scrollIntoViewIfNeeded();
      expect(await findViolations(page)).toEqual([]);
      await expectNoSidewaysScrolling(page);
    });
  });
}
