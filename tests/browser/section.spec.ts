import { expect, test } from '@playwright/test';
import { designs } from '../../data/designs/make.ts';
import { expectNoSidewaysScrolling, findViolations, openDocument, settled } from './stepwellPage.ts';

const section = new URL('../../data/measured/cold-plate-section.csv', import.meta.url).pathname;

for (const width of [1440, 390]) {
  test(`a measured groove is laid over, fitted, and its values taken over by keyboard (${width} px)`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height: 900 });
    await openDocument(page, 'grooves');
    await page.evaluate((patch) => window.stepwell.set(patch), designs['cold-plate-channels.json']!.patch);
    await settled(page);
    const said = page.locator('#block-section-said');
    await expect(said).toBeHidden();
    await expect(page.locator('#block-section-figure')).toBeHidden();

    const field = page.locator('.field[data-input="groove.sectionFile"]');
    await field.locator('input[type="file"]').setInputFiles(section);
    await expect(field).toContainText('cold-plate-section.csv');
    await settled(page);
    await expect(said).toContainText(
      'gives 283 places across the groove, and 18 without a height are left out.',
    );
    await expect(said).toContainText('34\u202f% deeper than measured');
    const summary = page.locator('#block-section-figure .figure-summary').first();
    await expect(summary).toContainText('The fitted groove differs from the measured one by');
    const fit = page.locator('#block-section-fit');
    await expect(fit).toContainText('the model describes it');
    const found = await fit.locator('[data-quantity="groove.fittedDepthPerPulse"]').first().textContent();
    // 16 nm made it, standard uncertainty 0.07 nm.
    expect(Math.abs(Number.parseFloat(found ?? '') - 16)).toBeLessThan(0.3);
    if (width === 390) expect(await findViolations(page, '#block-section-fit')).toEqual([]);

    const link = fit.getByText('Take the fitted values over');
    await link.focus();
    await page.keyboard.press('Enter');
    await settled(page);
    const { inputs } = await page.evaluate(() => window.stepwell.state());
    expect(inputs['threshold.source']).toBe('typed');
    expect(Math.abs((inputs['threshold.typedFluence'] as number) - 4100)).toBeLessThan(3 * 40);
    expect(inputs['threshold.typedUncertainty']).toBeGreaterThan(10);
    expect(Math.abs((inputs['removal.depthPerPulse'] as number) - 16e-9)).toBeLessThan(0.3e-9);
    await expect(said).toContainText('about as deep as measured');
    await expectNoSidewaysScrolling(page);
  });
}

test('a section pasted wrong is refused where it was pasted, and the one before stays', async ({ page }) => {
  await openDocument(page, 'grooves');
  const field = page.locator('.field[data-input="groove.sectionFile"]');
  await field.locator('summary', { hasText: 'Paste a table' }).click();
  await field.locator('textarea').fill('x;height\n0;1\n1;2\n2;3\n');
  await page.keyboard.press('Control+Enter');
  await expect(field).toContainText('names no unit');
  await expect(page.locator('#block-section-said')).toBeHidden();
});

test('a section without a groove says why nothing can be measured in it', async ({ page }) => {
  await openDocument(page, 'grooves');
  const rows = Array.from({ length: 200 }, (_, i) => `${i},${0.02 * Math.sin(7 * i * i)}`);
  const field = page.locator('.field[data-input="groove.sectionFile"]');
  await field.locator('input[type="file"]').setInputFiles({
    name: 'flat.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(`x (um),z (um)\n${rows.join('\n')}\n`),
  });
  await settled(page);
  await expect(page.locator('#block-section-said')).toBeVisible();
  await expect(page.locator('#block-section-said .stand-in').first()).toContainText(/groove/);
});
