import { findRoot } from './roots.ts';

/** ln Γ(x) for x > 0, to 1e-14 relative: Lanczos' series of nine terms, g = 7 (memory). */
export function logGamma(x: number): number {
  const terms = [
    0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
    12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
  ];
  const shift = x + 6.5;
  const sum = terms.reduce((total, term, i) => (i === 0 ? term : total + term / (x + i - 1)), 0);
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(shift) - shift + Math.log(sum);
}

/**
 * Regularised incomplete beta function I_x(a, b) for a, b > 0 and 0 ≤ x ≤ 1, by its continued fraction
 * (NIST Digital Library of Mathematical Functions, 8.17.22; summed after Lentz (memory)).
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  // The fraction converges quickly below the mean; above it the mirrored one does.
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(
    logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x) - Math.log(a),
  );
  return front * betaFraction(x, a, b);
}

function betaFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  const away = (value: number) => (Math.abs(value) < tiny ? tiny : value);
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let sum = d;
  for (let m = 1; m < 1000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    for (const term of [even, odd]) {
      d = 1 / away(1 + term * d);
      c = away(1 + term / c);
      sum *= c * d;
    }
    if (Math.abs(c * d - 1) < 1e-15) break;
  }
  return sum;
}

/** Probability that |t| of Student's distribution with `freedom` degrees exceeds `t` in size: both tails. */
export function studentTails(t: number, freedom: number): number {
  return incompleteBeta(freedom / (freedom + t * t), freedom / 2, 0.5);
}

/** The t that Student's |t| with `freedom` degrees exceeds with probability 1 − `level`: 2.228 for 0.95 and 10. */
export function studentQuantile(level: number, freedom: number): number {
  const tails = (x: number) => studentTails(Math.tan((x * Math.PI) / 2), freedom) - (1 - level);
  return Math.tan((findRoot(tails, 0, 1 - 1e-9) * Math.PI) / 2);
}

/** Probability that F of Fisher's distribution with (`above`, `below`) degrees of freedom exceeds `ratio`. */
export function fisherTail(ratio: number, above: number, below: number): number {
  return ratio <= 0 ? 1 : incompleteBeta(below / (below + above * ratio), below / 2, above / 2);
}

/** Probability that χ² with `freedom` degrees exceeds `value`, by series or continued fraction (DLMF 8.11.4, 8.9.2). */
export function chiSquareTail(value: number, freedom: number): number {
  const [a, x] = [freedom / 2, value / 2];
  if (x <= 0) return 1;
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; term > 1e-16 * sum; n++) {
      term *= x / (a + n);
      sum += term;
    }
    return 1 - front * sum;
  }
  let fraction = 0;
  for (let n = 200; n > 0; n--) fraction = (n * (n - a)) / (x + 2 * n + 1 - a - fraction);
  return front / (x + 1 - a - fraction);
}

/**
 * Probability of at most `runs` runs in a random order of `first` signs of one kind and `second` of the other, by
 * counting (A. Wald & J. Wolfowitz, Ann. Math. Statist. 11, 147 (1940) (memory)). 1 where one kind is missing.
 */
export function fewRunsProbability(runs: number, first: number, second: number): number {
  if (first === 0 || second === 0) return 1;
  const choose = (n: number, k: number) =>
    k < 0 || k > n ? 0 : Math.exp(logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1));
  const all = choose(first + second, first);
  let found = 0;
  for (let r = 2; r <= runs; r++) {
    const half = Math.floor(r / 2);
    const ways = (a: number, b: number) => choose(first - 1, a) * choose(second - 1, b);
    found += r % 2 === 0 ? 2 * ways(half - 1, half - 1) : ways(half, half - 1) + ways(half - 1, half);
  }
  return Math.min(1, found / all);
}
