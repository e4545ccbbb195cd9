import type { Spot } from '../optics/askedSpot.ts';
import { markOf } from './marks.ts';

/** Marks in one plane; 0 where nothing is marked. */
export interface MarkGrowth {
  /** Area marked, m²: unmarked centre and gaps not counted. */
  readonly area: Float64Array;
  /** Diameter of the outermost contour, m. */
  readonly outer: Float64Array;
  /** Diameter of the unmarked centre, m; 0 where it is marked. */
  readonly inner: Float64Array;
}

/** Least pulse energy that marks: `levelOfOne` is the threshold in relative irradiance at an energy of one joule. */
export function thresholdEnergyOf(spot: Spot, levelOfOne: number): number {
  return levelOfOne / spot.peak;
}

/** Marks of a spot at several thresholds in relative irradiance, such as one energy or number of pulses after another gives. */
export function markGrowth(spot: Spot, levels: Float64Array): MarkGrowth {
  const [area, outer, inner] = [levels, levels, levels].map(({ length }) => new Float64Array(length)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  levels.forEach((level, i) => {
    const mark = markOf(spot, level);
    area[i] = mark.area;
    outer[i] = mark.outerDiameter;
    inner[i] = mark.innerDiameter;
  });
  return { area, outer, inner };
}

/** Widest span of energies of a chart, as a factor. */
const widestSpan = 1e4;

/** Energies for a chart: from below the least threshold energy to three times the greatest of them and of today's, in equal ratios. */
export function energiesAbout(today: number, thresholds: readonly number[], count: number): Float64Array {
  const high = 3 * Math.max(today, ...thresholds);
  const low = Math.max(high / widestSpan, Math.min(today, ...thresholds) / 1.5);
  return Float64Array.from({ length: count }, (_, i) => low * (high / low) ** (i / (count - 1)));
}

/** Fewest powers of ten of N that a chart spans. */
const fewestDecades = 3;

/** Numbers of pulses for a chart that shows today's: from one to a power of ten, 20 to each in equal ratios. */
export function pulsesAbout(today: number): Float64Array {
  const decades = Math.max(fewestDecades, Math.ceil(Math.log10(today) + 0.5));
  return Float64Array.from({ length: 20 * decades + 1 }, (_, i) => 10 ** (i / 20));
}
