import { Problem } from '../problem.ts';
import { type DelimitedTable, readNumber } from './delimitedTable.ts';
import {
  type Column,
  checkRow,
  findLength,
  type HeaderCell,
  headerCells,
  readHeadedTable,
  readHeader,
  readLength,
  type ToSI,
} from './tableHeader.ts';

/** A measured profile as a table gives it; columns of equal length, ascending in position. */
export interface ProfileTable {
  /** Across the spot on a line through its middle, or outward from its axis. */
  readonly axis: 'line' | 'radius';
  /** Metres. */
  readonly position: number[];
  /** In the unit of the table; J/m² where `absolute`. */
  readonly value: number[];
  /** True where the values are fluences with their unit, false where they are counts or parts of something. */
  readonly absolute: boolean;
}

/** J/m² for a value in a unit of fluence, undefined for any other unit. */
export type ToFluence = (value: number, unit: string) => number | undefined;

const lines = new Set(['x', 'y', 'position', 'place', 'distance', 'location']);
const outward = new Set(['r', 'radius', 'rho', 'ρ']);
const signals = new Set([
  ...['fluence', 'energydensity', 'irradiance', 'intensity', 'value', 'signal', 'counts', 'grey', 'gray'],
  ...['greyvalue', 'grayvalue', 'withtheplate', 'relativeirradiance', 'h', 'f', 'i'],
]);
const example = 'x (µm); fluence (J/cm²)';

/** Fewest and most rows: a spot needs a rise, a top and a fall; a figure draws no more than the most. */
const rowLimits = [5, 20_000] as const;

/**
 * Reads a profile: a header line, then a row for each place, in any order. The place is named x, y or position (a line
 * across the spot) or r or radius (outward from its axis), with a unit of length; the value is named fluence, intensity,
 * counts or the like, or is the only other column. Throws Problem 'unreadable' naming row and column.
 */
export function readProfileTable(text: string, toSI: ToSI, toFluence: ToFluence): ProfileTable {
  const table = readHeadedTable(text);
  const header = readHeader(table).map(asNamed);
  const place = findLength(header, { what: 'the position', names: new Set([...lines, ...outward]), example });
  const signal = findSignal(header, place);
  const points = readRows(table, header, place, signal, toSI).sort((a, b) => a.position - b.position);
  checkPoints(points);
  const absolute = toFluence(1, signal.unit) !== undefined;
  const radial = outward.has(header[place.index]!.name) && points[0]!.position >= 0;
  return {
    axis: radial ? 'radius' : 'line',
    position: points.map(({ position }) => position),
    value: points.map(({ value }) => (absolute ? toFluence(value, signal.unit)! : value)),
    absolute,
  };
}

/** True where the first line names a position and a value of light. */
export function beginsAsProfile(table: DelimitedTable): boolean {
  const names = readHeader(table).map((cell) => asNamed(cell).name);
  return (
    names.some((name) => lines.has(name) || outward.has(name)) && names.some((name) => signals.has(name))
  );
}

/** True where a header cell names a place across the spot or outward from its axis. */
export function namesPlace(cell: HeaderCell): boolean {
  const { name } = asNamed(cell);
  return lines.has(name) || outward.has(name);
}

/** A header cell, or what it stands for: "fluence_J_m2" of tables that keep to letters, and the axis of our own figures. */
function asNamed(cell: HeaderCell): HeaderCell {
  if (cell.name === 'distancefromtheaxis') return { ...cell, name: 'x' };
  const form = /^(.*)_J_(c?m)2$/.exec(cell.cell);
  if (!form) return cell;
  return { ...cell, name: form[1]!.toLowerCase().replace(/[\s_-]+/g, ''), unit: `J/${form[2]}^2` };
}

function findSignal(header: readonly HeaderCell[], place: Column): Column {
  const others = header
    .map((cell, index) => ({ ...cell, index }))
    .filter(({ index }) => index !== place.index);
  const found = others.find(({ name }) => signals.has(name)) ?? (others.length === 1 ? others[0] : undefined);
  if (found) return { index: found.index, name: found.cell, unit: found.unit, factor: 1 };
  const row = header[0]!.line;
  throw new Problem(
    'unreadable',
    `Row ${row} holds ${headerCells(header)}, no column for the light. Name one of them fluence, intensity or counts, as in "${example}".`,
    { row, column: 'the light', allowed: [...signals].join(', ') },
  );
}

interface Point {
  readonly position: number;
  readonly value: number;
  readonly line: number;
}

function readRows(
  table: DelimitedTable,
  header: readonly HeaderCell[],
  place: Column,
  signal: Column,
  toSI: ToSI,
): Point[] {
  const count = table.rows.length - 1;
  const [fewest, most] = rowLimits;
  if (count < fewest || count > most) {
    throw new Problem(
      'unreadable',
      `The table has ${count} ${count === 1 ? 'row' : 'rows'} below its header; a profile is read from ${fewest} to ${most}. ${count < fewest ? 'Add the measured places and values.' : 'Leave out rows far from the spot.'}`,
      { value: String(count), allowed: `${fewest} to ${most} rows` },
    );
  }
  return Array.from({ length: count }, (_, i) => {
    checkRow(table, i + 1, header.length);
    return {
      position: readLength(table, i + 1, place, toSI),
      value: readNumber(table, i + 1, signal.index, signal.name),
      line: table.lines[i + 1]!,
    };
  });
}

/** Each place once, and light somewhere. */
function checkPoints(points: readonly Point[]): void {
  const twice = points.findIndex(({ position }, i) => i > 0 && position === points[i - 1]!.position);
  if (twice > 0) {
    const [first, second] = [points[twice - 1]!.line, points[twice]!.line].sort((a, b) => a - b);
    throw new Problem(
      'unreadable',
      `Rows ${first} and ${second} give the same position. Keep one of them; a profile has one value a place.`,
      { row: second! },
    );
  }
  if (points.some(({ value }) => value > 0)) return;
  throw new Problem(
    'unreadable',
    'No value of the table is above 0, so it shows no light. Choose another file.',
    {
      allowed: 'values above 0',
    },
  );
}
