import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { ripplesTruth } from '../../data/measured/drawMicrographs.ts';
import { dragOver, dropOnField } from './givingPictures.ts';
import {
  expectNoSidewaysScrolling,
  findViolations,
  layOutAll,
  openDocument,
  readInputs,
  settled,
  typeInto,
} from './stepwellPage.ts';

const demo = (name: string) =>
  readFileSync(fileURLToPath(new URL(`../../data/measured/${name}`, import.meta.url)));
const [even, uneven] = ['even-ripples.png', 'uneven-ripples.png'];

const shown = (page: Page, id: string) =>
  page.locator(`#block-micrograph-a-said [data-quantity="${id}"]`).first();
const numberShown = async (page: Page, id: string) =>
  Number.parseFloat((await shown(page, id).textContent())!);

for (const [width, height, scheme] of [
  [1440, 900, 'light'],
  [390, 844, 'dark'],
] as const) {
  test.describe(`at ${width} px, ${scheme}`, () => {
    test.use({ viewport: { width, height }, colorScheme: scheme });

    test('a micrograph is dropped, a part drawn, the pitch typed, the period read; a second one beside it', async ({
      page,
    }) => {
      await openDocument(page, 'ripples');
      await layOutAll(page);
      await dropOnField(page, 'micrograph.picture', demo(even), even);
      await settled(page);
      const said = page.locator('#block-micrograph-a-said');
      await expect(said).toContainText('how long a pixel is has not been said');
      await expect(said).toContainText('Rows 384 to 419 hold a caption and are left out.');
      await expect(page.locator('#block-micrograph-a-expected')).toBeHidden();

      const stage = page.locator('#block-micrograph-a-drawn .picture-stage');
      await dragOver(
        page,
        stage,
        [480, 420],
        [
          [40, 30],
          [440, 350],
        ],
      );
      const inputs = await readInputs(page);
      expect(inputs['micrograph.regionSource']).toBe('part');
      expect(Math.abs((inputs['micrograph.regionWidth'] as number) - 400)).toBeLessThanOrEqual(2);

      await page.evaluate(() => window.stepwell.set({ 'micrograph.scaleSource': 'typed' }));
      await settled(page);
      await typeInto(page, 'micrograph.pixelPitch', '0.05 um');
      await settled(page);
      const period = await numberShown(page, 'micrograph.period');
      const open = await numberShown(page, 'micrograph.periodUncertainty');
      expect(Math.abs(period - ripplesTruth.even.period * 1e9)).toBeLessThan(2 * open);
      await expect(page.locator('#block-micrograph-a-expected')).toContainText(
        'lies inside the periods to be expected',
      );
      await expect(page.locator('#block-period-wavelength .figure-summary').first()).toContainText(
        'Measured: micrograph A, ',
      );

      await dropOnField(page, 'otherMicrograph.picture', demo(uneven), uneven);
      await page.evaluate(() => window.stepwell.set({ 'otherMicrograph.scaleSource': 'typed' }));
      await settled(page);
      await expect(page.locator('#block-micrographs-compared')).toContainText(
        'The periods agree within twice their combined uncertainty.',
      );
      await expect(page.locator('#block-micrograph-b-said')).toContainText('this one is not, for');
      await expect(page.locator('#block-micrograph-regularity')).toContainText('60 of 121 lie below 0.5');
      for (const id of ['a-controls', 'a-drawn', 'a-said', 'b-said', 'pictures', 'orientation', 'regularity'])
        expect(await findViolations(page, `#block-micrograph-${id}`), id).toEqual([]);
      await expectNoSidewaysScrolling(page);
    });
  });
}

test('a damaged micrograph is refused with its reason, and the design stays', async ({ page }) => {
  await openDocument(page, 'ripples');
  await dropOnField(page, 'micrograph.picture', demo(even), even);
  await settled(page);
  const before = await page.evaluate(() => window.stepwell.state().revision);
  await dropOnField(page, 'micrograph.picture', demo(even).subarray(0, 4000), 'cut.png');
  const problem = page.locator('.field[data-input="micrograph.picture"] .problem');
  await expect(problem).toContainText(`The file given before, "${even}", stays.`);
  expect(await page.evaluate(() => window.stepwell.state().revision)).toBe(before);
});
