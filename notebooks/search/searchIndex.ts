import MiniSearch from 'minisearch';
import { cautionsAsked } from './cautionEntries.ts';
import type { EntryKind, SearchEntry } from './searchEntry.ts';

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
  word: 'Words and symbols',
  lesson: 'Lessons',
  lecture: 'Lectures',
  part: 'Parts of pages',
  number: 'Numbers and inputs',
};

/** As many results of a kind are shown. */
const mostOfKind = 6;
/** Results that come less near than this part of the nearest one are left out. */
const leastNear = 0.06;

const greek: Readonly<Record<string, string>> = {
  α: 'alpha',
  β: 'beta',
  δ: 'delta',
  ζ: 'zeta',
  η: 'eta',
  θ: 'theta',
  κ: 'kappa',
  λ: 'lambda',
  μ: 'mu',
  π: 'pi',
  ρ: 'rho',
  σ: 'sigma',
  τ: 'tau',
  φ: 'varphi',
  χ: 'chi',
};

/** A word as it is looked for: small, without accents, raised digits on the line, Greek letters by name. */
export function plainTerm(term: string): string {
  const small = term.toLowerCase().normalize('NFKD').replace(/\p{M}/gu, '');
  return greek[small] ?? small;
}

/** Words of a text: all but letters, digits and Greek signs parts them. */
const parted = (text: string) => text.split(/[^\p{L}\p{N}\p{M}]+/u).filter((word) => word !== '');

/** Finds entries by what is typed: any order, the beginnings of words, one or two letters wrong. */
export function createSearch(entries: readonly SearchEntry[]): (typed: string) => readonly FoundGroup[] {
  const byKey = new Map(entries.map((entry) => [entry.key, entry]));
  const index = new MiniSearch<SearchEntry>({
    idField: 'key',
    fields: ['name', 'also', 'about'],
    tokenize: parted,
    processTerm: plainTerm,
    searchOptions: {
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
    const near = found.filter(({ score }) => score >= least).map(({ id }) => byKey.get(id as string)!);
    // Who asks for goggles is told of what they are for before anything else.
    const asked = cautionsAsked(parted(typed).map(plainTerm).join(' ')).map((key) => byKey.get(key)!);
    if (asked.length === 0) return grouped(near);
    const others = near.filter((entry) => !asked.includes(entry));
    return grouped([...asked, ...others]);
  };
}

/** A page counts before a part of it, a word before one of the many numbers that share it. */
const kindBoost: Readonly<Record<EntryKind, number>> = {
  caution: 8,
  document: 3,
  word: 2.5,
  lesson: 2,
  lecture: 2,
  part: 1,
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
