import { fileURLToPath } from 'node:url';
import { expect, test } from '@playwright/test';
import { findSmallTargets } from './smallTargets.ts';
import { findViolations, openDocument, openMatching, settled } from './stepwellPage.ts';

const measured = (name: string) => fileURLToPath(new URL(`../../data/measured/${name}`, import.meta.url));
const causticPath = measured('rain-gauge-caustic.csv');

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`${colorScheme} page`, () => {
    test.use({ colorScheme });

    test('start page: axe finds nothing', async ({ page }) => {
      await page.goto('/');
      await expect(page.locator('main.start')).toBeVisible();
      expect(await findViolations(page)).toEqual([]);
    });

    test('document with every element of the beam path: axe finds nothing', async ({ page }) => {
      await openMatching(page);
      for (const figure of await page.locator('.figure-block:visible').all())
        await figure.scrollIntoViewIfNeeded();
      for (const place of await page.locator('.beam-place').all()) {
        await place.click();
        expect(await findViolations(page), `${await place.getAttribute('data-element')}`).toEqual([]);
      }
    });

    test('document with a measured caustic: axe finds nothing', async ({ page }) => {
      await openMatching(page);
      await page.locator('.field[data-input="laser.causticTable"] input').setInputFiles(causticPath);
      await expect(page.locator('#block-caustic-figure')).toBeVisible();
      await page.locator('#block-caustic-figure').scrollIntoViewIfNeeded();
      expect(await findViolations(page)).toEqual([]);
    });

    test('document of the family, with a row opened and measurements laid over: axe finds nothing', async ({
      page,
    }) => {
      await openDocument(page, 'through-focus');
      const given = (id: string, name: string) =>
        page.locator(`.field[data-input="${id}"] input[type="file"]`).setInputFiles(measured(name));
      await given('spot.measuredProfile', 'lecture-table-spot.png');
      await given('focus.measuredCaustic', 'lecture-table-focus.csv');
      await page.locator('#block-planes-table .choices-toggle').nth(2).click();
      await settled(page);
      for (const figure of await page.locator('.figure-block:visible').all())
        await figure.scrollIntoViewIfNeeded();
      expect(await findViolations(page)).toEqual([]);
    });

    test('document of alternatives, with two kept and one changed: axe finds nothing', async ({ page }) => {
      await openDocument(page, 'what-if');
      for (let i = 0; i < 2; i++)
        await page.getByRole('button', { name: 'Keep the design as it stands' }).click();
      await page.evaluate(() => window.stepwell.set({ 'expander.magnification': 2.4 }));
      await expect(page.locator('.compare-table:visible')).toHaveCount(3);
      expect(await findViolations(page)).toEqual([]);
    });

    test('document of the threshold, with a table of spots: axe finds nothing', async ({ page }) => {
      await openDocument(page, 'threshold');
      const table = page.locator('.field[data-input="threshold.spotTable"] input[type="file"]');
      await table.setInputFiles(measured('rain-gauge-spots.csv'));
      await expect(page.locator('#block-spot-rows')).toBeVisible();
      await page.locator('#block-handbook .choices-toggle').first().click();
      await settled(page);
      for (const figure of await page.locator('.figure-block:visible').all())
        await figure.scrollIntoViewIfNeeded();
      expect(await findViolations(page)).toEqual([]);
    });

    test('trace of a number and a refused value: axe finds nothing', async ({ page }) => {
      await openMatching(page);
      await page.locator('.field[data-input="laser.beamDiameter"] input[type="text"]').fill('5 kg');
      await page.keyboard.press('Enter');
      await page.locator('.value:visible').first().click();
      await expect(page.locator('.trace')).toBeVisible();
      expect(await findViolations(page)).toEqual([]);
    });
  });
}

test.describe('under a finger', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('every target is at least 24 px high and wide', async ({ page }) => {
    await page.goto('/');
    await expect(page.locator('main.start')).toBeVisible();
    expect(await findSmallTargets(page), 'start page').toEqual([]);
    await openMatching(page);
    expect(await page.evaluate(() => matchMedia('(pointer: coarse)').matches)).toBe(true);
    for (const place of await page.locator('.beam-place').all()) {
      await place.tap();
      expect(await findSmallTargets(page), `${await place.getAttribute('data-element')}`).toEqual([]);
    }
    for (const more of await page.locator('main details:visible > summary').all()) await more.tap();
    await page.locator('.value:visible').first().tap();
    await expect(page.locator('.trace')).toBeVisible();
    expect(await findSmallTargets(page), 'help and trace').toEqual([]);
    await page.keyboard.press('Escape');
    await page.locator('.design-menu summary').tap();
    expect(await findSmallTargets(page), 'menu of the design').toEqual([]);
    await openDocument(page, 'through-focus');
    await page.locator('#block-planes-table .choices-toggle').first().tap();
    expect(await findSmallTargets(page), 'the family').toEqual([]);
    await openDocument(page, 'threshold');
    await page.locator('#block-handbook .choices-toggle').first().tap();
    expect(await findSmallTargets(page), 'the threshold').toEqual([]);
    await openDocument(page, 'what-if');
    const vary = page.getByRole('region', { name: 'Vary', exact: true });
    await vary.getByLabel('result', { exact: true }).fill('spot width');
    await page.keyboard.press('Enter');
    await vary.getByRole('button', { name: 'Vary magnification' }).tap();
    await vary.getByRole('button', { name: 'Draw it' }).tap();
    await expect(vary.locator('figure')).toBeVisible();
    expect(await findSmallTargets(page), 'what if').toEqual([]);
  });
});
