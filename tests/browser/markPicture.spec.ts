import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { markPictureTruth } from '../../data/measured/drawMarkPicture.ts';
import { dragOver, dropOnField } from './givingPictures.ts';
import {
  expectNoSidewaysScrolling,
  findViolations,
  layOutAll,
  openDocument,
  settled,
  typeInto,
} from './stepwellPage.ts';

const name = 'lecture-table-mark.png';
const path = fileURLToPath(new URL(`../../data/measured/${name}`, import.meta.url));
/** Width and height of the picture. */
const [wide, high] = [340, 260];
const field = '.field[data-input="markPicture.picture"]';

const numberOf = (page: Page, id: string) => page.evaluate((id) => window.stepwell.state().inputs[id], id);
const shown = (page: Page, id: string) =>
  page.locator(`#block-mark-picture-said [data-quantity="${id}"]`).first();

const dropPicture = (page: Page, bytes: Buffer, file: string) =>
  dropOnField(page, 'markPicture.picture', bytes, file);
const dragOnPicture = (
  page: Page,
  from: readonly [number, number],
  to: readonly [number, number],
): Promise<void> => dragOver(page, page.locator('.picture-stage'), [wide, high], [from, to]);

for (const [width, scheme] of [
  [1440, 'light'],
  [390, 'dark'],
] as const) {
  test.describe(`at ${width} px, ${scheme}`, () => {
    test.use({ viewport: { width, height: 900 }, colorScheme: scheme });

    test('a picture is dropped, the part and the scale bar drawn with the mouse, the diameter read and added to the table', async ({
      page,
    }) => {
      await openDocument(page, 'threshold');
      await layOutAll(page);
      await dropPicture(page, readFileSync(path), name);
      await expect(page.locator(field)).toContainText(name);
      await settled(page);
      const warning = page.locator('#block-mark-picture-warning');
      await expect(warning).toContainText('1 further part stands out');

      await dragOnPicture(page, [80, 30], [260, 210]);
      await expect(page.locator('.picture-status')).toContainText('Part of');
      const part = await Promise.all(
        ['Left', 'Top', 'Width', 'Height'].map((side) => numberOf(page, `markPicture.region${side}`)),
      );
      // A pixel of the screen is up to one of the picture, and the mouse ends on whole ones.
      for (const [i, expected] of [80, 30, 180, 180].entries())
        expect(Math.abs((part[i] as number) - expected)).toBeLessThanOrEqual(2);
      await expect(warning).toHaveText('');

      await page.getByRole('button', { name: 'Draw along the scale bar' }).click();
      await dragOnPicture(page, [20, 237], [120, 237]);
      await typeInto(page, 'markPicture.barLength', '10 um');
      await settled(page);
      // The true diameter is 11.33 µm; the bar of 100 pixels is drawn to a pixel at either end.
      const text = (await shown(page, 'markPicture.outerDiameter').textContent())!;
      expect(Math.abs(Number.parseFloat(text) / 11.33 - 1)).toBeLessThan(0.03);

      await page.evaluate((patch) => window.stepwell.set(patch), {
        'markPicture.scaleSource': 'typed',
        'markPicture.pixelPitch': markPictureTruth.pixelPitch,
        ...markPictureTruth.patch,
      });
      await settled(page);
      await expect(shown(page, 'markPicture.outerDiameter')).toHaveText(/^11\.3\d?\u202fµm$/);
      await expect(page.locator('#block-mark-picture-against')).toContainText('agrees with it');
      await expect(page.locator('#block-mark-picture-figure .figure-summary').first()).toContainText(
        'The outer contour encloses a disc of 11.3',
      );
      expect(await findViolations(page, '#block-mark-picture-drawn')).toEqual([]);
      expect(await findViolations(page, '#block-mark-picture-figure')).toEqual([]);
      await expectNoSidewaysScrolling(page);

      await page.getByRole('button', { name: 'Add this mark to the table of spots' }).click();
      await settled(page);
      await expect(page.locator('#block-spot-rows')).toContainText('1 of 1 rows count');
      await expect(page.locator('#block-spot-rows')).toContainText('11.3');
      await expect(page.locator('#block-mark-picture-row')).toContainText('It stands as the last row');
    });
  });
}

