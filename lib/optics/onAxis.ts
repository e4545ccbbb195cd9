import type { Complex } from '../numerics/complex.ts';
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
  const u = createAxisField(zones)(defocus);
  return { u0: { re: u[0]!, im: u[1]! }, u2: { re: u[2]!, im: u[3]! }, u4: { re: u[4]!, im: u[5]! } };
}

/** An edge: its squared radius and by how much e^{iφ} rises from the zone inside it to the one outside, times e^{−X²}. */
interface Edge {
  readonly square: number;
  readonly re: number;
  readonly im: number;
}

function edgesOf(zones: readonly Zone[]): Edge[] {
  return zones.flatMap(({ outer, phase }, j) => {
    const square = outer * outer;
    const size = Math.exp(-square);
    // An edge where the Gaussian is gone counts as infinitely far: 0 · Infinity must not become NaN.
    if (size === 0) return [];
    const next = zones[j + 1];
    const re = (next ? Math.cos(next.phase) : 0) - Math.cos(phase);
    const im = (next ? Math.sin(next.phase) : 0) - Math.sin(phase);
    return [{ square, re: size * re, im: size * im }];
  });
}

/**
 * The field of {@link fieldOnAxis} for many planes: U0, U2, U4 as re, im pairs, in an array that the next call overwrites.
 * One sine and cosine an edge and plane, 60 ns, since scans and maps ask for thousands of planes.
 */
export function createAxisField(zones: readonly Zone[]): (defocus: number) => Float64Array {
  const edges = edgesOf(zones);
  const first = zones[0]!.phase;
  const [re0, im0] = [Math.cos(first), Math.sin(first)];
  const u = new Float64Array(6);
  return (defocus) => {
    let [aRe, aIm, bRe, bIm, cRe, cIm] = [re0, im0, re0, im0, 2 * re0, 2 * im0];
    for (const { square, re, im } of edges) {
      const turn = defocus * square;
      const c = Math.cos(turn);
      const s = Math.sin(turn);
      // p = jump · e^{−q}, q = gX².
      const pRe = re * c + im * s;
      const pIm = im * c - re * s;
      const oneRe = 1 + square;
      const twoRe = 2 + 2 * square + square * square - turn * turn;
      const twoIm = 2 * turn * (1 + square);
      aRe += pRe;
      aIm += pIm;
      bRe += oneRe * pRe - turn * pIm;
      bIm += oneRe * pIm + turn * pRe;
      cRe += twoRe * pRe - twoIm * pIm;
      cIm += twoRe * pIm + twoIm * pRe;
    }
    // 1/g, 1/g², 1/g³.
    const size = 1 + defocus * defocus;
    const [g1Re, g1Im] = [1 / size, -defocus / size];
    const [g2Re, g2Im] = [g1Re * g1Re - g1Im * g1Im, 2 * g1Re * g1Im];
    const [g3Re, g3Im] = [g2Re * g1Re - g2Im * g1Im, g2Re * g1Im + g2Im * g1Re];
    u[0] = aRe * g1Re - aIm * g1Im;
    u[1] = aRe * g1Im + aIm * g1Re;
    u[2] = bRe * g2Re - bIm * g2Im;
    u[3] = bRe * g2Im + bIm * g2Re;
    u[4] = cRe * g3Re - cIm * g3Im;
    u[5] = cRe * g3Im + cIm * g3Re;
    return u;
  };
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
  return createAxisIrradiance(zones)(defocus);
}

/** {@link irradianceOnAxis} for many planes of one plate. */
export function createAxisIrradiance(zones: readonly Zone[]): (defocus: number) => AxisIrradiance {
  const fieldAt = createAxisField(zones);
  return (defocus) => {
    const u = fieldAt(defocus);
    const [u0Re, u0Im, u2Re, u2Im] = [u[0]!, u[1]!, u[2]!, u[3]!];
    return {
      value: u0Re * u0Re + u0Im * u0Im,
      slope: -2 * (u0Re * u2Re + u0Im * u2Im),
      quartic: u2Re * u2Re + u2Im * u2Im + (u0Re * u[4]! + u0Im * u[5]!) / 2,
    };
  };
}

/**
 * Planes ζ in [−range, range] where the coherent irradiance has zero curvature on the axis, ascending, to 1e-12.
 * Not yet flat-tops: with a positive ϱ⁴ term the profile is a ring with a broad floor.
 * The scan step is 0.005; two planes nearer than that are missed (they meet at the flattest step ratio).
 */
export function findZeroCurvaturePlanes(zones: readonly Zone[], range = 7): number[] {
  const steps = Math.ceil((2 * range) / 0.005);
  const axis = createAxisIrradiance(zones);
  return findRoots((zeta) => axis(zeta).slope, -range, range, steps, 1e-12);
}
