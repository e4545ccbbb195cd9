import { highestOf } from '../numerics/highestBetween.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { Problem } from '../problem.ts';
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
  const [one, two] = [Math.log(first.threshold), Math.log(second.threshold)];
  return Math.exp((second.depth * two - first.depth * one) / (second.depth - first.depth));
}

/** Peaks up to this many thresholds: further out than the radii computed, the faint rings of a spot are marked too. */
const highestRatio = 1000;

/**
 * Volume in m³ that one pulse removes whose peak fluence is `peak` (J/m²), up to 1000 thresholds: ∫ depth dA. As exact
 * as the irradiance for round spots, to 1e-6 for others whose parts hang together.
 */
export function volumeAtPeak(spot: Spot, law: RemovalLaw, peak: number): number {
  const crossover = crossoverOf(law);
  return law.reduce((volume, branch, i) => {
    // The second branch adds what it is deeper than the first, from the crossover on.
    const from = i === 0 ? branch.threshold : crossover;
    const rise = i === 0 ? branch.depth : branch.depth - law[0]!.depth;
    return volume + (peak > from ? rise * logarithmsAbove(spot, peak / from) : 0);
  }, 0);
}

/** ∫ ln(F/F_th) dA over all above F_th, m²; `ratio` is peak over F_th. */
function logarithmsAbove(spot: Spot, ratio: number): number {
  if (ratio > highestRatio * (1 + 1e-12)) throw tooHigh(ratio);
  const level = spot.peak / ratio;
  return sumAbove(spot, level, (irradiance) => Math.log(irradiance / level));
}

function tooHigh(ratio: number): Problem {
  const shown = Number(ratio.toPrecision(3));
  return new Problem(
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

/** Searched between threshold and 900 times it, to 1e-4 of the peak and 1e-8 of the volume. */
export function bestRemoval(spot: Spot, law: RemovalLaw): BestRemoval {
  const start = law[0]!.threshold;
  const perEnergy = (logarithm: number) => {
    const peak = start * Math.exp(logarithm);
    return volumeAtPeak(spot, law, peak) / energyAtPeak(spot, peak);
  };
  const at = highestOf(perEnergy, 0, Math.log(highestTried), [firstTries]);
  return { peak: start * Math.exp(at), volumePerEnergy: perEnergy(at) };
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
