import data from '../../data/references/bibliography.json' with { type: 'json' };
import { Problem } from '../problem.ts';

/** How far a source is known to whoever quoted it. */
export type Standing = 'read' | 'abstract' | 'memory' | 'computed';

/** One source; papers have authors and container, standards and catalogues a title only. */
export interface Source {
  readonly authors: readonly string[];
  readonly title?: string;
  /** Journal, book or chapter. */
  readonly container?: string;
  readonly volume?: string;
  readonly pages?: string;
  readonly year?: number;
  readonly doi?: string;
  readonly standing: Standing;
}

/** Keys that stand for no publication, in the words that are shown. */
const unpublished: Readonly<Record<string, string>> = {
  'common practice': 'common practice, no source',
  memory: 'from memory, no source at hand',
  computed: 'computed in this project by an independent method',
  definition: 'by definition',
  chosen: 'taken over from what is chosen',
  integration: 'closed form, by integrating the Gaussian',
  scaling: 'worked out in this project from the formulas of what goes in',
  search: 'numerical search in this project',
  fit: 'least-squares fit in this project',
  own: 'the person’s own formula',
};

const standingWords: Readonly<Record<Standing, string>> = {
  read: '',
  abstract: ' (abstract read)',
  memory: ' (memory)',
  computed: ' (computed)',
};

const sources = new Map(Object.entries(data.sources as Readonly<Record<string, Source>>));

/** True for every key of the bibliography and of what is unpublished: 'common practice', 'definition', 'search' … */
export function isKnownSource(key: string): boolean {
  return sources.has(key) || Object.hasOwn(unpublished, key);
}

/** The publication a key stands for; undefined for an unknown key and for what is unpublished. */
export function sourceOf(key: string): Source | undefined {
  return sources.get(key);
}

/** Keys of all publications, in the order of the file. */
export function sourceKeys(): string[] {
  return [...sources.keys()];
}

/**
 * A source as text: "D. Milam, Appl. Opt. 37, 546 (1998) (memory)". Throws `absent` for an unknown key.
 */
export function citation(key: string): string {
  if (Object.hasOwn(unpublished, key)) return unpublished[key]!;
  const source = sources.get(key);
  if (!source) {
    throw new Problem('absent', `The bibliography has no source '${key}'; add it or correct the key.`, {
      value: key,
    });
  }
  return describeSource(source) + standingWords[source.standing];
}

function describeSource({ authors, title, container, volume, pages, year, doi }: Source): string {
  const place = [[container, volume].filter(Boolean).join(' '), pages].filter(Boolean).join(', ');
  const names =
    authors.length > 1 ? `${authors.slice(0, -1).join(', ')} & ${authors.at(-1)}` : authors.join('');
  const text = [names, title, place].filter(Boolean).join(', ') + (year === undefined ? '' : ` (${year})`);
  return doi === undefined ? text : `${text}, DOI ${doi}`;
}
