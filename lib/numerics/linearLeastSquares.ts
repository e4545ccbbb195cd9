import { Problem } from '../problem.ts';

/** What a least-squares fit returns. p is the number of parameters. */
export interface FitResult {
  /** Best parameters, length p. */
  readonly parameters: Float64Array;
  /** Covariance of the parameters, p rows of p. */
  readonly covariance: readonly Float64Array[];
  /** Standard uncertainties, the roots of the covariance's diagonal. */
  readonly standardUncertainties: Float64Array;
  /** Sum of squared residuals, each divided by its uncertainty. */
  readonly residualSumOfSquares: number;
  /** Observations minus parameters, at least 1. */
  readonly degreesOfFreedom: number;
  /** Residual sum over degrees of freedom: near 1 where absolute uncertainties and model are right. */
  readonly reducedChiSquare: number;
}

/** How the observations are weighted. */
export interface FitWeights {
  /** Standard uncertainty of each observation, above 0; all 1 when left out. */
  readonly uncertainties?: ArrayLike<number>;
  /**
   * True: the uncertainties are known in the observations' unit and the covariance follows from them.
   * False (default): only their ratios count; the covariance is scaled by the reduced chi².
   */
  readonly absolute?: boolean;
}

/** Upper triangle R (p × p, row by row), the first p entries of Qᵀy and what is left of y beyond them. */
export interface Triangular {
  readonly size: number;
  readonly r: Float64Array;
  readonly projected: Float64Array;
  readonly leftSquares: number;
}

/**
 * Linear least squares: parameters b that minimise |(y − X b)/u|², by Householder reflections with columns
 * scaled to unit length (Å. Björck, Numerical Methods for Least Squares Problems (1996), §2.4 (memory)).
 * `design` holds X row by row, length observations × `columns`. Throws Problem 'impossible' where there are
 * not more observations than columns or the columns depend on each other.
 */
export function fitLinear(
  design: ArrayLike<number>,
  observed: ArrayLike<number>,
  columns: number,
  weights: FitWeights = {},
): FitResult {
  const rows = observed.length;
  const matrix = Float64Array.from(design);
  const right = Float64Array.from(observed);
  for (let i = 0; i < rows; i++) {
    const weight = 1 / (weights.uncertainties?.[i] ?? 1);
    right[i] = right[i]! * weight;
    for (let j = 0; j < columns; j++) matrix[i * columns + j] = matrix[i * columns + j]! * weight;
  }
  const scale = scaleColumns(matrix, rows, columns);
  const triangle = triangularise(matrix, right, rows, columns);
  const parameters = solveUpper(triangle.r, triangle.projected, columns).map((value, j) => value / scale[j]!);
  return describeFit(parameters, triangle, scale, rows, weights.absolute ?? false);
}

/** Divides each column by its length, in place; returns the lengths (1 for a column of zeros). */
export function scaleColumns(matrix: Float64Array, rows: number, columns: number): Float64Array {
  const scale = new Float64Array(columns);
  for (let i = 0, k = 0; i < rows; i++)
    for (let j = 0; j < columns; j++, k++) scale[j] = scale[j]! + matrix[k]! ** 2;
  for (let j = 0; j < columns; j++) scale[j] = Math.sqrt(scale[j]!) || 1;
  for (let i = 0, k = 0; i < rows; i++)
    for (let j = 0; j < columns; j++, k++) matrix[k] = matrix[k]! / scale[j]!;
  return scale;
}

/** Householder reflections on `matrix` (rows × columns, row by row) and `right`, both used up. */
export function triangularise(
  matrix: Float64Array,
  right: Float64Array,
  rows: number,
  columns: number,
): Triangular {
  for (let j = 0; j < columns; j++) reflect(matrix, right, rows, columns, j);
  const r = new Float64Array(columns * columns);
  for (let i = 0; i < Math.min(rows, columns); i++) {
    for (let j = i; j < columns; j++) r[i * columns + j] = matrix[i * columns + j]!;
  }
  let leftSquares = 0;
  for (let i = columns; i < rows; i++) leftSquares += right[i]! ** 2;
  return { size: columns, r, projected: right.slice(0, columns), leftSquares };
}

