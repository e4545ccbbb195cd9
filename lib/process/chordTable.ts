import type { Spot } from '../optics/askedSpot.ts';

/** How long the lines through a spot run above a level, by their offset from its centre. */
export interface ChordTable {
  /** Distance of neighbouring offsets, m; the first is −(count − 1)/2 of them. */
  readonly step: number;
  readonly count: number;
  /** Length in m above `level` (relative to the spot's peak) of each line along x. */
  chordsAbove(level: number): Float64Array;
}

/** Offsets, and places along each line. */
const [offsets, places] = [121, 161];

/**
 * Samples a spot for lines along x down to `lowest` of its peak, to some 1e-2 of the spot: for searching, not for the
 * result. `radius` is where no light above that level is left, m.
 */
export function tabulateChords(spot: Spot, radius: number): ChordTable {
  const [stepY, stepX] = [(2 * radius) / (offsets - 1), (2 * radius) / (places - 1)];
  const values = new Float64Array(offsets * places);
  for (let j = 0; j < offsets; j++)
    for (let i = 0; i < places; i++)
      values[j * places + i] = spot.irradianceAt(i * stepX - radius, j * stepY - radius) / spot.peak;
  const known = new Map<number, Float64Array>();
  const chordsAbove = (level: number) => {
    const chords =
      known.get(level) ??
      Float64Array.from({ length: offsets }, (_, j) => stepX * stepsAbove(values, j * places, level));
    known.set(level, chords);
    return chords;
  };
  return { step: stepY, count: offsets, chordsAbove };
}

/** Steps of one row of samples that lie above the level, with straight lines between them. */
function stepsAbove(values: Float64Array, start: number, level: number): number {
  let sum = 0;
  for (let i = 1; i < places; i++) {
    const a = values[start + i - 1]! - level;
    const b = values[start + i]! - level;
    if (a > 0 && b > 0) sum += 1;
    else if (a > 0) sum += a / (a - b);
    else if (b > 0) sum += b / (b - a);
  }
  return sum;
}

/**
 * Sum over all lines, `spacing` apart, of the chords at `count` places across from line to line, m: over the pulse spacing
 * it is the number of pulses above the level that each place gets.
 */
export function chordsAcross(
  { step, count: rows }: ChordTable,
  chords: Float64Array,
  spacing: number,
  count: number,
): Float64Array {
  const half = ((rows - 1) / 2) * step;
  return Float64Array.from({ length: count }, (_, k) => {
    const y = ((k + 0.5) / count) * spacing;
    let sum = 0;
    for (let line = Math.ceil((y - half) / spacing); line <= (y + half) / spacing; line++) {
      const place = (y - line * spacing + half) / step;
      const i = Math.min(rows - 2, Math.floor(place));
      sum += chords[i]! + (place - i) * (chords[i + 1]! - chords[i]!);
    }
    return sum;
  });
}
