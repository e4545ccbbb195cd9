import { expect, test } from '@playwright/test';
import { expectNoSidewaysScrolling, openDocument, settled } from './stepwellPage.ts';

/**
 * Marks of a Gaussian of zR = 131.1 µm and w0 = 6.557 µm at twice its threshold (0.27 µJ, 0.2 J/cm²), in the focus at a
 * reading of 12 mm: D² = 2w² ln(2/(1 + ζ²)), scattered by 1 %.
 */
const table = [
  'plate;E (µJ);z (mm);d (µm)',
  ...Array.from({ length: 13 }, (_, i) => {
    const zeta = (i - 6) / 4;
    const squared = 2 * 6.557 ** 2 * (1 + zeta ** 2) * Math.log(2 / (1 + zeta ** 2));
    const diameter = squared > 0 ? Math.sqrt(squared) * (1 + 0.01 * Math.sin(5 * i)) : 0;
    return `0;0.27;${(12 + 0.1311437 * zeta).toFixed(4)};${diameter.toFixed(2)}`;
  }),
].join('\n');

for (const width of [1440, 390]) {
  test(`a ladder is planned, pasted back, and gives the focus (${width} px)`, async ({ page }) => {
    await page.setViewportSize({ width, height: 900 });
    await openDocument(page, 'threshold');
    await page.evaluate(() => window.stepwell.set({ 'plate.stop': 'open' }));
    await settled(page);
    await expect(page.locator('#block-ladder')).toContainText(/Fire \d+ marks with the plate, from z/);
    await expect(page.locator('#block-ladder-plate-out')).toContainText(
      /Taking the plate out at unchanged energy, .* raises the peak fluence in the focus/,
    );
    await expect(page.locator('#block-ladder-figure .figure-summary').first()).toContainText(
      'read like text',
    );
    const field = page.locator('.field[data-input="ladder.table"]');
    await field.locator('summary', { hasText: 'Paste a table' }).click();
    await field.locator('textarea').fill('z (mm);d (µm);plate\n0;20;perhaps\n');
    await page.keyboard.press('Control+Enter');
    await expect(field).toContainText('1 with the plate or 0 without it is needed there');
    await field.locator('textarea').fill(table);
    await page.keyboard.press('Control+Enter');
    await expect(field).toContainText('pasted table');
    await settled(page);
    const said = page.locator('#block-ladder-said');
    await expect(said).toContainText('The table has 13 places made without the plate.');
    const zero = await said.locator('[data-quantity="ladder.zero"]').first().textContent();
    // To three hundredths of a Rayleigh length.
    expect(Math.abs(Number.parseFloat(zero ?? '') - 12)).toBeLessThan(0.004);
    await expect(said).toContainText('a focus without the plate is alike to both sides');
    await expect(page.locator('#block-ladder-fit .figure-summary').first()).toContainText('7 of 13 places');
    await expectNoSidewaysScrolling(page);
  });
}
