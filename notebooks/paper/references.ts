import { citation, sourceOf } from '../../lib/materials/bibliography.ts';
import type { Paper, PaperBlock, Run } from './paper.ts';

/** One line of the list of references. */
export interface Reference {
  readonly key: string;
  /** As cited: [1]. */
  readonly number: number;
  /** The source in words, without its DOI where `link` has it. */
  readonly text: string;
  readonly doi?: string;
  /** Address that the DOI leads to. */
  readonly link?: string;
}

/** References by key, numbered in their order; what is cited without standing in the list comes last. Throws `absent` for an unknown key. */
export function numberReferences(paper: Paper): ReadonlyMap<string, Reference> {
  const keys = new Set([...paper.references, ...paper.blocks.flatMap(citedIn)]);
  return new Map([...keys].map((key, index) => [key, referenceOf(key, index + 1)]));
}

function referenceOf(key: string, number: number): Reference {
  const doi = sourceOf(key)?.doi;
  const text = citation(key);
  if (doi === undefined) return { key, number, text };
  return {
    key,
    number,
    text: text.replace(`, DOI ${doi}`, ''),
    doi,
    link: `https://doi.org/${encodeURI(doi)}`,
  };
}

function citedIn(block: PaperBlock): string[] {
  return runsIn(block).flatMap((run) => ('cite' in run ? [run.cite] : []));
}

/** All runs of a block. */
export function runsIn(block: PaperBlock): readonly Run[] {
  if (block.kind === 'paragraph') return block.runs;
  if (block.kind === 'list') return block.items.flat();
  return block.kind === 'table' ? block.rows.flat(2) : [];
}
