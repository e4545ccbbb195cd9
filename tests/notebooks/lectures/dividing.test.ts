import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { mostPieces, mostSteps } from '../../../lib/design/savedLectures.ts';
import { initialState } from '../../../lib/graph/state.ts';
import type { OwnBlock, OwnDocument } from '../../../lib/graph/studies.ts';
import { addLecture } from '../../../lib/studies/lectures.ts';
import { lending } from '../../../notebooks/blockChoices.ts';
import { conditionHolds } from '../../../notebooks/condition.ts';
import { documents } from '../../../notebooks/contents.ts';
import {
  asOneStep,
  dividedIntoSteps,
  eachAStep,
  partsOfDocument,
  partsOfPage,
} from '../../../notebooks/lectures/dividing.ts';
import { ownBlockToBlock } from '../../../notebooks/ownBlocks.ts';

const { initial } = designGraph;
const text = (words: string): OwnBlock => ({ kind: 'text', text: words });
const block = (id: string): OwnBlock => ({ kind: 'block', document: 'matching', block: id });
const pageOf = (blocks: readonly OwnBlock[]) =>
  partsOfPage(designGraph, documents, { id: 'page1', title: 'Talk', blocks } satisfies OwnDocument);
const shape = (blocks: readonly OwnBlock[]) =>
  dividedIntoSteps('Talk', pageOf(blocks)).map(({ title, pieces }) => [
    title,
    pieces.map((piece) => (piece.kind === 'block' ? piece.block : piece.kind)).join(' '),
  ]);

describe('a page of the program in steps', () => {
  it.each(lending(documents).map((one) => [one.id, one] as const))('%s', (_id, document) => {
    const steps = dividedIntoSteps(document.title, partsOfDocument(document, initial));
    const pieces = steps.flatMap((step) => step.pieces);
    // Each block that this design shows, once, and nothing else.
    const wanted = document.blocks.filter(({ when }) => !when || conditionHolds(when, initial));
    expect(pieces.map((piece) => (piece.kind === 'block' ? piece.block : '')).sort()).toEqual(
      wanted.map(({ id }) => id).sort(),
    );
    for (const piece of pieces)
      expect(ownBlockToBlock(designGraph, documents, piece, 'x').kind, JSON.stringify(piece)).toBe('block');
    for (const step of steps) {
      expect(step.title.trim()).not.toBe('');
      expect(step.pieces.length).toBeLessThanOrEqual(mostPieces);
      const charts = step.pieces.filter((piece) =>
        document.blocks.some(
          ({ id, kind }) => piece.kind === 'block' && id === piece.block && kind === 'figure',
        ),
      );
      expect(charts.length, step.title).toBeLessThanOrEqual(1);
    }
    expect(steps.length).toBeLessThanOrEqual(mostSteps);
    expect(addLecture(initialState(designGraph), { title: 'A', steps }).lecture.steps).toHaveLength(
      steps.length,
    );
  });

  it('does not lend the pages that hold others', () => {
    const ids = lending(documents).map(({ id }) => id);
    expect(ids).toContain('what-if');
    for (const id of ['own-pages', 'lectures', 'lessons']) expect(ids).not.toContain(id);
  });
});

describe('an own page in steps', () => {
  it('a heading begins one and gives it its title, which the text does not repeat', () => {
    const [first, second] = dividedIntoSteps(
      'Talk',
      pageOf([text('Hello.'), text('## Why *half*\n\nIt turns the sign.'), block('profile')]),
    );
    expect(first).toEqual({ title: 'Talk', pieces: [text('Hello.')] });
    expect(second).toEqual({ title: 'Why *half*', pieces: [text('It turns the sign.'), block('profile')] });
  });

  it('a second chart wants a screen of its own, and cautions stand behind the rest', () => {
    expect(shape([text('# A'), block('x-rays'), block('profile'), block('amplitudes'), text('so')])).toEqual([
      ['A', 'profile'],
      ['Chart: Two amplitudes on the axis, from ‘Matching beam and plate’', 'amplitudes text'],
      ['Cautions', 'x-rays'],
    ]);
  });

  it('numbers and charts of one’s own fill a screen, inputs and formulas do not', () => {
    const over = { id: 'lens.focalLength', unit: 'm', from: 0.1, to: 0.2, count: 5, by: 'steps' } as const;
    expect(
      shape([
        { kind: 'values', ids: ['spot.width'], title: 'Numbers' },
        { kind: 'controls', ids: ['lens.focalLength'] },
        { kind: 'equation', id: 'spot.width' },
        { kind: 'chart', ids: ['spot.width'], over, title: 'Lenses' },
      ]),
    ).toEqual([
      ['Talk', 'values controls equation'],
      ['Lenses', 'chart'],
    ]);
  });

  it('nothing gives nothing', () => {
    expect(dividedIntoSteps('Talk', [])).toEqual([]);
    expect(asOneStep([])).toEqual([]);
  });
});

describe('chosen parts', () => {
  const parts = pageOf([text('# Why\nSo.'), block('profile'), text('x'.repeat(300))]);

  it('become a step each, or one together', () => {
    expect(eachAStep(parts).map(({ pieces }) => pieces)).toEqual([
      [text('So.')],
      [block('profile')],
      [text('x'.repeat(300))],
    ]);
    expect(asOneStep(parts)).toEqual([
      { title: 'Why', pieces: [text('So.'), block('profile'), text('x'.repeat(300))] },
    ]);
  });

  it('have titles that a step may have', () => {
    for (const { title } of eachAStep(parts)) expect(title.length).toBeLessThanOrEqual(120);
  });
});