/** One reflection: zeros column `at` below its diagonal, row-wise passes so that memory is read in order. */
function reflect(matrix: Float64Array, right: Float64Array, rows: number, columns: number, at: number): void {
  let squares = 0;
  for (let i = at; i < rows; i++) squares += matrix[i * columns + at]! ** 2;
  if (squares === 0) return;
  const head = matrix[at * columns + at]!;
  const diagonal = head > 0 ? -Math.sqrt(squares) : Math.sqrt(squares);
  const factor = 1 / (squares - head * diagonal);
  matrix[at * columns + at] = head - diagonal;
  const sums = new Float64Array(columns + 1);
  for (let i = at; i < rows; i++) {
    const v = matrix[i * columns + at]!;
    for (let j = at + 1; j < columns; j++) sums[j] = sums[j]! + v * matrix[i * columns + j]!;
    sums[columns] = sums[columns]! + v * right[i]!;
  }
  for (let i = at; i < rows; i++) {
    const v = matrix[i * columns + at]! * factor;
    for (let j = at + 1; j < columns; j++) matrix[i * columns + j] = matrix[i * columns + j]! - v * sums[j]!;
    right[i] = right[i]! - v * sums[columns]!;
  }
  matrix[at * columns + at] = diagonal;
}

/** x with R x = y, R upper triangular, size × size. A zero on the diagonal gives Infinity. */
export function solveUpper(r: Float64Array, y: Float64Array, size: number): Float64Array {
  const x = new Float64Array(size);
  for (let i = size - 1; i >= 0; i--) {
    let sum = y[i]!;
    for (let j = i + 1; j < size; j++) sum -= r[i * size + j]! * x[j]!;
    x[i] = sum / r[i * size + i]!;
  }
  return x;
}

/** The result from parameters and the triangle of the scaled design; covariance = R⁻¹R⁻ᵀ, scaled back. */
export function describeFit(
  parameters: Float64Array,
  triangle: Triangular,
  scale: Float64Array,
  rows: number,
  absolute: boolean,
): FitResult {
  const { size, r, leftSquares } = triangle;
  const degreesOfFreedom = rows - size;
  checkDetermined(triangle, rows);
  const reducedChiSquare = leftSquares / degreesOfFreedom;
  const columns = Array.from({ length: size }, (_, j) => {
    const unit = new Float64Array(size);
    unit[j] = 1;
    return solveUpper(r, unit, size);
  });
  const factor = absolute ? 1 : reducedChiSquare;
  const entry = (i: number, k: number) =>
    (factor * columns.reduce((sum, column) => sum + column[i]! * column[k]!, 0)) / (scale[i]! * scale[k]!);
  const covariance = Array.from({ length: size }, (_, i) =>
    Float64Array.from(parameters, (_value, k) => entry(i, k)),
  );
  const standardUncertainties = Float64Array.from(covariance, (row, i) => Math.sqrt(row[i]!));
  return {
    parameters,
    covariance,
    standardUncertainties,
    residualSumOfSquares: leftSquares,
    degreesOfFreedom,
    reducedChiSquare,
  };
}

function checkDetermined({ size, r }: Triangular, rows: number): void {
  if (rows <= size) {
    throw new Problem(
      'impossible',
      `${rows} observations cannot determine ${size} parameters and their uncertainty: at least ${size + 1} are needed. Add observations.`,
      { value: String(rows), allowed: `${size + 1} or more` },
    );
  }
  // The columns have unit length, so a diagonal of 1e-14 is rounding error alone.
  for (let j = 0; j < size; j++) {
    if (Math.abs(r[j * size + j]!) > 1e-14) continue;
    throw new Problem(
      'impossible',
      `Parameter ${j + 1} of ${size} is not determined: the observations do not tell it from the others. Spread the observations wider.`,
    );
  }
}
