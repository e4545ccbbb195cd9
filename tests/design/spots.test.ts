import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { leaveOut, reasonOf } from '../../lib/design/leftOut.ts';
import { readSpotFile } from '../../lib/design/spotFile.ts';
import { typedInstead } from '../../lib/design/typedInstead.ts';
import type { ListItem } from '../../lib/graph/quantity.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import type { SpotMark } from '../../lib/process/spotMark.ts';
import { measuredFiles } from '../../notebooks/measuredFiles.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, read } from '../notebooks/designOutcomes.ts';

const text = 'E (µJ);d (µm)\n10;20\n11;wide\n12;22\n13;\n14;24\n';
const table = (content = text) => ({ 'threshold.spotTable': readSpotFile(content, 'spots.csv') });
const out = (...rows: number[]): readonly ListItem[] =>
  rows.reduce<readonly ListItem[]>((items, row) => leaveOut(row, 'row', items), []);
const marksOf = (inputs: Readonly<Record<string, unknown>>) =>
  read(inputs)('threshold.usedMarks') as unknown as readonly SpotMark[];
const problemOf = (inputs: Readonly<Record<string, unknown>>) =>
  outcomesOf(inputs)('threshold.usedMarks') as { problem: { message: string; parts: object } };

describe('the marks that count', () => {
  it('wait for a table', () => {
    expect(problemOf({})).toMatchObject({
      problem: { kind: 'absent', parts: { input: 'threshold.spotTable' } },
    });
  });

  it('wait until every row in error is left out, one after the other', () => {
    const first = problemOf(table()).problem;
    expect(first.message).toMatch(
      /^"spots\.csv": Row 3, column d \(µm\) holds "wide".* Or leave row 3 out here/,
    );
    expect(first.parts).toMatchObject({ input: 'threshold.spotTable', row: 3, column: 'd (µm)' });
    const second = problemOf({ ...table(), 'threshold.leftOut': out(3) }).problem;
    expect(second.message).toMatch(/Row 5, column d \(µm\) is empty/);
    const marks = marksOf({ ...table(), 'threshold.leftOut': out(5, 3) });
    expect(marks.map(({ row }) => row)).toEqual([2, 4, 6]);
  });

  it('are those not left out, good or in error', () => {
    expect(marksOf({ ...table(), 'threshold.leftOut': out(3, 4, 5) }).map(({ row }) => row)).toEqual([2, 6]);
    expect(problemOf({ ...table(), 'threshold.leftOut': out(2, 3, 4, 5, 6) }).problem.message).toMatch(
      /^All rows/,
    );
    const coupon = table('E (µJ);x on coupon (mm);y on coupon (mm);d (µm)\n10;0;0;\n');
    expect(problemOf(coupon).problem.message).toMatch(/^None of the 1 rows .* has a size yet/);
  });

  it('have the plane of the workpiece and the repetition rate where the table says nothing of them', () => {
    const inputs = { 'workpiece.z': 5e-5, 'laser.repetitionRate': 100e3 };
    const [mark] = marksOf({ ...inputs, ...table('P (W);d (µm);N\n1;20;3\n') });
    expect(mark).toMatchObject({ z: 5e-5, pulses: 3 });
    expectClose(mark!.energy, 10e-6, { relative: 1e-14, source: 'E = P/f' });
    const [own] = marksOf({ ...inputs, ...table('E (µJ);d (µm);z (mm)\n1;20;-0.1\n') });
    expect(own).toMatchObject({ z: -1e-4, pulses: 1, row: 2, energy: 1e-6 });
  });
});

describe('the list of rows left out', () => {
  it('holds each row once, by its line, with the reason', () => {
    const items = leaveOut(4, 'mark', leaveOut(2, 'other', leaveOut(4, 'outlier', [])));
    expect(items).toHaveLength(2);
    expect(reasonOf(4, items)).toBe('mark');
    expect(reasonOf(2, items)).toBe('other');
    expect(reasonOf(3, items)).toBeUndefined();
    expect(leaveOut(4, undefined, leaveOut(2, undefined, items))).toEqual([]);
  });

  it('is checked, and empty again with another table', () => {
    const start = applyPatch(designGraph, initialState(designGraph), {
      ...table(),
      'threshold.leftOut': out(3, 5),
    });
    const put = (row: number, reason: string) => () =>
      applyPatch(designGraph, start, { 'threshold.leftOut': leaveOut(row, reason, []) });
    expect(put(0, 'row')).toThrow(/line of a row left out/i);
    expect(put(3, 'mood')).toThrow(/choose one of: outlier/);
    const bytes = new TextEncoder().encode(text);
    const next = applyPatch(designGraph, start, measuredFiles['threshold.spotTable']!.read(bytes, 'b.csv'));
    expect(next.inputs['threshold.leftOut']).toEqual([]);
  });
});

it('a link that leaves the table behind says nothing of its rows', () => {
  const { inputs } = applyPatch(designGraph, initialState(designGraph), {
    ...table(),
    'threshold.leftOut': out(3),
  });
  expect(typedInstead(designGraph, inputs).patch).toMatchObject({
    'threshold.spotTable': null,
    'threshold.leftOut': [],
  });
});
