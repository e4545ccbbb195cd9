import { studentQuantile } from '../numerics/distributions.ts';
import { fitNonlinear } from '../numerics/leastSquares.ts';
import { lowestNear } from '../numerics/lowestNear.ts';
import { invertPositive, quadratic } from '../numerics/smallMatrix.ts';
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
    const spread = Float64Array.from(marks, uncertaintyOf);
    return describeAreas(marks, model, fitWith(observed, model, spread, model.start), true);
  }
  let spread = firstSpread(observed);
  let parameters = fitWith(observed, model, spread, model.start);
  for (let pass = 0; pass < 5; pass++) {
    spread = scatterAt(observed, predictAll(model, parameters, observed.length), spread).spread;
    parameters = fitWith(observed, model, spread, parameters);
  }
  return describeAreas(marks, model, parameters, false, spread);
}

/**
 * Scatter, covariance and intervals at parameters found in some way. Without `absolute` the scatter is the one that the
 * deviations show there; `spread` begins the search for it.
 */
export function describeAreas(
  marks: readonly SpotMark[],
  model: AreaModel,
  parameters: Float64Array,
  absolute: boolean,
  spread?: Float64Array,
): AreaFit {
  const observed = Float64Array.from(marks, (mark) => mark.area);
  const place = predictAll(model, parameters, marks.length);
  const common = { parameters, ...place, degreesOfFreedom: marks.length - parameters.length };
  if (absolute) {
    const given = Float64Array.from(marks, uncertaintyOf);
    const covariance = plainCovariance(place.derivatives, given);
    return { ...common, ...along(covariance, () => normalFactor), spread: given, scatter: null };
  }
  let found = scatterAt(observed, place, spread ?? firstSpread(observed));
  if (!spread) for (let pass = 0; pass < 3; pass++) found = scatterAt(observed, place, found.spread);
  if (found.exact) {
    const covariance = plainCovariance(place.derivatives, found.spread);
    return { ...common, ...along(covariance, () => normalFactor), ...found };
  }
  const shares = shareOut(found.scatter, scatterParts(place.area, place.slope));
  const doubt = doubtOf(place.derivatives, shares, priorMarks);
  const factorAlong = (direction: ArrayLike<number>) => studentQuantile(0.95, doubt.freedomAlong(direction));
  return { ...common, ...along(doubt.covariance, factorAlong), ...found };
}

/** Six per cent of the area and two of the largest, until the marks say more. */
function firstSpread(observed: Float64Array): Float64Array {
  const largest = Math.max(...observed);
  return observed.map((value) => Math.hypot(0.06 * value, 0.02 * largest));
}

type Place = Pick<AreaFit, 'derivatives' | 'area' | 'slope'>;

function predictAll(model: AreaModel, parameters: Float64Array, count: number): Place {
  const area = new Float64Array(count);
  const slope = new Float64Array(count);
  model.predict(parameters, area, slope);
  return { area, slope, derivatives: derivativesOf(model, parameters, count) };
}

/** The scatter that the deviations show, and the spread of each mark under it; `before` weighs for the leverages. */
function scatterAt(observed: Float64Array, place: Place, before: Float64Array) {
  const parts = scatterParts(place.area, place.slope);
  const scatter = estimateScatter(freedSquares(observed, place, before), parts);
  const spread = spreadOf(scatter, parts);
  const least = 1e-9 * Math.max(...observed);
  const exact = !spread.every((value) => value > least);
  // Exact areas, as from a calculation, have no scatter to speak of: a millionth of the largest.
  return { scatter, spread: exact ? spread.fill(1e3 * least) : spread, exact };
}

function fitWith(
  observed: Float64Array,
  model: AreaModel,
  spread: Float64Array,
  start: ArrayLike<number>,
): Float64Array {
  const slope = new Float64Array(observed.length);
  if (start.length === 1) return fitOne(observed, model, spread, start[0]!);
  return fitNonlinear({
    observed,
    start,
    sizes: model.sizes ?? model.start.map(() => 1),
    uncertainties: spread,
    model: (parameters, into) => model.predict(parameters, into, slope),
    mostSteps: 200,
    leastGain: 1e-6,
  }).parameters;
}

/** One parameter by search: where dips close, areas bend too sharply for steps along tangents. */
function fitOne(observed: Float64Array, model: AreaModel, spread: Float64Array, start: number): Float64Array {
  const area = new Float64Array(observed.length);
  const slope = new Float64Array(observed.length);
  const squares = (parameter: number) => {
    model.predict([parameter], area, slope);
    return observed.reduce((sum, value, i) => sum + ((value - area[i]!) / spread[i]!) ** 2, 0);
  };
  let best = lowestNear(squares, start, 0.1, 12, 1e-5);
  // Where areas run smoothly, steps along the tangent end on the lowest place exactly.
  for (let step = 0; step < 4; step++) {
    const [derivative] = derivativesOf(model, [best.at], observed.length) as [Float64Array];
    squares(best.at);
    let [above, below] = [0, 0];
    derivative.forEach((value, i) => {
      above += (value * (observed[i]! - area[i]!)) / spread[i]! ** 2;
      below += (value / spread[i]!) ** 2;
    });
    const at = best.at + above / below;
    const value = squares(at);
    if (!(Math.abs(above / below) < 1e-4 && value <= best.value * (1 + 1e-9))) break;
    best = { at, value };
  }
  return Float64Array.of(best.at);
}

function along(
  covariance: readonly Float64Array[],
  factorAlong: (direction: ArrayLike<number>) => number,
): Pick<AreaFit, 'covariance' | 'along'> {
  return {
    covariance,
    along: (direction) => {
      const uncertainty = Math.sqrt(quadratic(direction, covariance, direction));
      return { uncertainty, half: uncertainty * factorAlong(direction) };
    },
  };
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

/** (JᵀV⁻¹J)⁻¹ for known spreads. */
function plainCovariance(derivatives: readonly Float64Array[], spread: Float64Array): Float64Array[] {
  return invertPositive(
    derivatives.map((left) =>
      Float64Array.from(derivatives, (right) =>
        left.reduce((sum, value, i) => sum + (value * right[i]!) / spread[i]! ** 2, 0),
      ),
    ),
  );
}

/** Squared deviations over 1 − leverage: that much of a mark's variance the fit leaves in its deviation (at least 1/20). */
function freedSquares(
  observed: Float64Array,
  { derivatives, area }: Place,
  spread: Float64Array,
): Float64Array {
  const covariance = plainCovariance(derivatives, spread);
  return observed.map((value, i) => {
    const row = derivatives.map((column) => column[i]!);
    const leverage = quadratic(row, covariance, row) / spread[i]! ** 2;
    return (value - area[i]!) ** 2 / Math.max(0.05, 1 - leverage);
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
