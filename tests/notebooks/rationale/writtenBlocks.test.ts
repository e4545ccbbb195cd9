import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { beamDiameter, beamImage } from '../../../lib/design/laser.ts';
import { stop } from '../../../lib/design/plate.ts';
import { width } from '../../../lib/design/spot.ts';
import type { Outcome } from '../../../lib/graph/outcome.ts';
import { type Block, choices, figure } from '../../../notebooks/document.ts';
import { uniqueFigures } from '../../../notebooks/paper/readPaper.ts';
import { lackingIn, writtenBlock } from '../../../notebooks/paper/writtenBlock.ts';
import { lackingInProse, writtenProse } from '../../../notebooks/paper/writtenProse.ts';
import type { Told } from '../../../notebooks/paper/writtenValue.ts';
import { leads, math, prose, says, sets } from '../../../notebooks/prose.ts';
import { lineOf } from './workedPapers.ts';

const problem = { kind: 'absent', message: 'There is no spot.', parts: {}, at: 'spot.width' } as const;
const told = (outcome: Outcome = { value: 20e-6 }): Told => ({
  inputs: designGraph.initial,
  outcomeOf: ({ id }) => (id === 'spot.width' ? outcome : { value: designGraph.initial[id] }),
});
const linesOf = (text: ReturnType<typeof prose>, from = told()) =>
  writtenProse(text, from).map((block) =>
    block.kind === 'paragraph' ? lineOf(block.runs) : block.kind === 'list' ? block.items.map(lineOf) : block,
  );
const link = sets('half a wave', { 'plate.designPhase': Math.PI });

describe('sentences that offer a click are left out', () => {
  it('alone, at the end, in the middle, and behind a sentence that is code', () => {
    const chosen = says({ width }, () => 'It is wide.');
    expect(linesOf(prose`Try ${link}.`)).toEqual([]);
    expect(linesOf(prose`The spot is wide. Try ${link}.`)).toEqual(['The spot is wide.']);
    expect(linesOf(prose`One. Or ${leads('look there', 'x')}, or ${link}. Two.`)).toEqual(['One. Two.']);
    expect(linesOf(prose`${chosen} You can ${link}. ${chosen}`)).toEqual(['It is wide. It is wide.']);
  });

  it('all others stay, with their values, equations and abbreviations', () => {
    const text = prose`**So** it is (J. M. Liu, Opt. Lett. 7, 196 (1982)): ${width} wide, ${math`D^2`}.`;
    expect(linesOf(text)).toEqual([
      'So it is (J. M. Liu, Opt. Lett. 7, 196 (1982)): 20\u202fµm wide, $D^2$.',
    ]);
    const [block] = writtenProse(text, told());
    expect(block).toMatchObject({
      runs: [
        { text: 'So', strong: true },
        {},
        { text: '20\u202fµm', quantity: 'spot.width' },
        {},
        { tex: 'D^2' },
        { text: '.' },
      ],
    });
  });
});

