import { Problem } from '../problem.ts';
import { type DelimitedTable, readNumber } from './delimitedTable.ts';
import {
  checkRow,
  findLength,
  type HeaderCell,
  headerCells,
  readHeadedTable,
  readHeader,
  readLength,
  type ToSI,
} from './tableHeader.ts';

/** Measured ripple periods, columns of equal length in the order of the table. */
export interface RippleTable {
  /** What they were measured against: pulses on a place, or fluence of a pulse. */
  readonly against: 'pulses' | 'fluence';
  /** A number of pulses, or J/m². */
  readonly setting: number[];
  /** m. */
  readonly period: number[];
}

/** A series of periods as read from a file, with the file's name. */
export interface NamedRipples extends RippleTable {
  readonly name: string;
}

/** J/m² for a value in a unit of fluence, undefined for any other unit. */
export type ToFluence = (value: number, unit: string) => number | undefined;

const example = 'N; period (nm)';
const periods = new Set(['period', 'λ', 'rippleperiod', 'spacing', 'ripplespacing', 'pitch', 'periode']);
const pulses = new Set([
  'n',
  'pulses',
  'pulse',
  'npulses',
  'numberofpulses',
  'shots',
  'pulsesonaplace',
  'pulsesperspot',
]);
const fluences = new Set(['fluence', 'f', 'f0', 'peakfluence', 'fluenceperpulse', 'fluenz']);

/**
 * Reads a series of ripple periods: a header ("N; period (nm)" or "fluence (J/cm²); period (µm)"), then a row for each
 * measurement. Where a table holds both, pulses count. Throws Problem 'unreadable' naming row and column.
 */
export function readRippleTable(text: string, toSI: ToSI, toFluence: ToFluence): RippleTable {
  const table = readHeadedTable(text);
  const header = readHeader(table);
  const period = findLength(header, { what: 'the period', names: periods, example });
  const { index, against } = findSetting(header, toFluence);
  const cell = header[index]!;
  const setting: number[] = [];
  const lengths: number[] = [];
  for (let row = 1; row < table.rows.length; row++) {
    checkRow(table, row, header.length);
    if (against === 'pulses') checkGroups(table, row, index, cell.cell);
    const value = above0(table, row, index, cell.cell);
    setting.push(against === 'fluence' ? toFluence(value, cell.unit)! : atLeastOne(table, row, value, cell));
    above0(table, row, period.index, period.name);
    lengths.push(readLength(table, row, period, toSI));
  }
  if (setting.length > 0) return { against, setting, period: lengths };
  throw new Problem('unreadable', 'The table has a header and no row below it. Add the measured periods.', {
    row: 2,
  });
}

/** True where the text begins as a series of ripple periods. */
export function beginsAsRipples(text: string): boolean {
  try {
    return readHeader(readHeadedTable(text)).some(({ name }) => periods.has(name));
  } catch (error) {
    if (error instanceof Problem) return false;
    throw error;
  }
}

/** The column of pulses, else the one of fluence with its unit. */
function findSetting(header: readonly HeaderCell[], toFluence: ToFluence) {
  const counted = header.findIndex(({ name }) => pulses.has(name));
  if (counted >= 0) return { index: counted, against: 'pulses' } as const;
  const index = header.findIndex(({ name }) => fluences.has(name));
  const found = header[index];
  const row = header[0]?.line ?? 1;
  if (!found) {
    throw new Problem(
      'unreadable',
      `Row ${row} holds ${headerCells(header)}, no column for what the period was measured against. Name one of them N or pulses, or fluence with its unit, as in "${example}" or "fluence (J/cm²); period (nm)".`,
      { row, column: 'pulses or fluence', allowed: 'N, pulses or fluence' },
    );
  }
  if (toFluence(1, found.unit) !== undefined) return { index, against: 'fluence' } as const;
  const given =
    found.unit === '' ? 'no unit' : `the unit '${found.unit.slice(0, 40)}', which is none of fluence`;
  throw new Problem(
    'unreadable',
    `Row ${row}, column ${found.cell} names ${given}. Write it behind the name, as in "fluence (J/cm²)".`,
    { row, column: found.cell, allowed: 'a name with a unit of fluence' },
  );
}

/** "1.000" pulses may be one or a thousand, and both would be believed. */
function checkGroups(table: DelimitedTable, row: number, column: number, name: string): void {
  const text = (table.rows[row]![column] ?? '').trim();
  if (!/^\d{1,3}([.,]\d{3})+$/.test(text)) return;
  const line = table.lines[row]!;
  const whole = text.replace(/[.,]/g, '');
  throw new Problem(
    'unreadable',
    `Row ${line}, column ${name} holds "${text}", which may be ${Number(text.replace(',', '.'))} or ${whole}: write ${whole} without a mark between, or fewer digits behind it.`,
    { row: line, column: name, value: text, allowed: 'a number of pulses without marks between thousands' },
  );
}

function above0(table: DelimitedTable, row: number, column: number, name: string): number {
  const value = readNumber(table, row, column, name);
  if (value > 0) return value;
  throw outside(table, row, name, value, 'above 0');
}

/** A number of pulses: 1 or more; means of a scan need not be whole. */
function atLeastOne(table: DelimitedTable, row: number, value: number, { cell }: HeaderCell): number {
  if (value >= 1) return value;
  throw outside(table, row, cell, value, '1 or more');
}

function outside(
  table: DelimitedTable,
  row: number,
  column: string,
  value: number,
  allowed: string,
): Problem {
  const line = table.lines[row]!;
  return new Problem(
    'unreadable',
    `Row ${line}, column ${column} holds ${value}: it must be ${allowed}. Correct the cell or delete the row.`,
    { row: line, column, value: String(value), allowed },
  );
}
