import { Problem } from '../problem.ts';
import type { Derived, NumberInput } from './quantity.ts';
import { examplesOf } from './typedInput.ts';
import { formatReadable, formatUnit, parseQuantity } from './units.ts';
import { splitQuantityText } from './unitText.ts';

/** Significant digits in which a number that was typed is shown again: as it was typed. */
const digitsTyped = 12;

/**
 * Reads a number typed for any quantity with a unit, results among them, in SI; a number without unit counts in the unit
 * that the quantity is always shown in. One that is shown now in one unit, now in another, needs it. `value` is what the
 * quantity is today, for an example. Throws a Problem for what cannot be read.
 */
export function readNumber(quantity: NumberInput | Derived<number>, text: string, value?: number): number {
  const { unit, display = unit } = quantity;
  const examples = exampleOf(quantity, value);
  const fixed = !display.startsWith('auto:') && (quantity.kind === 'number' || !quantity.shownAs);
  const number = parseQuantity(text, unit, {
    bare: display.replace(/^auto:/, ''),
    ...(examples === undefined ? {} : { examples }),
  });
  if (fixed || formatUnit(unit) === '' || number === 0 || splitQuantityText(text).unit !== '') return number;
  const such = examples === undefined ? '' : `, as in ${examples}`;
  throw new Problem('unreadable', `Write the unit too${such}: ${quantity.name} is shown in several.`, {
    input: quantity.id,
    value: text,
  });
}

/** A number of a quantity as it was typed: with all its digits, in a unit that reads well. */
export function typedText({ unit, display = unit }: NumberInput | Derived<number>, value: number): string {
  return formatReadable(value, unit, display, digitsTyped);
}

function exampleOf(quantity: NumberInput | Derived<number>, value: number | undefined): string | undefined {
  if (quantity.kind === 'number') return examplesOf(quantity);
  const { unit, display = unit } = quantity;
  return value === undefined ? undefined : formatReadable(value, unit, display, 3);
}
