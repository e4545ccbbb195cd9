import { type Complex, multiply } from '../numerics/complex.ts';
import { findRoots } from '../numerics/roots.ts';
import type { Zone } from './zones.ts';

/** The first three coefficients of the field about the axis: U = U0 − ϱ² U2 + (ϱ⁴/4) U4 − … */
export interface AxisField {
  readonly u0: Complex;
  readonly u2: Complex;
  readonly u4: Complex;
}

/**
 * Field on the axis and its even moments, closed form. Zones in units of the 1/e² beam radius, `defocus` = ζ.
 * g = 1+iζ, X a zone edge: m0 = (1−e^{−gX²})/g, m2 = (1−(1+gX²)e^{−gX²})/g²,
 * m4 = (2−(2+2gX²+g²X⁴)e^{−gX²})/g³; U_k = Σ e^{iφ_j}[m_k(x_j) − m_k(x_{j−1})].
 * Source: the integral of {@link file://./focalField.ts} at ϱ = 0, integrated by parts.
 */
export function fieldOnAxis(zones: readonly Zone[], defocus: number): AxisField {
  const sum = new Float64Array(6);
  let before = edgeTerms(0, defocus);
  for (const zone of zones) {
    const here = edgeTerms(zone.outer, defocus);
    const c = Math.cos(zone.phase);
    const s = Math.sin(zone.phase);
    for (let k = 0; k < 6; k += 2) {
      const re = before[k]! - here[k]!;
      const im = before[k + 1]! - here[k + 1]!;
      sum[k]! += c * re - s * im;
      sum[k + 1]! += c * im + s * re;
    }
    before = here;
  }
  const inverse = divide({ re: 1, im: 0 }, { re: 1, im: defocus });
  const u0 = multiply({ re: sum[0]!, im: sum[1]! }, inverse);
  const u2 = multiply(multiply({ re: sum[2]!, im: sum[3]! }, inverse), inverse);
  const u4 = multiply(multiply(multiply({ re: sum[4]!, im: sum[5]! }, inverse), inverse), inverse);
  return { u0, u2, u4 };
}

/** q = gX²: e^{−q}, (1+q)e^{−q}, (2+2q+q²)e^{−q}, as re, im pairs. */
function edgeTerms(edge: number, defocus: number): Float64Array {
  const x2 = edge * edge;
  const size = Math.exp(-x2);
  // An edge where the Gaussian is gone counts as infinitely far: 0 · Infinity must not become NaN.
  if (size === 0) return new Float64Array(6);
  const e = { re: size * Math.cos(defocus * x2), im: -size * Math.sin(defocus * x2) };
  const q = { re: x2, im: defocus * x2 };
  const qq = multiply(q, q);
  const one = multiply({ re: 1 + q.re, im: q.im }, e);
  const two = multiply({ re: 2 + 2 * q.re + qq.re, im: 2 * q.im + qq.im }, e);
  return Float64Array.of(e.re, e.im, one.re, one.im, two.re, two.im);
}

function divide(a: Complex, b: Complex): Complex {
  const size = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
}

/** The irradiance about the axis: I = value + slope·ϱ² + quartic·ϱ⁴ + …, relative to the unshaped focus. */
export interface AxisIrradiance {
  readonly value: number;
  /** Coefficient of ϱ²; negative is a peak on the axis, positive a dip. */
  readonly slope: number;
  /** Coefficient of ϱ⁴. */
  readonly quartic: number;
}

/** I = |U0|² − 2ϱ² Re(U0* U2) + ϱ⁴ [|U2|² + ½ Re(U0* U4)]; zones in units of w. */
export function irradianceOnAxis(zones: readonly Zone[], defocus: number): AxisIrradiance {
  const { u0, u2, u4 } = fieldOnAxis(zones, defocus);
  return {
    value: u0.re * u0.re + u0.im * u0.im,
    slope: -2 * (u0.re * u2.re + u0.im * u2.im),
    quartic: u2.re * u2.re + u2.im * u2.im + (u0.re * u4.re + u0.im * u4.im) / 2,
  };
}

/**
 * Planes ζ in [−range, range] where the coherent irradiance has zero curvature on the axis, ascending, to 1e-12.
 * Not yet flat-tops: with a positive ϱ⁴ term the profile is a ring with a broad floor.
 * The scan step is 0.005; two planes nearer than that are missed (they meet at the flattest step ratio).
 */
export function findZeroCurvaturePlanes(zones: readonly Zone[], range = 7): number[] {
  const steps = Math.ceil((2 * range) / 0.005);
  return findRoots((zeta) => irradianceOnAxis(zones, zeta).slope, -range, range, steps, 1e-12);
}
