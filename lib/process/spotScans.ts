import type { Hatch } from './hatch.ts';
import { lengthsOf } from './hatchLengths.ts';

/** Spots side by side across the lines; SI. */
export interface SpotsAcross {
  /** Whole number. */
  readonly spots: number;
  /** From spot to spot, m; counted as the nearest whole number of lines, one at least. */
  readonly distance: number;
}

/** Lines from spot to spot, a whole number. */
export function strideOf({ distance }: Pick<SpotsAcross, 'distance'>, lineSpacing: number): number {
  return Math.max(1, Math.round(distance / lineSpacing));
}

/**
 * Scans of one pass with spots `stride` lines apart: a group of N · stride lines takes `stride` scans, and in the last one
 * some spots may write beside the field. At least ⌈lines/N⌉, which it is where groups fill the field; never more with more
 * spots.
 */
export function groupedScans(lines: number, spots: number, stride: number): number {
  const group = spots * stride;
  const full = Math.floor(lines / group);
  return full * stride + Math.min(stride, lines - full * group);
}

/** Scans that lines of a pass take with these spots. */
export function scansOf({ lineSpacing }: Pick<Hatch, 'lineSpacing'>, row: SpotsAcross) {
  const stride = strideOf(row, lineSpacing);
  return (lines: number) => groupedScans(lines, row.spots, stride);
}

/** Scans of all passes with these spots. */
export function scansOfField(hatch: Hatch, row: SpotsAcross): number {
  const scans = scansOf(hatch, row);
  return lengthsOf(hatch).reduce((sum, { passes, lines }) => sum + passes * scans(lines), 0);
}

/** Numbers of spots, up to `most`, at which the number of scans falls: between them more spots only take power. */
export function usefulSpots(hatch: Hatch, distance: number, most: number): number[] {
  const scans = (spots: number) => scansOfField(hatch, { spots, distance });
  const fewest = scans(most);
  const found = [1];
  for (let now = scans(1); now > fewest; ) {
    // More spots never take more scans: the least number with fewer lies between those with as many and `most`.
    let [few, many] = [found.at(-1)!, most];
    while (many - few > 1) {
      const middle = Math.floor((few + many) / 2);
      if (scans(middle) < now) many = middle;
      else few = middle;
    }
    found.push(many);
    now = scans(many);
  }
  return found;
}
