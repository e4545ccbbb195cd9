import { describe, expect, it } from 'vitest';
import { makeMeasured } from '../../data/measured/make.ts';
import { designGraph } from '../../lib/design/design.ts';
import { readSpotFile } from '../../lib/design/spotFile.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import { Problem } from '../../lib/problem.ts';
import { inputForFile, readMeasuredFile } from '../../notebooks/measuredFiles.ts';

const encode = (text: string) => new TextEncoder().encode(text);
const wide = (text: string) => Uint8Array.from(Buffer.from(`\uFEFF${text}`, 'utf16le'));
const made = makeMeasured();
const rows = '10;20\n12;24\n';
const zip = Uint8Array.of(0x50, 0x4b, 3, 4, 20, 0, 6, 0, 8, 0, 0, 0);

/** What people give by mistake, and what is said of it. */
const damaged: readonly (readonly [name: string, content: string | Uint8Array, says: RegExp])[] = [
  ['nothing', new Uint8Array(0), /: The table is empty/],
  ['blank lines', ' \r\n\r\n;;;\n', /: The table is empty/],
  ['comments alone', '# energy (µJ); d (µm)\n# 10; 20\n', /: The table is empty/],
  ['a spreadsheet as it is saved', zip, /is no text, where a table of energies/],
  ['a picture', made['lecture-table-spot.png']!, /is no text/],
  ['a PDF', '%PDF-1.4\n1 0 obj\n', /no column for the energy/],
  ['a letter', 'Dear colleague,\nthe spots are in the other file.\n', /no column for the energy/],
  ['a web page', '<html><body><table><tr><td>10</td></tr></table></body></html>', /no column for the energy/],
  ['a heading alone', 'energy (µJ);d (µm)\n', /a header and no row below it/],
  ['no heading', rows, /Row 1 holds "10", "20", no column for the energy/],
  ['no energy', 'z (mm);d (µm)\n0;20\n', /no column for the energy.*as in "energy \(µJ\)/],
  [
    'the attenuator alone',
    'attenuator (%);d (µm)\n50;20\n',
    /the setting "attenuator \(%\)" and no column for the energy.*Add a column of the pulse energy/,
  ],
  ['no size', 'energy (µJ);N\n10;1\n', /no column for the size of the marks/],
  ['one axis of two', 'energy (µJ);dx (µm)\n10;20\n', /no column for the diameter along y/],
  [
    'no unit of energy',
    `energy;d (µm)\n${rows}`,
    /Row 1, column energy names no unit; the energy needs that of an energy \(µJ\)/,
  ],
  ['no unit of size', `energy (µJ);d\n${rows}`, /Row 1, column d names no unit/],
  [
    'a unit that is not known',
    `energy (µJ);d (µn)\n${rows}`,
    /column d \(µn\) gives the unit 'µn'; the diameter needs that of a length/,
  ],
  [
    'a unit of another kind',
    `energy (mW);d (µm)\n${rows}`,
    /column energy \(mW\) gives the unit 'mW'; the energy needs/,
  ],
  ['an area in micrometres', `energy (µJ);area (µm)\n${rows}`, /the area needs that of an area \(µm²\)/],
  [
    'two columns of energy',
    'E (µJ);energy (mJ);d (µm)\n10;0.01;20\n',
    /names two columns for the energy: "E \(µJ\)" and "energy \(mJ\)"\. Keep one/,
  ],
  ['two columns of pulses', 'E (µJ);d (µm);N;pulses\n10;20;1;1\n', /two columns for the pulses/],
  [
    'decimal commas between commas',
    'E (µJ),d (µm)\n10,5,20,1\n12,5,24,2\n',
    /Row 2 has 4 columns where the header has 2.*semicolons or tabs/,
  ],
  [
    'thousands in groups',
    'E (µJ);d (nm)\n1.010,5;20.000\n1.012,5;24.000\n',
    /Row 2, column E \(µJ\) holds "1\.010,5"/,
  ],
  [
    'units in every cell',
    'E (µJ);d (µm)\n10 µJ;20 µm\n12 µJ;24 µm\n',
    /Row 2, column E \(µJ\) holds "10 µJ"/,
  ],
  ['nothing measured', 'E (µJ);d (µm)\n10;\n12;\n', /Row 2, column d \(µm\) is empty/],
  ['energies below zero', 'E (µJ);d (µm)\n-10;20\n-12;24\n', /holds -10, but a pulse energy is above 0/],
  ['sizes below zero', 'E (µJ);d (µm)\n10;-20\n12;-24\n', /holds -20, but a mark is/],
  ['numbers beyond reach', 'E (µJ);d (km)\n10;1e307\n', /which is beyond reach/],
  ['UTF-16 with a wrong unit', wide('E (µJ);d (s)\n10;20\n'), /column d \(s\) gives the unit 's'/],
  ['far too many rows', `E (µJ);d (µm)\n${rows.repeat(3000)}`, /has 6000 rows; up to 5000 are read/],
];

const given = applyPatch(designGraph, initialState(designGraph), {
  'threshold.spotTable': readSpotFile('E (µJ);d (µm)\n10;20\n', 'before.csv'),
  'threshold.leftOut': [],
});
const bytesOf = (content: string | Uint8Array) => (typeof content === 'string' ? encode(content) : content);

describe('a damaged table of spots', () => {
  it('there are many kinds', () => expect(damaged.length).toBeGreaterThan(20));

  it.each(damaged)(
    '%s: refused in a sentence that says what to do, and the table before stays',
    (_name, content, says) => {
      const read = () => readMeasuredFile('threshold.spotTable', bytesOf(content), 'spots.csv', given.inputs);
      let problem: unknown;
      try {
        applyPatch(designGraph, given, read());
      } catch (error) {
        problem = error;
      }
      expect(problem).toBeInstanceOf(Problem);
      const { message } = problem as Problem;
      expect(message).toMatch(says);
      expect(message).toMatch(/^"spots\.csv" /);
      expect(message).toMatch(/The file given before, "before\.csv", stays\.$/);
      expect(message).not.toMatch(/undefined|NaN|\[object/);
      expect(message.length).toBeLessThan(400);
    },
  );
});

describe('tables of other kinds', () => {
  const spots = 'energy (µJ);d (µm);z (mm)\n10;20;0\n12;24;0\n';
  it('a table of spots is told from a caustic, which it looks like', () => {
    expect(inputForFile(encode(spots))).toBe('threshold.spotTable');
    expect(inputForFile(encode(`# steel\n${spots}`))).toBe('threshold.spotTable');
    for (const id of ['laser.causticTable', 'focus.measuredCaustic']) {
      expect(() => readMeasuredFile(id, encode(spots), 'a.csv', given.inputs)).toThrow(
        /^"a\.csv" is no table of a caustic but one of single spots.*measured spots, in the document “Fluence and threshold”\.$/,
      );
    }
    const dz = encode('z (mm);d (µm)\n1;300\n2;250\n');
    expect(inputForFile(dz)).toBe('laser.causticTable');
  });
});
