import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { usedBeamDiameter } from '../../lib/design/rawBeam.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import { decodeCameraImage } from '../../lib/measured/cameraImage.ts';
import {
  chooseElement,
  createHeadless,
  expectNoSidewaysScrolling,
  openMatching,
  readInputs,
  settled,
  typeInto,
} from './stepwellPage.ts';

const measured = (name: string) => fileURLToPath(new URL(`../../data/measured/${name}`, import.meta.url));
const imagePath = measured('rain-gauge-beam.png');

/** Presses Tab until the element that has the focus matches. */
async function tabTo(page: Page, selector: string, most: number): Promise<void> {
  for (let i = 0; i < most; i++) {
    await page.keyboard.press('Tab');
    if (await page.evaluate((query) => document.activeElement?.matches(query) ?? false, selector)) return;
  }
  throw new Error(`${selector} was not reached with ${most} presses of Tab.`);
}

for (const viewport of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]) {
  test.describe(`at ${viewport.width} × ${viewport.height}`, () => {
    test.use({ viewport });

    test('the doors are in sight at once, with the way to the cautions before them', async ({ page }) => {
      await page.goto('/');
      await expect(page.getByText('I have a beam image')).toBeInViewport({ ratio: 1 });
      const way = page.getByRole('button', { name: 'Read the cautions before any setting' });
      await expect(way).toBeInViewport({ ratio: 1 });
      await way.click();
      const heading = page.getByRole('heading', { name: 'Before any setting' });
      await expect(heading).toBeInViewport({ ratio: 1 });
      await expect(heading).toBeFocused();
    });

    test('an address that leads nowhere says so, until it leads somewhere', async ({ page }) => {
      const said = page.locator('.notice[data-topic="address"]');
      await page.goto('/#design=zzz');
      await expect(said).toContainText('‘#design=zzz’, which brings no design');
      await expect(page.getByText('I have a beam image')).toBeVisible();
      await expectNoSidewaysScrolling(page);
      await page.goto('/#nonsense');
      await expect(said).toContainText('no document is called that');
      await page.goto('/#matching');
      await expect(page.locator('main#matching')).toBeVisible();
      await expect(said).toBeHidden();
    });

    test('a researcher brings the image of a beam', async ({ page }) => {
      await page.goto('/');
      await expectNoSidewaysScrolling(page);
      const choosing = page.waitForEvent('filechooser');
      await page.getByText('I have a beam image').click();
      await (await choosing).setFiles(imagePath);
      await expect(page.locator('main#matching')).toBeVisible();
      await settled(page);
      const inputs = await readInputs(page);
      expect(inputs['laser.beamSource']).toBe('measured');

      const image = decodeCameraImage(new Uint8Array(readFileSync(imagePath)), 'rain-gauge-beam.png');
      const outcome = createHeadless()({ ...inputs, 'laser.beamImage': image })(usedBeamDiameter);
      const expected = shownValue(usedBeamDiameter, outcome);
      expect(expected).toMatch(/mm$/);
      const shown = page.locator('#block-today [data-quantity="laser.usedBeamDiameter"]').first();
      await expect(shown).toHaveText(expected);

      await chooseElement(page, 'laser');
      const source = page.locator('.field[data-input="laser.beamSource"] input:checked');
      await expect(source).toHaveValue('measured');
      await expectNoSidewaysScrolling(page);
    });

    test('a newcomer plays with the example', async ({ page }) => {
      await page.goto('/');
      await page.getByRole('button', { name: 'Show me the example' }).click();
      await expect(page.locator('main#matching')).toBeVisible();
      await settled(page);
      await expectNoSidewaysScrolling(page);

      await typeInto(page, 'laser.wavelength', '515 nm');
      expect((await readInputs(page))['laser.wavelength']).toBeCloseTo(0.515e-6, 12);
      await typeInto(page, 'laser.wavelength', '1,03 um');
      expect((await readInputs(page))['laser.wavelength']).toBeCloseTo(1.03e-6, 12);

      await page.locator('h1').click();
      await tabTo(page, '.beam-place[data-element="plate"]', 12);
      await page.keyboard.press('Enter');
      const field = page.locator('.field[data-input="plate.stepDiameter"]');
      const text = field.locator('input[type="text"]');
      await expect(field).toBeVisible();
      const before = (await readInputs(page))['plate.stepDiameter'];
      await typeInto(page, 'plate.stepDiameter', '0,5 in');
      // 1 inch is 25.4 mm exactly (international yard and pound agreement of 1959, memory).
      expect((await readInputs(page))['plate.stepDiameter']).toBeCloseTo(12.7e-3, 12);
      await settled(page);
      await expect(page.locator('.beam-place[data-element="plate"] .beam-value')).toContainText('12.7');

      const design = await page.evaluate(() => JSON.stringify(window.stepwell.state()));
      await typeInto(page, 'plate.stepDiameter', '5 kg');
      await expect(field.locator('.problem')).toContainText('kg');
      await expect(text).toHaveAttribute('aria-invalid', 'true');
      expect(await page.evaluate(() => JSON.stringify(window.stepwell.state()))).toBe(design);
      await expectNoSidewaysScrolling(page);

      await page.keyboard.press('Escape');
      await expect(text).toHaveValue('0,5 in');
      await expect(field.locator('.problem')).toHaveText('');
      // Inside a text field Ctrl+Z belongs to the typing; on the next field's help, one Tab on, to the design.
      await tabTo(page, '.field-help summary', 1);
      await page.keyboard.press('ControlOrMeta+Z');
      await settled(page);
      expect((await readInputs(page))['plate.stepDiameter']).toBe(before);
      await expect(text).toHaveValue(/^10\smm$/);
      await page.keyboard.press('ControlOrMeta+Shift+Z');
      expect((await readInputs(page))['plate.stepDiameter']).toBeCloseTo(12.7e-3, 12);
    });

    test('someone has a plate', async ({ page }) => {
      await page.goto('/');
      await page.getByRole('button', { name: 'I have a plate' }).click();
      const field = (id: string) =>
        page.locator(`.path-inputs .field[data-input="${id}"] input[type="text"]`);
      await expect(field('plate.stepDiameter')).toBeFocused();
      await expect(field('plate.stepDiameter')).toBeInViewport();
      await expect(field('plate.madeHeight')).toBeVisible();
      await settled(page);
      expect((await readInputs(page))['plate.source']).toBe('made');
      await page.keyboard.type('8');
      await page.keyboard.press('Tab');
      await expect(field('plate.stepDiameter')).toHaveValue('8\u202fmm');
      expect((await readInputs(page))['plate.stepDiameter']).toBeCloseTo(8e-3, 12);
      await page.getByRole('button', { name: 'Undo' }).click();
      await page.getByRole('button', { name: 'Undo' }).click();
      expect((await readInputs(page))['plate.source']).toBe('designed');
      await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
      await expectNoSidewaysScrolling(page);
    });

    test('a lecturer shows where the numbers come from', async ({ page }) => {
      await openMatching(page);
      await page.getByRole('button', { name: 'a full wave' }).click();
      await settled(page);
      expect((await readInputs(page))['plate.designPhase']).toBeCloseTo(2 * Math.PI, 12);
      await page.getByRole('button', { name: '0.4 waves' }).click();
      await settled(page);

      const question = page.locator('#block-guess');
      const deeper = question.getByRole('button', { name: 'It gets deeper' });
      await deeper.click();
      await expect(question.getByRole('status')).toHaveText(/^(Yes|Not for this design): .*\.$/);
      await expect(deeper).toHaveAttribute('aria-pressed', 'true');
      await expectNoSidewaysScrolling(page);

      const number = page.locator('#block-numbers [data-quantity="spot.peakFluence"]');
      const numbersWidth = (await page.locator('#block-numbers').boundingBox())!.width;
      await number.focus();
      await page.keyboard.press('Enter');
      const trace = page.locator('.trace');
      await expect(trace.getByRole('heading')).toHaveText('peak fluence');
      await expectNoSidewaysScrolling(page);
      if (viewport.width >= 1440) {
        // Number, inputs and where it comes from stand side by side, and the text keeps its lines.
        const [textBox, inputsBox, traceBox] = await Promise.all(
          ['#block-numbers', '.path-inputs', '.trace'].map((place) => page.locator(place).boundingBox()),
        );
        expect(textBox!.width).toBe(numbersWidth);
        expect(inputsBox!.x).toBeGreaterThan(textBox!.x + textBox!.width);
        expect(inputsBox!.x + inputsBox!.width).toBeLessThanOrEqual(traceBox!.x);
      }
      for (const [id, name] of [
        ['focus.unshapedPeakFluence', 'peak fluence of the unshaped beam'],
        ['focus.radius', 'focus radius of the unshaped beam'],
        ['lens.focalLength', 'focal length'],
      ] as const) {
        await tabTo(page, `.trace-from [data-quantity="${id}"]`, 15);
        await page.keyboard.press('Enter');
        await expect(trace.getByRole('heading')).toHaveText(name);
      }
      await tabTo(page, '.trace-bar button', 2);
      await page.keyboard.press('Enter');
      await expect(trace.getByRole('heading')).toHaveText('focus radius of the unshaped beam');
      await page.keyboard.press('Escape');
      await expect(trace).toBeHidden();
      await expect(number).toBeFocused();
    });

    test('help is one note at a time, and Escape closes it', async ({ page }) => {
      await openMatching(page);
      const help = (id: string) => page.locator(`.path-inputs .field[data-input="${id}"] .field-help`);
      const [first, second] = [help('laser.wavelength'), help('laser.beamDiameter')];
      await first.locator('summary').click();
      await expect(first.locator('p')).toBeVisible();
      await expectNoSidewaysScrolling(page);
      await second.locator('summary').click();
      await expect(second.locator('p')).toBeVisible();
      await expect(first.locator('p')).toBeHidden();
      await page.keyboard.press('Escape');
      await expect(second.locator('p')).toBeHidden();
      await expect(second.locator('summary')).toBeFocused();
      await page.keyboard.press('Enter');
      await expect(second.locator('p')).toBeVisible();
      await page.locator('h1').click();
      await expect(second.locator('p')).toBeHidden();

      await first.locator('summary').focus();
      await page.keyboard.press('Enter');
      await second.locator('summary').focus();
      await page.keyboard.press('Enter');
      await expect(second.locator('p')).toBeVisible();
      await expect(first.locator('p')).toBeHidden();
      await page.keyboard.press('Escape');

      await page.locator('#block-wish [data-quantity="wish.spotWidth"]').first().click();
      const inTrace = page.locator('.trace .field-help');
      await inTrace.locator('summary').click();
      await page.keyboard.press('Escape');
      await expect(inTrace.locator('p')).toBeHidden();
      await expect(page.locator('.trace')).toBeVisible();
      await page.keyboard.press('Escape');
      await expect(page.locator('.trace')).toBeHidden();
    });

    test('the focus returns to a number of a sentence that was written anew', async ({ page }) => {
      await openMatching(page);
      const id = await page.locator('.sentence [data-quantity]').first().getAttribute('data-quantity');
      const number = page.locator(`.sentence [data-quantity="${id}"]`).first();
      await number.focus();
      await page.keyboard.press('Enter');
      await expect(page.locator('.trace')).toBeVisible();
      await page.evaluate(() => window.stepwell.set({ 'laser.beamDiameter': 4.9e-3 }));
      await settled(page);
      await page.keyboard.press('Escape');
      await expect(page.locator('.trace')).toBeHidden();
      await expect(number).toBeFocused();
    });
  });
}
