import { Problem } from '../problem.ts';
import type { PicturePart } from './markLevels.ts';
import { eachGradient } from './pictureGradients.ts';

/** How regular a picture is in each of its parts. */
export interface RegularityMap {
  readonly columns: number;
  readonly rows: number;
  /** Pixels along the side of a square cell; the first begins at the upper left corner of the region. */
  readonly cell: number;
  /**
   * Row by row from the top: |Σ m e^{2iθ}|/Σ m over the gradients of a cell, of magnitude m and orientation θ. 1 where all
   * lie along one line, near 0 where none is preferred; NaN never, 0 where a cell is blank.
   */
  readonly values: Float64Array;
  /** Direction of each cell, rad, ½ arg Σ m e^{2iθ}: from the picture's x towards its y, 0 to π; 0 where a cell is blank. */
  readonly directions: Float64Array;
}

/** Local orientation of a picture: which way its gradients point, by magnitude. */
export interface OrientationDistribution {
  /** Standard deviation of the Gaussian behind the gradients, pixels; numbers of unlike smoothing cannot be compared. */
  readonly smoothing: number;
  /** Where the distribution is highest, rad, from the picture's x towards its y, which points down; 0 to π. */
  readonly direction: number;
  /**
   * Half the width at half the maximum, rad, as used by I. Gnilitskyi et al., Sci. Rep. 7, 8485 (2017); undefined where
   * the distribution nowhere falls to half.
   */
  readonly halfWidth: number | undefined;
  /** |Σ m e^{2iθ}|/Σ m over the whole region, 0 to 1. */
  readonly resultant: number;
  /** Share of the magnitude a bin of π/720, from angle 0; they sum up to 1. All 0 in a blank picture. */
  readonly histogram: Float64Array;
  readonly regularity: RegularityMap;
}

/** Quarter degrees. */
const bins = 720;
/** A finer grid than this shows single ridges rather than the field. */
const mostCells = 64;
/** Smoothing in pixels that leaves ridges and keeps pixels apart. */
const smoothingRange = [0.5, 20] as const;

/** Throws Problem 'impossible' where the smoothing is out of range or too wide for the part. */
export function checkSmoothing(smoothing: number, part: PicturePart): void {
  const most = Math.min(smoothingRange[1], Math.floor(Math.min(part.width, part.height) / 16));
  if (smoothing >= smoothingRange[0] && smoothing <= most) return;
  throw new Problem(
    'impossible',
    `Gradients smoothed over ${smoothing} pixels cannot be had from a region of ${part.width} × ${part.height}; take ${smoothingRange[0]} to ${most} pixels.`,
    { value: String(smoothing), allowed: `${smoothingRange[0]} to ${most} pixels` },
  );
}

/**
 * Distribution of local orientation and its map, from gradients at `smoothing` pixels; `wantedCell` is the side of a cell
 * of the map in pixels, enlarged where the map would have more than 64 cells along a side. Yields the share that is done.
 */
export function* findOrientation(
  part: PicturePart,
  smoothing: number,
  wantedCell: number,
): Generator<number, OrientationDistribution> {
  const cell = Math.ceil(Math.max(8, wantedCell, Math.max(part.width, part.height) / mostCells));
  const columns = Math.max(1, Math.floor(part.width / cell));
  const rows = Math.max(1, Math.floor(part.height / cell));
  const sums = new Float64Array(3 * columns * rows);
  const histogram = new Float64Array(bins);
  yield* eachGradient(part, smoothing, (y, x0, step, gradientX, gradientY) => {
    const row = Math.min(rows - 1, Math.floor(y / cell)) * columns;
    for (let i = 0; i < gradientX.length; i++) {
      const gx = gradientX[i]!;
      const gy = gradientY[i]!;
      const magnitude = Math.sqrt(gx * gx + gy * gy);
      if (magnitude === 0) continue;
      const turn = Math.atan2(gy, gx) / Math.PI;
      histogram[Math.floor(bins * (turn < 0 ? turn + 1 : turn)) % bins]! += magnitude;
      const at = 3 * (row + Math.min(columns - 1, Math.floor((x0 + step * i) / cell)));
      sums[at]! += magnitude;
      sums[at + 1]! += (gx * gx - gy * gy) / magnitude;
      sums[at + 2]! += (2 * gx * gy) / magnitude;
    }
  });
  const values = Float64Array.from({ length: columns * rows }, (_, i) => resultant(sums, i));
  const directions = values.map((_, i) => direction(sums, i));
  const regularity = { columns, rows, cell, values, directions };
  return { ...distributionOf(histogram, sums), smoothing, regularity };
}

function direction(sums: Float64Array, cell: number): number {
  const angle = Math.atan2(sums[3 * cell + 2]!, sums[3 * cell + 1]!) / 2;
  return angle < 0 ? angle + Math.PI : angle;
}

function resultant(sums: Float64Array, cell: number): number {
  const total = sums[3 * cell]!;
  return total > 0 ? Math.hypot(sums[3 * cell + 1]!, sums[3 * cell + 2]!) / total : 0;
}

function distributionOf(histogram: Float64Array, sums: Float64Array) {
  const whole = new Float64Array(3);
  for (let i = 0; i < sums.length; i++) whole[i % 3]! += sums[i]!;
  const total = whole[0]!;
  const shares = histogram.map((value) => (total > 0 ? value / total : 0));
  // A first look at a degree's smoothing gives the width that decides how much more evens out the counts unharmed.
  const rough = peakOf(smoothed(shares, 4));
  const fine = peakOf(smoothed(shares, Math.max(1, 0.15 * (rough.halfWidth ?? bins / 8))));
  return {
    direction: (fine.at * Math.PI) / bins,
    halfWidth: fine.halfWidth === undefined ? undefined : (fine.halfWidth * Math.PI) / bins,
    resultant: resultant(whole, 0),
    histogram: shares,
  };
}

/** A circular Gaussian of `width` bins. */
function smoothed(values: Float64Array, width: number): Float64Array {
  const result = new Float64Array(bins);
  const reach = Math.ceil(4 * width);
  let sum = 0;
  for (let shift = -reach; shift <= reach; shift++) {
    const weight = Math.exp(-0.5 * (shift / width) ** 2);
    sum += weight;
    for (let i = 0; i < bins; i++) result[i]! += weight * values[(i + shift + bins) % bins]!;
  }
  return result.map((value) => value / sum);
}

/** The highest bin's middle and the half-width at half its height, both in bins. */
function peakOf(values: Float64Array): { at: number; halfWidth: number | undefined } {
  const top = values.indexOf(values.reduce((most, value) => Math.max(most, value), 0));
  const at = (i: number) => values[(top + i + bins) % bins]!;
  const half = at(0) / 2;
  const fall = (sign: 1 | -1) => {
    for (let i = 1; i < bins / 2; i++) {
      const [before, here] = [at(sign * (i - 1)), at(sign * i)];
      if (here < half) return i - (half - here) / (before - here);
    }
    return undefined;
  };
  const [right, left] = [fall(1), fall(-1)];
  const halfWidth = right === undefined || left === undefined ? undefined : (right + left) / 2;
  return { at: top + 0.5, halfWidth };
}
