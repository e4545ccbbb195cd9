import { describe, expect, it } from 'vitest';
import { readDelimitedTable } from '../../lib/measured/delimitedTable.ts';
import { beginsAsProfile, readProfileTable } from '../../lib/measured/profileTable.ts';
import { Problem } from '../../lib/problem.ts';
import { expectClose } from '../close.ts';
import { toMetres } from './toMetres.ts';

const toFluence = (value: number, unit: string) =>
  ({ 'J/cm²': 1e4 * value, 'J/cm^2': 1e4 * value, 'J/m^2': value, 'J/m²': value })[unit];
const read = (text: string) => readProfileTable(text, toMetres, toFluence);

const position = [-2e-6, -1e-6, 0, 1e-6, 2.5e-6];
const value = [0.1, 0.5, 1, 0.5, 0.1];

describe('readProfileTable', () => {
  it.each([
    ['points and commas', 'x (µm),counts\n-2,0.1\n-1,0.5\n0,1\n1,0.5\n2.5,0.1\n', false],
    ['decimal commas', 'x (µm);counts\n-2;0,1\n-1;0,5\n0;1\n1;0,5\n2,5;0,1\n', false],
    [
      'tabs and a byte order mark',
      '\uFEFFPosition [um]\tIntensity [a.u.]\r\n-2\t0.1\r\n-1\t.5\r\n0\t1\r\n1\t.5\r\n2.5\t.1\r\n',
      false,
    ],
    [
      'any order, other columns',
      'no,F (J/m²),x (mm)\n1,1,0\n2,0.5,0.001\n3,0.1,0.0025\n4,0.1,-0.002\n5,0.5,-0.001\n',
      true,
    ],
    ['any name where there is one other column', 'x_um Pixels\n-2 0.1\n-1 0.5\n0 1\n1 0.5\n2.5 0.1\n', false],
    [
      'names that keep to letters',
      'x_um,fluence_J_m2,other\n-2,0.1,7\n-1,0.5,7\n0,1,7\n1,0.5,7\n2.5,0.1,7\n',
      true,
    ],
    ['radii on both sides as a line', 'r (µm),signal\n-2,0.1\n-1,0.5\n0,1\n1,0.5\n2.5,0.1\n', false],
  ])('%s', (_, text, absolute) => {
    const table = read(text);
    expect([table.axis, table.absolute]).toEqual(['line', absolute]);
    table.position.forEach((x, i) => {
      expectClose(x, position[i]!, { relative: 1e-14, absolute: 1e-20 });
      expectClose(table.value[i]!, value[i]!, { relative: 1e-14 });
    });
  });

  it('reads fluences in SI, and radii as radii', () => {
    const table = read('radius (µm),fluence (J/cm²)\n0,2\n1,2\n2,1.5\n3,0.5\n4,0.1\n');
    expect([table.axis, table.absolute]).toEqual(['radius', true]);
    expect(table.value[0]).toBe(2e4);
  });

  it('reads what a figure here exports', () => {
    const head = 'distance from the axis (µm),with the plate (J/cm²),"plate taken out, same energy (J/cm²)"';
    const table = read(`${head}\n-2,0.1,1\n-1,0.5,1\n0,1,1\n1,0.5,1\n2,0.1,1\n`);
    expect([table.axis, table.absolute, table.value[2]]).toEqual(['line', true, 1e4]);
  });

  const rows = '\n0,1\n1,2\n2,3\n3,2\n4,1\n';
  it.each([
    ['', /is empty/, undefined],
    [
      `x (µm),counts\n0,1\n`,
      /has 1 row below its header; a profile is read from 5 to 20000\. Add/,
      undefined,
    ],
    [`x (µm),counts\n0,1\n1,2\n2,wide\n3,2\n4,1\n`, /Row 4, column counts holds "wide"/, 4],
    [`x (µm),counts\n0,1\n1,2\n\n2,3\n3\n4,1\n`, /Row 6, column counts is empty/, 6],
    [`x (µm),counts\n0,1\n1,2\n2,3\n1,2\n4,1\n`, /Rows 3 and 5 give the same position/, 5],
    [`x (µm),counts\n0,0\n1,0\n2,-3\n3,0\n4,0\n`, /No value of the table is above 0/, undefined],
    [`x (µm),counts\n0,1,5\n1,2\n2,3\n3,2\n4,1\n`, /Row 2 has 3 columns where the header has 2/, 2],
    [`x,counts${rows}`, /Row 1, column x names no unit/, 1],
    [`height (µm),counts${rows}`, /no column for the position\. Name one of them x, y, position/, 1],
    [
      `x (µm),red,green\n0,1,1\n1,2,2\n2,3,3\n3,2,2\n4,1,1\n`,
      /no column for the light\. Name one of them fluence/,
      1,
    ],
    [`0,1${rows}`, /no column for the position/, 1],
  ])('refuses %j', (text, message, row) => {
    expect(() => read(text)).toThrow(message);
    try {
      read(text);
    } catch (error) {
      expect(error).toBeInstanceOf(Problem);
      expect((error as Problem).kind).toBe('unreadable');
      expect((error as Problem).parts.row).toBe(row);
    }
  });

  it('knows a profile by its first line', () => {
    const begins = (line: string) => beginsAsProfile(readDelimitedTable(line));
    expect(['x (µm);fluence (J/cm²)', 'r_um,counts', 'Position\tIntensity'].map(begins)).toEqual([
      true,
      true,
      true,
    ]);
    expect(['z (mm);d (µm)', '0,1,2', 'position;diameter'].map(begins)).toEqual([false, false, false]);
  });
});
