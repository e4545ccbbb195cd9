import { Problem } from '../problem.ts';
import { type DelimitedTable, readNumber } from './delimitedTable.ts';
import { readPlateCell } from './plateColumn.ts';
import {
  findSpotColumns,
  type ReadUnit,
  type SpotColumn,
  type SpotColumns,
  type SpotTableKind,
} from './spotColumns.ts';
import { kindNamed } from './spotKind.ts';
import { checkRow, readHeadedTable, readHeader } from './tableHeader.ts';

/** A mark as its row gives it, SI. */
export interface SpotRow {
  /** Line in the table, from 1. */
  readonly row: number;
  /** Pulse energy; left out where the table gives the average power instead, or of a ladder neither. */
  readonly energy?: number;
  readonly power?: number;
  /** Marked area, without an unmarked centre; 0 where no mark was seen. */
  readonly area: number;
  readonly areaUncertainty?: number;
  /** Outer diameters along x and y, equal where one was measured; left out where the area was. */
  readonly diameters?: readonly [number, number];
  readonly innerDiameter?: number;
  /** Pulses on this place; 1 where the table says nothing. */
  readonly pulses: number;
  /** Left out where the table has no column for it. */
  readonly z?: number;
  /** Of a ladder that says so: the plate was in. */
  readonly plate?: boolean;
}

/** A row that cannot be read, and why. */
export interface BadRow {
  readonly row: number;
  readonly column: string;
  readonly problem: string;
}

/** A table of single spots. */
export interface SpotTable {
  readonly rows: readonly SpotRow[];
  readonly bad: readonly BadRow[];
  /** Rows of a coupon without a result yet. */
  readonly unmeasured: readonly number[];
  /** Headings of columns that nothing is read from. */
  readonly ignored: readonly string[];
}

/** A table of spots as read from a file, with the file's name. */
export interface NamedSpots extends SpotTable {
  readonly name: string;
}

/** More rows are no table of marks that somebody measured. */
const mostRows = 5000;
const mostPulses = 1e9;

/**
 * Reads a table of spots: a header with units, then a row a mark. Columns: energy (or average power), two diameters, one
 * diameter, its square, or an area, and if there are an inner diameter, a standard uncertainty, pulses and z. A row that
 * cannot be read is kept with its problem. A ladder needs z, may lack energies, and may have a column for the plate. Throws Problem 'unreadable' naming row and column where the header cannot be
 * read, or no row can.
 */
export function readSpotTable(text: string, read: ReadUnit, kind: SpotTableKind = 'spots'): SpotTable {
  const table = readHeadedTable(text, (unit) =>
    (['J', 'W', 'm', 'm^2'] as const).some((si) => read(1, unit, si) !== undefined),
  );
  const header = readHeader(table);
  const columns = findSpotColumns(header, read, kind);
  const count = table.rows.length - 1;
  if (count === 0 || count > mostRows) throw wrongCount(count, table.lines[0]!);
  const [rows, bad, unmeasured]: [SpotRow[], BadRow[], number[]] = [[], [], []];
  for (let i = 1; i <= count; i++) {
    if (columns.planned && isEmpty(table, i, columns.sizes)) unmeasured.push(table.lines[i]!);
    else readOrKeep(() => readRow(table, i, header.length, columns, read), rows, bad);
  }
  const [first] = bad;
  if (first && rows.length === 0)
    throw new Problem('unreadable', first.problem, { row: first.row, column: first.column });
  return { rows, bad, unmeasured, ignored: columns.ignored };
}

function wrongCount(count: number, line: number): Problem {
  const message =
    count === 0
      ? 'The table has a header and no row below it. Add the measured marks.'
      : `The table has ${count} rows; up to ${mostRows} are read. Give the marks of one material at a time.`;
  return new Problem('unreadable', message, { row: line + 1, allowed: `1 to ${mostRows} rows` });
}

function isEmpty(table: DelimitedTable, i: number, columns: readonly SpotColumn[]): boolean {
  return columns.every(({ index }) => (table.rows[i]![index] ?? '') === '');
}

function readOrKeep(read: () => SpotRow, rows: SpotRow[], bad: BadRow[]): void {
  try {
    rows.push(read());
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const { row = 0, column = '' } = error.parts;
    bad.push({ row, column, problem: error.message });
  }
}

function readRow(
  table: DelimitedTable,
  i: number,
  width: number,
  columns: SpotColumns,
  readUnit: ReadUnit,
): SpotRow {
  checkRow(table, i, width);
  // A coupon’s mark is round where its second diameter was left empty.
  const [first, second] = columns.sizes;
  const round = columns.planned && second !== undefined && isEmpty(table, i, [second]);
  const of = (column: SpotColumn) => (round && column === second ? { ...first!, name: column.name } : column);
  const read = (column: SpotColumn, rule: Rule) => readCell(table, i, of(column), rule, readUnit);
  const filled = (column: SpotColumn) => !isEmpty(table, i, [column]);
  const { energy, pulses, z, plate } = columns;
  return {
    row: table.lines[i]!,
    ...(energy?.si === 'J' && { energy: read(energy, rules.energy) }),
    ...(energy?.si === 'W' && { power: read(energy, rules.power) }),
    ...readSize(columns, read, filled, table.lines[i]!),
    pulses: pulses ? read(pulses, rules.pulses) : 1,
    ...(z && { z: read(z, rules.place) }),
    ...(plate && { plate: readPlateCell(table, i, plate.index, plate.name) }),
  };
}

