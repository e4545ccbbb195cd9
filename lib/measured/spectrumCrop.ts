import { type HalfSpectrum, valueAt } from './halfSpectrum.ts';

/** The middle of a power spectrum, both halves of it. */
export interface SpectrumCrop {
  /** Frequencies to either side of 0, along x and along y. */
  readonly reach: number;
  /** Periods a pixel between neighbouring frequencies. */
  readonly step: number;
  /**
   * Squared counts, (2 reach + 1)² row by row: along y, which points down in the picture, from −reach, and within a row
   * along x from −reach.
   */
  readonly values: Float64Array;
}

/** As many times the frequency of the ripples are shown: their second harmonic still lies inside. */
const shownReach = 2.4;
const leastReach = 8;

/**
 * Cuts the middle out of a spectrum of tiles that were shrunk by `factor`: as far as 2.4 times `radius`, the frequency of
 * the ripples in steps, or as far as it goes where there are none.
 */
export function cropSpectrum(spectrum: HalfSpectrum, factor: number, radius?: number): SpectrumCrop {
  const most = spectrum.size / 2 - 1;
  const wanted = radius === undefined ? most : Math.ceil(shownReach * radius);
  const reach = Math.min(most, Math.max(leastReach, wanted));
  const side = 2 * reach + 1;
  const values = Float64Array.from({ length: side * side }, (_, i) =>
    valueAt(spectrum, (i % side) - reach, Math.floor(i / side) - reach),
  );
  return { reach, step: 1 / (spectrum.size * factor), values };
}
