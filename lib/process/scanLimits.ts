import { highestOf } from '../numerics/highestBetween.ts';
import type { Hatch } from './hatch.ts';
import { lengthsOf } from './hatchLengths.ts';
import { fieldTimes, type ScanMotion } from './scanTime.ts';

/** What can stop a field from being written faster. */
export type LimitKind = 'scanner speed' | 'acceleration' | 'repetition rate' | 'power' | 'heat';

/** One limit of the scan speed, pulse spacing and line spacing held. */
export interface ScanLimit {
  readonly kind: LimitKind;
  /** Speed at which it binds, m/s. */
  readonly speed: number;
  /** Field's area over its time there, m²/s. */
  readonly rate: number;
}

/** What the laser and the workpiece allow; SI. */
export interface ScanAllowance {
  readonly pulseSpacing: number;
  /** Hz; with bursts, of bursts. */
  readonly maxRepetitionRate: number;
  /** W, and energy of all pulses of one burst in J. */
  readonly maxPower: number;
  readonly energy: number;
  /** Repetition rate at which the part gets too hot; undefined where it does not, or is not known. */
  readonly hottestRate: number | undefined;
}

/** Field's area over its time at that speed, m²/s. */
export function areaRate(hatch: Hatch, motion: ScanMotion): number {
  return (hatch.width * hatch.height) / fieldTimes(hatch, motion).total;
}

/** Tries over the logarithm of the speed, then around the best of them. */
const tries = [48, 12];

/**
 * Speed from which the field is not done sooner, m/s. To and fro with overscan it is √(aL/2) for lines of the mean length L; with
 * lines that turn at the edge √(aL), which the longest line just reaches. Found by search between a thousandth and 30 of
 * √(aL), to 1e-7.
 */
export function bestSpeed(hatch: Hatch, motion: ScanMotion): number {
  const scale = Math.sqrt(motion.acceleration * Math.max(hatch.width, hatch.height));
  const alike = hatch.angle === 0 || hatch.passes === 1;
  if (motion.turnRound === 'inside') {
    const longest = alike ? hatch.width : Math.hypot(hatch.width, hatch.height);
    return Math.sqrt(motion.acceleration * longest);
  }
  if (motion.directions === 'both') return Math.sqrt((motion.acceleration * meanLength(hatch)) / 2);
  const rateAt = (logarithm: number) => areaRate(hatch, { ...motion, speed: scale * Math.exp(logarithm) });
  return scale * Math.exp(highestOf(rateAt, Math.log(1e-3), Math.log(30), tries));
}

/** Mean length of all lines of all passes, m. */
function meanLength(hatch: Hatch): number {
  let [length, count] = [0, 0];
  for (const { passes, lines, mean } of lengthsOf(hatch)) {
    length += passes * lines * mean;
    count += passes * lines;
  }
  return length / count;
}

/** Heat that would bind only this many times beyond the last other limit is none. */
const outOfReach = 10;

/** All limits, the one met first at the front; spacings of pulses and lines are held, so that rate and power rise with speed. */
export function scanLimits(hatch: Hatch, motion: ScanMotion, allowance: ScanAllowance): ScanLimit[] {
  const { pulseSpacing, maxRepetitionRate, maxPower, energy, hottestRate } = allowance;
  const speeds: [LimitKind, number][] = [
    ['scanner speed', motion.maxSpeed],
    ['acceleration', bestSpeed(hatch, motion)],
    ['repetition rate', pulseSpacing * maxRepetitionRate],
    ['power', (pulseSpacing * maxPower) / energy],
  ];
  const furthest = Math.max(...speeds.map(([, speed]) => speed));
  const hottest = pulseSpacing * (hottestRate ?? Number.POSITIVE_INFINITY);
  if (hottest < outOfReach * furthest) speeds.push(['heat', hottest]);
  return speeds
    .map(([kind, speed]) => ({ kind, speed, rate: areaRate(hatch, { ...motion, speed }) }))
    .sort((a, b) => a.speed - b.speed);
}
