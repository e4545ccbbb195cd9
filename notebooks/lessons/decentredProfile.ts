import { type RadialHarmonics, radialHarmonicsOffAxis } from '../../lib/optics/azimuthalHarmonics.ts';
import { collinsB, defocusAt, type Light } from '../../lib/optics/light.ts';
import { radiusScale, roundPlateOf } from '../../lib/optics/roundSpot.ts';

/** How far the beam misses the middle of the plate in the lesson, to the right, m. */
export const missed = 0.25e-3;

/** A cut through the spot along the direction in which the beam is off: x in m, irradiance relative to the unshaped peak. */
export interface Cut {
  readonly x: Float64Array;
  readonly irradiance: Float64Array;
}

/** Half of the cut in units of λB/(πw), which holds both rims, and places along it, the middle once. */
const reach = 2.2;
const places = 45;

/** The cut in the plane z of a beam that meets the plate `decentre` to the right of its middle; M² = 1. */
export function decentredCut(light: Light, z: number, decentre = missed): Cut {
  const zones = roundPlateOf(light).zones.map(({ outer, phase }) => ({
    outer: outer / light.beamRadius,
    phase,
  }));
  const radii = Float64Array.from({ length: places }, (_, i) => (reach * i) / (places - 1));
  const beam = { x0: decentre / light.beamRadius };
  const harmonics = radialHarmonicsOffAxis(zones, beam, defocusAt(light, z), radii);
  const strength = (light.focalLength / collinsB(light, z)) ** 2;
  const scale = radiusScale(light, z);
  const irradiance = (side: number) => radii.map((_, i) => strength * squareAt(harmonics, i, side));
  return {
    x: joined(
      radii.map((at) => -at * scale),
      radii.map((at) => at * scale),
    ),
    irradiance: joined(irradiance(-1), irradiance(1)),
  };
}

/** |U|² at a radius to the right (side 1) or to the left (−1): e^{imφ} is 1 or (−1)^m. */
function squareAt({ re, im, highest }: RadialHarmonics, row: number, side: number): number {
  const width = 2 * highest + 1;
  let [sumRe, sumIm] = [0, 0];
  for (let m = -highest; m <= highest; m++) {
    const sign = m % 2 === 0 ? 1 : side;
    sumRe += sign * re[row * width + m + highest]!;
    sumIm += sign * im[row * width + m + highest]!;
  }
  return sumRe * sumRe + sumIm * sumIm;
}

/** The left half turned round and the right half behind it, the middle once. */
function joined(left: Float64Array, right: Float64Array): Float64Array {
  return Float64Array.from([...left.subarray(1).toReversed(), ...right]);
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
