import { toUnit } from '../graph/units.ts';
import type { DelimitedTable } from '../measured/delimitedTable.ts';
import { findSpotColumns, type SpotColumn, type SpotColumns } from '../measured/spotColumns.ts';
import { readHeadedTable, readHeader } from '../measured/tableHeader.ts';
import { Problem } from '../problem.ts';
import { readUnit } from './spotFile.ts';

/** A mark measured in a picture, as a table of spots takes it; SI. */
export interface MarkForTable {
  /** Pulse energy where it is measured, before the losses of the design. */
  readonly energy: number;
  /** For tables of average powers. */
  readonly repetitionRate: number;
  /** Inside the outer contour, and the unmarked parts in it. */
  readonly outerArea: number;
  readonly holeArea: number;
  readonly areaUncertainty: number;
  /** Extent along x over that along y. */
  readonly aspect: number;
  readonly pulses: number;
  readonly z: number;
}

/** Header of a table begun with a mark from a picture. */
export const newTableHeader = 'energy (µJ);dx (µm);dy (µm);inner diameter (µm);uncertainty (µm);N;z (mm)';

/**
 * The mark as a row of the table of that text, in its columns, units, separator and decimal sign; columns that say
 * something else stay empty. Throws Problem 'impossible' where the table has no column for what the mark has.
 */
export function rowOfMark(mark: MarkForTable, text: string): string {
  const table = readHeadedTable(text, (unit) =>
    (['J', 'W', 'm', 'm^2'] as const).some((si) => readUnit(1, unit, si) !== undefined),
  );
  const header = readHeader(table);
  const columns = findSpotColumns(header, readUnit);
  checkRoom(mark, columns, table);
  const values = valuesOf(mark, columns);
  const cells = header.map((_, index) => {
    const value = values.get(index);
    return value === undefined ? '' : numberText(value, table);
  });
  return cells.join(table.separator);
}

/** Values in the units of their columns, by the place of the column. */
function valuesOf(mark: MarkForTable, columns: SpotColumns): Map<number, number> {
  const values = new Map<number, number>();
  const put = (column: SpotColumn | undefined, si: number) => {
    if (!column) return;
    const whole = si / column.factor;
    values.set(column.index, column.unit === '' ? whole : toUnit(whole, column.si, column.unit));
  };
  const { energy, sizes, inner, uncertainty, pulses, z } = columns;
  const [first] = sizes as [SpotColumn, ...SpotColumn[]];
  const diameter = 2 * Math.sqrt(mark.outerArea / Math.PI);
  // An area without a column for the centre is the marked area itself.
  const net = first.si === 'm^2' && !inner;
  const stretch = sizes.length === 2 ? Math.sqrt(mark.aspect) : 1;
  const [x, y] = [diameter * stretch, diameter / stretch];
  put(energy, energy?.si === 'J' ? mark.energy : mark.energy * mark.repetitionRate);
  put(first, first.si === 'm^2' ? mark.outerArea - (net ? mark.holeArea : 0) : x);
  put(sizes[1], y);
  put(inner, 2 * Math.sqrt(mark.holeArea / Math.PI));
  // The reader makes the uncertainty of π/4·dx·dy from that of each diameter, of one diameter or of the area.
  const perArea = (Math.PI / 4) * (sizes.length === 1 ? 2 * diameter : Math.hypot(x, y));
  if (uncertainty)
    put(
      { ...uncertainty, factor: first.si === 'm^2' ? first.factor : 1 },
      mark.areaUncertainty / (first.si === 'm^2' ? 1 : perArea),
    );
  put(pulses, mark.pulses);
  put(z, mark.z);
  return values;
}

/** What the mark has and the table has no column for would be read as something else. */
function checkRoom(
  mark: MarkForTable,
  { sizes, inner, pulses }: SpotColumns,
  { separator }: DelimitedTable,
): void {
  const area = sizes[0]!.si === 'm^2' && sizes[0]!.factor === 1;
  const lacks =
    mark.holeArea > 0 && !inner && !area
      ? 'the unmarked centre, such as "inner diameter (µm)"'
      : mark.pulses > 1 && !pulses
        ? 'the pulses on a place, such as "N"'
        : undefined;
  if (lacks !== undefined)
    throw new Problem(
      'impossible',
      `The table of spots has no column for ${lacks}. Add one to its file and give the table again.`,
    );
  if (separator === ' ')
    throw new Problem(
      'impossible',
      'The columns of the table of spots are separated by spaces, so that no cell in it may stay empty. Save it with semicolons or tabs and give it again.',
    );
}

/** Six digits, in the decimal sign of the table. */
function numberText(value: number, { decimal }: DelimitedTable): string {
  return String(Number(value.toPrecision(6))).replace('.', decimal);
}
