import { beamWords } from './beamWords.ts';
import { depthWords } from './depthWords.ts';
import { fluenceWords } from './fluenceWords.ts';
import { focusWords } from './focusWords.ts';
import { plateWords } from './plateWords.ts';
import { pulseWords } from './pulseWords.ts';
import { scanWords } from './scanWords.ts';
import { spotWords } from './spotWords.ts';
import { surfaceWords } from './surfaceWords.ts';
import type { Word } from './word.ts';
import { workWords } from './workWords.ts';

/** What a text is sorted by: small letters and digits without accents, all else a space. */
const plain = (text: string) =>
  text
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^a-z0-9]/g, ' ');

/** All words, in the order of the alphabet; those that begin with a digit come first. */
export const words: readonly Word[] = [
  ...beamWords,
  ...pulseWords,
  ...plateWords,
  ...focusWords,
  ...spotWords,
  ...fluenceWords,
  ...surfaceWords,
  ...scanWords,
  ...depthWords,
  ...workWords,
].sort((one, other) => (plain(one.word) < plain(other.word) ? -1 : 1));

export const wordById: ReadonlyMap<string, Word> = new Map(words.map((word) => [word.id, word]));

/** Words under their first letter; those that begin with a digit under ‘0–9’. */
export function wordsByLetter(list: readonly Word[]): ReadonlyMap<string, readonly Word[]> {
  const groups = new Map<string, Word[]>();
  for (const word of list) {
    const [first = ''] = word.word.toUpperCase();
    const letter = /[A-Z]/.test(first) ? first : '0–9';
    groups.set(letter, [...(groups.get(letter) ?? []), word]);
  }
  return groups;
}

/** True where a word explains a quantity, by name or among all that begin alike. */
export function explains({ quantities = [], covers = [] }: Word, id: string): boolean {
  return (
    quantities.includes(id) ||
    covers.some((cover) => (cover.endsWith('*') ? id.startsWith(cover.slice(0, -1)) : cover === id))
  );
}
