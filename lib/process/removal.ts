import { findRoot } from '../numerics/roots.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { Problem } from '../problem.ts';
import { flatTopBestVolumePerEnergy, gaussianBestVolumePerEnergy } from './gaussianRemoval.ts';
import { gaussianSpot } from './gaussianSpot.ts';
import { sumAbove } from './sumAbove.ts';

/** One logarithmic branch: depth per pulse δ ln(F/F_th) above its threshold. */
export interface RemovalBranch {
  /** δ in m: depth gained for each factor e of fluence, one pulse. */
  readonly depth: number;
  /** F_th in J/m², incident, for the pulses on a place. */
  readonly threshold: number;
}

/**
 * Depth per pulse against incident fluence: the deeper of one or two branches, the optical one first and the thermal
 * one, of higher threshold, behind it (S. Nolte et al., J. Opt. Soc. Am. B 14, 2716 (1997)).
 */
export type RemovalLaw = readonly RemovalBranch[];

/** A law of one or two branches; throws a Problem where the second starts below the first. */
export function removalLaw(first: RemovalBranch, second?: RemovalBranch): RemovalLaw {
  if (second === undefined) return [first];
  if (second.threshold >= first.threshold) return [first, second];
  throw new Problem(
    'impossible',
    'The second branch of removal starts below the first, where nothing is removed. Raise its threshold, or exchange the two branches.',
    { input: 'removal.secondThreshold', allowed: 'from the threshold of the first branch on' },
  );
}

/** Depth in m that a pulse of `fluence` (J/m², incident) removes; 0 up to the threshold. */
export function depthAt(law: RemovalLaw, fluence: number): number {
  return law.reduce((most, { depth, threshold }) => {
    return fluence > threshold ? Math.max(most, depth * Math.log(fluence / threshold)) : most;
  }, 0);
}

/** Fluence in J/m² from which the second branch is the deeper one; Infinity where it never is. */
export function crossoverOf([first, second]: RemovalLaw): number {
  if (!first || !second || second.depth <= first.depth) return Number.POSITIVE_INFINITY;
  const rise = second.depth - first.depth;
  return first.threshold * Math.exp((second.depth * Math.log(second.threshold / first.threshold)) / rise);
}

/** Peaks up to this many thresholds: further out than the radii computed, the faint rings of a spot are marked too. */
const highestRatio = 1000;

/**
 * Volume in m³ that one pulse removes whose peak fluence is `peak` (J/m²), up to 1000 thresholds: ∫ depth dA. As exact
 * as {@link sumAbove}.
 */
export function volumeAtPeak(spot: Spot, law: RemovalLaw, peak: number): number {
  return stepsOf(law).reduce((volume, { from, rise }) => {
    return volume + (peak > from ? rise * logarithmsAbove(spot, peak / from) : 0);
  }, 0);
}

/** A law as a sum: from each fluence on, depth grows by `rise` more for each factor e. */
function stepsOf(law: RemovalLaw): readonly { readonly from: number; readonly rise: number }[] {
  const [first, second] = law;
  const steps = [{ from: first!.threshold, rise: first!.depth }];
  const crossover = crossoverOf(law);
  if (crossover < Number.POSITIVE_INFINITY)
    steps.push({ from: crossover, rise: second!.depth - first!.depth });
  return steps;
}

/** ∫ ln(F/F_th) dA over all above F_th, m²; `ratio` is peak over F_th. */
function logarithmsAbove(spot: Spot, ratio: number): number {
  requireRatio(ratio);
  const level = spot.peak / ratio;
  return sumAbove(spot, level, (irradiance) => Math.log(irradiance / level));
}

