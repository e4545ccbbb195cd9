import { Problem } from '../problem.ts';
import {
  describeFit,
  type FitResult,
  type FitWeights,
  scaleColumns,
  solveUpper,
  type Triangular,
  triangularise,
} from './linearLeastSquares.ts';

/** A nonlinear model with its observations. p is the number of parameters, n of observations. */
export interface NonlinearFit extends FitWeights {
  /** Writes the n model values at `parameters` into `into`. Values that are not finite reject a step. */
  readonly model: (parameters: Float64Array, into: Float64Array) => void;
  /** Writes the derivatives, n rows of p, into `into`; central differences are taken when left out. */
  readonly derivatives?: (parameters: Float64Array, into: Float64Array) => void;
  /** The n observations. */
  readonly observed: ArrayLike<number>;
  /** The p starting values. */
  readonly start: ArrayLike<number>;
  /** Size of each parameter, for steps where a start is 0; the start's absolute value (1 for 0) when left out. */
  readonly sizes?: ArrayLike<number>;
  /** Most steps tried, 2000 by default: enough for MGH10's far start. */
  readonly mostSteps?: number;
  /**
   * Share of the sum of squares that a step must promise to take off, or the fit has settled; 1e-22 by default. A model
   * with bends, whose linearisation promises more than it keeps, needs more.
   */
  readonly leastGain?: number;
}

interface Place {
  readonly parameters: Float64Array;
  readonly residuals: Float64Array;
  readonly squares: number;
}

/**
 * Nonlinear least squares after Levenberg and Marquardt: each step solves the linearised problem with a
 * damping relative to the largest column lengths met so far, so that units do not matter (J. J. Moré, in
 * Lecture Notes in Mathematics 630, 105 (1978)); the damping follows H. B. Nielsen, report IMM-REP-1999-05.
 * A second-order correction bends each step along the model's curvature, and a step that would bend by more
 * than 3/8 of its length is refused: M. K. Transtrum & J. P. Sethna, arXiv:1201.5885 (all three memory).
 * It keeps far starts (MGH10, BoxBOD) out of plateaus where a parameter has no effect.
 * Throws Problem 'impossible' where the start gives no finite values, the parameters are not determined or
 * the steps do not settle.
 */
export function fitNonlinear(fit: NonlinearFit): FitResult {
  const count = fit.observed.length;
  const size = fit.start.length;
  const most = fit.mostSteps ?? 2000;
  let place = startFit(fit);
  const largest = new Float64Array(size);
  let damping = 1e-3;
  let raise = 2;
  let linear = linearise(fit, place);
  for (let step = 0; step < most; step++) {
    for (let j = 0; j < size; j++) largest[j] = Math.max(largest[j]!, linear.scale[j]!);
    const damped = dampTriangle(linear, largest, damping);
    const straight = solveUpper(damped.r, damped.projected, size).map((value, j) => value / linear.scale[j]!);
    const { move, bend } = bendStep(fit, place, linear, damped, straight);
    const next: Place | undefined =
      bend <= mostBend
        ? evaluate(
            fit,
            place.parameters.map((value, j) => value + move[j]!),
          )
        : undefined;
    const promised = predictedGain(linear, straight);
    const settled = isSettled(place, straight) || promised <= (fit.leastGain ?? 1e-22) * place.squares;
    if (next && next.squares <= place.squares) {
      const ratio = (place.squares - next.squares) / (promised || 1);
      place = next;
      linear = linearise(fit, place);
      damping *= Math.max(1 / 3, 1 - (2 * ratio - 1) ** 3);
      raise = 2;
    } else {
      damping *= raise;
      raise *= 2;
    }
    if (settled || place.squares === 0 || damping > 1e30) {
      const triangle = { ...linear.triangle, leftSquares: place.squares };
      return describeFit(place.parameters, triangle, linear.scale, count, fit.absolute ?? false);
    }
  }
  throw didNotSettle(most);
}

/** Largest |a|/|v|: 2|a|/|v| at most 0.75 (Transtrum & Sethna). */
const mostBend = 0.375;

/** Steps below 1e-11 of each parameter change nothing that a reader could see. */
function isSettled(place: Place, move: Float64Array): boolean {
  return move.every((value, j) => Math.abs(value) <= 1e-11 * Math.abs(place.parameters[j]!));
}

/** The starting place; a Problem where the model has no finite value there. */
function startFit(fit: NonlinearFit): Place {
  const place = evaluate(fit, Float64Array.from(fit.start));
  if (place) return place;
  throw new Problem(
    'impossible',
    'The fit cannot start: the model has no finite value at the starting parameters. Choose others.',
  );
}

function didNotSettle(most: number): Problem {
  return new Problem(
    'impossible',
    `The fit did not settle in ${most} steps. Choose starting values nearer to the observations.`,
    { allowed: `at most ${most} steps` },
  );
}

/** Weighted residuals at `parameters`, or undefined where a value is not finite. */
function evaluate(fit: NonlinearFit, parameters: Float64Array): Place | undefined {
  const residuals = new Float64Array(fit.observed.length);
  fit.model(parameters, residuals);
  let squares = 0;
  for (let i = 0; i < residuals.length; i++) {
    residuals[i] = (fit.observed[i]! - residuals[i]!) / (fit.uncertainties?.[i] ?? 1);
    squares += residuals[i]! ** 2;
  }
  return Number.isFinite(squares) ? { parameters, residuals, squares } : undefined;
}

