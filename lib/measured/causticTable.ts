import { Problem } from '../problem.ts';
import type { DelimitedTable } from './delimitedTable.ts';
import {
  type Column,
  checkRow,
  findLength,
  type HeaderCell,
  readHeadedTable,
  readHeader,
  readLength,
  readSize,
  type ToSI,
} from './tableHeader.ts';

/** Measured beam diameters along the beam, both columns in metres and of the same length. */
export interface CausticTable {
  /** Place along the beam. */
  readonly z: number[];
  /** Second-moment or 1/e² diameter there; radius columns are doubled. */
  readonly diameter: number[];
}

/** A caustic as read from a file, with the file's name. */
export interface NamedCaustic extends CausticTable {
  readonly name: string;
}

/** Measured diameters near the focus, in metres; `diameterY` is empty where one column was given. */
export interface FocusCausticTable extends CausticTable {
  /** Diameter along the second axis. */
  readonly diameterY: number[];
}

/** A caustic of the focus as read from a file, with the file's name. */
export interface NamedFocusCaustic extends FocusCausticTable {
  readonly name: string;
}

const example = 'z (mm); d (µm)';
const places = new Set(['z', 'position', 'place', 'distance', 'location']);
const diameters = new Set(['d', 'diameter', 'beamdiameter', 'width', '2w', 'd4sigma', 'd4σ']);
const radii = new Set(['w', 'r', 'radius', 'beamradius']);

/** Names of the columns of one of two axes: "dx", "d_x", "diameter x", "wx". */
function ofAxis(names: ReadonlySet<string>, axis: 'x' | 'y'): Set<string> {
  return new Set([...names].map((name) => `${name}${axis}`));
}

/**
 * Reads a caustic: a header line with a unit in each column ("z (mm)", "d / µm", "diameter [um]", "z_mm"),
 * then a row for each place. Radius columns ("w", "radius") are doubled. `toSI` turns a value and the
 * header's unit text into metres and may throw. Throws Problem 'unreadable' naming row and column.
 */
export function readCausticTable(text: string, toSI: ToSI): CausticTable {
  const table = readHeadedTable(text);
  const header = readHeader(table);
  const [z, diameter] = readColumns(table, header, [findPlace(header), findSize(header)], toSI);
  return { z: z!, diameter: diameter! };
}

/**
 * Reads a caustic near the focus: as {@link readCausticTable}, or with a column for each of two axes ("dx (µm)",
 * "dy (µm)"). Throws Problem 'unreadable' naming row and column.
 */
export function readFocusCausticTable(text: string, toSI: ToSI): FocusCausticTable {
  const table = readHeadedTable(text);
  const header = readHeader(table);
  const sizes = isTwoAxes(header) ? [findSize(header, 'x'), findSize(header, 'y')] : [findSize(header)];
  const [z, diameter, diameterY = []] = readColumns(table, header, [findPlace(header), ...sizes], toSI);
  return { z: z!, diameter: diameter!, diameterY };
}

function isTwoAxes(header: readonly HeaderCell[]): boolean {
  const ofX = [...ofAxis(diameters, 'x'), ...ofAxis(radii, 'x')];
  return header.some(({ name }) => ofX.includes(name));
}

function findPlace(header: readonly HeaderCell[]): Column {
  return findLength(header, { what: 'z', names: places, example });
}

function findSize(header: readonly HeaderCell[], axis?: 'x' | 'y'): Column {
  if (axis === undefined)
    return findLength(header, { what: 'diameter', names: diameters, halves: radii, example });
  return findLength(header, {
    what: `diameter along ${axis}`,
    names: ofAxis(diameters, axis),
    halves: ofAxis(radii, axis),
    example: 'z (mm); dx (µm); dy (µm)',
  });
}

/** Places and then sizes, a list a column. */
function readColumns(
  table: DelimitedTable,
  header: readonly HeaderCell[],
  columns: readonly Column[],
  toSI: ToSI,
): number[][] {
  const lists = columns.map((): number[] => []);
  for (let row = 1; row < table.rows.length; row++) {
    checkRow(table, row, header.length);
    columns.forEach((column, i) => {
      lists[i]!.push((i === 0 ? readLength : readSize)(table, row, column, toSI));
    });
  }
  if (lists[0]!.length > 0) return lists;
  throw new Problem(
    'unreadable',
    'The table has a header and no row below it. Add the measured places and diameters.',
    { row: 2 },
  );
}

/** True where the first line names a place and a diameter or radius, with units or without. */
export function beginsAsCaustic(table: DelimitedTable): boolean {
  const header = readHeader(table);
  const sized = header.some(({ name }) => diameters.has(name) || radii.has(name)) || isTwoAxes(header);
  return sized && header.some(({ name }) => places.has(name));
}
