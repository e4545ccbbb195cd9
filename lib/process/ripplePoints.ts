import data from '../../data/ripples/published.json' with { type: 'json' };

/** A ripple period as published. */
export interface PublishedRipple {
  readonly id: string;
  readonly material: string;
  /** Key of the optical constants that the model takes for it. */
  readonly sample: string;
  /** m, in vacuum. */
  readonly wavelength: number;
  readonly ambientIndex: number;
  readonly periodOverWavelength: number;
  readonly said: string;
  /** Key into the bibliography. */
  readonly source: string;
}

export const publishedRipples: readonly PublishedRipple[] = data.points;

/** Measured periods over the vacuum wavelength, at normal incidence in air: 5 to 30 % below it (Bonse & Gräf 2020, memory). */
export const measuredRange = [0.7, 0.95] as const;
/** Ripples finer than this part of the wavelength come from another mechanism. */
const finest = 0.5;

/** Where a measured period lies against what is expected. */
export type RipplePlace = 'inside' | 'inside the longer' | 'shorter' | 'longer' | 'another mechanism';

/** A part of the wavelength as binary fractions have it is no finer than this. */
const dust = 1e-9;

/**
 * Where a period lies; `scale` is what the range is stretched by, 1 at normal incidence in air, and `longer` the same for
 * the wave that runs with the light, where that differs.
 */
export function placeOfPeriod(periodOverWavelength: number, scale = 1, longer = scale): RipplePlace {
  const [low, high] = measuredRange;
  const relative = periodOverWavelength / scale;
  if (periodOverWavelength < finest * Math.min(1, scale)) return 'another mechanism';
  if (relative < low - dust) return 'shorter';
  if (relative <= high + dust) return 'inside';
  const other = periodOverWavelength / longer;
  return other >= low - dust && other <= high + dust ? 'inside the longer' : 'longer';
}
