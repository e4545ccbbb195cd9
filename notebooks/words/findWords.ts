import MiniSearch from 'minisearch';
import type { Word } from './word.ts';

/** Small letters, without accents and without what stands between. */
const plain = (text: string) => text.toLowerCase().normalize('NFKD').replace(/\p{M}/gu, '').trim();

/**
 * Words whose name, other name or symbol holds what was typed, in their order; where there is none, those that come
 * near it, misspelt or the other way round. All of them for an empty text.
 */
export function findWords(words: readonly Word[], typed: string): readonly Word[] {
  const asked = plain(typed);
  if (asked === '') return words;
  const held = words.filter((word) => namesOf(word).some((name) => plain(name).includes(asked)));
  if (held.length > 0) return held;
  const near = new Set(nearTo(words, typed));
  return words.filter(({ id }) => near.has(id));
}

const namesOf = ({ id, word, also = [], symbol = '' }: Word) => [word, ...also, symbol, id];

function nearTo(words: readonly Word[], typed: string): string[] {
  const index = new MiniSearch<{ id: string; names: string; meaning: string }>({
    fields: ['names', 'meaning'],
    searchOptions: { prefix: true, fuzzy: 0.25, boost: { names: 4 }, combineWith: 'AND' },
  });
  index.addAll(words.map((word) => ({ id: word.id, names: namesOf(word).join(' '), meaning: word.meaning })));
  return index.search(typed).map(({ id }) => String(id));
}