interface Linearised {
  /** Derivatives of the weighted model with columns of unit length, n rows of p. */
  readonly slopes: Float64Array;
  readonly triangle: Triangular;
  readonly scale: Float64Array;
}

function linearise(fit: NonlinearFit, place: Place): Linearised {
  const count = place.residuals.length;
  const size = place.parameters.length;
  const slopes = new Float64Array(count * size);
  if (fit.derivatives) fit.derivatives(place.parameters, slopes);
  else differentiate(fit, place.parameters, slopes);
  if (fit.uncertainties) {
    for (let k = 0; k < slopes.length; k++) slopes[k] = slopes[k]! / fit.uncertainties[Math.floor(k / size)]!;
  }
  const scale = scaleColumns(slopes, count, size);
  const triangle = triangularise(Float64Array.from(slopes), Float64Array.from(place.residuals), count, size);
  return { slopes, scale, triangle };
}

/** Fourth-order central differences. Relative steps of 1e-4: 1e-8 or better for a
 * peak a hundred times narrower than its place (truncation (1e-2)⁴), 1e-12 by rounding. */
function differentiate(fit: NonlinearFit, parameters: Float64Array, slopes: Float64Array): void {
  const size = parameters.length;
  const values = new Float64Array(fit.observed.length);
  const shifts = [-2, -1, 1, 2] as const;
  const factors = [1 / 12, -8 / 12, 8 / 12, -1 / 12] as const;
  for (let j = 0; j < size; j++) {
    const usual = Math.abs(fit.sizes?.[j] ?? fit.start[j]!) || 1;
    const step = 1e-4 * Math.max(Math.abs(parameters[j]!), 1e-3 * usual);
    shifts.forEach((shift, s) => {
      const moved = Float64Array.from(parameters);
      moved[j] = moved[j]! + shift * step;
      fit.model(moved, values);
      for (let i = 0; i < values.length; i++) {
        slopes[i * size + j] = slopes[i * size + j]! + (factors[s]! * values[i]!) / step;
      }
    });
  }
}

/** Triangle of the problem that minimises |r − J h|² + damping·|D h|², from the triangle of J with unit columns. */
function dampTriangle({ triangle, scale }: Linearised, largest: Float64Array, damping: number): Triangular {
  const { size, r, projected } = triangle;
  const matrix = new Float64Array(2 * size * size);
  matrix.set(r);
  const right = new Float64Array(2 * size);
  right.set(projected);
  for (let j = 0; j < size; j++)
    matrix[(size + j) * size + j] = (Math.sqrt(damping) * largest[j]!) / scale[j]!;
  return triangularise(matrix, right, 2 * size, size);
}

/**
 * The step v with its second-order correction a = −½ (JᵀJ + damping D²)⁻¹ Jᵀ f_vv, and |a|/|v| in units of
 * the columns. f_vv, the second derivative along v, from one more model value at a tenth of the step.
 */
function bendStep(
  fit: NonlinearFit,
  place: Place,
  linear: Linearised,
  damped: Triangular,
  straight: Float64Array,
) {
  const part = 0.1;
  const size = straight.length;
  const probe = evaluate(
    fit,
    place.parameters.map((value, j) => value + part * straight[j]!),
  );
  if (!probe) return { move: straight, bend: Number.POSITIVE_INFINITY };
  const turned = new Float64Array(size);
  for (let i = 0, k = 0; i < place.residuals.length; i++, k += size) {
    let along = 0;
    for (let j = 0; j < size; j++) along += linear.slopes[k + j]! * linear.scale[j]! * straight[j]!;
    const second = (2 / part) * ((place.residuals[i]! - probe.residuals[i]!) / part - along);
    for (let j = 0; j < size; j++) turned[j] = turned[j]! + linear.slopes[k + j]! * second;
  }
  const solved = solveUpper(damped.r, solveLower(damped.r, turned, size), size);
  const correction = solved.map((value, j) => (-0.5 * value) / linear.scale[j]!);
  const length = (move: Float64Array) => Math.hypot(...move.map((value, j) => value * linear.scale[j]!));
  const bend = length(correction) / (length(straight) || 1);
  return { move: straight.map((value, j) => value + correction[j]!), bend };
}

/** x with Rᵀ x = y, R upper triangular. */
function solveLower(r: Float64Array, y: Float64Array, size: number): Float64Array {
  const x = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    let sum = y[i]!;
    for (let j = 0; j < i; j++) sum -= r[j * size + i]! * x[j]!;
    x[i] = sum / r[i * size + i]!;
  }
  return x;
}

/** How much the linearised problem promises to take off the sum of squares: |Qᵀr|² − |Qᵀr − R h|². */
function predictedGain({ triangle, scale }: Linearised, move: Float64Array): number {
  const { size, r, projected } = triangle;
  let gain = 0;
  for (let i = 0; i < size; i++) {
    let moved = 0;
    for (let j = i; j < size; j++) moved += r[i * size + j]! * move[j]! * scale[j]!;
    gain += moved * (2 * projected[i]! - moved);
  }
  return gain;
}
