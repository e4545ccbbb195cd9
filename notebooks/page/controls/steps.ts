import type { NumberInput } from '../../../lib/graph/quantity.ts';
import { fromUnit, toUnit } from '../../../lib/graph/units.ts';

/** Rounding errors of up to this many steps count as lying on the step. */
const onStep = 1e-6;
/** About this many places on a slider: twice the pixels of a short track, and arrow keys cross it in a few seconds. */
const usualPlaces = 300;
/** Significant digits of what a logarithmic slider sets: 300 places over one decade or more are 0.8 % apart or more. */
const logDigits = 3;

/** The number among 1, 2 and 5 times a power of ten that is nearest to `size` > 0 in proportion. */
export function decentStep(size: number): number {
  const power = Math.floor(Math.log10(size));
  const rest = size / 10 ** power;
  const digit = rest < Math.SQRT2 ? 1 : rest < Math.sqrt(10) ? 2 : rest < Math.sqrt(50) ? 5 : 10;
  return Number(`${digit}e${power}`);
}

/** Unit in which a person reads the numbers of an input; `auto:m` reads in m. */
export function readingUnit(input: NumberInput): string {
  return (input.display ?? input.unit).replace(/^auto:/, '');
}

/**
 * The value one step further (`direction` 1 or −1): `fraction` of the value, made a decent step in the shown unit, and
 * the result on a multiple of it. Where the range spans zero, the fraction is of half the typical span at least, so
 * that stepping reaches zero. Stays in the range; where the next value is one that is not allowed, it stays as it was.
 */
export function stepValue(input: NumberInput, value: number, direction: 1 | -1, fraction: number): number {
  const unit = readingUnit(input);
  const shown = toUnit(value, input.unit, unit);
  const decent = decentStep(fraction * toUnit(stepBase(input, value), input.unit, unit));
  const step = input.whole ? Math.max(1, decent) : decent;
  const count = direction > 0 ? Math.floor(shown / step + onStep) + 1 : Math.ceil(shown / step - onStep) - 1;
  return withinRange(input, fromUnit(rounded(count * step), input.unit, unit), value);
}

function stepBase(input: NumberInput, value: number): number {
  const [low, high] = input.typical ?? [0, 0];
  const signed = input.range.min < 0 && input.range.max > 0;
  const base = signed || value === 0 ? Math.max(Math.abs(value), (high - low) / 2) : Math.abs(value);
  return base > 0 ? base : Math.abs(input.initial) || Math.abs(input.range.max);
}

function withinRange(input: NumberInput, next: number, value: number): number {
  const { min, max, above = false, except } = input.range;
  if ((above && next <= min) || next === except) return value;
  return Math.min(max, Math.max(min, next));
}

/** Products such as 3 × 0.1 without their rounding error. */
function rounded(x: number): number {
  return Number(x.toPrecision(12));
}

/** How a slider from 0 to 1 stands for values. */
export interface SliderScale {
  readonly logarithmic: boolean;
  /** Places from end to end; neighbouring ones differ in their value. */
  readonly places: number;
  /** Value at a position, rounded so that it reads well; the ends are the typical span exactly. */
  valueAt(position: number): number;
  /** Position of a value, held between 0 and 1. */
  positionOf(value: number): number;
}

/** Scale over the typical span of an input, logarithmic where it is positive and wider than a decade. */
export function sliderScale(input: NumberInput): SliderScale | undefined {
  if (!input.typical) return undefined;
  const [low, high] = input.typical;
  const logarithmic = low > 0 && high > 10 * low;
  if (input.whole) return wholeScale(low, high, logarithmic);
  const forward = logarithmic ? Math.log : (x: number) => x;
  const back = logarithmic ? Math.exp : (x: number) => x;
  const unit = readingUnit(input);
  const span = forward(high) - forward(low);
  const step = decentStep(toUnit(high - low, input.unit, unit) / usualPlaces);
  const readable = (shown: number) =>
    logarithmic ? Number(shown.toPrecision(logDigits)) : rounded(Math.round(shown / step) * step);
  return {
    logarithmic,
    places: logarithmic ? usualPlaces : Math.ceil(toUnit(high - low, input.unit, unit) / step - onStep),
    valueAt: (position) => {
      if (position <= 0) return low;
      if (position >= 1) return high;
      const value = back(forward(low) + position * span);
      const near = fromUnit(readable(toUnit(value, input.unit, unit)), input.unit, unit);
      return Math.min(high, Math.max(low, near));
    },
    positionOf: (value) => {
      if (value <= low) return 0;
      return value >= high ? 1 : (forward(value) - forward(low)) / span;
    },
  };
}

/** A scale whose places are whole numbers: all of them, or as many in equal steps or factors as a slider has. */
function wholeScale(low: number, high: number, logarithmic: boolean): SliderScale {
  const at = (part: number) => (logarithmic ? low * (high / low) ** part : low + part * (high - low));
  const steps = Array.from({ length: usualPlaces + 1 }, (_, i) => Math.round(at(i / usualPlaces)));
  const values = [...new Set(steps)];
  const places = values.length - 1;
  return {
    logarithmic,
    places,
    valueAt: (position) => values[Math.round(Math.min(1, Math.max(0, position)) * places)]!,
    positionOf: (value) => {
      if (value <= low) return 0;
      if (value >= high) return 1;
      const after = values.findIndex((one) => one > value);
      const [below, above] = [values[after - 1]!, values[after]!];
      return (after - 1 + (value - below) / (above - below)) / places;
    },
  };
}
