import { Problem } from '../problem.ts';
import { type DelimitedTable, readDelimitedTable, readNumber } from './delimitedTable.ts';

/** Turns a value and the header's unit text into metres; may throw. */
export type ToSI = (value: number, unit: string) => number;

/** A cell of a header: its name in lower case without spaces, its unit, and the cell itself. */
export interface HeaderCell {
  readonly name: string;
  readonly unit: string;
  readonly cell: string;
  /** Line that it stands in, from 1. */
  readonly line: number;
}

/** A column of a table: where it stands, what its header says. */
export interface Column {
  readonly index: number;
  readonly name: string;
  readonly unit: string;
  /** 2 for a column of halves, radii where diameters are meant. */
  readonly factor: number;
}

/** What a column is looked for by. */
export interface Wanted {
  /** "z", for messages. */
  readonly what: string;
  readonly names: ReadonlySet<string>;
  /** Names of a column that holds half of what is meant. */
  readonly halves?: ReadonlySet<string>;
  /** A header as it should be: "z (mm); d (µm)". */
  readonly example: string;
}

/** The cells of the first line. */
export function readHeader(table: DelimitedTable): HeaderCell[] {
  return (table.rows[0] ?? []).map((cell) => ({ ...splitHeader(cell), line: table.lines[0]! }));
}

/** A number in either decimal sign. */
export const numeric = /^[-+−]?[\d.,]*\d[.,]?(e[-+]?\d+)?$/i;

/**
 * A text table whose first row is its header, wherever programs put it: as the last line of comment above rows of
 * numbers, or with the units in a line of their own below the names ("energy; d" above "µJ; µm") where `isUnit` knows them.
 */
export function readHeadedTable(
  text: string,
  isUnit: (text: string) => boolean = () => false,
): DelimitedTable {
  const table = headedByComment(readDelimitedTable(text));
  const [names = [], units = [], ...rows] = table.rows;
  const filled = units.map((cell) => cell.replace(/^[[(](.*)[\])]$/, '$1').trim());
  const isLine =
    filled.some((unit) => unit !== '' && isUnit(unit)) &&
    filled.every((unit) => /^[-–]?$/.test(unit) || isUnit(unit)) &&
    !filled.some((unit) => numeric.test(unit));
  if (!isLine) return table;
  const header = names.map((name, i) => (/^[-–]?$/.test(filled[i] ?? '') ? name : `${name} (${filled[i]})`));
  return { ...table, rows: [header, ...rows], lines: table.lines.toSpliced(1, 1) };
}

function headedByComment(table: DelimitedTable): DelimitedTable {
  const { comment, rows, lines } = table;
  const [first = []] = rows;
  const headless = first.filter((cell) => numeric.test(cell)).length >= 2;
  if (!comment || !headless || comment.cells.length < first.filter((cell) => cell !== '').length)
    return table;
  return { ...table, rows: [comment.cells, ...rows], lines: [comment.line, ...lines] };
}

/**
 * Name (lower case, without spaces) and unit of a header cell: unit in brackets, after a slash, after "in", after a
 * comma, or after the last underscore.
 */
export function splitHeader(cell: string): Omit<HeaderCell, 'line'> {
  const form =
    /^(.*?)\s*[([]\s*(.*?)\s*[)\]]\s*$/.exec(cell) ??
    /^(.*?)\s*\/\s*(.+)$/.exec(cell) ??
    /^(.*\S)\s+in\s+(\S+)$/.exec(cell) ??
    /^([^,]*\S),\s+(\S+)$/.exec(cell) ??
    /^(.*)_([^_]+)$/.exec(cell);
  const name = (form?.[1] ?? cell).toLowerCase().replace(/[\s_²-]+/g, '');
  return { name, unit: form?.[2] ?? '', cell };
}

/** The first column of one of the names, with a unit. Throws Problem 'unreadable' naming row and column. */
export function findLength(header: readonly HeaderCell[], wanted: Wanted): Column {
  const { names, halves = new Set() } = wanted;
  const index = header.findIndex(({ name }) => names.has(name) || halves.has(name));
  const found = header[index];
  if (!found) throw headerProblem(header, wanted, [...names, ...halves]);
  if (found.unit === '') {
    throw new Problem(
      'unreadable',
      `Row ${found.line}, column ${found.cell} names no unit. Write it behind the name, as in "z (mm)" or "d (µm)".`,
      { row: found.line, column: found.cell, allowed: 'a name with a unit of length' },
    );
  }
  return { index, name: found.cell, unit: found.unit, factor: halves.has(found.name) ? 2 : 1 };
}

function headerProblem(
  header: readonly HeaderCell[],
  { what, example }: Wanted,
  names: readonly string[],
): Problem {
  const row = header[0]?.line ?? 1;
  return new Problem(
    'unreadable',
    `Row ${row} holds ${headerCells(header)}, no column for ${what}. Name one of them ${names.join(', ')} with its unit, as in "${example}".`,
    { row, column: what, allowed: names.join(', ') },
  );
}

/** The cells of a header in quotes, for messages. */
export function headerCells(header: readonly HeaderCell[]): string {
  return header.map(({ cell }) => `"${cell.slice(0, 40)}"`).join(', ');
}

/** The length in a row of a column, in metres; a finite one can leave the range of numbers in a large unit. */
export function readLength(table: DelimitedTable, row: number, column: Column, toSI: ToSI): number {
  return toMetres(table, row, column, readNumber(table, row, column.index, column.name), toSI);
}

/** The size in a row of a column, above 0, in metres; halves are doubled. */
export function readSize(table: DelimitedTable, row: number, column: Column, toSI: ToSI): number {
  const value = readNumber(table, row, column.index, column.name);
  if (value > 0) return toMetres(table, row, column, column.factor * value, toSI);
  const line = table.lines[row]!;
  throw new Problem(
    'unreadable',
    `Row ${line}, column ${column.name} holds ${value}: a beam is wider than 0. Correct the cell or delete the row.`,
    { row: line, column: column.name, value: String(value), allowed: 'above 0' },
  );
}

function toMetres(table: DelimitedTable, row: number, column: Column, value: number, toSI: ToSI): number {
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
