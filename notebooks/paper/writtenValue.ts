import type { Outcome } from '../../lib/graph/outcome.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import { formatQuantity, fromUnit, toUnit } from '../../lib/graph/units.ts';
import { type Known, uncertaintyOf } from './uncertainties.ts';

/** What a paper is written from: the values of all inputs, and the outcome of every quantity that it reads. */
export interface Told extends Known {
  outcomeOf(quantity: Quantity): Outcome;
}

/**
 * The text of a value in a paper: as everywhere, but where its standard uncertainty is known, no finer than the second
 * digit of that.
 */
export function writtenValue(quantity: Quantity, told: Told): string {
  const outcome = told.outcomeOf(quantity);
  const shown = shownValue(quantity, outcome);
  const uncertainty = uncertaintyOf(quantity, told);
  if (uncertainty === undefined || !hasValue(outcome) || typeof outcome.value !== 'number') return shown;
  const known = told.outcomeOf(uncertainty);
  if (!hasValue(known) || typeof known.value !== 'number' || !(known.value > 0)) return shown;
  return roundedText(quantity, outcome.value, known.value) ?? shown;
}

/** The value with the standard uncertainty behind it, "0.21 J/cm² ± 0.0056 J/cm²"; undefined where none is known. */
export function withUncertainty(quantity: Quantity, told: Told): string | undefined {
  const uncertainty = uncertaintyOf(quantity, told);
  if (uncertainty === undefined) return undefined;
  const known = told.outcomeOf(uncertainty);
  return hasValue(known) ? shownValue(uncertainty, known) : undefined;
}

/** The value to the place of the second digit of its uncertainty; undefined where it is shown no finer anyway. */
function roundedText(quantity: Quantity, value: number, uncertainty: number): string | undefined {
  const unit = String(quantity.unit);
  const display = quantity.display ?? unit;
  // A prefix is a power of ten: the SI unit then has the same digits.
  const scale = display.startsWith('auto:') ? unit : display;
  const place = Math.floor(Math.log10(Number(toUnit(uncertainty, unit, scale).toPrecision(2)))) - 1;
  const size = toUnit(value, unit, scale);
  const steps = timesTen(size, -place);
  // An uncertainty of next to nothing, as from a number typed wrongly, rounds nothing.
  if (!Number.isFinite(steps)) return undefined;
  const rounded = timesTen(Math.round(steps), place);
  const digits = rounded === 0 ? 1 : Math.floor(Math.log10(Math.abs(rounded))) - place + 1;
  if (digits >= (quantity.digits ?? 4)) return undefined;
  return formatQuantity(fromUnit(rounded, unit, scale), unit, display, digits);
}

/** Times a power of ten, by text: a tenth has no exact number, and its multiples would bring stray digits. */
function timesTen(value: number, power: number): number {
  const [mantissa, exponent = '0'] = String(value).split('e');
  return Number(`${mantissa}e${Number(exponent) + power}`);
}
