import MiniSearch from 'minisearch';
import { cautionsAsked } from './cautionEntries.ts';
import type { EntryKind, SearchEntry } from './searchEntry.ts';
import { kindOrder, nearnessTo } from './searchRank.ts';
import { parted, partedAndJoined, partedQuestion, plainTerm } from './searchTerms.ts';

/** Results of one kind, the nearest first. */
export interface FoundGroup {
  readonly kind: EntryKind;
  readonly title: string;
  readonly entries: readonly SearchEntry[];
  /** As many more were found. */
  readonly more: number;
}

/** What each kind is called above its results. */
const kindTitles: Readonly<Record<EntryKind, string>> = {
  caution: 'Cautions',
  document: 'Pages',
  path: 'Ways through the pages',
  word: 'Words and symbols',
  lesson: 'Lessons',
  lecture: 'Lectures',
  part: 'Parts of pages',
  option: 'Choices of an input',
  number: 'Numbers and inputs',
};

/** As many results of a kind are shown. */
const mostOfKind = 6;
/** Results that come less near than this part of the nearest one are left out. */
const leastNear = 0.06;

/** Finds entries by what is typed: any order, the beginnings of words, one or two letters wrong. */
export function createSearch(entries: readonly SearchEntry[]): (typed: string) => readonly FoundGroup[] {
  const byKey = new Map(entries.map((entry) => [entry.key, entry]));
  const index = new MiniSearch<SearchEntry>({
    idField: 'key',
    fields: ['name', 'also', 'about'],
    tokenize: partedAndJoined,
    processTerm: plainTerm,
    searchOptions: {
      tokenize: partedQuestion,
      boost: { name: 6, also: 3 },
      prefix: true,
      fuzzy: (term) => (term.length < 4 ? false : 0.25),
      boostDocument: (key) => kindBoost[byKey.get(key as string)!.kind],
    },
  });
  index.addAll(entries);
  return (typed) => {
    const all = index.search(typed, { combineWith: 'AND' });
    const found = all.length > 0 ? all : index.search(typed, { combineWith: 'OR' });
    const least = (found[0]?.score ?? 0) * leastNear;
    const near = ranked(
      typed,
      found.filter(({ score }) => score >= least).map(({ id }) => byKey.get(id as string)!),
    );
    // Who asks for goggles is told of what they are for before anything else.
    const asked = cautionsAsked(parted(typed).map(plainTerm).join(' ')).map((key) => byKey.get(key)!);
    if (asked.length === 0) return grouped(near);
    const others = near.filter((entry) => !asked.includes(entry));
    return grouped([...asked, ...others]);
  };
}

/** What is called as was typed before what only holds it, each kind in its order; the rest as near as it came. */
function ranked(typed: string, found: readonly SearchEntry[]): readonly SearchEntry[] {
  const nearness = nearnessTo(typed);
  const places = found.map((entry, place) => ({ entry, near: nearness(entry), place }));
  const kindOf = ({ entry, near }: (typeof places)[number]) =>
    near === 2 ? 0 : kindOrder.indexOf(entry.kind);
  return places
    .sort((a, b) => a.near - b.near || kindOf(a) - kindOf(b) || a.place - b.place)
    .map(({ entry }) => entry);
}

/** A page counts before a part of it, a word before one of the many numbers that share it. */
const kindBoost: Readonly<Record<EntryKind, number>> = {
  caution: 8,
  document: 3,
  path: 3,
  word: 2.5,
  lesson: 2,
  lecture: 2,
  part: 1,
  option: 1.2,
  number: 1.2,
};

/** Groups in the order of their nearest result. */
function grouped(found: readonly SearchEntry[]): readonly FoundGroup[] {
  const kinds = [...new Set(found.map(({ kind }) => kind))];
  return kinds.map((kind) => {
    const entries = found.filter((entry) => entry.kind === kind);
    return {
      kind,
      title: kindTitles[kind],
      entries: entries.slice(0, mostOfKind),
      more: Math.max(0, entries.length - mostOfKind),
    };
  });
}