describe('what has no value', () => {
  const text = prose`
    First.

    The spot is ${width} wide.

    - a
    - ${width}
  `;

  it('takes its paragraph or line along, and the reason is told', () => {
    expect(linesOf(text)).toEqual(['First.', 'The spot is 20\u202fµm wide.', ['a', '20\u202fµm']]);
    expect(linesOf(text, told({ problem }))).toEqual(['First.', ['a']]);
    expect(lackingInProse(text, told())).toEqual([]);
    expect(lackingInProse(text, told({ problem }))).toEqual([problem, problem]);
  });

  it('takes its row of a table along, or stands as a dash beside what is known', () => {
    const table: Block = {
      kind: 'table',
      id: 't',
      table: {
        caption: 'c',
        columns: ['', 'a', 'b'],
        rows: [
          ['w', width, ''],
          ['both', width, beamDiameter],
          ['words', 'x', 'y'],
        ],
      },
    };
    const rows = (from: Told) =>
      writtenBlock(table, from).flatMap((block) =>
        block.kind === 'table' ? block.rows.map((row) => row.map(lineOf)) : [],
      );
    expect(rows(told())).toEqual([
      ['w', '20\u202fµm', ''],
      ['both', '20\u202fµm', '5\u202fmm'],
      ['words', 'x', 'y'],
    ]);
    expect(rows(told({ problem }))).toEqual([
      ['both', '—', '5\u202fmm'],
      ['words', 'x', 'y'],
    ]);
    expect(lackingIn(table, told({ problem }))).toEqual([problem, problem]);
  });

  it('a figure without values is no figure; a block that does not apply is not missed', () => {
    const chart = figure({
      id: 'f',
      from: { width },
      view: () => ({ title: 'T', x: axis, y: axis, series: [], summary: 'S.' }),
    });
    expect(writtenBlock(chart, told())).toMatchObject([
      { kind: 'figure', id: 'f', caption: 'T. S.', shape: 'wide' },
    ]);
    expect(writtenBlock(chart, told({ problem }))).toEqual([]);
    expect(lackingIn(chart, told({ problem }))).toEqual([problem]);
    const elsewhere = { ...chart, when: { choice: stop, is: 'open' } };
    expect(writtenBlock(elsewhere, told())).toEqual([]);
    expect(lackingIn(elsewhere, told({ problem }))).toEqual([]);
    expect(lackingIn({ ...chart, needs: [width] }, told({ problem }))).toEqual([]);
  });
});

const axis = { label: 'x', unit: '1', domain: [0, 1] } as const;

describe('other blocks', () => {
  it('a list to choose from says what is chosen', () => {
    const row = { does: '', more: [], about: '', patch: {} };
    const list = choices({
      id: 'c',
      from: { width },
      view: () => ({
        caption: 'C',
        columns: ['z', 'kind'],
        rows: [
          { ...row, name: '0 mm', cells: ['ring'], chosen: true },
          { ...row, name: '1 mm', cells: ['flat-top'], chosen: false },
        ],
        summary: 'Two.',
      }),
    });
    const [table, summary] = writtenBlock(list, told());
    expect(table).toMatchObject({
      kind: 'table',
      rows: [
        [[{ text: '0 mm (chosen)', strong: true }], [{}]],
        [[{ text: '1 mm' }], [{ text: 'flat-top' }]],
      ],
    });
    expect(summary).toMatchObject({ runs: [{ text: 'Two.' }] });
  });

  it('a heading is left out unless asked for, and begins at the level asked for', () => {
    const text = prose`
      ## Two

      ### Three

      Text.
    `;
    expect(writtenProse(text, told()).map(({ kind }) => kind)).toEqual(['paragraph']);
    expect(writtenProse(text, told(), { headings: 1 })).toMatchObject([
      { level: 1, text: 'Two' },
      { level: 2, text: 'Three' },
      {},
    ]);
    expect(writtenProse(text, told(), { headings: 3 })).toMatchObject([{ level: 3 }, { level: 3 }, {}]);
  });

  it('controls, tools and pictures stay on the page', () => {
    const controls: Block = { kind: 'controls', id: 'c', heading: 'H', inputs: [beamDiameter, beamImage] };
    expect(writtenBlock(controls, told())).toEqual([]);
    expect(lackingIn(controls, told({ problem }))).toEqual([]);
  });

  it('a figure stands once, and two of one id are told apart', () => {
    const spec = { title: 'T', x: axis, y: axis, series: [], summary: 'S.' };
    const one = { kind: 'figure', id: 'f', spec, shape: 'wide', caption: 'A' } as const;
    const blocks = uniqueFigures([
      one,
      one,
      { ...one, caption: 'B' },
      { kind: 'heading', level: 1, text: 'H' },
    ]);
    expect(blocks.map((block) => (block.kind === 'figure' ? block.id : block.kind))).toEqual([
      'f',
      'f-2',
      'heading',
    ]);
  });
});
