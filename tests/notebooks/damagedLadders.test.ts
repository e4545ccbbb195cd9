import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { readLadderFile } from '../../lib/design/spotFile.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import { Problem } from '../../lib/problem.ts';
import { inputForFile, readMeasuredFile } from '../../notebooks/measuredFiles.ts';

const encode = (text: string) => new TextEncoder().encode(text);
const given = applyPatch(designGraph, initialState(designGraph), {
  'ladder.table': readLadderFile('z (mm);d (µm)\n0;20\n', 'before.csv'),
});

describe('a damaged table of a ladder', () => {
  it.each([
    ['nothing', '', /: The table is empty/],
    ['a spreadsheet as it is saved', 'PK\u0003\u0004\0\0\0', /is no text, where a table of readings of z/],
    ['no z', 'energy (µJ);d (µm)\n10;20\n', /no column for z.*as in "z \(mm\); dx \(µm\); dy \(µm\)"/],
    ['z without a unit', 'z;d (µm)\n0;20\n', /column z names no unit; z needs that of a length/],
    ['no size', 'z (mm);plate\n0;1\n', /no column for the size of the marks/],
    [
      'another word for the plate',
      'z (mm);d (µm);plate\n0;20;perhaps\n',
      /column plate holds "perhaps": 1 with the plate or 0 without it/,
    ],
    ['the plate left empty', 'z (mm);d (µm);plate\n0;20;\n', /column plate is empty: 1 with/],
  ])('%s: refused in a sentence that says what to do, and the table before stays', (_name, content, says) => {
    let problem: unknown;
    try {
      applyPatch(
        designGraph,
        given,
        readMeasuredFile('ladder.table', encode(content), 'l.csv', given.inputs),
      );
    } catch (error) {
      problem = error;
    }
    expect(problem).toBeInstanceOf(Problem);
    const { message } = problem as Problem;
    expect(message).toMatch(says);
    expect(message).toMatch(/^"l\.csv" .*The file given before, "before\.csv", stays\.$/);
    expect(message).not.toMatch(/undefined|NaN|\[object/);
  });

  it('is told from a table of spots by its column for the plate', () => {
    expect(inputForFile(encode('z (mm);d (µm);plate\n0;20;1\n'))).toBe('ladder.table');
    expect(inputForFile(encode('plate;energy (µJ);z (mm);dx (µm);dy (µm)\n1;3;0;20;20\n'))).toBe(
      'ladder.table',
    );
    expect(inputForFile(encode('energy (µJ);z (mm);d (µm)\n3;0;20\n'))).toBe('threshold.spotTable');
  });

  it('words for the plate are read in several tongues', () => {
    const rows = ['1', '0', 'in', 'out', 'yes', 'no', 'mit', 'Ohne'].map((word) => `0;20;${word}`);
    const { rows: read } = readLadderFile(['z (mm);d (µm);plate', ...rows].join('\n'), 'l.csv');
    expect(read.map(({ plate }) => plate)).toEqual([true, false, true, false, true, false, true, false]);
  });
});
