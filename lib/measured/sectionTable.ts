import { Problem } from '../problem.ts';
import type { DelimitedTable } from './delimitedTable.ts';
import { findSectionColumns, type NamedWay, namesSection } from './sectionColumns.ts';
import { isMissing, withoutPreamble } from './sectionText.ts';
import { type Column, checkRow, readHeadedTable, readHeader, readLength, type ToSI } from './tableHeader.ts';

/** A measured cross-section as its table gives it; columns of equal length, ascending in position. */
export interface SectionTable {
  /** Across the groove, m; each once. */
  readonly position: number[];
  /** As the table counts them, m: from any zero, tilted, upwards or downwards. */
  readonly height: number[];
  /** Which way its header says that they count. */
  readonly named: NamedWay;
  /** Rows that hold no height. */
  readonly missing: number;
}

/** A cross-section as read from a file, with the file's name. */
export interface NamedSection extends SectionTable {
  readonly name: string;
}

/** Fewest and most rows with a height: a groove needs its two walls, its floor and surface on both sides. */
const rowLimits = [20, 50_000] as const;

/**
 * Reads a cross-section: lines of an instrument about itself, a header ("x (µm); height (nm)", or the units in a line of
 * their own below the names), then a row for each place, in any order. Points that were not measured are left out and
 * counted; heights at the same place are averaged. Throws Problem 'unreadable' naming row and column.
 */
export function readSectionTable(text: string, toSI: ToSI): SectionTable {
  const table = readTable(text, toSI);
  const header = readHeader(table);
  const { position, height, named } = findSectionColumns(header, toSI);
  const points: Point[] = [];
  let missing = 0;
  for (let row = 1; row < table.rows.length; row++) {
    checkRow(table, row, header.length);
    if (isMissing(table.rows[row]![height.index] ?? '')) missing++;
    else points.push(readPoint(table, row, position, height, toSI));
  }
  checkCount(points.length, missing);
  const sorted = atOnePlace(points.sort((a, b) => a.position - b.position));
  checkPlaces(sorted.length, position);
  return {
    position: sorted.map(({ position }) => position),
    height: sorted.map(({ height }) => height),
    named,
    missing,
  };
}

/** True where the text begins as a cross-section: its header names a place and a height or depth. */
export function beginsAsSection(text: string, toSI: ToSI): boolean {
  try {
    return namesSection(readHeader(readTable(text, toSI)));
  } catch (error) {
    if (error instanceof Problem) return false;
    throw error;
  }
}

function readTable(text: string, toSI: ToSI): DelimitedTable {
  const isUnit = (unit: string) => {
    try {
      return Number.isFinite(toSI(1, unit));
    } catch (error) {
      if (error instanceof Problem) return false;
      throw error;
    }
  };
  const table = readHeadedTable(withoutPreamble(text, isUnit), isUnit);
  const [header = [], ...rows] = table.rows;
  return table.separator === ' ' ? { ...table, rows: [withUnitsBehind(header), ...rows] } : table;
}

/** Between spaces a unit in brackets stands in a cell of its own, behind that of its name. */
function withUnitsBehind(header: readonly string[]): string[] {
  const cells: string[] = [];
  for (const cell of header) {
    if (cells.length > 0 && /^[[(].*[\])]$/.test(cell)) cells.push(`${cells.pop()} ${cell}`);
    else cells.push(cell);
  }
  return cells;
}

interface Point {
  readonly position: number;
  readonly height: number;
}

function readPoint(table: DelimitedTable, row: number, position: Column, height: Column, toSI: ToSI): Point {
  return {
    position: readLength(table, row, position, toSI),
    height: readLength(table, row, height, toSI),
  };
}

/** Points of one place, next to each other, as their mean. */
function atOnePlace(points: readonly Point[]): Point[] {
  const found: { position: number; sum: number; count: number }[] = [];
  for (const { position, height } of points) {
    const last = found.at(-1);
    if (last?.position === position) {
      last.sum += height;
      last.count++;
    } else found.push({ position, sum: height, count: 1 });
  }
  return found.map(({ position, sum, count }) => ({ position, height: sum / count }));
}

function checkCount(count: number, missing: number): void {
  const [fewest, most] = rowLimits;
  if (count >= fewest && count <= most) return;
  const without = missing === 0 ? '' : ` and ${missing} without one`;
  throw new Problem(
    'unreadable',
    `The table has ${count} ${count === 1 ? 'row' : 'rows'} with a height${without}; a cross-section is read from ${fewest} to ${most}. ${count < fewest ? 'Measure at more places across the groove.' : 'Give the part around one groove.'}`,
    { value: String(count), allowed: `${fewest} to ${most} rows` },
  );
}

function checkPlaces(count: number, { name }: Column): void {
  if (count >= rowLimits[0]) return;
  throw new Problem(
    'unreadable',
    `Column ${name} holds only ${count} different ${count === 1 ? 'place' : 'places'}. Give the places across the groove, with enough digits to tell them apart.`,
    { column: name, value: String(count), allowed: `${rowLimits[0]} places or more` },
  );
}
