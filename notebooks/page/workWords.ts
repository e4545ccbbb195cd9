import type { Work } from './heavy/work.ts';
import { workOutWords } from './heavy/work.ts';

/** What a block says of the work that it rests on, and what its button does. */
export interface WorkWords {
  readonly text: string;
  /** Part done, 0…1, of what is being worked out. */
  readonly part: number | undefined;
  readonly button: string;
  /** The button in full, for those who hear it without the block. */
  readonly label: string;
  /** Work that the button stops, or has done after all. */
  readonly acts: { readonly on: readonly string[]; readonly what: 'stop' | 'workOut' };
}

/** Words for work of one block, some at least; what runs comes before what waits, and that before what was stopped. */
export function workWords(works: readonly Work[]): WorkWords {
  const open = works.filter(({ state }) => state !== 'stopped');
  if (open.length === 0) {
    const acts = { on: works.map(({ id }) => id), what: 'workOut' as const };
    const label = `${workOutWords}: ${namesOf(works)}`;
    return { text: 'Stopped before it was worked out', part: undefined, button: workOutWords, label, acts };
  }
  const working = open.find(({ state }) => state === 'working');
  const part = working?.part;
  // Down to a whole per cent: 100 % would be done.
  const share = part === undefined ? '' : `: ${Math.floor(100 * Math.min(part, 0.99))}\u202f%`;
  const text = working ? `Being worked out${share}` : 'Waiting to be worked out';
  const acts = { on: open.map(({ id }) => id), what: 'stop' as const };
  return { text, part, button: 'Stop', label: `Stop: ${namesOf(open)}`, acts };
}

/** What is said aloud once where work becomes long, is stopped, or ends; empty where nothing of that happened. */
export function workNews(before: readonly Work[], now: readonly Work[], under: readonly Work[]): string {
  const had = (works: readonly Work[], { id, state }: Work) =>
    works.some((other) => other.id === id && (other.state === 'stopped') === (state === 'stopped'));
  const news = now.filter((work) => !had(before, work));
  const begun = news.filter(({ state }) => state !== 'stopped');
  const stopped = news.filter(({ state }) => state === 'stopped');
  const done = before.filter(
    ({ id, state }) => state !== 'stopped' && !under.some((other) => other.id === id),
  );
  const said = (words: string, works: readonly Work[]) =>
    works.length === 0 ? [] : [`${words}: ${namesOf(works)}.`];
  return [...said('Being worked out', begun), ...said('Stopped', stopped), ...said('Worked out', done)].join(
    ' ',
  );
}

const namesOf = (works: readonly Work[]) => works.map(({ name }) => name).join(', ');
