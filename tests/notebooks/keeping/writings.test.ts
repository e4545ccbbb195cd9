import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { writeDesignFile } from '../../../lib/design/designFile.ts';
import { record, startHistory } from '../../../lib/graph/history.ts';
import { type DesignState, initialState, sameDesign } from '../../../lib/graph/state.ts';
import { noStudies, type Studies } from '../../../lib/graph/studies.ts';
import { readLink, writeLink } from '../../../notebooks/keeping/designLink.ts';
import { readDesign } from '../../../notebooks/keeping/readDesign.ts';
import { restoreHistory, saveHistory } from '../../../notebooks/keeping/savedHistory.ts';
import { readSavedFileAgain } from '../../../notebooks/measuredFiles.ts';
import { fixture } from './designText.ts';

const studies: Studies = {
  ...noStudies,
  ownLines: [
    { id: 'own.area', name: 'area', formula: 'spot.width^2', display: 'um^2', about: 'For the table' },
    { id: 'own.half', name: 'half', formula: 'own.area/2' },
  ],
  ownDocuments: [
    {
      id: 'page-1',
      title: 'For the Tuesday talk',
      blocks: [
        { kind: 'text', text: '## Größe\n\nThe spot is {spot.width} wide, $r_0$.' },
        {
          kind: 'block',
          document: 'matching',
          block: 'profile',
          title: 'Profile',
          caption: 'As set',
          x: [-40, 40],
        },
        { kind: 'values', ids: ['spot.width', 'own.area'], caption: 'Two' },
        { kind: 'controls', ids: ['expander.magnification'] },
        { kind: 'equation', id: 'spot.width' },
        {
          kind: 'chart',
          over: { id: 'lens.focalLength', unit: 'm', from: 0.05, to: 0.15, count: 41, by: 'factors' },
          ids: ['spot.width'],
        },
      ],
    },
  ],
  texts: { purpose: 'Even lines on a funnel.', unchecked: '*Heat* in the holder' },
};
const start = initialState(designGraph);
const state: DesignState = { ...start, studies };
const encode = (text: string) => new TextEncoder().encode(text);
const text = writeDesignFile(designGraph, state);

describe('formula lines, own pages and texts', () => {
  it('come back from a file', () => {
    const read = readDesign(encode(text), 'a.json');
    expect(read.studies).toEqual(studies);
    expect(writeDesignFile(designGraph, { ...read, inputs: { ...start.inputs, ...read.inputs } })).toBe(text);
  });

  it('come back from a link and from a kept history', async () => {
    expect((await readLink((await writeLink(state)).text)).studies).toEqual(studies);
    const { saved } = saveHistory(record(startHistory(start), { ...state, revision: 1 }, true));
    const again = restoreHistory(JSON.parse(JSON.stringify(saved)), {
      bytesOf: () => undefined,
      read: readSavedFileAgain,
    });
    expect(again.present.studies).toEqual(studies);
  });

  it('make a design another one, each of them', () => {
    expect(sameDesign(state, { ...state, studies: structuredClone(studies) })).toBe(true);
    for (const key of ['ownLines', 'ownDocuments', 'texts'] as const) {
      expect(sameDesign(state, { ...state, studies: { ...studies, [key]: noStudies[key] } })).toBe(false);
    }
  });

  it('open from the fixture of version 4; version 3 had none', () => {
    expect(readDesign(fixture('design-v4.json'), 'a.json').studies).toMatchObject({
      ownLines: studies.ownLines,
      ownDocuments: studies.ownDocuments,
      texts: studies.texts,
    });
    expect(readDesign(fixture('design-v3.json'), 'a.json').studies).toMatchObject({
      ownLines: [],
      ownDocuments: [],
      texts: {},
    });
  });
});

describe('damaged ones are refused in a sentence', () => {
  const changed = (change: (saved: Record<string, unknown>) => void) => () => {
    const content = JSON.parse(text);
    change(content.studies);
    return readDesign(encode(JSON.stringify(content)), 'a.json');
  };
  const page = (blocks: unknown[]) => [{ id: 'p', title: 'P', blocks }];
  it.each([
    ['a strange piece', { ownDocuments: page([{ kind: 'program', text: 'x' }]) }, /ownDocuments/],
    [
      'a chart without end',
      {
        ownDocuments: page([
          {
            kind: 'chart',
            ids: [],
            over: { id: 'a', unit: 'm', from: 0, to: 'far', count: 41, by: 'steps' },
          },
        ]),
      },
      /ownDocuments.*over\.to/,
    ],
    [
      'too many pieces',
      { ownDocuments: page(Array(101).fill({ kind: 'text', text: '' })) },
      /101 pieces on ‘P’ are too many; up to 100/,
    ],
    ['one id twice', { ownDocuments: [...page([]), ...page([])] }, /Two own pages have the id ‘p’/],
    [
      'too many lines',
      { ownLines: Array.from({ length: 201 }, (_, i) => ({ id: `own.a${i}`, name: 'a', formula: '1' })) },
      /201 own quantities are too many; up to 200/,
    ],
    ['a number for a text', { texts: { purpose: 3 } }, /texts\.purpose/],
    ['a book for a text', { texts: { purpose: 'x'.repeat(20_001) } }, /texts\.purpose/],
  ])('%s', (_words, wrong, says) => {
    expect(changed((saved) => Object.assign(saved, wrong))).toThrow(says);
  });
});
