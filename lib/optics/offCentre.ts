import { fieldOffAxis } from './azimuthalHarmonics.ts';
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
