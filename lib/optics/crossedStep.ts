import type { Complex } from '../numerics/complex.ts';
import { errorFunction, faddeeva } from '../numerics/complexErrorFunction.ts';
import { findRoot } from '../numerics/roots.ts';
import { Problem } from '../problem.ts';
import type { Field } from './focalField.ts';

/**
 * A plate of straight steps along x and y. All lengths are half-widths in units of the 1/e² irradiance radius w.
 * - `crossed`: a strip |x| < halfWidthX and a strip |y| < halfWidthY, each delaying by `phase`; where they cross
 *   the delays add, so only phase = π gives two levels (π where exactly one strip covers).
 * - `island`: the rectangle alone delays by `phase`.
 */
export interface SeparablePlate {
  readonly kind: 'crossed' | 'island';
  readonly halfWidthX: number;
  readonly halfWidthY: number;
  /** Delay in rad; the field is multiplied by e^{+iφ}. */
  readonly phase: number;
  /** Half-widths of the rectangular stop; null where the plate is open in that direction. */
  readonly stopX: number | null;
  readonly stopY: number | null;
}

/**
 * One-dimensional focal field of a slit, (1/√π) ∫ e^{−(1+iζ)s² − 2iξs} ds over |s| < `halfWidth`
 * (null: no slit), at each ξ. 1 at ξ = ζ = 0 without slit; absolute error 2e-15.
 * Source: closed form with the complex error function, written with w(z) so that nothing overflows.
 */
export function fieldOfSlit(halfWidth: number | null, zeta: number, xi: ArrayLike<number>): Field {
  const re = new Float64Array(xi.length);
  const im = new Float64Array(xi.length);
  const slit = prepareSlit(halfWidth, zeta);
  for (let i = 0; i < xi.length; i++) {
    const value = slitAt(slit, xi[i]!);
    re[i] = value.re;
    im[i] = value.im;
  }
  return { re, im };
}

/** What does not depend on ξ: √g and 1/√g for g = 1 + iζ, and the Gaussian at the slit's edge. */
interface Slit {
  readonly halfWidth: number | null;
  readonly zeta: number;
  readonly root: Complex;
  readonly inverseRoot: Complex;
  readonly edge: number;
}

function prepareSlit(halfWidth: number | null, zeta: number): Slit {
  const size = Math.sqrt(Math.hypot(1, zeta));
  const half = Math.atan(zeta) / 2;
  const cos = Math.cos(half);
  const sin = Math.sin(half);
  return {
    halfWidth,
    zeta,
    root: { re: size * cos, im: size * sin },
    inverseRoot: { re: cos / size, im: -sin / size },
    edge: halfWidth === null ? 0 : Math.exp(-halfWidth * halfWidth),
  };
}

function slitAt(slit: Slit, xi: number): Complex {
  const { zeta, inverseRoot } = slit;
  const open = 1 + zeta * zeta;
  const size = 2 * Math.exp((-xi * xi) / open);
  const angle = (xi * xi * zeta) / open;
  // Twice e^{−ξ²/g}: the whole line, from which the two ends beyond the slit are taken.
  let re = size * Math.cos(angle);
  let im = size * Math.sin(angle);
  if (slit.halfWidth !== null) {
    const whole = { re, im };
    const right = lineBeyond(slit, slit.halfWidth, xi, whole);
    const left = lineBeyond(slit, slit.halfWidth, -xi, whole);
    re -= right.re + left.re;
    im -= right.im + left.im;
  }
  return {
    re: (re * inverseRoot.re - im * inverseRoot.im) / 2,
    im: (re * inverseRoot.im + im * inverseRoot.re) / 2,
  };
}

/**
 * e^{−ξ²/g} erfc(Z), Z = √g b + iξ/√g, as e^{−gb²−2iξb} w(iZ), or by erfc(Z) = 2 − erfc(−Z) where Re Z < 0:
 * both bounded, while e^{−ξ²/g} and erfc alone under- and overflow from |ξ| ≈ 26 on.
 */
function lineBeyond(slit: Slit, b: number, xi: number, whole: Complex): Complex {
  const { root, inverseRoot, zeta } = slit;
  const zRe = b * root.re - xi * inverseRoot.im;
  const zIm = b * root.im + xi * inverseRoot.re;
  const w = zRe >= 0 ? faddeeva(-zIm, zRe) : faddeeva(zIm, -zRe);
  const angle = -zeta * b * b - 2 * xi * b;
  const cos = slit.edge * Math.cos(angle);
  const sin = slit.edge * Math.sin(angle);
  const re = cos * w.re - sin * w.im;
  const im = cos * w.im + sin * w.re;
  return zRe >= 0 ? { re, im } : { re: whole.re - re, im: whole.im - im };
}

/** Factors along one axis: `all` of the stop's opening, `strip` of the part inside the step. */
export function factorsAlong(
  stop: number | null,
  halfWidth: number,
  zeta: number,
  at: ArrayLike<number>,
): { readonly all: Field; readonly strip: Field } {
  const inside = stop === null ? halfWidth : Math.min(halfWidth, stop);
  return { all: fieldOfSlit(stop, zeta, at), strip: fieldOfSlit(inside, zeta, at) };
}

