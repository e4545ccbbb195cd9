import type { LimitKind } from './scanLimits.ts';
import { lineTimes, type ScanMotion } from './scanTime.ts';

/** What scanner and laser allow and what field is wanted; SI. */
export interface FieldMachine {
  readonly width: number;
  readonly height: number;
  readonly motion: ScanMotion;
  /** Speed from which a field of this width is not done sooner, m/s. */
  readonly turningSpeed: number;
  readonly maxRepetitionRate: number;
  readonly maxPower: number;
  readonly maxPulseEnergy: number;
}

/** A way to write a field with one spot, as it is before it is made larger or smaller; SI. */
export interface FieldSetting {
  readonly pulseSpacing: number;
  readonly lineSpacing: number;
  /** Energy of a pulse where the laser's energy is measured. */
  readonly energy: number;
  /** Diameter of the spot as scanned. */
  readonly diameter: number;
}

/** What stops it; heat is not counted. */
export type FieldLimit = Exclude<LimitKind, 'heat'>;

/** A setting made larger by `scale`, at the fastest speed that it can have. */
export interface FastestField {
  readonly scale: number;
  readonly speed: number;
  readonly repetitionRate: number;
  readonly limit: FieldLimit;
  /** Area over time, m²/s. */
  readonly rate: number;
}

/** The fastest that a setting can be written at one size: pulses stay on their places. */
export function fastestAt(machine: FieldMachine, setting: FieldSetting, scale: number): FastestField {
  const { motion, width, turningSpeed, maxRepetitionRate, maxPower } = machine;
  const p = setting.pulseSpacing * scale;
  const energy = setting.energy * scale * scale;
  const speeds: readonly (readonly [FieldLimit, number])[] = [
    ['power', (p * maxPower) / energy],
    ['repetition rate', p * maxRepetitionRate],
    ['scanner speed', motion.maxSpeed],
    ['acceleration', turningSpeed],
  ];
  const [limit, speed] = speeds.reduce((least, one) => (one[1] < least[1] ? one : least));
  const time = lineTimes(width, { ...motion, speed }).total;
  const rate = (width * setting.lineSpacing * scale) / time;
  return { scale, speed, repetitionRate: speed / p, limit, rate };
}

/** A rate this part of the highest counts as the highest: a spot twice as large for one per cent helps nobody. */
const nearlyBest = 0.99;

/** Largest size of the spot: what the pulse energy reaches, or the field. */
export function largestScale(machine: FieldMachine, setting: FieldSetting): number {
  const { maxPulseEnergy, width, height } = machine;
  return Math.min(
    Math.sqrt(maxPulseEnergy / setting.energy),
    Math.min(width, height) / (2 * setting.diameter),
  );
}

/**
 * The smallest spot with which a setting is written at 99 % of its highest rate: with a larger spot of the same profile all
 * spacings grow with it, and no limit comes sooner, so that the largest is the fastest.
 */
export function bestSize(machine: FieldMachine, setting: FieldSetting): FastestField {
  const largest = largestScale(machine, setting);
  const wanted = nearlyBest * fastestAt(machine, setting, largest).rate;
  let [small, large] = [Math.log(largest) - 12, Math.log(largest)];
  for (let i = 0; i < 40; i++) {
    const middle = (small + large) / 2;
    if (fastestAt(machine, setting, Math.exp(middle)).rate >= wanted) large = middle;
    else small = middle;
  }
  return fastestAt(machine, setting, Math.exp(large));
}
