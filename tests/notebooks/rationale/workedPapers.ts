import { readFileSync } from 'node:fs';
import { designGraph } from '../../../lib/design/design.ts';
import type { DesignState } from '../../../lib/graph/state.ts';
import { noStudies, type Studies } from '../../../lib/graph/studies.ts';
import { readDesign } from '../../../notebooks/keeping/readDesign.ts';
import { readFileAsPatch } from '../../../notebooks/measuredFiles.ts';
import type { Paper, PaperBlock, Run } from '../../../notebooks/paper/paper.ts';
import type { PaperPictures } from '../../../notebooks/paper/pictures.ts';
import { composeRationale } from '../../../notebooks/rationale/composeRationale.ts';
import type { ToldDesign } from '../../../notebooks/rationale/told.ts';
import { workOut } from '../../../notebooks/rationale/workOut.ts';
import { here } from '../runCommand.ts';

export type Design = Omit<DesignState, 'revision'>;

export const made = { name: 'Test', date: '2026-03-01', command: 'stepwell rationale test.json' };

/** An invented design of the project, with files and inputs besides. */
export function demoDesign(name: string, files: Readonly<Record<string, string>> = {}, patch = {}): Design {
  const { inputs, name: called, about } = readDesign(readFileSync(here(`data/designs/${name}.json`)), name);
  const read = Object.entries(files).map(([id, file]) =>
    readFileAsPatch(id, readFileSync(here(`data/measured/${file}`)), file),
  );
  return { name: called, about, inputs: Object.assign({ ...designGraph.initial }, inputs, ...read, patch) };
}

export function withStudies(design: Design, studies: Partial<Studies>): Design {
  return { ...design, studies: { ...noStudies, ...studies } };
}

/** The rationale of a design, worked out in this process. */
export function rationaleOf(design: Design): { readonly told: ToldDesign; readonly paper: Paper } {
  const told = workOut(designGraph, design);
  return { told, paper: composeRationale(told, made) };
}

/** Outcomes of nothing but inputs: for parts that need no more. */
export const lineOf = (runs: readonly Run[]): string =>
  runs.map((run) => ('text' in run ? run.text : 'tex' in run ? `$${run.tex}$` : `[${run.cite}]`)).join('');

/** All words of blocks, a line each. */
export function wordsOf(blocks: readonly PaperBlock[]): string {
  return blocks.map(blockWords).join('\n');
}

function blockWords(block: PaperBlock): string {
  switch (block.kind) {
    case 'heading':
      return block.text;
    case 'paragraph':
      return lineOf(block.runs);
    case 'list':
      return block.items.map(lineOf).join('\n');
    case 'table':
      return [
        block.caption,
        block.columns.join(' | '),
        ...block.rows.map((row) => row.map(lineOf).join(' | ')),
      ].join('\n');
    case 'figure':
      return `${block.caption}\n${JSON.stringify([block.spec.x, block.spec.y])}`;
    case 'equation':
      return block.tex;
  }
}

/** A picture for every figure without drawing any. */
export function blankPictures(paper: Paper): PaperPictures {
  const png = Uint8Array.from(atob(dot), (letter) => letter.charCodeAt(0));
  const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="1" height="1"/>';
  const figures = paper.blocks.filter((block) => block.kind === 'figure');
  return new Map(figures.map(({ id }) => [id, { svg, dark: svg, png, width: 1, height: 1 }]));
}

const dot =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';
