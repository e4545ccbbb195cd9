import { describe, expect, it } from 'vitest';
import { readUnit } from '../../lib/design/spotFile.ts';
import { beginsAsSpots, readSpotTable, type SpotRow } from '../../lib/measured/spotTable.ts';
import { expectClose } from '../close.ts';

const read = (text: string) => readSpotTable(text, readUnit);

/** 10 µJ and a mark of 20 µm × 30 µm, 12 µJ and none. */
const area = (Math.PI / 4) * 20e-6 * 30e-6;

function expectMarks(rows: readonly SpotRow[], source: string): void {
  expect(rows).toHaveLength(2);
  expectClose(rows[0]!.energy!, 10e-6, { relative: 1e-14, source });
  expectClose(rows[0]!.area, area, { relative: 1e-14, source });
  expectClose(rows[1]!.energy!, 12.5e-6, { relative: 1e-14, source });
  expect(rows[1]!.area).toBe(0);
}

describe('a table of spots, however it is written', () => {
  it.each([
    ['points and commas', 'energy (µJ),dx (µm),dy (µm)\n10,20,30\n12.5,0,0\n'],
    ['decimal commas and semicolons', 'Energy (µJ);Ø x [µm];Ø y [µm]\n10,0;20;30\n12,5;0;0\n'],
    ['as copied from a spreadsheet', '\uFEFFE / uJ\tD1 / um\tD2 / um\r\n10\t20\t30\r\n12,5\t0\t0\r\n'],
    [
      'a Greek mu and quotes',
      '"Pulse energy in μJ";"diameter x in μm";"diameter y in μm"\n"10";"20";"30"\n"12.5";0;0\n',
    ],
    ['underscores', 'E_uJ,d_x_um,d_y_um\n10,20,30\n12.5,0,0\n'],
    ['spaces', 'E_uJ dx_um dy_um\n10   20 30\n12.5  0 0\n'],
    [
      'lines of comment and the separator named',
      'sep=;\n# steel, cleaned; first row\nE (nJ);dx (mm);dy (mm)\n10000;0.02;0.03\n% second day\n12500;0;0\n// end\n',
    ],
    ['the header as a comment', '# E (uJ), dx (um), dy (um)\n10, 20, 30\n12.5, 0, 0\n'],
    ['units in a line of their own', 'Energy\tD x\tD y\nµJ\tµm\tµm\n10\t20\t30\n12.5\t0\t0\n'],
    [
      'units in brackets in a line of their own',
      'No.;Energy;D x;D y\n;[µJ];[µm];[µm]\n1;10;20;30\n2;12.5;0;0\n',
    ],
    [
      'other columns between, and numbers of rows',
      '#;setting (%);energy (mJ);picture;major diameter (um);minor diameter (um)\n#1;50;0.01;a.png;20;30\n#2;60;0.0125;;0;0\n',
    ],
    ['radii', 'E (µJ);radius x (µm);radius y (µm)\n10;10;15\n12,5;0;0\n'],
  ])('%s', (name, text) => {
    const { rows, bad } = read(text);
    expect(bad).toEqual([]);
    expectMarks(rows, name);
    expectClose(rows[0]!.diameters![0], 20e-6, { relative: 1e-14 });
    expect(rows[0]).toMatchObject({ pulses: 1 });
    expect(rows[0]).not.toHaveProperty('z');
    const lines = text.split('\n');
    for (const { row } of rows) expect(lines[row - 1], `line ${row}`).toMatch(/^\D*\d/);
  });

  it.each([
    ['an area', 'E (µJ);area / µm²', 600 * (Math.PI / 4)],
    ['an area in mm²', 'E (µJ);A (mm^2)', 600e-6 * (Math.PI / 4)],
    ['the square of a diameter', 'E (µJ);D² (µm²)', 600],
    ['one diameter', 'E (µJ);diameter (µm)', Math.sqrt(600)],
    ['one radius', 'E (µJ);r (µm)', Math.sqrt(600) / 2],
  ])('%s', (name, header, value) => {
    const { rows } = read(`${header}\n10;${value}\n12.5;0\n`);
    expectMarks(rows, name);
    expect('diameters' in rows[0]!).toBe(/diameter$|radius$/.test(name) && !/square/.test(name));
  });

  it('pulses, z, an inner diameter, powers and columns that nothing is read from', () => {
    const { rows, ignored } = read('P (mW);Ø (µm);di (µm);N;z (mm);remark;Nr\n2;20;10;100;-0,05;ring;1\n');
    expect(rows[0]).toMatchObject({
      row: 2,
      power: 2e-3,
      pulses: 100,
      innerDiameter: 1e-5,
      diameters: [2e-5, 2e-5],
    });
    expect(rows[0]).not.toHaveProperty('energy');
    expectClose(rows[0]!.z!, -50e-6, { relative: 1e-14 });
    expectClose(rows[0]!.area, (Math.PI / 4) * (400 - 100) * 1e-12, { relative: 1e-14, source: 'two discs' });
    expect(ignored).toEqual(['remark', 'Nr']);
  });

  it('uncertainties of diameters become those of the area', () => {
    const one = read('E (µJ);d (µm);uncertainty (µm)\n10;20;0.5\n11;0;\n').rows;
    expectClose(one[0]!.areaUncertainty!, (Math.PI / 4) * 2 * 20e-6 * 0.5e-6, {
      relative: 1e-14,
      source: 'dA = π/2 d u',
    });
    expect(one[1]).not.toHaveProperty('areaUncertainty');
    const two = read('E (µJ);dx (µm);dy (µm);sd (nm)\n10;30;40;500\n').rows;
    expectClose(two[0]!.areaUncertainty!, (Math.PI / 4) * 50e-6 * 0.5e-6, {
      relative: 1e-14,
      source: 'in quadrature',
    });
    const typed = read('E (µJ);area (µm²);sd (µm²)\n10;300;12\n').rows;
    expectClose(typed[0]!.areaUncertainty!, 12e-12, { relative: 1e-14 });
  });
});

