import type { CDPSession, Page } from '@playwright/test';
import type { createRandom } from '../../lib/numerics/random.ts';
import { openMatching, readInputs, settled } from './stepwellPage.ts';

/** What stands on the page after a key. */
interface Standing {
  readonly millimetres: number;
  /** What is in the field and not taken. */
  readonly draft: string | undefined;
  readonly name: string;
}

/** What stood there, and since when, ms. */
type Typed = Standing & { readonly at: number };

/** Numbers, every second one taken with Enter and the others left standing; or the name of the design. */
export type Typing = 'numbers' | 'name';

/** What a kill cost. */
export interface Kill {
  /** Age of the oldest key that was lost, ms; 0 where none was. */
  readonly lost: number;
  /** How many keys had been typed. */
  readonly typed: number;
  /** True where something typed and not taken came back. */
  readonly draft: boolean;
  /** True where what came back has never stood there. */
  readonly wrong: boolean;
}

type Random = ReturnType<typeof createRandom>;

const field = '.field[data-input="laser.beamDiameter"]';

/** What stands on a page now. */
async function standing(page: Page): Promise<Standing> {
  const diameter = (await readInputs(page))['laser.beamDiameter'] as number;
  const name = await page.evaluate(() => window.stepwell.state().name ?? '');
  const waiting = await page.locator(`${field} .field-waiting`).first().textContent();
  const text = await page.locator(`${field} input[type="text"]`).first().inputValue();
  return { millimetres: diameter * 1e3, draft: waiting === '' ? undefined : text, name };
}

/** Types as a person does, key by key, until the time is over. */
export async function typeFor(page: Page, time: number, random: Random, what: Typing): Promise<Typed[]> {
  await settled(page);
  // What was there before was typed long ago.
  const typed: Typed[] = [{ ...(await standing(page)), at: 0 }];
  const end = Date.now() + time;
  const stands = (news: Partial<Standing>) => typed.push({ ...typed.at(-1)!, ...news, at: Date.now() });
  const keys = async (text: string, after: (sofar: string) => Partial<Standing>) => {
    for (let i = 1; i <= text.length && Date.now() < end; i++) {
      if (i === 1) await page.keyboard.press('ControlOrMeta+A');
      await page.keyboard.press(text[i - 1]!);
      stands(after(text.slice(0, i)));
      await page.waitForTimeout(random.between(10, 120));
    }
  };
  if (what === 'name') {
    // Leaving the field takes what had come back in it.
    await openName(page);
    stands(await standing(page));
  } else await page.locator(`${field} input[type="text"]`).first().focus();
  for (let round = 0; Date.now() < end; round++) {
    if (what === 'name') await keys(letters(random), (name) => ({ name }));
    else await typeNumber(page, numberAfter(typed.at(-1)!, random), round % 2 === 0, keys, stands, end);
  }
  return typed;
}

async function typeNumber(
  page: Page,
  text: string,
  take: boolean,
  keys: (text: string, after: (sofar: string) => Partial<Standing>) => Promise<void>,
  stands: (news: Partial<Standing>) => void,
  end: number,
): Promise<void> {
  await keys(text, (draft) => ({ draft }));
  if (!take || Date.now() >= end) return;
  await page.keyboard.press('Enter');
  stands({ millimetres: Number(text), draft: undefined });
}

async function openName(page: Page): Promise<void> {
  await page.locator('.design-menu summary').click();
  await page.locator('#design-name').focus();
}

/** A diameter in millimetres whose first digit is another than before: no two states of the page are then alike. */
function numberAfter({ draft, millimetres }: Standing, random: Random): string {
  const before = (draft ?? String(millimetres)).charAt(0);
  const digits = ['2', '3', '4', '5', '6', '7', '8'].filter((digit) => digit !== before);
  const digit = digits[Math.floor(random.between(0, digits.length))]!;
  return `${digit}.${Math.floor(random.between(1000, 9999))}`;
}

function letters(random: Random): string {
  const letter = () => String.fromCharCode(97 + Math.floor(random.between(0, 26)));
  return Array.from({ length: 8 }, letter).join('');
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
  const now = await standing(page);
  const kept = typed.findLastIndex(
    ({ millimetres, draft, name }) =>
      Math.abs(millimetres - now.millimetres) < 1e-9 && draft === now.draft && name === now.name,
  );
  const missing = typed[kept + 1];
  return {
    lost: missing ? killed - missing.at : 0,
    typed: typed.length - 1,
    draft: now.draft !== undefined,
    wrong: kept < 0,
  };
}

/** What the kills cost together, in words, and how many cost more than they may. */
export function sumUp(kills: readonly Kill[]): { readonly words: string; readonly bad: number } {
  const lost = kills.map((kill) => kill.lost).sort((a, b) => a - b);
  const bad = kills.filter((kill) => kill.wrong || kill.lost > 1000).length;
  const drafts = kills.filter(({ draft }) => draft).length;
  const [median, p95] = [0.5, 0.95].map((part) => lost[Math.ceil(part * lost.length) - 1]);
  return {
    words: `${kills.length} kills: lost median ${median} ms, p95 ${p95} ms, at most ${lost.at(-1)} ms; ${drafts} came back with something not taken yet; ${bad} bad`,
    bad,
  };
}

/** Puts a value into what the browser keeps of the one design. */
export async function changeRecord(page: Page, place: readonly string[], value: unknown): Promise<void> {
  await page.evaluate(
    async ([path, next]) => {
      const answer = <T>(request: IDBRequest<T>) =>
        new Promise<T>((resolve) => {
          request.onsuccess = () => resolve(request.result);
        });
      const database = await answer(indexedDB.open('stepwell'));
      const store = database.transaction('designs', 'readwrite').objectStore('designs');
      const [record] = await answer(store.getAll());
      const holder = path.slice(0, -1).reduce((part, name) => part[name], record);
      holder[path.at(-1)!] = next;
      await answer(store.put(record));
      database.close();
    },
    [place, value] as const,
  );
}
