import type { Light } from './light.ts';
import { crossings, peakOf } from './radialProfile.ts';
import { roundIrradianceAt, roundProfileAt } from './roundSpot.ts';
import { windowedDiameter } from './secondMoment.ts';

/**
 * What a beam radius may mean: half the second-moment diameter (in a window of three times itself), or the outermost radius
 * at 1/e² or at half of the peak. The three agree for no shaped spot, and one does not follow from another.
 */
export type RadiusMeaning = 'moment' | 'gaussian' | 'half';

/** The radius of a round spot in the plane z, in metres. Throws a Problem where the plane is too far from the focus. */
export function spotRadiusAt(light: Light, z: number, meaning: RadiusMeaning): number {
  const profile = roundProfileAt(light, z);
  if (meaning === 'moment')
    return windowedDiameter(profile, (radii) => roundIrradianceAt(light, z, radii)) / 2;
  const share = meaning === 'gaussian' ? Math.exp(-2) : 0.5;
  // The profile reaches to a few per cent of its peak, so that it crosses both levels.
  return crossings(profile, share * peakOf(profile).irradiance).at(-1)!;
}
