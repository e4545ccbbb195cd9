/** Rows of a small matrix. */
export type Matrix = readonly Float64Array[];

/** a · b. */
export function multiply(a: Matrix, b: Matrix): Float64Array[] {
  return a.map((row) =>
    Float64Array.from(b[0]!, (_, k) => row.reduce((sum, value, j) => sum + value * b[j]![k]!, 0)),
  );
}

/** Sum of the diagonal. */
export function trace(a: Matrix): number {
  return a.reduce((sum, row, i) => sum + row[i]!, 0);
}

/** Adds `factor` · `what` to `to`, in place. */
export function addMatrix(to: Matrix, what: Matrix, factor: number): void {
  to.forEach((row, i) => {
    for (let k = 0; k < row.length; k++) row[k] = row[k]! + factor * what[i]![k]!;
  });
}

/** leftᵀ · matrix · right. */
export function quadratic(left: ArrayLike<number>, matrix: Matrix, right: ArrayLike<number>): number {
  return matrix.reduce(
    (sum, row, i) => sum + row.reduce((inner, value, k) => inner + left[i]! * value * right[k]!, 0),
    0,
  );
}

/** Inverse of a symmetric positive definite matrix: Gauss and Jordan after scaling to a unit diagonal, no pivots needed. */
export function invertPositive(matrix: Matrix): Float64Array[] {
  const size = matrix.length;
  const scale = matrix.map((row, i) => Math.sqrt(row[i]!) || 1);
  const work = matrix.map((row, i) => {
    const wide = new Float64Array(2 * size);
    row.forEach((value, k) => {
      wide[k] = value / (scale[i]! * scale[k]!);
    });
    wide[size + i] = 1;
    return wide;
  });
  for (let j = 0; j < size; j++) {
    const top = work[j]!.map((value) => value / work[j]![j]!);
    work[j] = top;
    for (const [i, row] of work.entries()) {
      const factor = i === j ? 0 : row[j]!;
      for (let k = 0; k < row.length; k++) row[k] = row[k]! - factor * top[k]!;
    }
  }
  return work.map((row, i) => row.slice(size).map((value, k) => value / (scale[i]! * scale[k]!)));
}
