import { expect, type Page, test } from '@playwright/test';
import { createRandom } from '../../lib/numerics/random.ts';
import { cases } from '../cases.ts';
import { changeRecord, crash, judge, type Kill, sumUp, typeFor } from './killing.ts';
import { findViolations, openMatching, readInputs, settled, typeInto } from './stepwellPage.ts';

const notice = (page: Page, topic: string) => page.locator(`.notice[data-topic="${topic}"]`);
const diameter = async (page: Page) => (await readInputs(page))['laser.beamDiameter'];
const undo = (page: Page) => page.getByRole('button', { name: 'Undo' });
/** Longer than a change waits before it is written. */
const written = (page: Page) => page.waitForTimeout(600);

test('a tab killed while somebody types comes back with at most the last second lost', async ({
  page,
  context,
}) => {
  const random = createRandom(71);
  let tab = page;
  const kills: Kill[] = [];
  for (let i = 0; i < cases(5, 2); i++) {
    await openMatching(tab);
    const what = i % 3 === 2 ? 'name' : 'numbers';
    const typed = await typeFor(tab, random.between(700, 1600), random, what);
    const killed = Date.now();
    await crash(tab);
    await tab.close();
    tab = await context.newPage();
    kills.push(await judge(tab, typed, killed));
    expect(kills.at(-1)!.wrong).toBe(false);
    expect(kills.at(-1)!.lost).toBeLessThanOrEqual(1000);
  }
  console.log(sumUp(kills).words);
});

test('after loading again the design is there with its undo, and can be started afresh', async ({ page }) => {
  await openMatching(page);
  await typeInto(page, 'laser.beamDiameter', '4 mm');
  await typeInto(page, 'laser.beamDiameter', '3 mm');
  await undo(page).click();
  await written(page);
  await page.reload();
  await settled(page);
  expect(await diameter(page)).toBe(4e-3);
  await expect(notice(page, 'design')).toContainText('Your last design is open again.');
  expect(await findViolations(page, '.notices')).toEqual([]);
  await page.getByRole('button', { name: 'Redo' }).click();
  expect(await diameter(page)).toBe(3e-3);
  await expect(notice(page, 'design')).toBeHidden();
  await undo(page).click();
  await undo(page).click();
  expect(await diameter(page)).toBe(5e-3);
  await expect(undo(page)).toBeDisabled();

  await typeInto(page, 'laser.beamDiameter', '6 mm');
  await written(page);
  await page.reload();
  await settled(page);
  await page.getByRole('button', { name: 'Start afresh' }).click();
  expect(await diameter(page)).toBe(5e-3);
  await undo(page).click();
  expect(await diameter(page)).toBe(6e-3);
});

test('a page left untouched is kept by nothing and says nothing', async ({ page }) => {
  await openMatching(page);
  await written(page);
  await page.reload();
  await settled(page);
  await expect(page.locator('.notice')).toHaveCount(0);
  await expect(undo(page)).toBeDisabled();
});

test('two tabs on one design: said, and neither overwrites the other', async ({ page, context }) => {
  await openMatching(page);
  await typeInto(page, 'laser.beamDiameter', '4 mm');
  await written(page);
  const other = await context.newPage();
  await openMatching(other);
  expect(await diameter(other)).toBe(4e-3);
  await expect(notice(other, 'design')).toContainText('is open in another tab too');
  expect(await findViolations(other, '.notices')).toEqual([]);
  await expect(notice(page, 'design')).toBeHidden();

  await typeInto(other, 'laser.beamDiameter', '7 mm');
  await expect(notice(other, 'design')).toContainText('copy of its own');
  await typeInto(page, 'laser.beamDiameter', '3 mm');
  await written(page);
  for (const [tab, kept] of [
    [page, 3e-3],
    [other, 7e-3],
  ] as const) {
    await tab.reload();
    await settled(tab);
    expect(await diameter(tab)).toBe(kept);
    await expect(notice(tab, 'design')).toContainText('open again');
  }
});

