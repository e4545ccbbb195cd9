import type { Hatch } from './hatch.ts';
import { type SpotHeat, spotsHeatRate } from './scaleUpHeat.ts';
import { bestSpeed, type LimitKind } from './scanLimits.ts';
import { fieldTimes, type ScanMotion, type ScanTimes } from './scanTime.ts';
import { type SpotsAcross, scansOf } from './spotScans.ts';

/** What can stop a large area from being written faster. */
export type ScaleLimit = LimitKind | 'stitching';

/** How the field of today is written, and is to be written on; SI. */
export interface Recipe {
  readonly hatch: Hatch;
  readonly motion: Pick<ScanMotion, 'directions' | 'turnRound' | 'delay'>;
  readonly pulseSpacing: number;
  /** Energy of one pulse of one spot, J, where the laser's energy is measured. */
  readonly energy: number;
  /** Pulses of a burst; 1 without bursts. */
  readonly burst: number;
}

/** Laser and scanner that write it, with as many spots side by side; SI. */
export interface Machine extends SpotsAcross {
  readonly maxPower: number;
  readonly maxRepetitionRate: number;
  readonly maxSpeed: number;
  readonly acceleration: number;
  /** Part of the energy that goes into the spots; counts from two spots on. */
  readonly efficiency: number;
}

/** How fields are put side by side; SI. */
export interface Stitching {
  /** From the end of a field to the beginning of the next. */
  readonly moveTime: number;
  /** Width of the stripe that neighbours share; less than either side of the field. */
  readonly overlap: number;
}

/** The work on one machine. */
export interface ScaledWork {
  readonly recipe: Recipe;
  readonly machine: Machine;
  readonly stitching: Stitching;
  /** What heat allows; null where that is not known, so that heat is no limit. */
  readonly heat: SpotHeat | null;
}

/** Part of the laser's energy that comes into the spots: all of it with one. */
export function shareOf({ spots, efficiency }: Pick<Machine, 'spots' | 'efficiency'>): number {
  return spots > 1 ? efficiency : 1;
}

/** Energy of one pulse for all spots together where the laser's energy is measured, J: N E/η. */
export function shotEnergy(
  { energy }: Pick<Recipe, 'energy'>,
  machine: Pick<Machine, 'spots' | 'efficiency'>,
): number {
  return (machine.spots * energy) / shareOf(machine);
}

/** Most spots that a pulse of that energy serves; 0 where it is not enough for one. */
export function spotsOfEnergy(maxEnergy: number, energy: number, efficiency: number): number {
  // A hair off, or rounding would take a spot from an energy of a whole number of them.
  if (maxEnergy < energy * (1 - 1e-9)) return 0;
  return Math.max(1, Math.floor((maxEnergy * efficiency) / energy + 1e-9));
}

/** How the larger scanner moves at that speed. */
export function motionAt({ recipe, machine }: ScaledWork, speed: number): ScanMotion {
  const { acceleration, maxSpeed } = machine;
  return { ...recipe.motion, speed, acceleration, maxSpeed };
}

/** Distance √(4χt) to which heat spreads while a spot of that diameter passes a place, t = D/v; m. */
export function diffusionLength(diameter: number, diffusivity: number, speed: number): number {
  return Math.sqrt((4 * diffusivity * diameter) / speed);
}

/** A limit of the speed, m/s. */
export interface SpeedLimit {
  readonly kind: LimitKind;
  readonly speed: number;
}

/** Speed from which the field is not done sooner, m/s; the number of spots does not change it. */
export function turningSpeed(work: ScaledWork): number {
  return bestSpeed(work.recipe.hatch, motionAt(work, work.machine.maxSpeed));
}

/**
 * Limits of the speed, the first to be met in front; pulses stay on their places. That of heat is of all spots together,
 * and is left out where it is not reached at the highest repetition rate.
 */
export function speedLimits(work: ScaledWork, turning = turningSpeed(work)): SpeedLimit[] {
  const { recipe, machine, heat } = work;
  const { pulseSpacing: p, burst } = recipe;
  const limits: SpeedLimit[] = [
    { kind: 'power', speed: (p * machine.maxPower) / (burst * shotEnergy(recipe, machine)) },
    { kind: 'repetition rate', speed: p * machine.maxRepetitionRate },
    { kind: 'scanner speed', speed: machine.maxSpeed },
    { kind: 'acceleration', speed: turning },
  ];
  const hottest = heat === null ? undefined : spotsHeatRate(work, heat);
  if (hottest !== undefined) limits.push({ kind: 'heat', speed: p * hottest });
  return limits.sort((a, b) => a.speed - b.speed);
}

/** Times of a field at that speed, as many lines at a time as there are spots, without the move to the next. */
export function scaledTimes(work: ScaledWork, speed: number): ScanTimes {
  const { hatch } = work.recipe;
  return fieldTimes(hatch, motionAt(work, speed), scansOf(hatch, work.machine));
}

/** Area that a field adds to the whole, m²: (W−o)(H−o). */
export function netArea({ width, height }: Pick<Hatch, 'width' | 'height'>, { overlap }: Stitching): number {
  return (width - overlap) * (height - overlap);
}

/** The work at its fastest; SI. */
export interface ScaledField {
  readonly speed: number;
  readonly repetitionRate: number;
  /** Average power of the laser while it writes, all spots, losses of the splitter counted. */
  readonly power: number;
  readonly fieldTime: number;
  readonly writingTime: number;
  /** Area per time, moves between fields counted, m²/s. */
  readonly rate: number;
  /** Laser energy per area, J/m². */
  readonly energyPerArea: number;
  readonly limit: ScaleLimit;
  /** What would stop it if that were lifted. */
  readonly next: ScaleLimit;
}

/**
 * The field at its fastest. Moves limit it where they take longer than the field; otherwise what stops the speed does. The
 * next limit is found with the first one lifted altogether. `turning` is the {@link turningSpeed} where it is known already.
 */
export function scaledField(work: ScaledWork, turning?: number): ScaledField {
  const { recipe, machine, stitching } = work;
  const [first, second] = speedLimits(work, turning) as [SpeedLimit, SpeedLimit];
  const { speed } = first;
  const times = scaledTimes(work, speed);
  const area = netArea(recipe.hatch, stitching);
  const repetitionRate = speed / recipe.pulseSpacing;
  const power = recipe.burst * shotEnergy(recipe, machine) * repetitionRate;
  const moves = stitching.moveTime > times.total;
  return {
    speed,
    repetitionRate,
    power,
    fieldTime: times.total,
    writingTime: times.writing,
    rate: area / (times.total + stitching.moveTime),
    energyPerArea: (power * times.writing) / area,
    limit: moves ? 'stitching' : first.kind,
    next: moves ? first.kind : nextOf(work, first, second),
  };
}

function nextOf(work: ScaledWork, first: SpeedLimit, second: SpeedLimit): ScaleLimit {
  const lifted = first.kind === 'acceleration' ? { ...work, machine: endless(work.machine) } : work;
  return work.stitching.moveTime > scaledTimes(lifted, second.speed).total ? 'stitching' : second.kind;
}

/** A scanner that turns round in no time. */
function endless(machine: Machine): Machine {
  return { ...machine, acceleration: Number.POSITIVE_INFINITY };
}
