import { highestBetween } from '../numerics/highestBetween.ts';
import { findRoot } from '../numerics/roots.ts';
import type { Spot } from '../optics/askedSpot.ts';
import type { Stretch } from '../optics/depthInUse.ts';
import { lineDose } from './lineDose.ts';
import { quickSpectrum } from './quickSpectrum.ts';

/** The modulation that lines along x leave, asked often: against line spacing in m. */
export type ModulationAt = (spacing: number) => number;

/** Tabulates the spot's spectrum once; then 50 µs a spacing. To 1e-6. */
export function modulationOf(spot: Spot): ModulationAt {
  const { at, end } = quickSpectrum(spot);
  const asked = { spectrum: at, spectrumEnd: () => end };
  return (spacing) => lineDose(asked, spacing).modulation;
}

/** A line spacing and what it leaves. */
export interface Spacing {
  readonly spacing: number;
  readonly modulation: number;
}

/** Line spacings that differ by a smaller part are taken as the same. */
export const same = 0.01;

/** Local minima of the modulation within ±`part` of a spacing, by rising spacing. */
function minimaNear(modulationAt: ModulationAt, today: number, part: number): Spacing[] {
  const count = 240;
  const at = (i: number) => today * (1 - part + (2 * part * i) / count);
  const values = Array.from({ length: count + 1 }, (_, i) => modulationAt(at(i)));
  const minima: Spacing[] = [];
  for (let i = 1; i < count; i++) {
    if (values[i]! >= values[i - 1]! || values[i]! > values[i + 1]!) continue;
    const spacing = highestBetween((x) => -modulationAt(x), at(i - 1), at(i + 1));
    minima.push({ spacing, modulation: modulationAt(spacing) });
  }
  return minima;
}

/**
 * The local minimum of the modulation within ±`part` of a spacing to go to: that in which `today` lies already; else the
 * nearest wider one that is more even, as wider lines are fewer; else the nearest closer one that is; else the lowest.
 * Null where the modulation has no local minimum there.
 */
export function evenerNear(modulationAt: ModulationAt, today: number, part = 0.5): Spacing | null {
  const minima = minimaNear(modulationAt, today, part);
  const now = modulationAt(today);
  const better = minima.filter(({ modulation }) => modulation < now);
  const lowest = minima.reduce<Spacing | null>(
    (best, one) => (best === null || one.modulation < best.modulation ? one : best),
    null,
  );
  return (
    minima.find(({ spacing }) => Math.abs(spacing / today - 1) < same) ??
    better.find(({ spacing }) => spacing > today) ??
    better.findLast(({ spacing }) => spacing <= today) ??
    lowest
  );
}

/** A rise by less between two minima is none that the eye sees in a chart. */
const visible = 0.01;

/**
 * Minima of a charted modulation, each after a rise that can be seen, and found exactly between its neighbours: a flat
 * start, where nothing is modulated, is none.
 */
export function minimaInChart(
  modulationAt: ModulationAt,
  spacings: Float64Array,
  values: Float64Array,
): Spacing[] {
  const minima: Spacing[] = [];
  let from = 0;
  for (let i = 1; i + 1 < values.length; i++) {
    if (values[i]! >= values[i - 1]! || values[i]! > values[i + 1]!) continue;
    if (Math.max(...values.subarray(from, i)) < values[i]! + visible) continue;
    const spacing = highestBetween((x) => -modulationAt(x), spacings[i - 1]!, spacings[i + 1]!);
    minima.push({ spacing, modulation: modulationAt(spacing) });
    from = i;
  }
  return minima;
}

/** Line spacings that keep the modulation at what is let pass or below; metres. */
export interface KeptSpacings {
  /** Up to this one every spacing does. */
  readonly all: number;
  /** The first range of wider ones that does; null where none does. */
  readonly further: Stretch | null;
  /** The widest one that does. */
  readonly widest: number;
}

/**
 * Line spacings that keep the modulation at `limit` or below, searched up to `end` in 480 steps, each end then found
 * exactly; null where the closest one searched does not keep it or the widest does.
 */
export function keptSpacings(modulationAt: ModulationAt, limit: number, end: number): KeptSpacings | null {
  const count = 480;
  const excess = (spacing: number) => modulationAt(spacing) - limit;
  const at = (i: number) => (end * (8 + i)) / (8 + count);
  const kept = Array.from({ length: count + 1 }, (_, i) => excess(at(i)) <= 0);
  if (!kept[0] || kept[count]) return null;
  const ends: number[] = [];
  for (let i = 1; i <= count; i++)
    if (kept[i] !== kept[i - 1]) ends.push(findRoot(excess, at(i - 1), at(i), 1e-9 * end));
  return {
    all: ends[0]!,
    further: ends.length > 1 ? { from: ends[1]!, to: ends[2]! } : null,
    widest: ends.at(-1)!,
  };
}
