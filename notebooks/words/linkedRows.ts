import { formatQuantity, formatReadable, formatUnit, parseQuantity } from '../../lib/graph/units.ts';
import { splitQuantityText } from '../../lib/graph/unitText.ts';
import { Problem } from '../../lib/problem.ts';

/** One of several numbers of which any one, when typed, gives the others. */
export interface LinkedRow<K extends string = string> {
  readonly key: K;
  readonly label: string;
  /** TeX. */
  readonly symbol: string;
  /** Where it is used, or what it means. */
  readonly about: string;
  readonly unit: string;
  readonly display: string;
  /** Unit of a number that is typed without one; always the same, and said beside the field. */
  readonly bare: string;
  /** What may be typed: above the first, up to the second, SI. */
  readonly between: readonly [number, number];
}

/** Significant digits shown. */
const digits = 5;

/** A number of a row as it is shown. */
export function rowText({ unit, display }: LinkedRow, value: number): string {
  return formatQuantity(value, unit, display, digits);
}

/** Said beside the field: what a number without a unit counts in. */
export const bareSaid = ({ bare }: LinkedRow): string => `A number alone is in ${formatUnit(bare)}.`;

/** How a number typed without a unit was read, while it still stands there as typed; empty for one with a unit. */
export function readingSaid(row: LinkedRow, text: string, value: number): string {
  if (splitQuantityText(text).unit !== '') return '';
  return `Read in ${formatUnit(row.bare)}: ${rowText(row, value)}.`;
}

/**
 * Reads what was typed into a row, SI; a number without a unit counts in the row’s own. `shown` stands there now, as an
 * example. Throws a Problem for what cannot be read, and for what lies outside the row’s range.
 */
export function readRow(row: LinkedRow, text: string, shown: string): number {
  const [low, high] = row.between;
  const value = parseQuantity(text, row.unit, { bare: row.bare, examples: shown });
  if (value > low && value <= high) return value;
  const show = (x: number) => formatReadable(x, row.unit, row.display.replace(/^auto:/, ''));
  const allowed = low === 0 ? `above 0, at most ${show(high)}` : `above ${show(low)}, at most ${show(high)}`;
  throw new Problem(
    'impossible',
    `${row.label} ${text.trim().slice(0, 40).replace(/^-/, '−')} cannot be: type a value ${allowed}.`,
    { value: text.trim(), allowed },
  );
}
