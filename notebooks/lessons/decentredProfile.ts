import { fieldOffAxis } from '../../lib/optics/azimuthalHarmonics.ts';
import { collinsB, defocusAt, type Light } from '../../lib/optics/light.ts';
import { radiusScale, roundPlateOf } from '../../lib/optics/roundSpot.ts';
import { symmetric } from '../columns.ts';

/** How far the beam misses the middle of the plate in the lesson, to the right, m. */
export const missed = 0.25e-3;

/** A cut through the spot along the direction in which the beam is off: x in m, irradiance relative to the unshaped peak. */
export interface Cut {
  readonly x: Float64Array;
  readonly irradiance: Float64Array;
}

/** Radii in units of λB/(πw) that hold the rim and its surroundings, and places along the cut. */
const reach = 3;
const places = 121;

/** The cut in the plane z of a beam that meets the plate `decentre` to the right of its middle; M² = 1. */
export function decentredCut(light: Light, z: number, decentre = missed): Cut {
  const zones = roundPlateOf(light).zones.map(({ outer, phase }) => ({
    outer: outer / light.beamRadius,
    phase,
  }));
  const xi = symmetric(reach, places);
  const field = fieldOffAxis(zones, { x0: decentre / light.beamRadius }, defocusAt(light, z), {
    xi,
    eta: new Float64Array(places),
  });
  const strength = (light.focalLength / collinsB(light, z)) ** 2;
  return {
    x: xi.map((at) => at * radiusScale(light, z)),
    irradiance: field.re.map((re, i) => strength * (re * re + field.im[i]! ** 2)),
  };
}

/** A highest place: where, m, and how high. */
export interface Rim {
  readonly x: number;
  readonly irradiance: number;
}

/** The highest places left and right of the middle. */
export function rimsOf({ x, irradiance }: Cut): { readonly left: Rim; readonly right: Rim } {
  const highest = (side: number): Rim => {
    let best: Rim = { x: 0, irradiance: 0 };
    x.forEach((at, i) => {
      if (side * at > 0 && irradiance[i]! > best.irradiance) best = { x: at, irradiance: irradiance[i]! };
    });
    return best;
  };
  return { left: highest(-1), right: highest(1) };
}

/** Difference of the rims over their mean, above 0 where the right one is brighter. */
export function imbalanceOf(cut: Cut): number {
  const { left, right } = rimsOf(cut);
  return (right.irradiance - left.irradiance) / ((right.irradiance + left.irradiance) / 2);
}
