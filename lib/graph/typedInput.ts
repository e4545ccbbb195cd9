import { Problem } from '../problem.ts';
import type { NumberInput } from './quantity.ts';
import { checkInput } from './state.ts';
import { formatQuantity, formatUnit, parseQuantity, withUnit } from './units.ts';
import { splitQuantityText } from './unitText.ts';

/** A second unit to type a value in, by the one it is shown in. */
const otherUnits: Readonly<Record<string, string>> = {
  nm: 'um',
  um: 'mm',
  mm: 'cm',
  fs: 'ps',
  uJ: 'mJ',
  kHz: 'MHz',
  waves: 'deg',
  W: 'mW',
  'J/cm^2': 'J/m^2',
  mrad: 'deg',
  deg: 'rad',
  'm/s': 'mm/s',
  '%': '1',
};

/**
 * Reads a number typed for an input, "1.03 µm" or "800", and checks it; a number without unit counts in `bare`.
 * The Problem of a text that cannot be read gives examples that this input takes; the Problem of a value out of its
 * range also says how the text was read, where it may have been meant otherwise.
 */
export function readTyped(input: NumberInput, text: string, bare = input.unit): number {
  const value = parseQuantity(text, input.unit, { bare, examples: examplesOf(input) });
  try {
    return checkInput(input, value) as number;
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const message = [error.message, ...markRead(input, text, value), ...bareRead(input, text, bare)].join(
      ' ',
    );
    throw new Problem(error.kind, message, error.parts);
  }
}

/** What could be typed for an input: "1030 nm or 1.03 µm", "1 or 1.6". */
export function examplesOf(input: NumberInput): string {
  const { initial, typical, range, unit, display = unit } = input;
  const usual = initial === 0 ? (typical?.[1] ?? range.max / 20) : initial;
  const other = otherUnits[display];
  const second =
    other === undefined
      ? typical && formatQuantity(typical[1], unit, display)
      : formatQuantity(usual, unit, other);
  const first = formatQuantity(usual, unit, display);
  return second === undefined || second === first ? first : `${first} or ${second}`;
}

/** True where the input takes the value. */
function allows(input: NumberInput, value: number): boolean {
  try {
    checkInput(input, value);
    return true;
  } catch {
    return false;
  }
}

/** "1,030" is 1.03 here and a thousand and thirty elsewhere; "1.030" is said only where that would be allowed. */
function markRead(input: NumberInput, text: string, value: number): string[] {
  const mark = /^[^\d.,]*[1-9]\d{0,2}([.,])\d{3}(?![\d.,])/.exec(text)?.[1];
  if (mark === undefined || (mark === '.' && !allows(input, value * 1000))) return [];
  const name = mark === ',' ? 'comma' : 'point';
  return [`The ${name} was read as a decimal mark; leave it out where it parts thousands.`];
}

/** A number without unit that counts in SI, where it is shown in another unit. */
function bareRead(input: NumberInput, text: string, bare: string): string[] {
  const { unit, display = unit } = input;
  if (bare !== unit || display === unit || splitQuantityText(text).unit !== '') return [];
  const meant = allows(input, parseQuantity(text, unit, { bare: display }));
  const example = meant
    ? `write ${withUnit(text.trim(), display)} for a value in ${formatUnit(display)}`
    : `write the unit too, as in ${formatQuantity(input.initial, unit, display)}`;
  return [`A bare number is SI (${formatUnit(unit)}); ${example}.`];
}
