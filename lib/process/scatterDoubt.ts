import {
  addMatrix,
  invertPositive,
  type Matrix,
  multiply,
  quadratic,
  trace,
} from '../numerics/smallMatrix.ts';

/**
 * How far the doubt about the scatter reaches into the parameters of a weighted fit whose weights were estimated from
 * the same marks: M. G. Kenward & J. H. Roger, Biometrics 53, 983 (1997) (memory).
 */
export interface ScatterDoubt {
  /** Covariance of the parameters, with what the estimated weights add. */
  readonly covariance: readonly Float64Array[];
  /** Degrees of freedom, for Student's t, of the variance of the combination of parameters with these factors. */
  freedomAlong(direction: ArrayLike<number>): number;
}

/**
 * From the derivatives of the areas by the parameters (a column each), the parts of the variance (a column each, times
 * its share, so that they add up to it), and the belief in each share beforehand, in marks.
 */
export function doubtOf(derivatives: Matrix, parts: Matrix, prior: number): ScatterDoubt {
  const variance = parts[0]!.map((_, i) => parts.reduce((sum, part) => sum + part[i]!, 0));
  const share = parts.map((part) => part.map((value, i) => value / variance[i]!));
  const weigh = (weight: Float64Array) => weightedProducts(derivatives, weight);
  const plain = invertPositive(weigh(variance.map((value) => 1 / value)));
  const single = share.map((part) => weigh(part.map((value, i) => value / variance[i]!)));
  const both = share.map((left) =>
    share.map((right) => weigh(left.map((value, i) => (value * right[i]!) / variance[i]!))),
  );
  // What the marks know of the shares: ½ tr(P X_k P X_l), P the projection off the parameters.
  const information = share.map((left, k) =>
    Float64Array.from(share, (right, l) => {
      const straight = left.reduce((sum, value, i) => sum + value * right[i]!, 0);
      const once = trace(multiply(plain, both[k]![l]!));
      const twice = trace(multiply(multiply(plain, single[k]!), multiply(plain, single[l]!)));
      return (straight - 2 * once + twice + (k === l ? prior : 0)) / 2;
    }),
  );
  const doubt = invertPositive(information);
  const added = plain.map((row) => new Float64Array(row.length));
  share.forEach((_, k) => {
    share.forEach((_other, l) => {
      addMatrix(added, both[k]![l]!, doubt[k]![l]!);
      addMatrix(added, multiply(multiply(single[k]!, plain), single[l]!), -doubt[k]![l]!);
    });
  });
  const covariance = plain.map((row) => Float64Array.from(row));
  addMatrix(covariance, multiply(multiply(plain, added), plain), 2);
  const moves = single.map((matrix) => multiply(multiply(plain, matrix), plain));
  const freedomAlong = (direction: ArrayLike<number>) => {
    const change = moves.map((move) => quadratic(direction, move, direction));
    return (2 * quadratic(direction, plain, direction) ** 2) / quadratic(change, doubt, change);
  };
  return { covariance, freedomAlong };
}

/** Sums of products of two columns, weighted, for all pairs. */
function weightedProducts(columns: Matrix, weight: Float64Array): Float64Array[] {
  return columns.map((left) =>
    Float64Array.from(columns, (right) =>
      left.reduce((sum, value, i) => sum + value * right[i]! * weight[i]!, 0),
    ),
  );
}
