import { formatQuantity, formatReadable, parseQuantity } from '../../lib/graph/units.ts';
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
  /** What may be typed: above the first, up to the second, SI. */
  readonly between: readonly [number, number];
}

/** Significant digits shown. */
const digits = 5;

/** A number of a row as it is shown. */
export function rowText({ unit, display }: LinkedRow, value: number): string {
  return formatQuantity(value, unit, display, digits);
}

/**
 * Reads what was typed into a row, SI; a number without a unit counts in the unit of the text that stood there before.
 * Throws a Problem for what cannot be read, and for what lies outside the row’s range.
 */
export function readRow(row: LinkedRow, text: string, before: string): number {
  const bare = splitQuantityText(before).unit || row.unit;
  const [low, high] = row.between;
  const value = parseQuantity(text, row.unit, { bare, examples: before });
  if (value > low && value <= high) return value;
  const show = (x: number) => formatReadable(x, row.unit, row.display.replace(/^auto:/, ''));
  const allowed = `above ${show(low)} up to ${show(high)}`;
  throw new Problem(
    'impossible',
    `${row.label} ${text.trim().slice(0, 40)} cannot be: type a value ${allowed}.`,
    { value: text.trim(), allowed },
  );
}
