import {
  type Machine,
  netArea,
  type Recipe,
  type ScaledField,
  type ScaledWork,
  type ScaleLimit,
  scaledField,
  speedLimits,
  spotsOfEnergy,
  turningSpeed,
} from './scaleUp.ts';
import { fieldTimes } from './scanTime.ts';
import { scansOf, usefulSpots } from './spotScans.ts';

/** The area per time, m²/s, that one limit alone would leave. */
export interface Ceiling {
  readonly kind: ScaleLimit;
  readonly rate: number;
}

/** Motion of a scanner that neither turns nor waits. */
const unhindered = {
  acceleration: Number.POSITIVE_INFINITY,
  maxSpeed: Number.POSITIVE_INFINITY,
  directions: 'both',
  turnRound: 'outside',
  delay: 0,
} as const;

/**
 * Each limit alone, everything else without limit, the lowest in front: of power, repetition rate, scanner speed and heat
 * the speed with no turning, waiting or moving; of acceleration the turns and delays at the speed best for them; of
 * stitching the moves, with fields done in no time; not there where moves take none. The whole is never above any of them.
 */
export function ceilings(work: ScaledWork): Ceiling[] {
  const { recipe, machine, stitching } = work;
  const { width, height } = recipe.hatch;
  const scans = scansOf(recipe.hatch, machine);
  const turning = { ...recipe.motion, acceleration: machine.acceleration, maxSpeed: machine.maxSpeed };
  const found: Ceiling[] = speedLimits(work).map(({ kind, speed }) => {
    const motion = kind === 'acceleration' ? { ...turning, speed } : { ...unhindered, speed };
    return { kind, rate: (width * height) / fieldTimes(recipe.hatch, motion, scans).total };
  });
  const moving = netArea(recipe.hatch, stitching) / stitching.moveTime;
  if (Number.isFinite(moving)) found.push({ kind: 'stitching', rate: moving });
  return found.sort((a, b) => a.rate - b.rate);
}

/** What is missing to a target. */
export interface Missing {
  /** Target over what is reached; 1 or less where it is met. */
  readonly factor: number;
  /** Limits that alone lie below the target, the lowest in front, with target over ceiling. */
  readonly short: readonly { readonly kind: ScaleLimit; readonly factor: number }[];
}

/** Compares a rate and the ceilings it lies under with a target, m²/s. */
export function missingTo(target: number, rate: number, limits: readonly Ceiling[]): Missing {
  const short = limits.filter((one) => one.rate < target);
  return {
    factor: target / rate,
    short: short.map(({ kind, rate: most }) => ({ kind, factor: target / most })),
  };
}

/** The work with another number of spots. */
export function withSpots(work: ScaledWork, spots: number): ScaledWork {
  return { ...work, machine: { ...work.machine, spots } };
}

/** Most spots: what the pulse energy serves, what the field is high enough for at their distance, and the least of the two. */
export interface MostSpots {
  readonly energy: number;
  readonly height: number;
  readonly all: number;
}

/** Bounds of the number of spots; in a field lower than the distance there is one. */
export function mostSpots(
  { energy, hatch }: Recipe,
  { efficiency }: Pick<Machine, 'efficiency'>,
  maxEnergy: number,
  distance: number,
): MostSpots {
  const ofEnergy = spotsOfEnergy(maxEnergy, energy, efficiency);
  const ofHeight = Math.max(1, Math.floor(hatch.height / distance + 1e-9));
  return { energy: ofEnergy, height: ofHeight, all: Math.min(ofEnergy, ofHeight) };
}

/** The least number of spots that meets a target, or the best there is. */
export interface SpotsFound {
  readonly met: boolean;
  readonly spots: number;
  readonly field: ScaledField;
}

/** Tries all useful numbers of spots up to `most` (1 or more) in turn. */
export function spotsFor(work: ScaledWork, target: number, most: number): SpotsFound {
  let best: SpotsFound | undefined;
  const turning = turningSpeed(work);
  for (const spots of usefulSpots(work.recipe.hatch, work.machine.distance, most)) {
    const field = scaledField(withSpots(work, spots), turning);
    // A number set from the target must meet it in spite of rounding.
    if (field.rate >= target * (1 - 1e-12)) return { met: true, spots, field };
    if (best === undefined || field.rate > best.field.rate) best = { met: false, spots, field };
  }
  return best!;
}
