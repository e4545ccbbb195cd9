import { gaussLegendre } from './gaussLegendre.ts';

/** How a long sum is walked. */
export interface SmoothSum {
  /** Terms over which the summand changes by its own size, at index i: the shorter of several lengths. */
  readonly scale: (i: number) => number;
  /** Fewest terms that are taken together; more are more exact. 24 where left out. */
  readonly least?: number;
  /** True from the index on where all that is left counts nothing. */
  readonly done?: (i: number) => boolean;
}

const rule = gaussLegendre(8);

/**
 * Σ term(i) over the whole numbers from `from` to `to`, of a summand that is defined between them and a step beyond.
 * Where it changes fast its terms are added one by one; where half its scale holds `least` of them or more they are an
 * integral, by Euler and Maclaurin with the first correction. What that leaves out is 7/5760 + 1/576 of the third
 * difference at either end: 1e-6 of one term for `least` = 24, 3e-5 for 8.
 */
export function smoothSum(term: (i: number) => number, from: number, to: number, sum: SmoothSum): number {
  const { scale, least = 24, done } = sum;
  let total = 0;
  let i = from;
  while (i <= to && !done?.(i)) {
    const here = scale(i) / 2;
    const size = Math.floor(Math.min(here, scale(Math.min(to, i + here)) / 2, to - i + 1));
    if (size < least) total += term(i++);
    else {
      total += panel(term, i, i + size - 1);
      i += size;
    }
  }
  return total;
}

/** Terms from a to b as an integral with its correction. */
function panel(term: (i: number) => number, a: number, b: number): number {
  const half = (b - a + 1) / 2;
  const middle = (a + b) / 2;
  let integral = 0;
  for (let k = 0; k < rule.nodes.length; k++)
    integral += rule.weights[k]! * term(middle + half * rule.nodes[k]!);
  const slopes = term(b + 1) - term(b) - (term(a) - term(a - 1));
  return half * integral - slopes / 24;
}
