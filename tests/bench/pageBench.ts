import type { Page } from '@playwright/test';
import { type Timed, watchInputs, withPage } from './benchPages.ts';
import { percentile, type Row } from './timing.ts';

const changes = 60;
const warm = 10;
/** A frame at 30 Hz: what a change may take until it is painted. */
const aim = 33;

/** Each input with its element of the beam path, and the key that changes it by a step. */
const inputs: readonly (readonly [element: string, id: string, key: string])[] = [
  ['laser', 'laser.beamDiameter', 'ArrowUp'],
  ['plate', 'plate.designPhase', 'ArrowDown'],
  ['workpiece', 'workpiece.z', 'Alt+ArrowUp'],
];

/** From a real key press in a field to the painted page, in Chromium on the built page. */
export function benchPage(): Promise<Row[]> {
  return withPage('matching', async (page) => {
    const rows: Row[] = [];
    for (const [element, id, key] of inputs) rows.push(...(await benchInput(page, element, id, key)));
    return rows;
  });
}

async function benchInput(page: Page, element: string, id: string, key: string): Promise<Row[]> {
  await page.locator(`.beam-place[data-element="${element}"]`).click();
  await page.locator(`.field[data-input="${id}"] input[type="text"]`).first().focus();
  await page.evaluate(watchInputs, undefined);
  const times: Timed[] = [];
  for (let i = 0; i < changes + warm; i++) {
    await page.keyboard.press(key);
    times.push(await page.evaluate(() => window.timed!));
    await page.waitForTimeout(50);
  }
  const counted = times.slice(warm);
  const painted = counted.map((one) => one.painted);
  const remark = percentile(painted, 0.95) <= aim ? `within ${aim} ms` : `above the aim of ${aim} ms`;
  return [
    { what: `${id}, arrow key to up-to-date page`, times: counted.map((one) => one.settled) },
    { what: `${id}, arrow key to the painted page`, times: painted, remark },
  ];
}
