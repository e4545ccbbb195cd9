import { studentTails } from '../numerics/distributions.ts';
import type { AreaFit } from './areaFit.ts';
import type { FitCheck } from './fitCheck.ts';

/** A direction in which a wrong model would move the areas. */
export interface Alternative {
  readonly kind: FitCheck['kind'];
  /** Change of each area, m², in any size. */
  readonly change: Float64Array;
  /** True where the wrong model would move the areas this way only, not the opposite one. */
  readonly oneWay?: boolean;
  /** Sentence for the verdict where the marks lie in that direction. */
  readonly text: string;
}

/** Squared deviations, in those of the scatter, that are no more than rounding: for exact marks, as from a calculation. */
export const rounding = 1e-6;

/** Directions that share more than this part (squared cosine) cannot be told apart by some 30 marks: one check for both. */
const alike = 0.9;

/** An alternative with its direction in standard deviations, of length 1, at right angles to what the parameters do. */
interface Direction extends Pick<Alternative, 'kind' | 'text'> {
  readonly column: Float64Array;
  readonly oneWay: boolean;
}

/**
 * For each alternative t of one more parameter that moves the areas along its `change`, the others free. Those that the
 * parameters can follow are left out, and those alike an earlier one, so that no false alarms are kept for
 * the same question twice. None below two degrees of freedom beside it.
 */
export function checkAlternatives(
  alternatives: readonly Alternative[],
  deviations: readonly number[],
  fit: AreaFit,
): Omit<FitCheck, 'passed'>[] {
  const freedom = fit.degreesOfFreedom - 1;
  if (freedom < 2) return [];
  const strip = stripperOf(fit);
  const rest = strip(Float64Array.from(deviations));
  return directionsOf(alternatives, fit, strip).map(({ kind, text, column, oneWay }) => {
    const along = dot(rest, column);
    const left = (dot(rest, rest) - along * along) / freedom;
    const tails = studentTails(Math.abs(along) / Math.sqrt(left + rounding), freedom);
    const probability = oneWay ? (along > 0 ? tails / 2 : 1 - tails / 2) : tails;
    return { kind, probability, text };
  });
}

type Strip = (column: Float64Array) => Float64Array;

/** Takes off a column, in standard deviations, what the parameters can follow. */
function stripperOf(fit: AreaFit): Strip {
  const basis: Float64Array[] = [];
  const strip: Strip = (column) => {
    // Twice, so that rounding does not bring back what was taken off.
    for (const taken of [...basis, ...basis]) {
      const share = dot(column, taken);
      for (let i = 0; i < column.length; i++) column[i]! -= share * taken[i]!;
    }
    return column;
  };
  for (const derivative of fit.derivatives) {
    const column = strip(derivative.map((value, i) => value / fit.spread[i]!));
    const length = Math.sqrt(dot(column, column));
    if (length > 0) basis.push(column.map((value) => value / length));
  }
  return strip;
}

function directionsOf(alternatives: readonly Alternative[], fit: AreaFit, strip: Strip): Direction[] {
  const found: Direction[] = [];
  for (const { kind, text, change, oneWay = false } of alternatives) {
    const weighted = change.map((value, i) => value / fit.spread[i]!);
    const before = dot(weighted, weighted);
    const stripped = strip(weighted);
    const length = dot(stripped, stripped);
    // What the parameters can follow to a thousandth is no other direction.
    if (!(length > 1e-6 * before)) continue;
    const column = stripped.map((value) => value / Math.sqrt(length));
    const same = found.findIndex((other) => dot(other.column, column) ** 2 > alike);
    const known = found[same];
    if (!known) found.push({ kind, text, column, oneWay });
    else if (!oneWay || dot(known.column, column) < 0) found[same] = { ...known, oneWay: false };
  }
  return found;
}

function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
