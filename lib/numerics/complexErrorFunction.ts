import type { Complex } from './complex.ts';

// Eleven nodes and h = √(π/12): relative error below 1.5e-15 in the upper half plane (3000 points, 40 digits).
const nodeCount = 11;
const spacing = Math.sqrt(Math.PI / (nodeCount + 1));
/** Nodes (k+½)h of the midpoint rule. */
const midpoints = squaresAndWeights(0.5, nodeCount + 1);
/** Nodes kh, k ≥ 1, of the trapezoidal rule. */
const gridpoints = squaresAndWeights(1, nodeCount);
/** From this imaginary part on, the pole's term is below e^{−75} of w. */
const farFromPoles = Math.PI / spacing;

function squaresAndWeights(first: number, count: number): { squares: Float64Array; weights: Float64Array } {
  const squares = Float64Array.from({ length: count }, (_, k) => ((first + k) * spacing) ** 2);
  return { squares, weights: squares.map((square) => Math.exp(-square)) };
}

/**
 * Faddeeva function w(z) = e^{−z²} erfc(−iz), z = x + iy. Relative error 2e-15 for y ≥ 0; in the lower half
 * plane w = 2e^{−z²} − w(−z), whose absolute error is 2e-15 of the larger term, and which overflows
 * where y² − x² > 709.
 * Source: M. Al Azah & S. N. Chandler-Wilde, SIAM J. Numer. Anal. 59, 2346 (2021), modified trapezoidal rules.
 */
export function faddeeva(x: number, y: number): Complex {
  if (y < 0) {
    const upper = faddeeva(-x, -y);
    const gauss = gaussian(x, y);
    return { re: 2 * gauss.re - upper.re, im: 2 * gauss.im - upper.im };
  }
  if (x < 0) {
    const mirrored = faddeeva(-x, y);
    return { re: mirrored.re, im: -mirrored.im };
  }
  const fraction = x / spacing - Math.floor(x / spacing);
  const onGrid = y < x && fraction >= 0.25 && fraction <= 0.75;
  const sum = onGrid ? gridSum(x, y) : poleSum(x, y, midpoints);
  if (y >= farFromPoles) return sum;
  const pole = poleTerm(x, y, onGrid ? -1 : 1);
  return { re: sum.re + pole.re, im: sum.im + pole.im };
}

/** e^{−z²}. */
function gaussian(x: number, y: number): Complex {
  const size = Math.exp((y - x) * (y + x));
  return { re: size * Math.cos(2 * x * y), im: -size * Math.sin(2 * x * y) };
}

/** (2ihz/π) Σ e^{−t²}/(z² − t²). */
function poleSum(x: number, y: number, rule: { squares: Float64Array; weights: Float64Array }): Complex {
  const squareRe = (x - y) * (x + y);
  const squareIm = 2 * x * y;
  let sumRe = 0;
  let sumIm = 0;
  for (let k = 0; k < rule.squares.length; k++) {
    const re = squareRe - rule.squares[k]!;
    const scale = rule.weights[k]! / (re * re + squareIm * squareIm);
    sumRe += re * scale;
    sumIm -= squareIm * scale;
  }
  const factor = (2 * spacing) / Math.PI;
  return { re: -factor * (y * sumRe + x * sumIm), im: factor * (x * sumRe - y * sumIm) };
}

/** The trapezoidal rule: node 0 contributes ih/(πz). */
function gridSum(x: number, y: number): Complex {
  const sum = poleSum(x, y, gridpoints);
  const factor = spacing / (Math.PI * (x * x + y * y));
  return { re: sum.re + factor * y, im: sum.im + factor * x };
}

/** 2e^{−z²}/(1 + sign·e^{−2iπz/h}), the residue of the pole between the nodes. */
function poleTerm(x: number, y: number, sign: number): Complex {
  const gauss = gaussian(x, y);
  const size = sign * Math.exp((2 * Math.PI * y) / spacing);
  const angle = (2 * Math.PI * x) / spacing;
  const re = 1 + size * Math.cos(angle);
  const im = -size * Math.sin(angle);
  const scale = 2 / (re * re + im * im);
  return { re: scale * (gauss.re * re + gauss.im * im), im: scale * (gauss.im * re - gauss.re * im) };
}

/**
 * erf(z), z = x + iy. Error 1e-14 of |erf z|; overflows where y² − x² > 709.
 * Source: Maclaurin series with e^{−z²} taken out (M. Abramowitz & I. A. Stegun, NBS AMS 55 (1964),
 * 7.1.6 (memory)) for |z| < 1.5, beyond it 1 − e^{−z²} w(iz).
 */
export function complexErrorFunction(x: number, y: number): Complex {
  if (x < 0) {
    const mirrored = complexErrorFunction(-x, -y);
    return { re: -mirrored.re, im: -mirrored.im };
  }
  const gauss = gaussian(x, y);
  if (x * x + y * y < 2.25) return seriesOfErrorFunction(x, y, gauss);
  const w = faddeeva(-y, x);
  return { re: 1 - (gauss.re * w.re - gauss.im * w.im), im: -(gauss.re * w.im + gauss.im * w.re) };
}

/** (2/√π) e^{−z²} Σ 2^n z^{2n+1}/(1·3·…·(2n+1)); 40 terms reach 1e-17 at |z| = 1.5. */
function seriesOfErrorFunction(x: number, y: number, gauss: Complex): Complex {
  const squareRe = 2 * (x - y) * (x + y);
  const squareIm = 4 * x * y;
  let termRe = x;
  let termIm = y;
  let sumRe = x;
  let sumIm = y;
  for (let n = 1; n <= 40; n++) {
    const odd = 2 * n + 1;
    [termRe, termIm] = [
      (termRe * squareRe - termIm * squareIm) / odd,
      (termRe * squareIm + termIm * squareRe) / odd,
    ];
    sumRe += termRe;
    sumIm += termIm;
  }
  const factor = 2 / Math.sqrt(Math.PI);
  return {
    re: factor * (gauss.re * sumRe - gauss.im * sumIm),
    im: factor * (gauss.re * sumIm + gauss.im * sumRe),
  };
}

/** erf(x) for real x, to 1e-14 relative. */
export function errorFunction(x: number): number {
  return complexErrorFunction(x, 0).re;
}