test('a second tab may take a copy at once, or wait until the first has closed', async ({
  page,
  context,
}) => {
  await openMatching(page);
  await typeInto(page, 'laser.beamDiameter', '4 mm');
  await written(page);
  const [second, third] = [await context.newPage(), await context.newPage()];
  await openMatching(second);
  await openMatching(third);
  await second.getByRole('button', { name: 'Go on with a copy' }).click();
  await expect(notice(second, 'design')).toContainText('copy of its own');

  await typeInto(page, 'laser.beamDiameter', '3 mm');
  await written(page);
  await expect(notice(third, 'design')).toContainText('is open in another tab too');
  await page.close();
  await expect(notice(third, 'design')).toBeHidden();
  await expect.poll(() => diameter(third)).toBe(3e-3);
  expect(await diameter(second)).toBe(4e-3);
});

test('a kept design that cannot be read is told of, and a new one begins', async ({ page }) => {
  await openMatching(page);
  await typeInto(page, 'laser.beamDiameter', '4 mm');
  await written(page);
  await changeRecord(page, ['history', 'steps', '1', 'inputs', 'laser.beamDiameter', 'value'], 4e3);
  await page.reload();
  await settled(page);
  await expect(notice(page, 'trouble')).toContainText('cannot be opened again: ');
  expect(await diameter(page)).toBe(5e-3);
  await typeInto(page, 'laser.beamDiameter', '3 mm');
  await expect(notice(page, 'trouble')).toBeHidden();
  await written(page);
  await page.reload();
  await settled(page);
  expect(await diameter(page)).toBe(3e-3);
});

test('what is typed straight before the page is left is kept too', async ({ page }) => {
  await openMatching(page);
  await typeInto(page, 'laser.beamDiameter', '4 mm');
  await page.reload();
  await settled(page);
  expect(await diameter(page)).toBe(4e-3);
});

for (const [name, block] of [
  ['has no storage', () => Object.defineProperty(window, 'indexedDB', { get: () => undefined })],
  [
    'is full',
    () => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('Quota exceeded.', 'QuotaExceededError');
      };
    },
  ],
] as const) {
  test(`where the browser ${name}, the page says so and works on`, async ({ page }) => {
    await page.addInitScript(block);
    await openMatching(page);
    await expect(page.locator('.notice')).toHaveCount(0);
    await typeInto(page, 'laser.beamDiameter', '4 mm');
    await expect(notice(page, 'trouble')).toContainText('keeps nothing for this page');
    await settled(page);
    expect(await diameter(page)).toBe(4e-3);
    await typeInto(page, 'laser.beamDiameter', '3 mm');
    expect(await diameter(page)).toBe(3e-3);
  });
}

test('a drag is written now and then, not on each frame', async ({ page }) => {
  await page.addInitScript(() => {
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (...args) {
      document.documentElement.dataset['puts'] = String(
        Number(document.documentElement.dataset['puts'] ?? 0) + 1,
      );
      return put.apply(this, args);
    };
  });
  await openMatching(page);
  const slider = page.locator('.field[data-input="laser.beamDiameter"] input[type="range"]');
  await slider.scrollIntoViewIfNeeded();
  const box = (await slider.boundingBox())!;
  const y = box.y + box.height / 2;
  await page.mouse.move(box.x + 0.4 * box.width, y);
  await page.mouse.down();
  const start = Date.now();
  for (let i = 0; i < 60; i++) await page.mouse.move(box.x + (0.4 + 0.005 * i) * box.width, y);
  await page.mouse.up();
  const time = Date.now() - start;
  await written(page);
  const puts = Number(await page.evaluate(() => document.documentElement.dataset['puts']));
  expect(puts).toBeGreaterThanOrEqual(1);
  expect(puts).toBeLessThanOrEqual(time / 300 + 2);
});
