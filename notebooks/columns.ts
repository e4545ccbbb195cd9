import { valueAt } from '../lib/numerics/panelledFunction.ts';
import type { RadialProfile } from '../lib/optics/radialProfile.ts';

/** Micrometres a metre, and J/cm² a J/m²: the units figures are drawn in. */
export const micro = 1e6;
export const perSquareCentimetre = 1e-4;

/** Squared diameter in µm² of a disc with an area in m². */
export const squaredDiameter = (area: number) => (4 / Math.PI) * area * micro * micro;

/** `count` points from −reach to reach, each with its exact opposite. */
export function symmetric(reach: number, count: number): Float64Array {
  const half = (i: number) => reach * ((2 * i) / (count - 1) - 1);
  return Float64Array.from({ length: count }, (_, i) => (2 * i < count ? half(i) : -half(count - 1 - i)));
}

/** Fluence in J/cm² at the radii |x| in µm of a profile relative to `unit` J/m²; opposite places are read once. */
export function fluenceColumn(profile: RadialProfile, unit: number, x: Float64Array): Float64Array {
  const fluence = new Float64Array(x.length);
  x.forEach((r, i) => {
    const twin = x.length - 1 - i;
    fluence[i] =
      twin < i && x[twin] === -r
        ? fluence[twin]!
        : Math.max(0, valueAt(profile, Math.abs(r) / micro)) * unit * perSquareCentimetre;
  });
  return fluence;
}

/** Largest value of several columns, 0 at least; NaN left out. */
export function largest(...columns: readonly Float64Array[]): number {
  let top = 0;
  // Plain loops: maps hold 12,000 values, and this runs at every move of the hand.
  for (const column of columns) for (const value of column) if (value > top) top = value;
  return top;
}
