import { type HalfSpectrum, valueAt, valueBetween } from './halfSpectrum.ts';

/** A place in a spectrum where power gathers, in steps of frequency. */
export interface Candidate {
  readonly kx: number;
  readonly ky: number;
  /** Power there times the frequency. */
  readonly score: number;
  /** Power there over the median of its ring, the other directions of the same period. */
  readonly overRing: number;
  /** Power along this direction over the least at longer periods. */
  readonly overValley: number;
}

/** Fewer periods in a tile are not told from a change of the background, and their lobe meets that of −k. */
export const leastPeriodsInTile = 5;
/** What repeats less often than this is background. */
const fewest = 2.5;
/** Shorter periods, in pixels, are blurred and aliased. */
export const shortestPeriod = 3;
/** Power over that of other directions below which nothing is looked at. */
const leastLooked = 1.5;
/** Candidates looked at, the strongest first. */
const most = 12;

/** Medians of the power over directions, by the whole number of steps from frequency 0. */
export function ringMedians({ size, values }: HalfSpectrum): Float64Array {
  const half = size / 2;
  const radii = new Uint16Array(values.length);
  const ends = new Uint32Array(half + 1);
  for (let x = 0, i = 0; x < half; x++) {
    for (let y = 0; y < size; y++, i++) {
      const radius = Math.round(Math.sqrt(x * x + (y < half ? y * y : (size - y) * (size - y))));
      radii[i] = Math.min(half, radius);
      ends[radii[i]!]! += 1;
    }
  }
  for (let radius = 1; radius <= half; radius++) ends[radius]! += ends[radius - 1]!;
  // Sorted by ring: each value goes before those of its ring that have been placed.
  const sorted = new Float64Array(ends[half]!);
  const starts = ends.slice();
  for (let i = 0; i < sorted.length; i++) sorted[--starts[radii[i]!]!] = values[i]!;
  return Float64Array.from({ length: half }, (_, radius) => {
    const ring = sorted.subarray(starts[radius], ends[radius]).sort();
    return ring[ring.length >> 1]!;
  });
}

/** Local maxima of the power times the frequency, which weighs down a background that falls with it; strongest first. */
export function findCandidates(spectrum: HalfSpectrum, rings: Float64Array): Candidate[] {
  const half = spectrum.size / 2;
  const found: { x: number; y: number; score: number }[] = [];
  for (let x = 0; x < half; x++) {
    for (let y = -half + 1; y < half; y++) {
      const radius = Math.hypot(x, y);
      if (radius < fewest || radius > spectrum.size / shortestPeriod) continue;
      if (x === 0 && y < 0) continue;
      if (!(valueAt(spectrum, x, y) > leastLooked * rings[Math.round(radius)]!)) continue;
      if (isHighest(spectrum, x, y)) found.push({ x, y, score: radius * valueAt(spectrum, x, y) });
    }
  }
  found.sort((a, b) => b.score - a.score);
  return found.slice(0, most).map(({ x, y, score }) => ({
    kx: x,
    ky: y,
    score,
    overRing: valueAt(spectrum, x, y) / rings[Math.round(Math.hypot(x, y))]!,
    overValley: overValley(spectrum, x, y),
  }));
}

function isHighest(spectrum: HalfSpectrum, x: number, y: number): boolean {
  const here = valueAt(spectrum, x, y);
  if (!(here > 0)) return false;
  for (let dx = -2; dx <= 2; dx++)
    for (let dy = -2; dy <= 2; dy++) if (inside(spectrum, x + dx, y + dy) > here) return false;
  return true;
}

function inside(spectrum: HalfSpectrum, x: number, y: number): number {
  const half = spectrum.size / 2;
  return Math.abs(x) < half && Math.abs(y) < half ? valueAt(spectrum, x, y) : 0;
}

/** Angles beside the direction of a candidate over which the power along it is averaged, rad: six degrees each way. */
const sector = [-0.1, -0.05, 0, 0.05, 0.1];

/** Power at a distance from frequency 0 along a direction. */
function powerAlong(spectrum: HalfSpectrum, angle: number, radius: number): number {
  const sum = sector.reduce(
    (total, turn) =>
      total + valueBetween(spectrum, radius * Math.cos(angle + turn), radius * Math.sin(angle + turn)),
    0,
  );
  return sum / sector.length;
}

/**
 * How far the power of a candidate rises above the deepest valley between it and frequency 0. Scratches, edges and blur
 * have none. Two steps from 0 are left out, where the background was taken away.
 */
function overValley(spectrum: HalfSpectrum, x: number, y: number): number {
  const [angle, radius] = [Math.atan2(y, x), Math.hypot(x, y)];
  let least = Number.POSITIVE_INFINITY;
  for (let r = 2; r <= radius - 1; r += 0.5) least = Math.min(least, powerAlong(spectrum, angle, r));
  return powerAlong(spectrum, angle, radius) / least;
}
