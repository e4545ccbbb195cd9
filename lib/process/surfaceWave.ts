import type { OpticalConstants } from '../materials/opticalConstants.ts';
import { type Complex, multiply } from '../numerics/complex.ts';

/** A wave along the boundary of a metal. */
export interface SurfaceWave {
  /** Re √(ε ε_d/(ε+ε_d)): wavelength in vacuum over that of the wave. */
  readonly index: number;
  /** Im of the same: how it dies away. */
  readonly damping: number;
  /** Re ε < −ε_d: the wave is bound to the surface. Where it is not, `index` is a number without a wave to it. */
  readonly bound: boolean;
  /** ε of the workpiece. */
  readonly permittivity: Complex;
}

/**
 * The wave between a workpiece of index n + ik and a transparent ambient of index `ambientIndex`
 * (J. E. Sipe et al., Phys. Rev. B 27, 1141 (1983); J. Bonse & S. Gräf, Laser Photonics Rev. 14, 2000215 (2020)).
 */
export function surfaceWave({ n, k }: OpticalConstants, ambientIndex: number): SurfaceWave {
  const ambient = ambientIndex ** 2;
  const permittivity = { re: n * n - k * k, im: 2 * n * k };
  const sum = { re: permittivity.re + ambient, im: permittivity.im };
  const over = sum.re ** 2 + sum.im ** 2;
  const quotient = multiply(
    { re: permittivity.re * ambient, im: permittivity.im * ambient },
    { re: sum.re / over, im: -sum.im / over },
  );
  const { re, im } = squareRoot(quotient);
  return { index: re, damping: im, bound: permittivity.re < -ambient, permittivity };
}

/** The root with a real part of 0 or more. */
function squareRoot({ re, im }: Complex): Complex {
  const size = Math.hypot(re, im);
  const real = Math.sqrt((size + re) / 2);
  return { re: real, im: Math.sign(im || 1) * Math.sqrt(Math.max(0, (size - re) / 2)) };
}

/** Both periods of ripples whose wave vector lies at an angle to the plane of incidence, m; alike where they do not part. */
export interface RipplePeriods {
  /** From the wave that runs against the light, whose beat with it is the finer: the shorter one. */
  readonly short: number;
  /** From the wave that runs with the light: the longer one; null where the light keeps up with the wave. */
  readonly long: number | null;
}

/**
 * Periods of ripples from the interference of light at `incidence` θ (rad, in air) with a surface wave of `index` Re η;
 * `wavelength` in vacuum, m. The wave vector κ of the ripples lies at `azimuth` ψ (rad) to the plane of incidence, and
 * |κ ± k sin θ| is that of the surface wave: λ/(√((Re η)² − sin²θ sin²ψ) ± sin θ cos ψ). ψ = 0 is p polarisation,
 * Λ± = λ/(Re η ± sin θ), and ψ = 90° s polarisation, λ/√((Re η)² − sin²θ) (Sipe et al. 1983); between them worked out here.
 */
export function ripplePeriods(
  wavelength: number,
  index: number,
  incidence: number,
  azimuth: number,
): RipplePeriods {
  const along = Math.sin(incidence) * Math.abs(Math.cos(azimuth));
  const across = Math.sin(incidence) * Math.sin(azimuth);
  const wave = Math.sqrt(Math.max(0, index * index - across * across));
  const difference = wave - along;
  return {
    short: wavelength / (wave + along),
    long: difference > 0 ? wavelength / difference : null,
  };
}

/**
 * Angle on the workpiece between its plane of incidence and the electric field, rad, −π/2 to π/2, for linear polarisation
 * at `angle` (rad) to the plane of incidence in the beam: the field's part along the surface counts, cos α cos θ and sin α.
 */
export function fieldAzimuth(angle: number, incidence: number): number {
  return Math.atan(Math.tan(angle) / Math.cos(incidence));
}
