import { besselJ0, besselJ1 } from './bessel.ts';

/**
 * J_0(x) … J_M(x) for real x, M = `highest`; written into `out` (length M+1 or more) where given.
 * Below |x| = 1e-8 the leading term; upward recurrence while M ≤ |x|, where it is stable; else Miller's
 * downward recurrence, normalised by J0 or J1, whichever is larger. Absolute error 1e-14 for |x| ≤ 200.
 * Source: NIST Digital Library of Mathematical Functions, §3.6 and §10.74(iv) (memory).
 */
export function besselOrders(
  x: number,
  highest: number,
  out: Float64Array = new Float64Array(highest + 1),
): Float64Array {
  const size = Math.abs(x);
  if (size < 1e-8) fillLeadingTerms(size, highest, out);
  else if (highest <= size) recurUpward(size, highest, out);
  else {
    recurDownward(size, highest, startOrder(size, highest), -1, out);
    const j0 = besselJ0(size);
    const j1 = besselJ1(size);
    scale(out, highest, Math.abs(j0) >= Math.abs(j1) ? j0 / out[0]! : j1 / out[1]!);
  }
  if (x < 0) negateOddOrders(out, highest);
  return out;
}

/**
 * e^{−|x|} I_0(x) … e^{−|x|} I_M(x) for real x, M = `highest`. Miller's recurrence with I0 + 2ΣI_m = e^x,
 * all terms positive: relative error 1e-14 for |x| ≤ 1000.
 * Source: NIST Digital Library of Mathematical Functions, §3.6 and 10.35.5 (memory).
 */
export function scaledModifiedBesselOrders(
  x: number,
  highest: number,
  out: Float64Array = new Float64Array(highest + 1),
): Float64Array {
  const size = Math.abs(x);
  if (size < 1e-8) {
    fillLeadingTerms(size, highest, out);
    scale(out, highest, Math.exp(-size));
  } else {
    // I_m falls like e^{−m²/2x}: √x orders of 10 more leave e^{−50}.
    const start = highest + 20 + Math.ceil(10 * Math.sqrt(size));
    scale(out, highest, 1 / recurDownward(size, highest, start, 1, out));
  }
  if (x < 0) negateOddOrders(out, highest);
  return out;
}

/** (x/2)^m/m!: the next term is x²/4 < 3e-17 of it. */
function fillLeadingTerms(x: number, highest: number, out: Float64Array): void {
  out[0] = 1;
  for (let m = 1; m <= highest; m++) out[m] = (out[m - 1]! * x) / (2 * m);
}

function recurUpward(x: number, highest: number, out: Float64Array): void {
  out[0] = besselJ0(x);
  if (highest > 0) out[1] = besselJ1(x);
  for (let m = 1; m < highest; m++) out[m + 1] = ((2 * m) / x) * out[m]! - out[m - 1]!;
}

/** Past the turning point J_n falls like Ai: 12 x^{1/3} orders more leave less than 1e-17. */
function startOrder(x: number, highest: number): number {
  return highest + 20 + Math.ceil(12 * Math.cbrt(x));
}

/**
 * f_{m−1} = (2m/x) f_m + sign·f_{m+1} from `start` down, kept below 1e200 on the way; returns f_0 + 2Σf_m.
 */
function recurDownward(x: number, highest: number, start: number, sign: number, out: Float64Array): number {
  let above = 0;
  let here = 1e-200;
  let sum = 2 * here;
  for (let m = start; m > 0; m--) {
    const below = ((2 * m) / x) * here + sign * above;
    above = here;
    here = below;
    if (m - 1 <= highest) out[m - 1] = here;
    sum += m > 1 ? 2 * here : here;
    if (Math.abs(here) > 1e200) {
      here *= 1e-200;
      above *= 1e-200;
      sum *= 1e-200;
      for (let k = m - 1; k <= highest; k++) out[k]! *= 1e-200;
    }
  }
  return sum;
}

function scale(out: Float64Array, highest: number, factor: number): void {
  for (let m = 0; m <= highest; m++) out[m]! *= factor;
}

function negateOddOrders(out: Float64Array, highest: number): void {
  for (let m = 1; m <= highest; m += 2) out[m] = -out[m]!;
}
