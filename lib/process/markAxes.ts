import { studentTails } from '../numerics/distributions.ts';
import type { FitCheck } from './fitCheck.ts';
import type { SpotMark } from './spotMark.ts';

/** Ratio of a mark's extent along x to that along y, over many marks. */
export interface MarkAxes {
  /** Geometric mean. */
  readonly ratio: number;
  /** Standard uncertainty, from the scatter. */
  readonly uncertainty: number;
  readonly marks: number;
}

/**
 * Mean ratio of the diameters over those predicted for a round beam; null below three marks with both diameters.
 * Large marks count alike, small ones less: reading errors are then a greater part of them.
 */
export function axesOf(marks: readonly SpotMark[], predicted: (mark: SpotMark) => number): MarkAxes | null {
  const pairs = marks.flatMap((mark) => {
    const [x = 0, y = 0] = mark.diameters ?? [];
    return x > 0 && y > 0 ? [{ log: Math.log(x / y / predicted(mark)), size: Math.sqrt(x * y) }] : [];
  });
  if (pairs.length < 3) return null;
  const largest = Math.max(...pairs.map(({ size }) => size));
  // A reading error of 2 % of the largest mark beside 3 % of each.
  const weights = pairs.map(({ size }) => 1 / (0.03 ** 2 + (0.02 * (largest / size)) ** 2));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = pairs.reduce((sum, { log }, i) => sum + weights[i]! * log, 0) / total;
  const squares = pairs.reduce((sum, { log }, i) => sum + weights[i]! * (log - mean) ** 2, 0);
  const uncertainty = Math.sqrt(squares / (pairs.length - 1) / total);
  return { ratio: Math.exp(mean), uncertainty: Math.exp(mean) * uncertainty, marks: pairs.length };
}

/** The check whether the axes agree; none without axes. */
export function checkAxes(axes: MarkAxes | null): Omit<FitCheck, 'passed'>[] {
  if (axes === null) return [];
  const t = Math.abs(Math.log(axes.ratio)) / (axes.uncertainty / axes.ratio || Number.MIN_VALUE);
  const text = `The marks are ${axes.ratio.toFixed(3)} ± ${axes.uncertainty.toFixed(3)} times as wide along x as along y, against what a round beam would leave.`;
  return [{ kind: 'axes', probability: studentTails(t, axes.marks - 1), text }];
}
