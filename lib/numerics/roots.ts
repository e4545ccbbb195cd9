/**
 * A root of `f` between `low` and `high`, where f changes sign: Brent's method
 * (R. P. Brent, Algorithms for Minimization without Derivatives (1973), ch. 4 (memory)).
 * Returns x to `tolerance` absolute plus rounding. Throws RangeError where f has one sign at both ends.
 */
export function findRoot(f: (x: number) => number, low: number, high: number, tolerance = 1e-13): number {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0) throw new RangeError(`No change of sign between ${low} and ${high}.`);
  let c = a;
  let fc = fa;
  let step = b - a;
  let last = step;
  for (let i = 0; i < 200; i++) {
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      step = last = b - a;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const near = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= near || fb === 0) return b;
    [step, last] = nextStep(a, fa, b, fb, c, fc, half, last, step, near);
    a = b;
    fa = fb;
    b += Math.abs(step) > near ? step : Math.sign(half) * near;
    fb = f(b);
  }
  return b;
}

/** Interpolated step where it falls inside the bracket and shrinks, else bisection. */
function nextStep(
  a: number,
  fa: number,
  b: number,
  fb: number,
  c: number,
  fc: number,
  half: number,
  last: number,
  step: number,
  near: number,
): [number, number] {
  if (Math.abs(last) < near || Math.abs(fa) <= Math.abs(fb)) return [half, half];
  const s = fb / fa;
  let p: number;
  let q: number;
  if (a === c) {
    p = 2 * half * s;
    q = 1 - s;
  } else {
    const t = fa / fc;
    const r = fb / fc;
    p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
    q = (t - 1) * (r - 1) * (s - 1);
  }
  if (p > 0) q = -q;
  p = Math.abs(p);
  if (2 * p < Math.min(3 * half * q - Math.abs(near * q), Math.abs(last * q))) return [p / q, step];
  return [half, half];
}

/** All roots of `f` that change sign between `count` + 1 equally spaced points of [low, high], ascending. */
export function findRoots(
  f: (x: number) => number,
  low: number,
  high: number,
  count: number,
  tolerance = 1e-13,
): number[] {
  const roots: number[] = [];
  let x = low;
  let fx = f(x);
  for (let i = 1; i <= count; i++) {
    const next = low + ((high - low) * i) / count;
    const fNext = f(next);
    if (fx === 0) roots.push(x);
    else if (fNext !== 0 && fx > 0 !== fNext > 0) roots.push(findRoot(f, x, next, tolerance));
    x = next;
    fx = fNext;
  }
  if (fx === 0) roots.push(x);
  return roots;
}
