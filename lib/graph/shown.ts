import { hasValue, type Outcome } from './outcome.ts';
import type { NumberInput, Quantity } from './quantity.ts';
import { structureText } from './structureText.ts';
import { formatQuantity, formatReadable } from './units.ts';

/**
 * The text of a value as every place shows it: number with unit, words of a choice, list of numbers, a few words on
 * what is no single number, name of a file among it, "—" where there is no value. The page, the command line and the written
 * documents all use this and nothing else.
 */
export function shownValue(quantity: Quantity, outcome: Outcome): string {
  if (!hasValue(outcome)) return '—';
  const { value } = outcome;
  if (quantity.shownAs && value !== null) return quantity.shownAs(value);
  if (typeof value === 'number') return shownNumber(quantity, value);
  if (Array.isArray(value) && value.every((item) => typeof item === 'number')) {
    return value.length === 0 ? 'none' : value.map((item: number) => shownNumber(quantity, item)).join(', ');
  }
  if (quantity.kind === 'choice') return quantity.options[value as string] ?? String(value);
  if (typeof value === 'string') return shownText(value);
  return value === null ? 'none' : structureText(value as object, quantity.unit);
}

/** A text, or what it holds where it is a structure written down so that equal ones compare equal. */
function shownText(text: string): string {
  return /^[[{]/.test(text) ? structureText(JSON.parse(text), 'none') : text;
}

/** The values a number may have, in words: "from 5 mm to 2000 mm", "above 1 up to 4". */
export function rangeText(input: NumberInput): string {
  const { min, max, above = false, except } = input.range;
  const show = (x: number) => formatReadable(x, input.unit, input.display ?? input.unit);
  const ends = `${above ? 'above' : 'from'} ${show(min)} ${above ? 'up to' : 'to'} ${show(max)}`;
  return except === undefined ? ends : `${ends}, but not ${show(except)}`;
}

function shownNumber(quantity: Quantity, value: number): string {
  const unit = typeof quantity.unit === 'string' ? quantity.unit : '1';
  const shown = Math.abs(value) < (quantity.zeroBelow ?? 0) ? 0 : value;
  return formatQuantity(shown, unit, quantity.display ?? unit, quantity.digits ?? 4);
}
