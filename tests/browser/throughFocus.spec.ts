import { fileURLToPath } from 'node:url';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { workpieceZ } from '../../lib/design/focus.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import {
  chooseElement,
  expectNoSidewaysScrolling,
  openDocument,
  readInputs,
  settled,
} from './stepwellPage.ts';

const imagePath = fileURLToPath(new URL('../../data/measured/rain-gauge-beam.png', import.meta.url));
declare global {
  interface Window {
    seen: { moves: number; marked: number; stale: string[] };
  }
}

const zOf = async (page: Page) => (await readInputs(page))['workpiece.z'] as number;

/** Counts what a person does; the way from the start page may take five. */
function countActions() {
  let count = 0;
  return {
    async act(what: () => Promise<unknown>) {
      count += 1;
      await what();
    },
    count: () => count,
  };
}

/** Figures and lists that are older than the design and do not say so. */
function staleUnmarked(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const now = String(window.stepwell.state().revision);
    return [...document.querySelectorAll<HTMLElement>('.figure-block, .figure-panels, .choices')]
      .filter((holder) => !holder.hasAttribute('data-pending') && holder.dataset['revision'] !== now)
      .map(({ id }) => id);
  });
}

/** The line in the chart stands where the workpiece is: what is drawn belongs to the revision that is marked. */
function drawnPlane(page: Page): Promise<string | null> {
  return page.locator('#block-map .figure-handle').getAttribute('aria-valuetext');
}

const planeRows = (page: Page): Locator => page.locator('#block-planes-table tbody tr:not(.choices-rest)');

for (const viewport of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]) {
  test.describe(`at ${viewport.width} × ${viewport.height}`, () => {
    test.use({ viewport });

    test('from the start page with a beam image to a chosen plane, by mouse, in at most five actions', async ({
      page,
    }) => {
      const actions = countActions();
      await page.goto('/');
      await actions.act(() => page.locator('.doors input[type="file"]').setInputFiles(imagePath));
      await expect(page.locator('main#matching')).toBeVisible();
      await actions.act(() => page.locator('.masthead').getByRole('link', { name: 'Focus' }).click());
      await expect(page.locator('main#through-focus')).toBeVisible();
      await settled(page);
      await expectNoSidewaysScrolling(page);
      const row = planeRows(page).first();
      await actions.act(() => row.getByRole('button').first().click());
      await settled(page);
      await expect(row).toHaveAttribute('aria-current', 'true');
      expect(await zOf(page)).not.toBe(0);
      expect((await readInputs(page))['laser.beamSource']).toBe('measured');
      expect(actions.count()).toBeLessThanOrEqual(5);
    });

    test('the same by keyboard', async ({ page }) => {
      const actions = countActions();
      const tabTo = async (target: Locator, key = 'Tab') => {
        for (let i = 0; i < 40; i++) {
          if (await target.evaluate((element) => element === document.activeElement)) return;
          await page.keyboard.press(key);
        }
        throw new Error('not reached by Tab');
      };
      // Asked for well before the key: the browser is told to hand its chooser over only then.
      const choosing = page.waitForEvent('filechooser');
      await page.goto('/');
      const picker = page.locator('.doors input[type="file"]');
      await tabTo(picker);
      await actions.act(async () => {
        await page.keyboard.press('Enter');
        await (await choosing).setFiles(imagePath);
      });
      await expect(page.locator('main#matching')).toBeVisible();
      const link = page.locator('.masthead').getByRole('link', { name: 'Focus' });
      // The focus stands on the heading of the new document; the way to the others lies just before it.
      await tabTo(link, 'Shift+Tab');
      await actions.act(() => page.keyboard.press('Enter'));
      await expect(page.locator('main#through-focus')).toBeVisible();
      await settled(page);
      const jump = page.getByRole('button', { name: 'choose from the planes found' });
      await tabTo(jump);
      await actions.act(() => page.keyboard.press('Enter'));
      const row = planeRows(page).first();
      const button = row.getByRole('button').first();
      await expect(button).toBeFocused();
      await actions.act(() => page.keyboard.press('Enter'));
      await settled(page);
      await expect(row).toHaveAttribute('aria-current', 'true');
      await expect(button).toBeFocused();
      expect(await zOf(page)).not.toBe(0);
      expect(actions.count()).toBeLessThanOrEqual(5);
    });
  });
}

