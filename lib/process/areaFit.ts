import { studentQuantile } from '../numerics/distributions.ts';
import { fitNonlinear } from '../numerics/leastSquares.ts';
import type { FitResult } from '../numerics/linearLeastSquares.ts';
import { quadratic } from '../numerics/smallMatrix.ts';
import { Problem } from '../problem.ts';
import {
  estimateScatter,
  type MarkScatter,
  priorMarks,
  scatterParts,
  shareOut,
  spreadOf,
} from './markScatter.ts';
import { doubtOf } from './scatterDoubt.ts';
import type { SpotMark } from './spotMark.ts';

/** Predicted areas of marks as a function of a few parameters. */
export interface AreaModel {
  /** Starting parameters. */
  readonly start: readonly number[];
  /** Size of each parameter for steps, 1 when left out. */
  readonly sizes?: readonly number[];
  /**
   * Writes for each mark the area, m², and its slope dA/d ln E, m². Below threshold both go on along the tangent, so
   * that areas there are negative: a fit needs to feel on which side it is.
   */
  readonly predict: (parameters: ArrayLike<number>, area: Float64Array, slope: Float64Array) => void;
}

/** What a fit of areas returns. */
export interface AreaFit {
  readonly parameters: Float64Array;
  /** Covariance of the parameters. */
  readonly covariance: readonly Float64Array[];
  readonly degreesOfFreedom: number;
  /** Derivatives of the areas by the parameters, a column each. */
  readonly derivatives: readonly Float64Array[];
  /** Predicted areas and slopes dA/d ln E, m², a mark each. */
  readonly area: Float64Array;
  readonly slope: Float64Array;
  /** Standard deviation of each area, m². */
  readonly spread: Float64Array;
  /** Estimated scatter; null where the areas came with absolute uncertainties. */
  readonly scatter: MarkScatter | null;
  /** Standard uncertainty of the combination of parameters with these factors, and half its 95 % interval. */
  along(direction: ArrayLike<number>): { readonly uncertainty: number; readonly half: number };
}

/** Half of a 95 % interval of the normal distribution in standard deviations. */
const normalFactor = 1.959964;

/**
 * Fits predicted areas to marks that were seen. Without `absolute` the scatter is estimated from the deviations
 * themselves, with the weights that follow from it, until both agree; 95 % intervals then follow Student's t, whose
 * degrees of freedom say how well the scatter is known where it matters. With it each mark's `areaUncertainty` counts.
 * Throws Problem 'impossible' where an uncertainty is missing, or marks do not determine the parameters.
 */
export function fitAreas(marks: readonly SpotMark[], model: AreaModel, absolute = false): AreaFit {
  const observed = Float64Array.from(marks, (mark) => mark.area);
  if (absolute) {
    const place = fitWith(observed, model, Float64Array.from(marks, uncertaintyOf), model.start, true);
    return withIntervals(place, place.fit.covariance, null, () => normalFactor);
  }
  // Six per cent of the area and two of the largest, until the marks say more.
  const largest = Math.max(...observed);
  const first = observed.map((value) => Math.hypot(0.06 * value, 0.02 * largest));
  let place = fitWith(observed, model, first, model.start, false);
  let scatter: MarkScatter = { reading: 0, relative: 0, energy: 0 };
  for (let pass = 0; pass < 5; pass++) {
    const parts = scatterParts(place.area, place.slope);
    scatter = estimateScatter(freedSquares(observed, place), parts);
    const spread = spreadOf(scatter, parts);
    if (!spread.every((value) => value > 1e-9 * largest)) {
      // Exact areas, as from a calculation: no scatter to speak of.
      const held = spread.fill(1e-6 * largest);
      return withIntervals({ ...place, spread: held }, place.fit.covariance, scatter, () => normalFactor);
    }
    place = fitWith(observed, model, spread, place.fit.parameters, false);
  }
  const shares = shareOut(scatter, scatterParts(place.area, place.slope));
  const doubt = doubtOf(place.derivatives, shares, priorMarks);
  return withIntervals(place, doubt.covariance, scatter, (direction) =>
    studentQuantile(0.95, doubt.freedomAlong(direction)),
  );
}

type Place = Pick<AreaFit, 'derivatives' | 'area' | 'slope' | 'spread'> & { readonly fit: FitResult };

function fitWith(
  observed: Float64Array,
  model: AreaModel,
  spread: Float64Array,
  start: ArrayLike<number>,
  absolute: boolean,
): Place {
  const area = new Float64Array(observed.length);
  const slope = new Float64Array(observed.length);
  const fit = fitNonlinear({
    observed,
    start,
    sizes: model.sizes ?? model.start.map(() => 1),
    uncertainties: spread,
    absolute,
    model: (parameters, into) => model.predict(parameters, into, slope),
    mostSteps: 200,
  });
  model.predict(fit.parameters, area, slope);
  return { fit, area, slope, spread, derivatives: derivativesOf(model, fit.parameters, observed.length) };
}

function withIntervals(
  { fit, ...place }: Place,
  covariance: readonly Float64Array[],
  scatter: MarkScatter | null,
  factorAlong: (direction: ArrayLike<number>) => number,
): AreaFit {
  const along = (direction: ArrayLike<number>) => {
    const uncertainty = Math.sqrt(quadratic(direction, covariance, direction));
    return { uncertainty, half: uncertainty * factorAlong(direction) };
  };
  const { parameters, degreesOfFreedom } = fit;
  return { parameters, degreesOfFreedom, covariance, scatter, along, ...place };
}

/** Derivatives of the predicted areas by each parameter, a column each: central differences, 1e-4 of its size apart. */
function derivativesOf(model: AreaModel, parameters: ArrayLike<number>, count: number): Float64Array[] {
  const slope = new Float64Array(count);
  return Array.from(parameters, (value, j) => {
    const step = 1e-4 * (model.sizes?.[j] ?? 1);
    const [high, low] = [step, -step].map((change) => {
      const moved = Float64Array.from(parameters);
      moved[j] = value + change;
      const area = new Float64Array(count);
      model.predict(moved, area, slope);
      return area;
    }) as [Float64Array, Float64Array];
    return high.map((area, i) => (area - low[i]!) / (2 * step));
  });
}

/** Squared deviations over 1 − leverage: that much of a mark's variance the fit leaves in its deviation (at least 1/20). */
function freedSquares(observed: Float64Array, place: Place): Float64Array {
  const { fit, derivatives, spread, area } = place;
  return observed.map((value, i) => {
    const row = derivatives.map((column) => column[i]!);
    const taken = quadratic(row, fit.covariance, row) / ((fit.reducedChiSquare || 1) * spread[i]! ** 2);
    return (value - area[i]!) ** 2 / Math.max(0.05, 1 - taken);
  });
}

function uncertaintyOf(mark: SpotMark): number {
  const { areaUncertainty: value, row } = mark;
  if (value !== undefined && value > 0) return value;
  throw new Problem(
    'impossible',
    `Row ${row} has no uncertainty of its area above 0; give one for every mark, or let the fit find the scatter itself.`,
    { row, value: String(value), allowed: 'above 0' },
  );
}