/** Throws where a peak is more than 1000 times its threshold: there is no sum of what the faint rings then remove. */
export function requireRatio(ratio: number): void {
  if (ratio <= highestRatio * (1 + 1e-12)) return;
  const shown = Number(ratio.toPrecision(3));
  throw new Problem(
    'outside',
    `The peak fluence is ${shown} times the threshold; removal is summed up to ${highestRatio} times. Lower the pulse energy or move the workpiece.`,
    { input: 'laser.pulseEnergy', value: `${shown} thresholds`, allowed: `up to ${highestRatio} thresholds` },
  );
}

/** Pulse energy in J before the stop at which the peak fluence is `peak` (J/m²). */
export function energyAtPeak(spot: Spot, peak: number): number {
  return (peak * spot.effectiveArea) / spot.transmission;
}

/** The peak fluence that removes most per energy. */
export interface BestRemoval {
  /** J/m². */
  readonly peak: number;
  /** m³/J, of the energy before the stop. */
  readonly volumePerEnergy: number;
}

/** Highest peak that is tried, in thresholds, and how many to start with. */
const highestTried = 900;
const firstTries = 40;

/**
 * Searched between threshold and 900 times it, peak to 1e-9: where V/E is highest, dV/d ln F = V, and the left side is
 * the sum of the areas above each step of the law times its rise.
 */
export function bestRemoval(spot: Spot, law: RemovalLaw): BestRemoval {
  const start = law[0]!.threshold;
  const peakAt = (logarithm: number) => start * Math.exp(logarithm);
  const perEnergy = (logarithm: number) => volumeAtPeak(spot, law, peakAt(logarithm)) * Math.exp(-logarithm);
  const growth = (logarithm: number) =>
    growthAtPeak(spot, law, peakAt(logarithm)) - volumeAtPeak(spot, law, peakAt(logarithm));
  const step = Math.log(highestTried) / firstTries;
  const values = Array.from({ length: firstTries + 1 }, (_, i) => perEnergy(i * step));
  const best = values.indexOf(Math.max(...values));
  const [from, to] = [Math.max(1e-6, best - 1) * step, (best + 1) * step];
  const at = growth(from) > 0 && growth(to) < 0 ? findRoot(growth, from, to, 1e-12) : best * step;
  const peak = peakAt(at);
  return { peak, volumePerEnergy: volumeAtPeak(spot, law, peak) / energyAtPeak(spot, peak) };
}

/** dV/d ln F, m³. */
function growthAtPeak(spot: Spot, law: RemovalLaw, peak: number): number {
  return stepsOf(law).reduce((sum, { from, rise }) => {
    return sum + (peak > from ? rise * sumAbove(spot, (spot.peak * from) / peak, () => 1) : 0);
  }, 0);
}

/** A cut through a crater. */
export interface CraterSection {
  /** Places across the spot, m. */
  readonly x: Float64Array;
  /** Depth below the surface there, m. */
  readonly depth: Float64Array;
}

/**
 * The crater of `pulses` pulses on one place, cut along x through the centre at the places `x`; `unit` is the fluence
 * of relative irradiance 1 (J/m²). Every pulse removes alike: no wall, no defocus, no growing roughness.
 */
export function craterSection(
  spot: Spot,
  law: RemovalLaw,
  unit: number,
  pulses: number,
  x: Float64Array,
): CraterSection {
  return { x, depth: x.map((place) => pulses * depthAt(law, unit * spot.irradianceAt(place, 0))) };
}

/** Most volume per energy of a Gaussian without stop, m³/J: 2δ/(e²F_th) for one branch, searched for two. */
export function gaussianBest(law: RemovalLaw): number {
  const [first] = law;
  if (law.length === 1) return gaussianBestVolumePerEnergy(first!.depth, first!.threshold);
  return bestRemoval(gaussianSpot(1), law).volumePerEnergy;
}

/** Most volume per energy of an ideal flat-top, m³/J: δ/(eF_th) of the branch that gives more. */
export function flatTopBest(law: RemovalLaw): number {
  return Math.max(...law.map(({ depth, threshold }) => flatTopBestVolumePerEnergy(depth, threshold)));
}