/** a + (e^{iφ} − 1) b for two fields of equal length. */
export function addStep(a: Field, b: Field, phase: number): Field {
  const re = a.re.slice();
  const im = a.im.slice();
  const stepRe = Math.cos(phase) - 1;
  const stepIm = Math.sin(phase);
  for (let i = 0; i < re.length; i++) {
    re[i]! += stepRe * b.re[i]! - stepIm * b.im[i]!;
    im[i]! += stepRe * b.im[i]! + stepIm * b.re[i]!;
  }
  return { re, im };
}

/** The field as Σ of outer products x·y: one pair for crossed strips, two for the island. */
function outerProducts(
  plate: SeparablePlate,
  zeta: number,
  xi: ArrayLike<number>,
  eta: ArrayLike<number>,
): [Field, Field][] {
  const x = factorsAlong(plate.stopX, plate.halfWidthX, zeta, xi);
  const y = factorsAlong(plate.stopY, plate.halfWidthY, zeta, eta);
  if (plate.kind === 'crossed')
    return [[addStep(x.all, x.strip, plate.phase), addStep(y.all, y.strip, plate.phase)]];
  const none = { re: new Float64Array(xi.length), im: new Float64Array(xi.length) };
  return [
    [x.all, y.all],
    [addStep(none, x.strip, plate.phase), y.strip],
  ];
}

/**
 * Focal field U of a plate of straight steps on the grid ξ × η, row by row (`eta.length` rows of `xi.length`);
 * ξ, η in units of λB/(πw), ζ effective defocus. |U|² = 1 at the centre of the unshaped, unstopped focus.
 * Absolute error 1e-14.
 */
export function fieldOfCrossedStep(
  plate: SeparablePlate,
  zeta: number,
  xi: ArrayLike<number>,
  eta: ArrayLike<number>,
): Field {
  const re = new Float64Array(xi.length * eta.length);
  const im = new Float64Array(xi.length * eta.length);
  for (const [x, y] of outerProducts(plate, zeta, xi, eta)) {
    for (let row = 0; row < eta.length; row++) {
      const yRe = y.re[row]!;
      const yIm = y.im[row]!;
      for (let column = 0, i = row * xi.length; column < xi.length; column++, i++) {
        re[i]! += x.re[column]! * yRe - x.im[column]! * yIm;
        im[i]! += x.re[column]! * yIm + x.im[column]! * yRe;
      }
    }
  }
  return { re, im };
}

/** |U|² of {@link fieldOfCrossedStep} on the same grid, relative to the unshaped focus. */
export function irradianceOfCrossedStep(
  plate: SeparablePlate,
  zeta: number,
  xi: ArrayLike<number>,
  eta: ArrayLike<number>,
): Float64Array {
  const { re, im } = fieldOfCrossedStep(plate, zeta, xi, eta);
  for (let i = 0; i < re.length; i++) re[i] = re[i]! * re[i]! + im[i]! * im[i]!;
  return re;
}

/** Share of the incident energy that passes the rectangular stop, 0 to 1. */
export function energyThroughRectangle(plate: SeparablePlate): number {
  const share = (stop: number | null) => (stop === null ? 1 : errorFunction(Math.SQRT2 * stop));
  return share(plate.stopX) * share(plate.stopY);
}

/**
 * Half-width κ (units of w) at which a square π plate of this kind has a dark centre in the focus, behind a
 * square stop of half-width `stop` (null: open). Crossed: 2 erf κ = erf X; island: √2 erf κ = erf X.
 */
export function halfWidthOfDarkCentre(kind: SeparablePlate['kind'], stop: number | null): number {
  return solveHalfWidth(stop, (x) => errorFunction(x) ** (kind === 'crossed' ? 1 : 2));
}

/**
 * Half-width κ (units of w) at which the profile of a square π plate is flattest in the focus (no curvature along
 * the axes): with m(κ) = erf κ − (2κ/√π)e^{−κ²}, crossed: 2m(κ) = m(X); island: 2 m(κ) erf κ = m(X) erf X.
 */
export function halfWidthOfFlattest(kind: SeparablePlate['kind'], stop: number | null): number {
  return solveHalfWidth(stop, (x) => {
    const erf = errorFunction(x);
    const moment = erf - ((2 * x) / Math.sqrt(Math.PI)) * Math.exp(-x * x);
    return kind === 'crossed' ? moment : moment * erf;
  });
}

/** The κ at which the growing `part` is half of its value over the whole opening; beyond 6 w nothing is left. */
function solveHalfWidth(stop: number | null, part: (x: number) => number): number {
  if (stop !== null && !(stop > 0)) {
    throw new Problem(
      'impossible',
      `The stop's half-width is ${stop} w; it must be above 0. Set a stop that lets light through.`,
      { value: `${stop}`, allowed: 'above 0' },
    );
  }
  const end = Math.min(stop ?? 6, 6);
  const whole = part(end);
  return findRoot((x) => 2 * part(x) - whole, 0, end, 1e-15);
}
