import { Problem } from '../problem.ts';
import { type DelimitedTable, readDelimitedTable, readNumber } from './delimitedTable.ts';

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

/** Turns a value and the header's unit text into metres; may throw. */
type ToSI = (value: number, unit: string) => number;

/** A column of the table: where it stands, what its header says. */
interface Column {
  readonly index: number;
  readonly name: string;
  readonly unit: string;
  readonly factor: number;
}

const places = new Set(['z', 'position', 'place', 'distance', 'location']);
const diameters = new Set(['d', 'diameter', 'beamdiameter', 'width', '2w', 'd4sigma', 'd4σ']);
const radii = new Set(['w', 'r', 'radius', 'beamradius']);

/**
 * Reads a caustic: a header line with a unit in each column ("z (mm)", "d / µm", "diameter [um]", "z_mm"),
 * then a row for each place. Radius columns ("w", "radius") are doubled. `toSI` turns a value and the
 * header's unit text into metres and may throw. Throws Problem 'unreadable' naming row and column.
 */
export function readCausticTable(text: string, toSI: ToSI): CausticTable {
  const table = readDelimitedTable(text);
  const header = (table.rows[0] ?? []).map(splitHeader);
  const place = findColumn(header, 'z', places);
  const size = findColumn(header, 'diameter', diameters, radii);
  const z: number[] = [];
  const diameter: number[] = [];
  for (let row = 1; row < table.rows.length; row++) {
    checkRow(table, row, header.length);
    z.push(convert(table, row, place, readNumber(table, row, place.index, place.name), toSI));
    diameter.push(readDiameter(table, row, size, toSI));
  }
  if (z.length === 0) {
    throw new Problem(
      'unreadable',
      'The table has a header and no row below it. Add the measured places and diameters.',
      { row: 2 },
    );
  }
  return { z, diameter };
}

/** True where the first line names a place and a diameter or radius, with units or without. */
export function beginsAsCaustic({ rows }: DelimitedTable): boolean {
  const header = (rows[0] ?? []).map((cell) => splitHeader(cell).name);
  return (
    header.some((name) => places.has(name)) && header.some((name) => diameters.has(name) || radii.has(name))
  );
}

function readDiameter(table: DelimitedTable, row: number, column: Column, toSI: ToSI): number {
  const value = readNumber(table, row, column.index, column.name);
  if (value > 0) return convert(table, row, column, column.factor * value, toSI);
  const line = table.lines[row]!;
  throw new Problem(
    'unreadable',
    `Row ${line}, column ${column.name} holds ${value}: a beam is wider than 0. Correct the cell or delete the row.`,
    { row: line, column: column.name, value: String(value), allowed: 'above 0' },
  );
}

/** The value in metres; a finite one can leave the range of numbers in a large unit. */
function convert(table: DelimitedTable, row: number, column: Column, value: number, toSI: ToSI): number {
  const metres = toSI(value, column.unit);
  if (Number.isFinite(metres)) return metres;
  const line = table.lines[row]!;
  throw new Problem(
    'unreadable',
    `Row ${line}, column ${column.name} holds ${value}, which is beyond reach. Correct the cell or delete the row.`,
    { row: line, column: column.name, value: String(value) },
  );
}

/** A row longer than the header is mostly a decimal comma that was read as a separator. */
export function checkRow(table: DelimitedTable, row: number, columns: number): void {
  const cells = table.rows[row]!;
  if (cells.slice(columns).every((cell) => cell === '')) return;
  const line = table.lines[row]!;
  const hint =
    table.separator === ',' ? ' With decimal commas, separate the columns by semicolons or tabs.' : '';
  throw new Problem(
    'unreadable',
    `Row ${line} has ${cells.length} columns where the header has ${columns}; column ${columns + 1} belongs to none.${hint}`,
    { row: line, column: String(columns + 1), allowed: `${columns} columns` },
  );
}

/**
 * Name (lower case, without spaces) and unit of a header cell: unit in brackets, after a slash, after "in", or after the
 * last underscore.
 */
export function splitHeader(cell: string): { name: string; unit: string; cell: string } {
  const form =
    /^(.*?)\s*[([]\s*(.*?)\s*[)\]]\s*$/.exec(cell) ??
    /^(.*?)\s*\/\s*(.+)$/.exec(cell) ??
    /^(.*\S)\s+in\s+(\S+)$/.exec(cell) ??
    /^(.*)_([^_]+)$/.exec(cell);
  const name = (form?.[1] ?? cell).toLowerCase().replace(/[\s_²-]+/g, '');
  return { name, unit: form?.[2] ?? '', cell };
}

function findColumn(
  header: readonly { name: string; unit: string; cell: string }[],
  what: string,
  names: ReadonlySet<string>,
  halves: ReadonlySet<string> = new Set(),
): Column {
  const index = header.findIndex(({ name }) => names.has(name) || halves.has(name));
  const found = header[index];
  if (!found)
    throw headerProblem(
      header.map(({ cell }) => cell),
      what,
      [...names, ...halves],
    );
  if (found.unit === '') {
    throw new Problem(
      'unreadable',
      `Row 1, column ${found.cell} names no unit. Write it behind the name, as in "z (mm)" or "d (µm)".`,
      { row: 1, column: found.cell, allowed: 'a name with a unit of length' },
    );
  }
  return { index, name: found.cell, unit: found.unit, factor: halves.has(found.name) ? 2 : 1 };
}

function headerProblem(cells: readonly string[], what: string, names: readonly string[]): Problem {
  return new Problem(
    'unreadable',
    `Row 1 holds ${cells.map((cell) => `"${cell}"`).join(', ')}, no column for ${what}. Name one of them ${names.join(', ')} with its unit, as in "z (mm); d (µm)".`,
    { row: 1, column: what, allowed: names.join(', ') },
  );
}
