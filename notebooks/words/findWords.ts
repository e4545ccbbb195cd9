import MiniSearch from 'minisearch';
import { plainTerm } from '../search/searchTerms.ts';
import type { Word } from './word.ts';

/** Small letters, without accents, and symbols without their backslashes. */
const plain = (text: string) =>
  text
    .toLowerCase()
    .normalize('NFKD')
    .replace(/\p{M}|\\/gu, '')
    .trim();

/**
 * Words whose name, other name or symbol holds what was typed, those called so first; where there is none, those that
 * come near it, misspelt or the other way round, the nearest first. All in their order for an empty text.
 */
export function findWords(words: readonly Word[], typed: string): readonly Word[] {
  const asked = plain(typed);
  if (asked === '') return words;
  // A Greek letter is in some symbols by its name.
  for (const text of new Set([asked, plainTerm(asked)])) {
    const held = words.filter((word) => namesOf(word).some((name) => plain(name).includes(text)));
    if (held.length > 0) return held.toSorted((one, other) => farness(one, text) - farness(other, text));
  }
  const byId = new Map(words.map((word) => [word.id, word]));
  return nearTo(words, typed).map((id) => byId.get(id)!);
}

/** How far a word that holds what was typed is from being called so: whole names first, then beginnings, then the rest. */
function farness(word: Word, asked: string): number {
  const of = (name: string) => {
    const text = plain(name);
    if (text === asked) return 0;
    if (text.startsWith(asked)) return 2;
    return text.includes(` ${asked}`) ? 4 : 6;
  };
  // Another name counts half a step less than the word itself.
  return Math.min(of(word.word), ...namesOf(word).map((name) => of(name) + 1));
}

const namesOf = ({ id, word, also = [], symbol = '' }: Word) => [word, ...also, symbol, id];

function nearTo(words: readonly Word[], typed: string): string[] {
  const index = new MiniSearch<{ id: string; word: string; names: string; meaning: string }>({
    fields: ['word', 'names', 'meaning'],
    searchOptions: { prefix: true, fuzzy: 0.25, boost: { word: 8, names: 4 }, combineWith: 'AND' },
  });
  index.addAll(words.map((word) => ({ ...word, names: namesOf(word).join(' ') })));
  return index.search(typed).map(({ id }) => String(id));
}
