import { restToRest, type ScanMotion } from './scanTime.ts';

/** How the spot runs along one line from its beginning to its end, laser on; s and m. */
export interface LineMotion {
  readonly length: number;
  /** From the first moment of the line to the last. */
  readonly time: number;
  /** Way and time in which it speeds up at the beginning, and slows down at the end; 0 with the turn outside the field. */
  readonly ramp: { readonly way: number; readonly time: number };
  readonly speed: number;
  readonly acceleration: number;
}

/** The motion along a line of that length: at one speed, or from rest to rest with the turn at the edge of the field. */
export function lineMotion(
  length: number,
  { speed, acceleration, turnRound }: Pick<ScanMotion, 'speed' | 'acceleration' | 'turnRound'>,
): LineMotion {
  const parts = { length, speed, acceleration };
  if (turnRound === 'outside') return { ...parts, time: length / speed, ramp: { way: 0, time: 0 } };
  const way = Math.min(length / 2, speed ** 2 / (2 * acceleration));
  const time = restToRest(length, speed, acceleration);
  return { ...parts, time, ramp: { way, time: Math.sqrt((2 * way) / acceleration) } };
}

/** Place along the line at a time after its beginning, m. */
export function placeAt({ length, time, ramp, speed, acceleration }: LineMotion, at: number): number {
  if (at < ramp.time) return (acceleration * at * at) / 2;
  if (time - at < ramp.time) return length - (acceleration * (time - at) ** 2) / 2;
  return ramp.way + speed * (at - ramp.time);
}

/** When the spot passes a place along the line, s after its beginning; its inverse. */
export function timeAt({ length, time, ramp, speed, acceleration }: LineMotion, place: number): number {
  const within = Math.min(length, Math.max(0, place));
  if (within < ramp.way) return Math.sqrt((2 * within) / acceleration);
  if (length - within < ramp.way) return time - Math.sqrt((2 * (length - within)) / acceleration);
  return ramp.time + (within - ramp.way) / speed;
}
