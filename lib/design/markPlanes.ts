import type { Light } from '../optics/light.ts';
import { spotAt } from '../optics/spot.ts';
import { Problem } from '../problem.ts';
import { extentRatioOf } from '../process/extents.ts';
import type { AxesInPlanes, PredictedAxes } from '../process/markAxes.ts';

/** A function of the plane z that is worked out once for each. */
export function keptByPlane<T>(of: (z: number) => T): (z: number) => T {
  const known = new Map<number, T>();
  return (z) => {
    const found = known.get(z) ?? of(z);
    known.set(z, found);
    return found;
  };
}

/** A value, or undefined where the light cannot be asked, as too far from the focus. */
export function orUndefined<T>(of: () => T): T | undefined {
  try {
    return of();
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
}

/** Ratio of the 1/e² radii of the elliptical beam that marks are compared with. */
const aspect = 1.2;

/** Part of the peak below which the extents of marks are not looked for: energies 30 times the threshold. */
const faintest = 1 / 30;

/**
 * Extents along x over those along y that a round and an elliptical beam would leave in each plane, worked out when a
 * plane is first asked for. Behind round zones the elliptical beam is taken with M² = 1, for which alone it is computed:
 * it gives the way in which extents change along the level, and round marks are as round for any M². Nothing is
 * predicted for a beam beside the centre or too far from the focus. 20 to 200 ms a plane.
 */
export function axesOfLight(light: Light): AxesInPlanes {
  return keptByPlane((z) => (light.beamAspect === 1 && orUndefined(() => predictAxes(light, z))) || {});
}

function predictAxes(light: Light, z: number): PredictedAxes {
  const { plate } = light;
  const spot = spotAt(light, z);
  const reach = 2 * Math.sqrt(spot.areaAbove(faintest * spot.peak) / Math.PI);
  const ratioFor = (changed: Partial<Light>) => extentRatioOf(spotAt({ ...light, ...changed }, z), reach);
  if (plate.kind === 'round')
    return { elliptical: ratioFor({ beamAspect: aspect, beamPropagationRatio: 1 }) };
  const elliptical = ratioFor({ beamAspect: aspect });
  return plate.halfWidthX === plate.halfWidthY ? { elliptical } : { elliptical, round: ratioFor({}) };
}
