import { fisherTail } from '../numerics/distributions.ts';
import type { FitCheck } from './fitCheck.ts';
import type { MarkScatter } from './markScatter.ts';
import type { SpotMark } from './spotMark.ts';

/** Ratio of a mark's extent along x to that along y over what a round beam would leave, over many marks. */
export interface MarkAxes {
  /** Geometric mean. */
  readonly ratio: number;
  /** Standard uncertainty, from the scatter. */
  readonly uncertainty: number;
  readonly marks: number;
  /** How probable this ratio, or its change from small marks to large ones, is by chance alone. */
  readonly probability: number;
}

/** What is known of the extents that a beam leaves in one plane, at threshold over peak fluence (0 to 1). */
export interface PredictedAxes {
  /** Extent along x over extent along y for a round beam; 1 when left out. */
  readonly round?: (level: number) => number;
  /** The same for an elliptical beam of any aspect: then marks are compared with such beams alone. */
  readonly elliptical?: (level: number) => number;
}

/** The same in each plane z, m. */
export type AxesInPlanes = (z: number) => PredictedAxes;

/** Where a mark was made: threshold over peak fluence, and the plane, m. */
export interface MarkPlace {
  readonly level: number;
  readonly z: number;
}

/**
 * The axes of marks with both diameters, against those of a round beam; null below five. An elliptical beam changes the
 * ratio of a Gaussian's marks for all alike. Behind a plate it may be below 1 for small marks and above for large ones:
 * without a prediction for it, ln of the ratio is looked at with its change along the level, which takes a clearer
 * ellipse to show. Small marks count less: a reading error is a greater part of them.
 */
export function axesOf(
  marks: readonly SpotMark[],
  placeOf: (mark: SpotMark) => MarkPlace,
  scatter: MarkScatter | null,
  axesAt: AxesInPlanes = () => ({}),
): MarkAxes | null {
  const read = marks.flatMap((mark) => {
    const [x = 0, y = 0] = mark.diameters ?? [];
    return x > 0 && y > 0 ? [{ mark, ratio: x / y, size: Math.sqrt(x * y) }] : [];
  });
  // One diameter for both axes tells nothing of them.
  if (read.length < 5 || read.every(({ ratio }) => ratio === 1)) return null;
  const pairs = read.map(({ mark, ratio, size }) => {
    const { level, z } = placeOf(mark);
    const at = Math.min(1, level);
    const { round = () => 1, elliptical } = axesAt(z);
    const change = elliptical && Math.log(elliptical(at) / round(at));
    return { at, log: Math.log(ratio / round(at)), size, change };
  });
  const largest = Math.max(...pairs.map(({ size }) => size));
  const { relative, reading } = scatter ?? { relative: 0.03, reading: 0.02 * largest };
  const weights = pairs.map(({ size }) => 1 / (Math.max(relative, 0.01) ** 2 + (reading / size) ** 2));
  const sum = (of: (pair: (typeof pairs)[0]) => number) =>
    pairs.reduce((total, pair, i) => total + weights[i]! * of(pair), 0);
  const total = sum(() => 1);
  const mean = sum(({ log }) => log) / total;
  const left = (explained: number, parameters: number) =>
    (sum(({ log }) => log * log) - explained) / (pairs.length - parameters) || Number.MIN_VALUE;
  const middle = sum(({ at }) => at) / total;
  // Mean and slope along the level are independent of each other.
  const spread = sum(({ at }) => (at - middle) ** 2);
  const slope = spread > 0 ? sum(({ at, log }) => (at - middle) * log) / spread : 0;
  const both = mean ** 2 * total + slope ** 2 * spread;
  const predicted = pairs.every(({ change }) => change !== undefined);
  const along = sum(({ change = 0 }) => change ** 2);
  const one = along > 0 ? sum(({ change = 0, log }) => change * log) ** 2 / along : 0;
  const probability = predicted
    ? fisherTail(one / left(one, 1), 1, pairs.length - 1)
    : fisherTail(both / 2 / left(both, 2), 2, pairs.length - 2);
  const ratio = Math.exp(mean);
  const uncertainty = ratio * Math.sqrt(left(both, 2) / total);
  return { ratio, uncertainty, marks: pairs.length, probability };
}

/** The check whether the axes are those of a round beam; none without axes. */
export function checkAxes(axes: MarkAxes | null): Omit<FitCheck, 'passed'>[] {
  if (axes === null) return [];
  const { ratio, uncertainty, probability } = axes;
  const text = `Extents along x and y (ratio ${ratio.toFixed(3)} ± ${uncertainty.toFixed(3)} on average) are not those that a round beam would leave.`;
  return [{ kind: 'axes', probability, text }];
}
