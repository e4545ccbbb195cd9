import { chordLength, type Hatch, lineCount, lineOffset, passesWorked } from './hatch.ts';

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

/** Lines of unequal length that are summed one by one; of more, as many strips are. */
const strips = 400;

/** Times of one pass of a hatch. */
function passTimes(hatch: Hatch, pass: number, motion: ScanMotion): ScanTimes {
  const count = lineCount(hatch, pass);
  const angle = pass * hatch.angle;
  const parts = Math.min(count, strips);
  let [writing, total] = [0, 0];
  for (let part = 0; part < parts; part++) {
    // The middle of each strip of lines: their lengths change along straight pieces.
    const index = ((part + 0.5) * count) / parts - 0.5;
    const times = lineTimes(chordLength(hatch, angle, lineOffset(hatch, pass, index)), motion);
    writing += (times.writing * count) / parts;
    total += (times.total * count) / parts;
  }
  return { writing, total };
}

/** Passes at angles of their own that are worked out; of more, as many spread over all. */
const mostPasses = 180;

/**
 * Times of the whole field, all passes. Every line where there are few; more than 400 lines of a pass, or 180 passes, are
 * taken in equal groups: to 1e-4 of the whole.
 */
export function fieldTimes(hatch: Hatch, motion: ScanMotion): ScanTimes {
  const worked = passesWorked(hatch, mostPasses);
  let [writing, total] = [0, 0];
  for (const pass of worked) {
    const times = passTimes(hatch, pass, motion);
    writing += (times.writing * hatch.passes) / worked.length;
    total += (times.total * hatch.passes) / worked.length;
  }
  return { writing, total };
}
