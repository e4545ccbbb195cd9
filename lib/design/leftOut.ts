import { choice, number } from '../graph/define.ts';
import type { ListItem } from '../graph/quantity.ts';

// What an item of the list of rows left out is made of: no inputs of the design by themselves, and so no room of it.

/** Most lines that a table has, with header and comments. */
const mostLines = 1e6;

export const leftOutRow = number({
  id: 'threshold.leftOutRow',
  name: 'line of a row left out',
  symbol: 'i_\\text{out}',
  unit: '1',
  about:
    'Line of the table of spots, counted from 1 with the header included, that an item of the list of rows left out names.',
  initial: 2,
  range: { min: 1, max: mostLines },
});

export const leftOutReason = choice({
  id: 'threshold.leftOutReason',
  name: 'reason to leave a row out',
  symbol: '\\text{reason}',
  about: 'Why a row of the table of spots does not count, kept with it in the design.',
  initial: 'outlier',
  options: {
    outlier: 'far off the others',
    mark: 'mark spoilt or hard to measure',
    energy: 'energy not certain',
    row: 'row wrong in the table',
    other: 'another reason',
  },
});

/** Lines left out, by the items of the list. */
export function linesOf(items: readonly ListItem[]): ReadonlySet<number> {
  return new Set(items.map((item) => item[leftOutRow.id] as number));
}

/** Why the row in that line is left out; undefined where it is not. */
export function reasonOf(row: number, items: readonly ListItem[]): string | undefined {
  return items.find((item) => item[leftOutRow.id] === row)?.[leftOutReason.id] as string | undefined;
}

/** The list with that row left out for a reason, or taken back where there is none. */
export function leaveOut(
  row: number,
  reason: string | undefined,
  items: readonly ListItem[],
): readonly ListItem[] {
  const others = items.filter((item) => item[leftOutRow.id] !== row);
  if (reason === undefined) return others;
  const item = { [leftOutRow.id]: row, [leftOutReason.id]: reason };
  return [...others, item].sort((a, b) => (a[leftOutRow.id] as number) - (b[leftOutRow.id] as number));
}