test('corners and ends are moved by keys, a held key is one step back', async ({ page }) => {
  await openDocument(page, 'threshold');
  await layOutAll(page);
  await page.locator(`${field} input[type="file"]`).setInputFiles(path);
  await settled(page);
  await page.getByRole('button', { name: 'Draw a part about the mark' }).click();
  const corner = page.locator('[data-handle="region-0"]');
  await corner.focus();
  await page.keyboard.down('Shift');
  for (let i = 0; i < 8; i++) await page.keyboard.press('ArrowRight');
  await page.keyboard.up('Shift');
  await page.keyboard.press('ArrowDown');
  await settled(page);
  expect(await numberOf(page, 'markPicture.regionSource')).toBe('part');
  expect(await numberOf(page, 'markPicture.regionLeft')).toBe(80);
  expect(await numberOf(page, 'markPicture.regionTop')).toBe(1);
  expect(await numberOf(page, 'markPicture.regionWidth')).toBe(260);
  await expect(corner).toBeFocused();
  await expect(corner).toHaveAttribute('aria-valuetext', '80 from the left, 1 from the top, in pixels');
  // Down three times without up is a key that repeats.
  for (let i = 0; i < 3; i++) await page.keyboard.down('ArrowDown');
  await page.keyboard.up('ArrowDown');
  await settled(page);
  expect(await numberOf(page, 'markPicture.regionTop')).toBe(4);
  await page.getByRole('button', { name: 'Undo' }).click();
  await settled(page);
  expect(await numberOf(page, 'markPicture.regionTop')).toBe(1);
  await page.getByRole('button', { name: 'Take the whole picture' }).click();
  expect(await numberOf(page, 'markPicture.regionSource')).toBe('whole');
});

test('a damaged picture is refused with its reason, and the picture before stays', async ({ page }) => {
  await openDocument(page, 'threshold');
  await dropPicture(page, readFileSync(path), name);
  await settled(page);
  const before = await page.evaluate(() => window.stepwell.state().revision);
  await dropPicture(page, readFileSync(path).subarray(0, 4000), 'cut.png');
  await expect(page.locator(`${field} .problem`)).toContainText(`The file given before, "${name}", stays.`);
  expect(await page.evaluate(() => window.stepwell.state().revision)).toBe(before);
});

test.describe('under a finger', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('the page is scrolled over the picture until a button says that it is drawn on', async ({ page }) => {
    await openDocument(page, 'threshold');
    await layOutAll(page);
    await page.locator(`${field} input[type="file"]`).setInputFiles(path);
    await settled(page);
    const stage = page.locator('.picture-stage');
    await expect(stage).toHaveCSS('touch-action', 'auto');
    await page.getByRole('button', { name: 'Draw a part about the mark' }).tap();
    await expect(stage).toHaveCSS('touch-action', 'none');
    await stage.scrollIntoViewIfNeeded();
    const box = (await stage.boundingBox())!;
    const client = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', x: number, y: number) =>
      client.send('Input.dispatchTouchEvent', {
        type,
        touchPoints:
          type === 'touchEnd'
            ? []
            : [{ x: box.x + (x / wide) * box.width, y: box.y + (y / high) * box.height }],
      });
    await touch('touchStart', 80, 30);
    await touch('touchMove', 170, 120);
    await touch('touchMove', 260, 210);
    await touch('touchEnd', 260, 210);
    await settled(page);
    expect(await numberOf(page, 'markPicture.regionSource')).toBe('part');
    expect(Math.abs(((await numberOf(page, 'markPicture.regionWidth')) as number) - 180)).toBeLessThanOrEqual(
      2,
    );
  });
});
