import { Problem } from '../problem.ts';
import type { Zone } from './zones.ts';

/** A plate of round zones; outer radii in metres, the last zone ends at the stop. */
export interface RoundPlate {
  readonly kind: 'round';
  readonly zones: readonly Zone[];
}

/** Two crossed stripes of half-widths x and y in metres whose phases add; `stop` is the half-width of a square stop, 0 for none. */
export interface CrossedPlate {
  readonly kind: 'crossed';
  readonly halfWidthX: number;
  readonly halfWidthY: number;
  readonly phase: number;
  readonly stop: number;
}

/** One rectangle that alone carries the phase; lengths as for {@link CrossedPlate}. */
export interface IslandPlate {
  readonly kind: 'island';
  readonly halfWidthX: number;
  readonly halfWidthY: number;
  readonly phase: number;
  readonly stop: number;
}

/**
 * All that determines the field near the focus, in SI: beam, plate with its stop, and lens. Process code never reads it;
 * it asks the spot ({@link file://./spot.ts}).
 */
export interface Light {
  readonly wavelength: number;
  /** 1/e² irradiance radius at the plate. */
  readonly beamRadius: number;
  /** 1/(radius of the wavefront) at the plate, diverging > 0; 0 is flat. */
  readonly wavefrontCurvature: number;
  /** M², same in both axes. */
  readonly beamPropagationRatio: number;
  /** Beam centre against plate centre. */
  readonly decentreX: number;
  readonly decentreY: number;
  /** Ratio of the 1/e² radii, y to x, at unchanged √(wx·wy); 1 is round. */
  readonly beamAspect: number;
  readonly plate: RoundPlate | CrossedPlate | IslandPlate;
  readonly focalLength: number;
  /** From plate to lens. */
  readonly plateDistance: number;
}

/** Focus radius w0 = λf/(πw), 1/e², of the unshaped beam; never contains M². */
export function focusRadius(light: Pick<Light, 'wavelength' | 'beamRadius' | 'focalLength'>): number {
  return (light.wavelength * light.focalLength) / (Math.PI * light.beamRadius);
}

/** Rayleigh length zR = π w0²/λ of the unshaped beam; never contains M². */
export function rayleighLength(light: Pick<Light, 'wavelength' | 'beamRadius' | 'focalLength'>): number {
  const radius = focusRadius(light);
  return (Math.PI * radius * radius) / light.wavelength;
}

/**
 * B = f + z − d z/f of the Collins integral (Collins, J. Opt. Soc. Am. 60, 1168 (1970)), in metres.
 * Zero where the workpiece lies in the image of the plate; there the focal formulas end.
 */
export function collinsB(light: Light, z: number): number {
  return light.focalLength + z - (light.plateDistance * z) / light.focalLength;
}

/** ζ_eff = π w² z/(λ f B) − π w²/(λ R_b): distance from the focus in Rayleigh lengths, wavefront included. */
export function defocusAt(light: Light, z: number): number {
  const { wavelength, beamRadius, focalLength, wavefrontCurvature } = light;
  const b = collinsB(light, z);
  if (!(b > focalLength / 100)) {
    throw new Problem(
      'outside',
      `At this z the workpiece is at or behind the image of the plate, where the focal formulas end; move it nearer to the focus or change the distance from plate to lens.`,
      { input: 'workpiece.z' },
    );
  }
  const scale = (Math.PI * beamRadius * beamRadius) / wavelength;
  return scale * (z / (focalLength * b) - wavefrontCurvature);
}

/** z at which ζ_eff has the given value; the inverse of {@link defocusAt}. */
export function planeOfDefocus(light: Light, defocus: number): number {
  const { wavelength, beamRadius, focalLength, wavefrontCurvature, plateDistance } = light;
  const scale = (Math.PI * beamRadius * beamRadius) / wavelength;
  const t = (defocus / scale + wavefrontCurvature) * focalLength;
  return (t * focalLength) / (1 - t * (1 - plateDistance / focalLength));
}
