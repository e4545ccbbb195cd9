import type { CDPSession, Page } from '@playwright/test';
import type { createRandom } from '../../lib/numerics/random.ts';
import { openMatching, readInputs } from './stepwellPage.ts';

/** A value that was typed, and when it had been, ms. */
interface Typed {
  readonly millimetres: number;
  readonly at: number;
}

/** What a kill cost. */
export interface Kill {
  /** Age of the oldest value that was lost, ms; 0 where none was. */
  readonly lost: number;
  /** How many values had been typed. */
  readonly typed: number;
  /** True where what came back is nothing that was typed. */
  readonly wrong: boolean;
}

const field = '.field[data-input="laser.beamDiameter"] input[type="text"]';

/** Types beam diameters one after the other until the time is over. */
export async function typeFor(
  page: Page,
  time: number,
  random: ReturnType<typeof createRandom>,
): Promise<Typed[]> {
  // What was there before was typed long ago.
  const before = (await readInputs(page))['laser.beamDiameter'] as number;
  const typed: Typed[] = [{ millimetres: before * 1e3, at: 0 }];
  const end = Date.now() + time;
  await page.locator(field).first().focus();
  while (Date.now() < end) {
    const millimetres = Number(random.between(2, 9).toFixed(4));
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type(String(millimetres));
    await page.keyboard.press('Enter');
    typed.push({ millimetres, at: Date.now() });
  }
  return typed;
}

/** Lets the renderer of a page die, as a tab does that runs out of memory. */
export async function crash(page: Page): Promise<void> {
  const session: CDPSession = await page.context().newCDPSession(page);
  const crashed = page.waitForEvent('crash');
  // Never answers.
  session.send('Page.crash').catch(() => {});
  await crashed;
}

/** Compares what a fresh page shows with what was typed before the kill. */
export async function judge(page: Page, typed: readonly Typed[], killed: number): Promise<Kill> {
  await openMatching(page);
  const diameter = (await readInputs(page))['laser.beamDiameter'] as number;
  const kept = typed.findLastIndex(({ millimetres }) => Math.abs(millimetres * 1e-3 - diameter) < 1e-12);
  const missing = typed[kept + 1];
  return { lost: missing ? killed - missing.at : 0, typed: typed.length - 1, wrong: kept < 0 };
}
