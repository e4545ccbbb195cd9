import type { Alternative } from './alternatives.ts';
import type { AreaFit } from './areaFit.ts';
import { requireClosed } from './closedLogarithms.ts';
import type { FitVerdict } from './fitVerdict.ts';
import type { MarkAxes } from './markAxes.ts';
import type { MarkScatter } from './markScatter.ts';
import type { SpotMark } from './spotMark.ts';

/** A fitted value with its standard uncertainty and 95 % interval, in one unit. */
export interface Fitted {
  readonly value: number;
  readonly uncertainty: number;
  readonly interval: readonly [low: number, high: number];
}

/** Deviation of one mark from a fit. */
export interface MarkResidual {
  readonly row: number;
  /** Area predicted by the fit, m². */
  readonly area: number;
  /** Measured less predicted area, m². */
  readonly residual: number;
  /** The same over its standard deviation. */
  readonly standardised: number;
}

/** What fits of marks have in common. */
export interface MarkFit extends FitVerdict {
  readonly residuals: readonly MarkResidual[];
  /** Estimated scatter of the marks; null where their uncertainties were given. */
  readonly scatter: MarkScatter | null;
  /** Marks that were fitted, and places without a mark. */
  readonly used: number;
  readonly unmarked: number;
  readonly axes: MarkAxes | null;
}

/**
 * exp of a combination of parameters, with its uncertainty to first order and the interval of the logarithm. Throws
 * Problem 'impossible' where the marks leave it open by more than a number can hold.
 */
export function fittedLog(fit: AreaFit, log: number, direction: readonly number[]): Fitted {
  const { uncertainty, half } = fit.along(direction);
  requireClosed(log - half, log + half);
  const value = Math.exp(log);
  return {
    value,
    uncertainty: value * uncertainty,
    interval: [value * Math.exp(-half), value * Math.exp(half)],
  };
}

/** Residuals and counts for the result of a fit. */
export function describeMarks(
  seen: readonly SpotMark[],
  fit: AreaFit,
  unmarked: number,
  axes: MarkAxes | null,
): Pick<MarkFit, 'residuals' | 'scatter' | 'used' | 'unmarked' | 'axes'> {
  const residuals = seen.map((mark, i) => {
    const residual = mark.area - fit.area[i]!;
    return { row: mark.row, area: fit.area[i]!, residual, standardised: residual / fit.spread[i]! };
  });
  return { residuals, scatter: fit.scatter, used: seen.length, unmarked, axes };
}

/** Alternatives for marks with different numbers of pulses or z that one model takes together. */
export function mixedAlternatives(
  marks: readonly SpotMark[],
  { area, slope }: Pick<AreaFit, 'area' | 'slope'>,
): Alternative[] {
  const change = (of: (mark: SpotMark, i: number) => number) => Float64Array.from(marks, of);
  // The middle of the ends: that of one z alone is this z to the last digit.
  const zs = marks.map(({ z }) => z);
  const middle = (Math.min(...zs) + Math.max(...zs)) / 2;
  const z = (of: (mark: SpotMark, i: number) => number): Alternative => ({
    kind: 'z',
    change: change(of),
    text: 'The areas change with z beyond what the model says: the waist may lie elsewhere. Fit marks of one z, or the plane as well.',
  });
  return [
    {
      kind: 'pulses',
      change: change((mark, i) => slope[i]! * Math.log(mark.pulses)),
      text: 'The areas change with the number of pulses: the threshold incubates. Fit marks of one number of pulses at a time.',
    },
    z((mark, i) => slope[i]! * (mark.z - middle)),
    // A Gaussian's areas change with ζ² by dA/d ln E · (ln(E/E_th) − 1).
    z((mark, i) => (area[i]! - slope[i]!) * (mark.z - middle)),
    z((mark, i) => (area[i]! - slope[i]!) * (mark.z - middle) ** 2),
  ];
}
