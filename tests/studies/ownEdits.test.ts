import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { initialState } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { idOfName, ownLinesOf, putLine, takeOutLine, usesOf } from '../../lib/studies/ownEdits.ts';
import { isOwnId } from '../../lib/studies/ownLines.ts';
import { line } from './ownOnes.ts';

const empty = initialState(designGraph);
const put = putLine.bind(undefined, designGraph);

describe('writing own quantities', () => {
  it('a line stands behind the others, or in place of one', () => {
    const one = put(empty, line('a', '1'));
    const two = put(one, line('b', 'own.a + 1'));
    expect(ownLinesOf(put(two, line('a', '7'), 0)).map(({ formula }) => formula)).toEqual(['7', 'own.a + 1']);
    expect(ownLinesOf(takeOutLine(two, 0)).map(({ id }) => id)).toEqual(['own.b']);
    expect(ownLinesOf(empty)).toEqual([]);
  });

  it('what is wrong with the line itself is refused, what becomes of others is not', () => {
    const two = put(put(empty, line('a', '1')), line('b', 'own.a + 1'));
    expect(() => put(two, line('a', '3 J'))).toThrow(/own\.a.*taken/);
    expect(() => put(two, line('c', 'no.such'))).toThrow(/no quantity/);
    expect(() => put(two, line('a', 'own.b'), 0)).toThrow(/own\.a → own\.b → own\.a|own\.b → own\.a/);
    expect(() => put(two, { ...line('c', '1'), name: ' ' })).toThrow(/name/);
    expect(ownLinesOf(put(two, line('a', '3 J'), 0))[0]!.formula).toBe('3 J');
  });

  it('of an empty line the name is asked for first, then the formula, then the id', () => {
    expect(() => put(empty, { id: '', name: '', formula: '' })).toThrow(/no name yet/);
    expect(() => put(empty, { id: '', name: 'depth', formula: ' ' })).toThrow(/‘depth’ has no formula yet/);
    expect(() => put(empty, { id: '', name: 'depth', formula: '1' })).toThrow(/id of an own quantity/);
  });

  it('all else of the design stays', () => {
    const studies = { ...noStudies, texts: { why: 'so' } };
    expect(put({ ...empty, studies }, line('a', '1')).studies!.texts).toEqual({ why: 'so' });
  });
});

describe('an id made of a name', () => {
  const none = new Set<string>();

  it('keeps the letters in one word', () => {
    expect(idOfName('depth to width', none)).toBe('own.depthToWidth');
    expect(idOfName('Größe (µm)', none)).toBe('own.groEM');
    expect(idOfName('2nd spot', none)).toBe('own.ndSpot');
    expect(idOfName('深さ', none)).toBe('own.number');
  });

  it('is free, and always one that a line may have', () => {
    const taken = new Set(['own.depth', 'own.depth2']);
    expect(idOfName('Depth', taken)).toBe('own.depth3');
    for (const name of ['', '---', '7', 'x'.repeat(200), 'A B C', 'Ünder', '\u{1f600} spot', '__proto__'])
      expect(isOwnId(idOfName(name, none)), name).toBe(true);
  });
});

describe('who uses an own quantity', () => {
  const studies = {
    ...noStudies,
    ownLines: [line('a', '1'), line('b', '2 * own.a'), line('c', 'own.ab +'), line('d', 'own.b')],
    requirements: [{ id: 'own.b', unit: '1', atLeast: 1, reason: '' }],
    ownDocuments: [
      { id: '1', title: 'Talk', blocks: [{ kind: 'text' as const, text: 'it is {own.a} wide' }] },
      { id: '2', title: 'Table', blocks: [{ kind: 'values' as const, ids: ['own.a', 'own.d'] }] },
      { id: '3', title: 'Sum', blocks: [{ kind: 'equation' as const, id: 'own.d' }] },
      { id: '4', title: 'Other', blocks: [{ kind: 'block' as const, document: 'own.a', block: 'own.a' }] },
    ],
    lectures: [
      {
        id: 'lecture1',
        title: 'Hour',
        steps: [
          { id: 'step1', title: 'own.d', pieces: [{ kind: 'values' as const, ids: ['own.a'] }] },
          { id: 'step2', title: 'B', pieces: [], notes: 'Say {own.b}.' },
          { id: 'step3', title: 'C', pieces: [], ask: { question: 'Is it {own.c}?', options: [], from: 0 } },
        ],
      },
    ],
  };

  it('is told of lines, pages, lectures and requirements', () => {
    expect(usesOf('own.a', studies)).toEqual([
      '‘b of mine’',
      'the page ‘Talk’',
      'the page ‘Table’',
      'the lecture ‘Hour’',
    ]);
    expect(usesOf('own.b', studies)).toEqual(['‘d of mine’', 'the lecture ‘Hour’', 'a requirement']);
    expect(usesOf('own.d', studies)).toEqual(['the page ‘Table’', 'the page ‘Sum’']);
    expect(usesOf('own.c', studies)).toEqual(['the lecture ‘Hour’']);
    expect(usesOf('own.e', studies)).toEqual([]);
  });
});
