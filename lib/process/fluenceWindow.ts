import { highestOf } from '../numerics/highestBetween.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { Problem } from '../problem.ts';

/** The best way to run a spot in a window of fluence. */
export interface BestWindow {
  /** Peak fluence over the lower bound F1, at most F2/F1. */
  readonly peakOverLow: number;
  /** Area between the bounds · F1 / pulse energy before the stop: 1 for an ideal flat-top, 0.368 at most for a Gaussian. */
  readonly efficiency: number;
}

/**
 * Area above F1, nothing above the peak, times F1 over the pulse energy before the stop, for a peak of `peakOverLow`·F1;
 * the loss at the stop is counted. 0 up to 1.
 */
export function windowEfficiency(spot: Spot, peakOverLow: number): number {
  if (!(peakOverLow > 1)) return 0;
  return (spot.areaAbove(spot.peak / peakOverLow) * spot.transmission) / (spot.effectiveArea * peakOverLow);
}

/** The same for a Gaussian without stop, of any width: ln(q)/q. */
export function gaussianWindowEfficiency(peakOverLow: number): number {
  return peakOverLow > 1 ? Math.log(peakOverLow) / peakOverLow : 0;
}

/** Peaks tried over the window, then around the best of them: where a dip fills, a second maximum may lie near by. */
const tries = [64, 24];

/** The peak up to F2 that gives most area between F1 and F2 per energy; `ratio` = F2/F1 above 1. Peak to 1e-6. */
export function bestWindow(spot: Spot, ratio: number): BestWindow {
  const efficiency = (logarithm: number) => windowEfficiency(spot, Math.exp(logarithm));
  const top = Math.log(requireRatio(ratio));
  const at = highestOf(efficiency, 0, top, tries);
  return { peakOverLow: at === top ? ratio : Math.exp(at), efficiency: efficiency(at) };
}

/** The best of a Gaussian: peak min(F2, e·F1). */
export function gaussianBestWindow(ratio: number): BestWindow {
  const peakOverLow = Math.min(requireRatio(ratio), Math.E);
  return { peakOverLow, efficiency: gaussianWindowEfficiency(peakOverLow) };
}

/** Gain in area per energy over a Gaussian whose peak lies at F2, with the peak of the spot at F2 too. */
export function gainPeakAtTop(spot: Spot, ratio: number): number {
  return windowEfficiency(spot, requireRatio(ratio)) / gaussianWindowEfficiency(ratio);
}

/** Gain in area per energy over a Gaussian, each at its own best peak. */
export function gainBestPeak(spot: Spot, ratio: number): number {
  return bestWindow(spot, ratio).efficiency / gaussianBestWindow(ratio).efficiency;
}

/** Area in m² where the relative irradiance lies between two levels. */
export function areaBetween(spot: Spot, low: number, high: number): number {
  const above = (level: number) => (level < spot.peak ? spot.areaAbove(level) : 0);
  return above(low) - above(high);
}

function requireRatio(ratio: number): number {
  if (ratio > 1) return ratio;
  throw new Problem(
    'impossible',
    'The fluence window is empty: its upper bound must lie above its lower bound. Raise the upper bound.',
    {
      input: 'window.highFluence',
      value: `upper over lower bound ${ratio.toPrecision(3)}`,
      allowed: 'above 1',
    },
  );
}
