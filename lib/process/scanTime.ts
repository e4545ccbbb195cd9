import type { Hatch } from './hatch.ts';
import { lengthsOf } from './hatchLengths.ts';

/** How the scanner moves; SI. */
export interface ScanMotion {
  readonly speed: number;
  readonly acceleration: number;
  /** For the way back where all lines run the same way. */
  readonly maxSpeed: number;
  readonly directions: 'both' | 'one';
  /** Turning outside the field with the laser off, or at its edge with the laser on. */
  readonly turnRound: 'outside' | 'inside';
  /** Wait at each line. */
  readonly delay: number;
}

/** Times of a line or of a field, s. */
export interface ScanTimes {
  /** With the laser on. */
  readonly writing: number;
  /** Turning round, overscan, way back and delay included. */
  readonly total: number;
}

/** Time from rest to rest over a distance at no more than `speed`: constant acceleration, constant speed, deceleration. */
export function restToRest(distance: number, speed: number, acceleration: number): number {
  return distance >= speed ** 2 / acceleration
    ? distance / speed + speed / acceleration
    : 2 * Math.sqrt(distance / acceleration);
}

/** Overscan at each end of a line, v²/(2a), m: the way to the full speed. */
export function overscan(speed: number, acceleration: number): number {
  return speed ** 2 / (2 * acceleration);
}

/**
 * Times of one line of that length and of the way to the next. Outside the field turning round costs 2v/a: from full speed
 * to rest and back; the step to the next line is made meanwhile. At the edge, the line runs from rest to rest.
 */
export function lineTimes(length: number, motion: ScanMotion): ScanTimes {
  const { speed, acceleration, maxSpeed, directions, turnRound, delay } = motion;
  const outside = turnRound === 'outside';
  const writing = outside ? length / speed : restToRest(length, speed, acceleration);
  const turning = outside ? (2 * speed) / acceleration : 0;
  const path = outside ? length + 2 * overscan(speed, acceleration) : length;
  const back = directions === 'one' ? restToRest(path, maxSpeed, acceleration) : 0;
  return { writing, total: writing + turning + back + delay };
}

/**
 * Times of the whole field, all passes. `scansOf` tells in how many scans the lines of a pass are written where several are
 * at a time; their lengths are spread as those of the lines. More than 400 lines of a pass, or 180 passes, are taken in
 * equal groups: to 1e-4 of the whole.
 */
export function fieldTimes(
  hatch: Hatch,
  motion: ScanMotion,
  scansOf: (lines: number) => number = (lines) => lines,
): ScanTimes {
  // Then times are linear in the length, and the mean line stands for all.
  const linear = motion.turnRound === 'outside' && motion.directions === 'both';
  let [writing, total] = [0, 0];
  for (const { passes, lines, lengths, mean } of lengthsOf(hatch)) {
    const scans = passes * scansOf(lines);
    const taken = linear ? [mean] : lengths;
    for (const length of taken) {
      const times = lineTimes(length, motion);
      writing += (times.writing * scans) / taken.length;
      total += (times.total * scans) / taken.length;
    }
  }
  return { writing, total };
}
