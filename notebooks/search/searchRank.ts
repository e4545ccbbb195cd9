import type { EntryKind, SearchEntry } from './searchEntry.ts';
import { parted, plainTerm, plainText } from './searchTerms.ts';

/** Where several are called what was typed: pages first, numbers after all that explains them. */
export const kindOrder: readonly EntryKind[] = [
  'document',
  'path',
  'word',
  'lesson',
  'lecture',
  'caution',
  'part',
  'option',
  'number',
];

/** How near a name comes to what was typed: it is that; all of its words begin words of it; neither. */
export type Nearness = 0 | 1 | 2;

/** Judges entries by what was typed. */
export function nearnessTo(typed: string): (entry: SearchEntry) => Nearness {
  const whole = plainText(typed);
  const asked = parted(typed).map(plainTerm);
  return ({ name, called = [] }) => {
    const names = [name, ...called];
    if (names.some((one) => plainText(one) === whole)) return 0;
    const words = parted(name).map(plainTerm);
    return asked.every((word) => words.some((one) => one.startsWith(word))) ? 1 : 2;
  };
}
