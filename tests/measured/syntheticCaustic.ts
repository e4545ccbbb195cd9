import type { NamedCaustic } from '../../lib/measured/causticTable.ts';
import { createRandom } from '../../lib/numerics/random.ts';

/** Places after ISO 11146-1 in Rayleigh lengths from the waist: half within one, half beyond two. */
export const isoPlaces = [-3.2, -2.6, -2.1, -0.9, -0.5, -0.1, 0.3, 0.6, 0.95, 2.2, 2.7, 3.1];

/** A caustic to draw; lengths in metres, 1/e² or second-moment diameters. */
export interface SyntheticCaustic {
  readonly waistPosition: number;
  readonly waistDiameter: number;
  readonly ratio: number;
  readonly wavelength: number;
  /** Places in Rayleigh lengths from the waist. */
  readonly places: readonly number[];
  /** Standard deviation of the diameters relative to themselves. */
  readonly scatter: number;
  readonly seed: number;
}

/** πd0²/(4λM²), with M² = 1 for the Gaussian (ISO 11146-1:2021). */
export function rayleighLengthOf(caustic: SyntheticCaustic): number {
  return (Math.PI * caustic.waistDiameter ** 2) / (4 * caustic.wavelength * caustic.ratio);
}

/** Diameters d0 √(1 + (z − z0)²/zR²) at the places, with normal scatter. */
export function drawCaustic(caustic: SyntheticCaustic): NamedCaustic {
  const { waistPosition, waistDiameter, places, scatter } = caustic;
  const random = createRandom(caustic.seed);
  const rayleigh = rayleighLengthOf(caustic);
  return {
    name: 'synthetic.csv',
    z: places.map((place) => waistPosition + place * rayleigh),
    diameter: places.map((place) => waistDiameter * Math.hypot(1, place) * (1 + scatter * random.normal())),
  };
}

/** A narrow beam whose table spans three Rayleigh lengths either way, with half a per cent of scatter. */
export const narrowBeam: SyntheticCaustic = {
  waistPosition: 0.4,
  waistDiameter: 0.8e-3,
  ratio: 1.3,
  wavelength: 1.03e-6,
  places: isoPlaces,
  scatter: 0.005,
  seed: 5,
};

/** A raw beam as wide as the initial design's. */
export const wideBeam: SyntheticCaustic = {
  waistPosition: 0.2,
  waistDiameter: 3e-3,
  ratio: 1.2,
  wavelength: 1.03e-6,
  places: isoPlaces,
  scatter: 0.005,
  seed: 12,
};
