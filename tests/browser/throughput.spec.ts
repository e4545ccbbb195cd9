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

    test('the time follows the lines, and what cannot be is said with its input', async ({ page }) => {
      await openDocument(page, 'throughput');
      await expectNoSidewaysScrolling(page);
      const field = page.locator('#block-field');
      await expect(field).toContainText(/takes 333\.4\ss/);
      await typeInto(page, 'scan.lineSpacing', '10 µm');
      await typeInto(page, 'scan.speed', '1 m/s');
      await settled(page);
      await expect(field).toContainText(/takes 10\.2\ss/);
      await typeInto(page, 'scan.speed', '6 m/s');
      await settled(page);
      await expect(page.locator('main')).toContainText(/The scan speed is 6\sm\/s, and no more than 5\sm\/s/);
      await typeInto(page, 'scan.speed', '1 m/s');
      await settled(page);
      await expect(field).toContainText(/takes 10\.2\ss/);
      await expectNoSidewaysScrolling(page);
    });

    test('each beam at its own best, taken over for the spot of today', async ({ page }) => {
      await openDocument(page, 'throughput');
      await settled(page);
      const said = page.locator('#block-comparison');
      await expect(said).toContainText(/The plate is worth a factor of 1\.\d+ in time/, { timeout: 30_000 });
      await page.locator('#block-comparison-said').getByText('Set plane, energy').click();
      await settled(page);
      expect((await readInputs(page))['laser.pulseEnergy']).toBeLessThan(2e-6);
      await expect(page.locator('#block-limits')).toContainText('Today’s speed is');
      for (const figure of await page.locator('.figure-block:visible').all())
        await figure.scrollIntoViewIfNeeded();
      await settled(page);
      expect(await findViolations(page)).toEqual([]);
      await expectNoSidewaysScrolling(page);
    });
  });
}
