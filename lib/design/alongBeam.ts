import { formatQuantity } from '../graph/units.ts';

/** Farthest of several places, in metres, up to which they are given in micrometres. */
const nearFocus = 1e-5;

/** A distance along the beam, in metres, as every document shows it: in micrometres, from a millimetre on in these. */
export function shownDepth(length: number, digits = 3): string {
  const size = Number(Math.abs(length).toPrecision(digits));
  return formatQuantity(length, 'm', size < 1e-3 ? 'um' : 'mm', digits);
}

/**
 * Places on the z axis, in metres, as every document shows them: in millimetres as the workpiece’s z, or all in
 * micrometres where none lies farther than ten of these from the focal plane.
 */
export function shownPlaces(places: readonly number[], digits = 4): string[] {
  const unit = places.every((z) => Math.abs(z) < nearFocus) && places.some((z) => z !== 0) ? 'um' : 'mm';
  return places.map((z) => formatQuantity(z, 'm', unit, digits));
}