test('the plane is dragged through 100 positions, and nothing older than the design is unmarked', async ({
  page,
}) => {
  await openDocument(page, 'through-focus');
  const frame = page.locator('#block-map .figure-moves');
  await frame.scrollIntoViewIfNeeded();
  const box = (await frame.boundingBox())!;
  const middle = box.y + box.height / 2;
  await page.mouse.move(box.x + 20, middle);
  await page.mouse.down();
  const places = new Set<number>();
  for (let i = 1; i <= 100; i++) {
    await page.mouse.move(box.x + 20 + ((box.width - 40) * i) / 100, middle);
    expect(await staleUnmarked(page), `position ${i}`).toEqual([]);
    places.add(await zOf(page));
  }
  await page.mouse.up();
  await settled(page);
  expect(places.size).toBe(100);
  expect(await staleUnmarked(page)).toEqual([]);
  expect(await drawnPlane(page)).toBe(shownValue(workpieceZ, { value: await zOf(page) }));
  await page.keyboard.press('ControlOrMeta+Z');
  expect(await zOf(page), 'a drag is one step back').toBe(0);
});

test('the beam is dragged through 100 widths, whose maps come from the worker', async ({ page }) => {
  await openDocument(page, 'through-focus');
  await chooseElement(page, 'laser');
  const track = page.locator('.path-inputs .field[data-input="laser.beamDiameter"] input[type="range"]');
  const box = (await track.boundingBox())!;
  // In the page, right after each change: between two commands from outside the worker has often answered.
  await page.evaluate(() => {
    window.seen = { moves: 0, marked: 0, stale: [] };
    window.addEventListener('input', () => {
      const now = String(window.stepwell.state().revision);
      const older = [
        ...document.querySelectorAll<HTMLElement>('.figure-block, .figure-panels, .choices'),
      ].filter((holder) => holder.dataset['revision'] !== now);
      window.seen.moves += 1;
      window.seen.marked += older.some(({ id }) => id === 'block-map') ? 1 : 0;
      window.seen.stale.push(
        ...older.filter((holder) => !holder.hasAttribute('data-pending')).map(({ id }) => id),
      );
    });
  });
  await page.mouse.move(box.x + box.width * 0.3, box.y + box.height / 2);
  await page.mouse.down();
  for (let i = 1; i <= 100; i++) {
    await page.mouse.move(box.x + box.width * (0.3 + 0.004 * i), box.y + box.height / 2);
    expect(await staleUnmarked(page), `position ${i}`).toEqual([]);
  }
  await page.mouse.up();
  await settled(page);
  expect(await staleUnmarked(page)).toEqual([]);
  const seen = await page.evaluate(() => window.seen);
  expect(seen.stale).toEqual([]);
  expect(seen.moves).toBeGreaterThan(50);
  expect(seen.marked, 'the map is older than the design until the worker has answered').toBe(seen.moves);
});

test('the plane is moved by keys on its handle; a held key is one step back', async ({ page }) => {
  await openDocument(page, 'through-focus');
  const handle = page.locator('#block-map').getByRole('slider');
  await handle.focus();
  await page.keyboard.down('ArrowRight');
  for (let i = 0; i < 5; i++) await page.keyboard.down('ArrowRight');
  await page.keyboard.up('ArrowRight');
  await settled(page);
  const z = await zOf(page);
  expect(z).toBeGreaterThan(0);
  await expect(handle).toBeFocused();
  expect(await handle.getAttribute('aria-valuetext')).toBe(shownValue(workpieceZ, { value: z }));
  await page.keyboard.press('End');
  expect(await zOf(page)).toBeCloseTo(1e-3, 9);
  await page.keyboard.press('ControlOrMeta+Z');
  expect(await zOf(page)).toBe(z);
  await page.keyboard.press('ControlOrMeta+Z');
  expect(await zOf(page)).toBe(0);
});
