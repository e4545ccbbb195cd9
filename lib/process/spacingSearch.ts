import { highestBetween } from '../numerics/highestBetween.ts';
import { findRoot } from '../numerics/roots.ts';
import type { Spot } from '../optics/askedSpot.ts';
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

/**
 * The local minimum of the modulation that is lowest within ±`part` of a spacing; null where the modulation only falls
 * or rises there.
 */
export function evenestNear(modulationAt: ModulationAt, today: number, part = 0.5): Spacing | null {
  const count = 240;
  const at = (i: number) => today * (1 - part + (2 * part * i) / count);
  const values = Array.from({ length: count + 1 }, (_, i) => modulationAt(at(i)));
  let best: Spacing | null = null;
  for (let i = 1; i < count; i++) {
    if (values[i]! >= values[i - 1]! || values[i]! > values[i + 1]!) continue;
    const spacing = highestBetween((x) => -modulationAt(x), at(i - 1), at(i + 1));
    const modulation = modulationAt(spacing);
    if (best === null || modulation < best.modulation) best = { spacing, modulation };
  }
  return best;
}

/**
 * The widest line spacing up to which every closer one keeps the modulation at `limit` or below, searched to three times
 * `width`, the spot's diameter; null where the modulation stays below so far.
 */
export function widestSpacing(modulationAt: ModulationAt, limit: number, width: number): number | null {
  const count = 240;
  let before = width / 20;
  for (let i = 0; i <= count; i++) {
    const spacing = width * (0.05 + (2.95 * i) / count);
    if (modulationAt(spacing) > limit)
      return i === 0 ? null : findRoot((x) => modulationAt(x) - limit, before, spacing, 1e-9 * width);
    before = spacing;
  }
  return null;
}
