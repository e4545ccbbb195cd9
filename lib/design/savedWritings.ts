import * as v from 'valibot';
import type { OwnBlock, OwnDocument, OwnLine, Studies } from '../graph/studies.ts';
import { Problem } from '../problem.ts';
import { entriesOf } from './savedFile.ts';

/** As many pages, pieces of a page, and letters of one text as a design keeps. */
export const mostOwnDocuments = 20;
export const mostOwnBlocks = 100;
export const longestText = 20_000;

const text = v.pipe(v.string(), v.maxLength(longestText));
const finite = v.pipe(v.number(), v.finite());
const ends = v.tuple([finite, finite]);
const captioned = { title: v.optional(text), caption: v.optional(text) };
const ids = v.pipe(v.array(v.string()), v.maxLength(mostOwnBlocks));

const axisSchema = v.object({
  id: v.string(),
  unit: v.string(),
  from: finite,
  to: finite,
  count: v.pipe(v.number(), v.integer(), v.minValue(2), v.maxValue(1000)),
  by: v.picklist(['steps', 'factors']),
});

/** A piece of an own page or of a step. */
export const blockSchema = v.variant('kind', [
  v.object({ kind: v.literal('text'), text }),
  v.object({
    kind: v.literal('block'),
    document: v.string(),
    block: v.string(),
    ...captioned,
    x: v.optional(ends),
    y: v.optional(ends),
  }),
  v.object({ kind: v.picklist(['values', 'controls']), ids, ...captioned }),
  v.object({ kind: v.literal('equation'), id: v.string(), ...captioned }),
  v.object({ kind: v.literal('chart'), over: axisSchema, ids, ...captioned }),
]);

const documentSchema = v.object({ id: v.string(), title: text, blocks: v.array(blockSchema) });

const lineSchema = v.object({
  id: v.string(),
  name: text,
  formula: text,
  display: v.optional(v.string()),
  about: v.optional(text),
});

/** What a person writes with a design, as it is saved: formula lines, pages and texts of the rationale. */
export const writingsSchema = {
  ownLines: v.optional(v.array(lineSchema), []),
  ownDocuments: v.optional(v.array(documentSchema), []),
  texts: v.optional(entriesOf(text), {}),
};

type Writings = Pick<Studies, 'ownLines' | 'ownDocuments' | 'texts'>;

/** The same as in memory; too many of anything, or one name twice, is a Problem. */
export function readWritings({ ownLines, ownDocuments, texts }: SavedWritings): Writings {
  fits('own quantities', ownLines.length, 200);
  fits('own pages', ownDocuments.length, mostOwnDocuments);
  for (const { title, blocks } of ownDocuments) fits(`pieces on ‘${title}’`, blocks.length, mostOwnBlocks);
  differ('own quantities', ownLines);
  differ('own pages', ownDocuments);
  return {
    ownLines: ownLines.map(defined) as OwnLine[],
    ownDocuments: ownDocuments.map(({ id, title, blocks }) => ({
      id,
      title,
      blocks: blocks.map(defined) as OwnBlock[],
    })) satisfies OwnDocument[],
    texts,
  };
}

interface SavedWritings {
  readonly ownLines: readonly v.InferOutput<typeof lineSchema>[];
  readonly ownDocuments: readonly v.InferOutput<typeof documentSchema>[];
  readonly texts: Readonly<Record<string, string>>;
}

/** Without fields that are there but hold nothing. */
export function defined(one: object): object {
  return Object.fromEntries(Object.entries(one).filter(([, value]) => value !== undefined));
}

/** More of what the words say than are kept is a Problem. */
export function fits(words: string, count: number, most: number): void {
  if (count <= most) return;
  throw new Problem('impossible', `${count} ${words} are too many; up to ${most} are kept with a design.`, {
    value: String(count),
    allowed: `up to ${most}`,
  });
}

/** One id twice is a Problem. */
export function differ(words: string, ones: readonly { readonly id: string }[]): void {
  const twice = ones.find(({ id }, i) => ones.findIndex((other) => other.id === id) < i);
  if (!twice) return;
  throw new Problem('unreadable', `Two ${words} have the id ‘${twice.id.slice(0, 40)}’; give one another.`);
}