/** Which numbers a cell may hold, in words. */
interface Rule {
  readonly allows: (value: number) => boolean;
  readonly says: string;
}

const rules = {
  energy: { allows: (x) => x > 0, says: 'a pulse energy is above 0' },
  power: { allows: (x) => x > 0, says: 'a power is above 0' },
  size: { allows: (x) => x >= 0, says: 'a mark is as large as 0, where none was seen, or larger' },
  uncertainty: { allows: (x) => x > 0, says: 'a standard uncertainty is above 0' },
  pulses: {
    allows: (x) => Number.isInteger(x) && x >= 1 && x <= mostPulses,
    says: 'pulses are a whole number from 1',
  },
  place: { allows: () => true, says: '' },
} satisfies Record<string, Rule>;

function readCell(table: DelimitedTable, i: number, column: SpotColumn, rule: Rule, read: ReadUnit): number {
  const value = readNumber(table, i, column.index, column.name);
  const si = column.unit === '' ? value : column.factor * read(value, column.unit, column.si)!;
  // What is above 0 must not vanish in a small unit, nor leave the range of numbers in a large one.
  const lost = !Number.isFinite(si) || (si === 0 && value !== 0);
  if (!lost && rule.allows(si)) return si;
  const row = table.lines[i]!;
  const why = lost ? 'which is beyond reach' : `but ${rule.says}`;
  throw new Problem(
    'unreadable',
    `Row ${row}, column ${column.name} holds ${value}, ${why}. Correct the cell or delete the row.`,
    { row, column: column.name, value: String(value) },
  );
}

type ReadCell = (column: SpotColumn, rule: Rule) => number;
type Size = Pick<SpotRow, 'area' | 'areaUncertainty' | 'diameters' | 'innerDiameter'>;

function readSize(
  { sizes, inner, uncertainty }: SpotColumns,
  read: ReadCell,
  filled: (column: SpotColumn) => boolean,
  row: number,
): Size {
  const [first, second = first] = sizes.map((column) => read(column, rules.size)) as [number, number?];
  const typedArea = sizes[0]!.si === 'm^2';
  if (!typedArea && (first === 0) !== (second === 0)) throw halfMark(sizes, row);
  const outer = typedArea ? first : (Math.PI / 4) * first * second;
  const hole = inner && filled(inner) ? read(inner, rules.size) : 0;
  const area = outer - (Math.PI / 4) * hole ** 2;
  if (hole > 0 && !(area > 0)) throw wideHole(inner!, row);
  const spread =
    uncertainty && filled(uncertainty) && outer > 0 ? read(uncertainty, rules.uncertainty) : undefined;
  return {
    area,
    ...(!typedArea && { diameters: [first, second] as const }),
    ...(hole > 0 && { innerDiameter: hole }),
    ...(spread !== undefined && {
      areaUncertainty: typedArea ? spread * sizes[0]!.factor : ofDiameters(spread, [first, second], sizes),
    }),
  };
}

/** Standard uncertainty of π/4·dx·dy where each diameter measured has the uncertainty `spread` of its own. */
function ofDiameters(
  spread: number,
  [x, y]: readonly [number, number],
  { length }: readonly SpotColumn[],
): number {
  return (Math.PI / 4) * spread * (length === 1 ? 2 * x : Math.hypot(x, y));
}

function halfMark([x, y]: readonly SpotColumn[], row: number): Problem {
  return new Problem(
    'unreadable',
    `Row ${row} has a diameter of 0 along one axis alone, in column ${x!.name} or ${y!.name}. Write 0 in both where no mark was seen, else measure both.`,
    { row, column: `${x!.name} and ${y!.name}` },
  );
}

function wideHole(inner: SpotColumn, row: number): Problem {
  return new Problem(
    'unreadable',
    `Row ${row}, column ${inner.name} holds an unmarked centre as large as the mark or larger. Correct the cell or delete the row.`,
    { row, column: inner.name },
  );
}

/** What the header of a text names: spots by their energies and sizes, a ladder by z, sizes and the plate; undefined for neither. */
export function kindOfSpots(text: string): SpotTableKind | undefined {
  try {
    return kindNamed(readHeader(readHeadedTable(text)));
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
}

/** True where the text begins as a table of spots or of a ladder. */
export function beginsAsSpots(text: string): boolean {
  return kindOfSpots(text) !== undefined;
}
