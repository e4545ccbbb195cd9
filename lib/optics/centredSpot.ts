import { valueAt } from '../numerics/panelledFunction.ts';
import type { Spot } from './askedSpot.ts';
import { effectiveAreaOf } from './gridSpot.ts';
import type { Light } from './light.ts';
import { areaAbove, type Peak, peakOf, type RadialProfile } from './radialProfile.ts';
import { roundPlateOf, roundProfileAt, transmissionOf } from './roundSpot.ts';
import { centredSpectrum } from './spotSpectrum.ts';

/** The spot of a centred round beam on round zones, from its radial profile. */
export function centredSpot(light: Light, z: number): Spot {
  const profile = roundProfileAt(light, z);
  return spotOfProfile(light, z, profile, peakOf(profile));
}

/** The same spot from its profile in the plane z that is known already, with its peak; radii in metres. */
export function spotOfProfile(
  light: Light,
  z: number,
  profile: RadialProfile,
  { irradiance: peak }: Peak,
): Spot {
  const transmission = transmissionOf(light);
  return {
    irradianceAt: (x, y) => valueAt(profile, Math.hypot(x, y)),
    areaAbove: (level) => areaAbove(profile, level),
    peak,
    transmission,
    effectiveArea: effectiveAreaOf(light, transmission, peak),
    ...centredSpectrum(light, roundPlateOf(light), z, transmission),
  };
}
