import type { ChoiceInput, InputQuantity, NumberInput } from '../graph/quantity.ts';
import { rangeText } from '../graph/shown.ts';
import { checkInput } from '../graph/state.ts';
import { sameDimensions } from '../graph/unitScale.ts';
import { dimensionsOf, formatUnit, fromUnit, isKnownUnit, toUnit } from '../graph/units.ts';
import { Problem } from '../problem.ts';
import { writtenWords } from './schemaWords.ts';

/** A saved entry is a number with its unit, or a choice. */
type Entry = { readonly value?: unknown; readonly unit?: unknown; readonly choice?: unknown };

/** What can be done about an entry that cannot be read; `form` is how to write it, where that is wrong. May be empty. */
export type Remedy = (form?: string) => string;

/**
 * The value of a saved entry in SI, in the input's range or among its options. Else a Problem that says by the name of
 * the input what stands there and what is allowed.
 */
export function readValue(input: InputQuantity, entry: unknown, remedy: Remedy): unknown {
  if (input.kind === 'file' || input.kind === 'list')
    throw new Problem(
      'unreadable',
      `${nameOf(input)} is a ${input.kind}, and no value that can be written here.`,
    );
  const value = input.kind === 'number' ? numberIn(input, entry, remedy) : choiceIn(input, entry, remedy);
  try {
    return checkInput(input, value);
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    throw new Problem(error.kind, withRemedy(error.message, remedy()), error.parts);
  }
}

function numberIn(input: NumberInput, entry: unknown, remedy: Remedy): number {
  const refuse = (what: string) => {
    const message = `${nameOf(input)} ${what}; allowed is ${rangeText(input)}.`;
    return new Problem('unreadable', withRemedy(message, remedy(numberForm(input))), { input: input.id });
  };
  if (typeof entry === 'number') throw refuse(`is written as the bare number ${entry}, without a unit`);
  if (!isEntry(entry) || !('value' in entry))
    throw refuse(`is written as ${writtenWords(entry)}, where a number with its unit belongs`);
  const { value, unit } = entry;
  if (typeof value !== 'number') throw refuse(`has ${writtenWords(value)} where its number belongs`);
  if (!Number.isFinite(value)) throw refuse('has a number that is too large for any use');
  if (unit === undefined) throw refuse(`has the number ${value} without a unit`);
  if (typeof unit !== 'string') throw refuse(`has ${writtenWords(unit)} where its unit belongs`);
  if (!isKnownUnit(unit) || !sameDimensions(dimensionsOf(unit), dimensionsOf(input.unit)))
    throw refuse(`is given in '${unit.slice(0, 40)}', which is no unit for it`);
  return fromUnit(value, input.unit, unit);
}

function choiceIn(input: ChoiceInput<string>, entry: unknown, remedy: Remedy): string {
  if (isEntry(entry) && typeof entry.choice === 'string') return entry.choice;
  const words = Object.keys(input.options).join(', ');
  const message = `${nameOf(input)} is written as ${writtenWords(entry)}, where a choice belongs; choose one of: ${words}.`;
  const form = JSON.stringify({ choice: input.initial });
  throw new Problem('unreadable', withRemedy(message, remedy(form)), { input: input.id });
}

function isEntry(entry: unknown): entry is Entry {
  return typeof entry === 'object' && entry !== null && !Array.isArray(entry);
}

/** How a number is written, in the unit that a person reads it in. */
function numberForm({ initial, unit, display = unit }: NumberInput): string {
  const shown = display.startsWith('auto:') ? unit : display;
  return JSON.stringify({
    value: toUnit(initial, unit, shown),
    unit: shown === unit ? unit : formatUnit(shown),
  });
}

/** The name of an input at the start of a sentence. */
export function nameOf({ name }: { readonly name: string }): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}

export function withRemedy(message: string, remedy: string): string {
  return remedy === '' ? message : `${message} ${remedy}`;
}
