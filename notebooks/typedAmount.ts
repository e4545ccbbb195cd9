import type { Derived, NumberInput, Quantity } from '../lib/graph/quantity.ts';
import { checkInput } from '../lib/graph/state.ts';
import { readTyped } from '../lib/graph/typedInput.ts';
import { readNumber } from '../lib/graph/typedNumber.ts';
import { formatQuantity, parseQuantity } from '../lib/graph/units.ts';
import { Problem } from '../lib/problem.ts';

/** The unit in which numbers of a quantity are read where none is typed: the one they are shown in. */
function bareUnit(quantity: Quantity): string {
  const unit = unitOf(quantity);
  return (quantity.display ?? unit).replace(/^auto:/, '');
}

function unitOf(quantity: Quantity): string {
  return typeof quantity.unit === 'string' ? quantity.unit : '1';
}

/** A value typed for a quantity, SI: an input's is checked too. Throws a Problem that says what could be typed. */
export function readAmount(quantity: Quantity, text: string): number {
  if (text.trim() === '')
    throw new Problem('absent', `A value of ${quantity.name} is missing; type one.`, { input: quantity.id });
  if (quantity.kind === 'number') return readTyped(quantity, text, bareUnit(quantity));
  return readNumber(quantity as Derived<number>, text);
}

/** Values typed behind one another with semicolons between: "80 mm; 100 mm; 125 mm". Throws a Problem for an empty list. */
export function readAmounts(quantity: Quantity, text: string): number[] {
  const parts = text.split(/[;\n]/).filter((part) => part.trim() !== '');
  if (parts.length === 0)
    throw new Problem(
      'absent',
      `The list of values for ${quantity.name} is empty; type some with semicolons between.`,
      { input: quantity.id },
    );
  return [...new Set(parts.map((part) => readAmount(quantity, part)))];
}

/** A value of an input as it can be typed again; with more digits where four would leave the range. */
export function amountText(input: NumberInput, value: number): string {
  for (const digits of [4, 6, 9, 12]) {
    const text = formatQuantity(value, input.unit, bareUnit(input), digits);
    try {
      checkInput(input, parseQuantity(text, input.unit, { bare: bareUnit(input) }));
      return text;
    } catch {
      // Rounded over an end of the range: more digits.
    }
  }
  return '';
}
