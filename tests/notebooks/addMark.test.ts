import { describe, expect, it } from 'vitest';
import type { MarkForTable } from '../../lib/design/markRow.ts';
import { spotTable } from '../../lib/design/spots.ts';
import { originalOf } from '../../lib/graph/originals.ts';
import type { NamedSpots } from '../../lib/measured/spotTable.ts';
import { addMark, markRow } from '../../notebooks/addMark.ts';
import { readFileAsPatch } from '../../notebooks/measuredFiles.ts';
import { expectClose } from '../close.ts';

const ring: MarkForTable = {
  energy: 12e-6,
  repetitionRate: 200e3,
  outerArea: 400e-12,
  holeArea: 60e-12,
  areaUncertainty: 9e-12,
  aspect: 1.1,
  pulses: 3,
  z: 50e-6,
};
const disc = { ...ring, holeArea: 0, pulses: 1 };
const tableOf = (text: string, name = 'spots.csv') =>
  readFileAsPatch(spotTable.id, new TextEncoder().encode(text), name)[spotTable.id] as NamedSpots;
const added = (mark: MarkForTable, table: NamedSpots | null) =>
  addMark(mark, table)[spotTable.id] as NamedSpots;
/** Rows are written to six digits. */
const six = { relative: 2e-5, source: 'six digits, two of them multiplied' };

describe('a mark from a picture in the table of spots', () => {
  it('begins a table', () => {
    const table = added(ring, null);
    expect(table.name).toBe('marks in pictures.csv');
    const [row] = table.rows;
    expect(row).toMatchObject({ row: 2, energy: 12e-6, pulses: 3 });
    expectClose(row!.z!, 50e-6, six);
    expectClose(row!.area, 340e-12, six);
    expectClose(row!.areaUncertainty!, 9e-12, six);
    expectClose(row!.diameters![0] / row!.diameters![1], 1.1, six);
    expect(added(disc, table).rows.map(({ row }) => row)).toEqual([2, 3]);
    expect(added(disc, table).name).toBe('marks in pictures.csv');
  });

  it.each<[string, string]>([
    [
      'two diameters, semicolons, decimal commas',
      'energy (µJ);dx (µm);dy (µm);di (µm);sd (µm);N;z (mm);remark\n1,5;20;21;0;0,2;1;0,05;dust\n',
    ],
    [
      'one diameter, tabs',
      'E (J)\td (mm)\tinner diameter (um)\tN\tz (um)\tuncertainty (um)\n1e-6\t0.02\t0\t1\t50\t0.1',
    ],
    [
      'an area, commas, rows below a comment and in CRLF',
      '# coupon 3\r\nP (W),A (µm²),N,z (mm),σ (µm²)\r\n1.5,300,1,0.05,4\r\n\r\n',
    ],
    ['squared diameters', 'E (uJ);D (um^2);di (um);n;z (mm)\n1;400;0;1;0.05\n'],
    ['a radius', 'E (uJ);r (um);di (um);n;z (mm)\n1;10;0;1;0.05\n'],
    ['units in a line of their own', 'E;d;di;N;z\nuJ;um;um;;mm\n1;20;0;1;0.05\n'],
  ])('goes into %s and is read back as it was', (_name, text) => {
    const before = tableOf(text);
    const table = added(ring, before);
    expect(table.bad).toEqual([]);
    expect(table.rows.slice(0, -1)).toEqual(before.rows);
    const row = table.rows.at(-1)!;
    expectClose(row.energy ?? row.power! / 200e3, 12e-6, six);
    expectClose(row.area, 340e-12, six);
    expectClose(row.z!, 50e-6, six);
    expect(row.pulses).toBe(3);
    if (row.areaUncertainty !== undefined) expectClose(row.areaUncertainty, 9e-12, six);
    expect(table.name).toBe('spots and pictures.csv');
    expect(added(disc, table).name).toBe('spots and pictures.csv');
    expect(new TextDecoder().decode(originalOf(table)!.bytes)).toContain(text.trimEnd());
  });

  it('is refused where the table has no room for it, or has it already', () => {
    const plain = tableOf('E (uJ);d (um)\n1;20\n');
    expect(() => addMark(ring, plain)).toThrow(/no column for the unmarked centre/);
    expect(() => addMark({ ...disc, pulses: 2 }, plain)).toThrow(/no column for the pulses on a place/);
    expect(() => addMark(disc, tableOf('E_uJ d_um\n1 20\n'))).toThrow(/separated by spaces/);
    const once = added(disc, plain);
    expect(() => addMark(disc, once)).toThrow(/the last row of the table of spots already/);
    expect(() => addMark(disc, { ...plain })).toThrow(/^The file of "spots\.csv" is not at hand/);
  });

  it('is written in the decimal sign and separator of the table', () => {
    expect(markRow(disc, tableOf('E (µJ);d (µm);z (mm)\n1,5;20;0\n')).row).toBe('12;22,5676;0,05');
    expect(markRow(disc, tableOf('E (µJ),A (µm²),note\n1.5,20,x\n')).row).toBe('12,400,');
  });
});
