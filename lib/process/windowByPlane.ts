import type { Spot } from '../optics/askedSpot.ts';
import { type FieldParts, partsInWindows, type ScannedField } from './fieldWindow.ts';
import { gainPeakAtTop } from './fluenceWindow.ts';
import type { PulseCounts } from './pulseWindow.ts';

/** What a plane gains for a single pulse. */
export interface PlaneGain {
  /** ζ, Rayleigh lengths from the focus. */
  readonly defocus: number;
  /** Area between the bounds per energy over that of a Gaussian, both peaks at the upper bound. */
  readonly gain: number;
  /** How far the axis lies below the peak, over the peak. */
  readonly axisDip: number;
}

/** Gain of a single pulse in a plane with this spot, for a window of `ratio` = F2/F1 above 1. */
export function planeGain(spot: Spot, defocus: number, ratio: number): PlaneGain {
  return {
    defocus,
    gain: gainPeakAtTop(spot, ratio),
    axisDip: Math.max(0, 1 - spot.irradianceAt(0, 0) / spot.peak),
  };
}

/** Widths F2/F1 that the field is worked out for: close together where a flat spot begins to fit in. */
export const windowWidths: readonly number[] = [1.05, 1.1, 1.15, 1.2, 1.3, 1.4, 1.5, 1.75, 2, 2.33, 2.66, 3];

/**
 * Parts of a scanned field for each of {@link windowWidths}, the peak of the spot at the upper bound. Only the ratio of
 * the bounds counts then.
 */
export function partsByWidth(spot: Spot, field: ScannedField, counts: PulseCounts): FieldParts[] {
  const bounds = windowWidths.map((ratio) => ({ low: 1 / ratio, high: 1 }));
  return partsInWindows(spot, 1 / spot.peak, field, counts, bounds);
}
