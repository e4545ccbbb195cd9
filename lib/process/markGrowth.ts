import type { Spot } from '../optics/askedSpot.ts';
import { markOf } from './marks.ts';

/** Diameters of marks against pulse energy in one plane, metres; 0 where nothing is marked. */
export interface MarkGrowth {
  readonly outer: Float64Array;
  /** Of the unmarked centre; 0 where it is marked. */
  readonly inner: Float64Array;
}

/** Least pulse energy that marks: `levelOfOne` is the threshold in relative irradiance at an energy of one joule. */
export function thresholdEnergyOf(spot: Spot, levelOfOne: number): number {
  return levelOfOne / spot.peak;
}

/** Marks of a spot at several energies, J; `levelOfOne` as in {@link thresholdEnergyOf}. */
export function markGrowth(spot: Spot, levelOfOne: number, energies: Float64Array): MarkGrowth {
  const [outer, inner] = [new Float64Array(energies.length), new Float64Array(energies.length)];
  energies.forEach((energy, i) => {
    const mark = markOf(spot, levelOfOne / energy);
    outer[i] = mark.outerDiameter;
    inner[i] = mark.innerDiameter;
  });
  return { outer, inner };
}

/** Widest span of energies of a chart, as a factor. */
const widestSpan = 1e4;

/** Energies for a chart: from below the least threshold energy to three times the greatest of them and of today's, in equal ratios. */
export function energiesAbout(today: number, thresholds: readonly number[], count: number): Float64Array {
  const high = 3 * Math.max(today, ...thresholds);
  const low = Math.max(high / widestSpan, Math.min(today, ...thresholds) / 1.5);
  return Float64Array.from({ length: count }, (_, i) => low * (high / low) ** (i / (count - 1)));
}
