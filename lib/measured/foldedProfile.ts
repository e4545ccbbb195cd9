import { Problem } from '../problem.ts';
import type { ProfileTable } from './profileTable.ts';
import type { SampledProfile } from './sampledProfile.ts';

/** Samples on one line through the middle of the spot, as they were measured; lengths from the middle. */
export interface Section {
  /** The way the line runs: a table's own, or along the rows or columns of a picture. */
  readonly along: 'table' | 'x' | 'y';
  readonly position: Float64Array;
  readonly value: Float64Array;
}

/** A measured spot as a round profile about its middle. Lengths in metres, light in the file's unit. */
export interface FoldedProfile extends SampledProfile {
  /** How far the two sides of a line lie from their mean, or the standard deviation around the circle; 0 at the axis. */
  readonly spread: Float64Array;
  readonly sections: readonly Section[];
  /** Sentences on what tells against the measurement. */
  readonly notes: readonly string[];
}

/** Most radii of a folded profile: finer than any figure shows. */
const mostRadii = 2000;

/**
 * A profile from a table. On a line the middle lies halfway between the outermost places at half the peak, and the mean of
 * both sides counts, on radii as far apart as the median of the places, as far as both sides reach. Throws Problem
 * 'outside' where one side is missing, or where radii begin away from the axis.
 */
export function foldTable(table: ProfileTable): FoldedProfile {
  return table.axis === 'radius' ? fromRadii(table) : fromLine(table);
}

function fromRadii({ position, value }: ProfileTable): FoldedProfile {
  const [first, second] = [position[0]!, position[1]!];
  if (first > second - first) {
    throw new Problem(
      'outside',
      `The radii begin ${micrometres(first)} from the axis, and nothing is known further in. Give the profile from radius 0 on, or as a line across the spot with places named x.`,
      { value: micrometres(first), allowed: 'from radius 0 on' },
    );
  }
  const missing = first > 0;
  const radius = Float64Array.from(missing ? [0, ...position] : position);
  const axis = valueOnAxis(position, value);
  const values = Float64Array.from(missing ? [axis, ...value] : value);
  const mirrored = { position: mirror(radius, -1), value: mirror(values, 1) };
  return {
    radius,
    value: values,
    spread: new Float64Array(radius.length),
    sections: [{ along: 'table', ...mirrored }],
    notes: [],
  };
}

/** The value at radius 0 of the parabola without a linear term through the first two samples; their radii differ. */
export function valueOnAxis(radius: ArrayLike<number>, value: ArrayLike<number>): number {
  const [inner, outer] = [radius[0]! ** 2, radius[1]! ** 2];
  return value[0]! - ((value[1]! - value[0]!) * inner) / (outer - inner);
}

/** A column from the outermost sample of one side to that of the other; the axis stands once. */
export function mirror(column: Float64Array, sign: 1 | -1): Float64Array {
  const last = column.length - 1;
  return Float64Array.from({ length: 2 * last + 1 }, (_, i) =>
    i < last ? sign * column[last - i]! : column[i - last]!,
  );
}

function fromLine({ position, value }: ProfileTable): FoldedProfile {
  const middle = middleOf(position, value);
  const reach = Math.min(middle - position[0]!, position.at(-1)! - middle);
  const step = Math.max(medianStep(position), reach / mostRadii);
  const count = Math.floor(reach / step + 1e-9);
  const radius = Float64Array.from({ length: count + 1 }, (_, i) => i * step);
  const right = radius.map((r) => cubicAt(position, value, middle + r));
  const left = radius.map((r) => cubicAt(position, value, middle - r));
  return {
    radius,
    value: right.map((side, i) => (side + left[i]!) / 2),
    spread: right.map((side, i) => Math.abs(side - left[i]!) / 2),
    sections: [
      {
        along: 'table',
        position: Float64Array.from(position, (x) => x - middle),
        value: Float64Array.from(value),
      },
    ],
    notes: [],
  };
}

/** Halfway between the outermost places where the line crosses half its peak. */
function middleOf(position: readonly number[], value: readonly number[]): number {
  const half = Math.max(...value) / 2;
  const last = value.length - 1;
  const from = value.findIndex((sample) => sample > half);
  const to = value.findLastIndex((sample) => sample > half);
  if (from === 0 || to === last) {
    throw new Problem(
      'outside',
      'The profile does not fall to half its peak on both sides, so that neither its middle nor its width is known. Measure further out, and take off the background.',
      { allowed: 'below half the peak at both ends' },
    );
  }
  const crossing = (inner: number, outer: number) =>
    position[inner]! +
    ((position[outer]! - position[inner]!) * (value[inner]! - half)) / (value[inner]! - value[outer]!);
  return (crossing(from, from - 1) + crossing(to, to + 1)) / 2;
}

function medianStep(position: readonly number[]): number {
  const steps = position.slice(1).map((x, i) => x - position[i]!);
  return steps.sort((a, b) => a - b)[steps.length >> 1]!;
}

/**
 * The cubic through the two samples on either side, within the ends of the column: on samples h apart a smooth profile is met
 * to 3h⁴/128 of its fourth derivative, where a straight line would take h²/8 of the curvature off its top.
 */
function cubicAt(position: readonly number[], value: readonly number[], x: number): number {
  let [low, high] = [0, position.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (position[middle]! <= x) low = middle;
    else high = middle;
  }
  const first = Math.min(Math.max(0, low - 1), position.length - 4);
  let sum = 0;
  for (let i = first; i < first + 4; i++) {
    let weight = 1;
    for (let j = first; j < first + 4; j++)
      if (j !== i) weight *= (x - position[j]!) / (position[i]! - position[j]!);
    sum += weight * value[i]!;
  }
  return sum;
}

function micrometres(length: number): string {
  return `${Number((length * 1e6).toPrecision(3))} µm`;
}
