import { Problem } from '../problem.ts';
import { defocusAt, type Light } from './light.ts';
import { crossings, peakOf, type RadialProfile } from './radialProfile.ts';
import { prepareRoundProfile } from './roundProfile.ts';
import { roundFocusAt, roundIrradianceAt, roundProfileFromKernel } from './roundSpot.ts';
import { windowedDiameter } from './secondMoment.ts';

/**
 * What a beam radius may mean: half the second-moment diameter (in a window of three times itself), or the outermost radius
 * at 1/e² or at half of the peak. The three agree for no shaped spot, and one does not follow from another.
 */
export type RadiusMeaning = 'moment' | 'gaussian' | 'half';

/**
 * The radii of a round spot in several planes z, in metres. The kernel of the plane farthest from the focus, whose samples
 * lie closest on the plate and reach out furthest, serves them all. Throws a Problem where a plane is too far from the focus.
 */
export function spotRadiiAt(light: Light, planes: Float64Array, meaning: RadiusMeaning): Float64Array {
  if (planes.length === 0) return planes.slice();
  const far = (z: number) => Math.abs(defocusAt(light, z));
  const furthest = planes.reduce((most, z) => (far(z) > far(most) ? z : most));
  const kernel = prepareRoundProfile(roundFocusAt(light, furthest));
  return planes.map((z) => radiusOf(roundProfileFromKernel(light, z, kernel), meaning, light, z));
}

/** The radius in one plane, as {@link spotRadiiAt}. */
export function spotRadiusAt(light: Light, z: number, meaning: RadiusMeaning): number {
  return spotRadiiAt(light, Float64Array.of(z), meaning)[0]!;
}

function radiusOf(profile: RadialProfile, meaning: RadiusMeaning, light: Light, z: number): number {
  if (meaning === 'moment')
    return windowedDiameter(profile, (radii) => roundIrradianceAt(light, z, radii)) / 2;
  const share = meaning === 'gaussian' ? Math.exp(-2) : 0.5;
  const radius = crossings(profile, share * peakOf(profile).irradiance).at(-1);
  if (radius !== undefined) return radius;
  throw new Problem(
    'outside',
    `At z = ${Number((z * 1e3).toPrecision(3))} mm the predicted spot does not fall to ${Math.round(100 * share)}\u202f% of its peak within the radii computed. Compare second-moment diameters, or places nearer to the focus.`,
    { input: 'focus.measuredCausticMeaning' },
  );
}
