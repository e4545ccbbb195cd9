import { fieldOffAxis } from './azimuthalHarmonics.ts';
import { spaced } from './focusMaps.ts';
import type { Zone } from './zones.ts';

/**
 * |U|² along the line of the offset behind a plate whose middle stands `offset` to one side of the beam's, at places ξ
 * about the middle of the pattern: units of w for the plate, of λB/(πw) for the places. Coherent light. 50 µs a place
 * behind a stop, 200 µs without one.
 */
export function alongOffset(
  zones: readonly Zone[],
  offset: number,
  defocus: number,
  places: Float64Array,
): Float64Array {
  const points = { xi: places, eta: new Float64Array(places.length) };
  const { re, im } = fieldOffAxis(zones, { x0: offset }, defocus, points);
  return re.map((value, i) => value ** 2 + im[i]! ** 2);
}

/** How much higher one side of a profile rises than the other, over the higher of both: 0 where they are alike. */
export function riseOverHigher(places: Float64Array, values: Float64Array): number {
  let [left, right] = [0, 0];
  values.forEach((value, i) => {
    if (places[i]! <= 0) left = Math.max(left, value);
    if (places[i]! >= 0) right = Math.max(right, value);
  });
  return Math.abs(right - left) / Math.max(left, right);
}

/** Drawn out to this many 1/e² radii that the unshaped beam has there, and nowhere beyond what the sum is good for. */
const [reachInRadii, furthestReach] = [4, 12];

/** `count` places ξ about the middle of the pattern that hold all of it at a defocus. */
export function placesAcross(defocus: number, count: number): Float64Array {
  const reach = Math.min(furthestReach, reachInRadii * Math.hypot(1, defocus));
  return spaced(-reach, reach, count);
}

/** Planes tried, in tenths of a Rayleigh length out to one on either side; behind it first. */
const tried = Array.from({ length: 10 }, (_, i) => (i + 1) / 10).flatMap((zeta) => [zeta, -zeta]);
/** Places for the search: two neighbours are a tenth of the radius apart, which misses 2·0.05² = 0.5 % of a height. */
const [searched, weighed] = [81, 161];
/** The other side of the focus must tell by this part more to be preferred: behind half a wave both tell alike. */
const better = 1.01;

/** The plane that tells most of an offset of the beam from the middle of the plate. */
export interface TellingPlane {
  readonly defocus: number;
  /** How much higher one side rises there, over the higher one; 0…1. */
  readonly rise: number;
}

/** Looks for it within a Rayleigh length of the focus, to a tenth of one; lengths in units of w, coherent light. */
export function tellingPlane(zones: readonly Zone[], offset: number): TellingPlane {
  const riseAt = (defocus: number, count: number) => {
    const places = placesAcross(defocus, count);
    return riseOverHigher(places, alongOffset(zones, offset, defocus, places));
  };
  let best: TellingPlane = { defocus: tried[0]!, rise: 0 };
  for (const defocus of tried) {
    const rise = riseAt(defocus, searched);
    if (rise > better * best.rise) best = { defocus, rise };
  }
  return { defocus: best.defocus, rise: riseAt(best.defocus, weighed) };
}