describe('rows in error', () => {
  const header = 'energy (µJ);dx (µm);dy (µm);N';
  it.each([
    ['12;wide;30;1', /^Row 3, column dx \(µm\) holds "wide": a number with decimal point/],
    ['12;20 µm;30;1', /holds "20 µm"/],
    ['12;;30;1', /^Row 3, column dx \(µm\) is empty/],
    ['12;20', /^Row 3, column dy \(µm\) is empty/],
    ['-3;20;30;1', /holds -3, but a pulse energy is above 0/],
    ['0;20;30;1', /holds 0, but a pulse energy is above 0/],
    ['12;-20;30;1', /holds -20, but a mark is as large as 0/],
    ['12;0;30;1', /^Row 3 has a diameter of 0 along one axis alone/],
    ['12;20;30;1.5', /holds 1\.5, but pulses are a whole number/],
    ['12;20;30;0', /holds 0, but pulses/],
    ['12;20;30;1;7', /^Row 3 has 5 columns where the header has 4/],
    ['1e300;20;30;1e99', /holds 1e\+99, but pulses/],
    ['12;1e-320;30;1', /which is beyond reach/],
    ['NaN;20;30;1', /holds "NaN"/],
    ['12;20.5;30,5;1', /decimal comma/],
    ['mean;20;30;', /column energy \(µJ\) holds "mean"/],
  ])('"%s" is kept with its problem', (row, says) => {
    const { rows, bad } = read(`${header}\n10;20;30;1\n${row}\n14;22;33;1\n`);
    expect(rows.length + bad.length).toBe(3);
    expect(bad[0]).toMatchObject({ row: 3, problem: expect.stringMatching(says) });
    expect(bad[0]!.column).not.toBe('');
  });

  it('rows of a coupon without a result are still to be measured', () => {
    const text =
      'energy (µJ);x on coupon (mm);y on coupon (mm);d (µm);remark\n10;0;0;20;\n11;1;0;;\n12;2;0;;lost\n';
    expect(read(text)).toMatchObject({ unmeasured: [3, 4], bad: [], rows: [{ row: 2 }] });
    expect(read(text.replace('y on coupon', 'y')).bad).toHaveLength(2);
  });
});

describe('what begins as a table of spots', () => {
  it.each([
    ['energy;d\n', true],
    ['P (mW),area\n', true],
    ['z (mm);d (µm)\n', false],
    ['x (µm);fluence (J/cm²)\n', false],
    ['', false],
    ['This is a letter.', false],
  ])('%j: %s', (text, expected) => {
    expect(beginsAsSpots(text)).toBe(expected);
  });
});
