import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { readSectionFile } from '../../lib/design/sectionFile.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import { Problem } from '../../lib/problem.ts';
import { inputForFile, readMeasuredFile } from '../../notebooks/measuredFiles.ts';

const encode = (text: string) => new TextEncoder().encode(text);
const rows = (row: (i: number) => string, count = 24) =>
  Array.from({ length: count }, (_, i) => row(i)).join('\n');
const good = `x (µm);height (nm)\n${rows((i) => `${i};${i}`)}\n`;
const given = applyPatch(designGraph, initialState(designGraph), {
  'groove.sectionFile': readSectionFile(good, 'before.csv'),
});

describe('a damaged cross-section', () => {
  it.each([
    ['nothing', '', /: The table is empty/],
    ['a picture', '\u0089PNG\r\n\0\0', /is no text, where a table of places across a groove and heights/],
    [
      'no header',
      rows((i) => `${i};${i}`),
      /Row 1 holds "0", "0", not the names and units of two columns.*as in "x \(µm\); height \(nm\)"/,
    ],
    [
      'no units',
      `x;height\n${rows((i) => `${i};${i}`)}`,
      /Row 1, column x names no unit\. Write it behind the name/,
    ],
    [
      'a unit of something else',
      `x (µm);height (V)\n${rows((i) => `${i};${i}`)}`,
      /Row 1 gives the unit 'V', which is no unit of length/,
    ],
    ['one column', `x (µm)\n${rows((i) => `${i}`)}`, /not the names and units of two columns/],
    [
      'a word among the heights',
      `x (µm);height (nm)\n${rows((i) => `${i};${i === 4 ? 'rim' : i}`)}`,
      /Row 6, column height \(nm\) holds "rim"/,
    ],
    [
      'a place missing',
      `x (µm);height (nm)\n${rows((i) => `${i === 4 ? '' : i};${i}`)}`,
      /Row 6, column x \(µm\) is empty/,
    ],
    [
      'decimal commas between commas',
      `x (µm),height (nm)\n${rows((i) => `${i},5,${i}`)}`,
      /Row 2 has 3 columns where the header has 2.*With decimal commas/,
    ],
    [
      'a height beyond reach',
      `x (µm);height (km)\n${rows((i) => `${i};${i === 3 ? '1e308' : i}`)}`,
      /Row 5, column height \(km\) holds 1e\+308, which is beyond reach/,
    ],
    [
      'few places',
      `x (µm);height (nm)\n${rows((i) => `${i};${i}`, 12)}`,
      /has 12 rows with a height; a cross-section is read from 20 to 50000/,
    ],
    [
      'nothing measured',
      `x (µm);height (nm)\n${rows((i) => `${i};NaN`)}`,
      /has 0 rows with a height and 24 without one/,
    ],
    [
      'places that do not move',
      `x (µm);height (nm)\n${rows((i) => `7;${i}`)}`,
      /Column x \(µm\) holds only 1 different place\./,
    ],
    ['a caustic', 'z (mm);d (µm)\n1;300\n2;250\n', /is no cross-section but the table of a caustic/],
    [
      'a profile of the spot',
      'x (µm);fluence (J/cm²)\n1;0.3\n2;0.2\n',
      /is no cross-section but a profile of the spot/,
    ],
    ['single spots', 'energy (µJ);d (µm)\n10;20\n', /is no cross-section but one of single spots/],
  ])(
    '%s: refused in a sentence that says what to do, and the section before stays',
    (_name, content, says) => {
      let problem: unknown;
      try {
        applyPatch(
          designGraph,
          given,
          readMeasuredFile('groove.sectionFile', encode(content), 's.csv', given.inputs),
        );
      } catch (error) {
        problem = error;
      }
      expect(problem).toBeInstanceOf(Problem);
      const { message } = problem as Problem;
      expect(message).toMatch(says);
      expect(message).toMatch(/^"s\.csv" .*The file given before, "before\.csv", stays\.$/);
      expect(message).not.toMatch(/undefined|NaN|\[object/);
    },
  );

  it('is known among files of unknown kind by its columns of place and height', () => {
    expect(inputForFile(encode(good))).toBe('groove.sectionFile');
    expect(inputForFile(encode(`Sample;7\nOperator;B\n${good}`))).toBe('groove.sectionFile');
    expect(inputForFile(encode('z (mm);d (µm)\n1;300\n2;250\n'))).toBe('laser.causticTable');
    expect(inputForFile(encode('0;1;2\n3;4;5\n6;7;8\n'))).toBe('laser.beamImage');
  });
});
