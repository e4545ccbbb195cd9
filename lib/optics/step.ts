import { Problem } from '../problem.ts';

/**
 * Height in m of a step in air that delays by `phase` rad at `wavelength` (m): h = φλ/(2π(n−1)).
 * `index` is relative to air and above 1 (else `impossible`). A negative phase gives a negative height, a recess.
 */
export function stepHeightForPhase(phase: number, wavelength: number, index: number): number {
  return (phase * wavelength) / (2 * Math.PI * excessIndex(index));
}

/** Phase in rad, not wrapped, of a step of `height` m in air at `wavelength` m: φ = 2π(n−1)h/λ. */
export function phaseOfStep(height: number, wavelength: number, index: number): number {
  if (!(wavelength > 0)) {
    throw new Problem('impossible', `The wavelength ${wavelength} m must be above 0.`, {
      input: 'laser.wavelength',
    });
  }
  return (2 * Math.PI * excessIndex(index) * height) / wavelength;
}

/** Part of the power that one uncoated surface reflects at normal incidence: ((n−1)/(n+1))², 0 to 1. */
export function fresnelReflectance(index: number): number {
  if (!(index > 0)) throw impossibleIndex(index, 'above 0');
  return ((index - 1) / (index + 1)) ** 2;
}

function excessIndex(index: number): number {
  if (!(index > 1)) throw impossibleIndex(index, 'above 1, that of air');
  return index - 1;
}

function impossibleIndex(index: number, allowed: string): Problem {
  return new Problem(
    'impossible',
    `The refractive index ${index} must be ${allowed}; glasses have 1.4 to 1.8.`,
    {
      value: String(index),
      allowed,
    },
  );
}
