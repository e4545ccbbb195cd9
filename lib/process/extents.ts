import type { Spot } from '../optics/askedSpot.ts';

/** Samples along each axis; between them extents run straight in the logarithm of the irradiance. */
const samples = 80;

/**
 * Extent along x over extent along y of the part of a spot above a level relative to its peak (0 to 1), for a spot that
 * is the same on both sides of either axis; `reach` in m is how far along each axis it is looked at. Extents are those of
 * a box around the whole mark, as diameters along x and y are read under a microscope. 1 where nothing is above the level.
 */
export function extentRatioOf(spot: Spot, reach: number): (level: number) => number {
  const step = reach / (samples - 1);
  const alongX = new Float64Array(samples);
  const alongY = new Float64Array(samples);
  for (let row = 0; row < samples; row++) {
    for (let column = 0; column < samples; column++) {
      const value = spot.irradianceAt(column * step, row * step);
      alongX[column] = Math.max(alongX[column]!, value);
      alongY[row] = Math.max(alongY[row]!, value);
    }
  }
  const peak = Math.max(...alongX);
  return (level) => {
    const [x, y] = [alongX, alongY].map((highest) => lastAbove(highest, level * peak));
    return x! > 0 && y! > 0 ? x! / y! : 1;
  };
}

/** Place, in samples, at which values last fall through `level`. */
function lastAbove(highest: Float64Array, level: number): number {
  const last = highest.findLastIndex((value) => value > level);
  if (last < 0 || last === highest.length - 1) return Math.max(0, last);
  const [above, below] = [highest[last]!, Math.max(highest[last + 1]!, Number.MIN_VALUE)];
  return last + Math.log(above / level) / Math.log(above / below);
}
