import type { PulseTrain } from './chordRemoval.ts';
import type { CuttingLight } from './cuttingLight.ts';
import { onePass, type Run, startOf } from './groovePass.ts';

/** A groove after some whole passes. */
export interface PassState {
  readonly done: number;
  /** As in {@link Run}, after the last of them. */
  readonly depth: Float64Array;
  readonly pulses: Float64Array;
  readonly removed: Float64Array;
  readonly slopes: Float64Array;
  readonly level: Uint8Array;
  /** The pass from which the groove was deeper than the light is known. */
  readonly leftRange: number | undefined;
}

/** Passes go together as long as they remove no more than this part of the depth. */
const goesTogether = 0.002;

/**
 * The groove of one light and one train of pulses, pass after pass. What was once cut is kept, so that another number of
 * passes takes only those that are new; which passes go together depends on nothing but the groove, so that the result
 * is the same whatever was asked before.
 */
export class PassHistory {
  readonly light: CuttingLight;
  readonly train: PulseTrain;
  readonly #run: Run;
  readonly #states: PassState[];

  constructor(light: CuttingLight, train: PulseTrain) {
    this.light = light;
    this.train = train;
    this.#run = startOf(light, train);
    this.#states = [snapshot(this.#run, 0, undefined)];
  }

  /** The state number `index`, 0 for the fresh surface; ask for them in order. */
  state(index: number): PassState {
    const states = this.#states;
    for (let i = states.length; i <= index; i++) {
      const from = states[i - 1]!;
      states.push(this.after(from, passesAtOnce(from)));
    }
    return states[index]!;
  }

  /** The groove after `passes` more than in `from`; no more than {@link passesAtOnce} of them. */
  after(from: PassState, passes: number): PassState {
    restore(this.#run, from);
    const inside = onePass(this.#run, passes);
    return snapshot(this.#run, from.done + passes, from.leftRange ?? (inside ? undefined : from.done + 1));
  }
}

/** Passes that go together after `state`. */
export function passesAtOnce({ done, depth, removed }: PassState): number {
  if (done === 0) return 1;
  const fastest = largest(removed);
  if (fastest === 0) return Number.MAX_SAFE_INTEGER;
  return Math.max(1, Math.floor((goesTogether * largest(depth)) / fastest));
}

export function largest(values: Float64Array): number {
  let most = 0;
  for (let i = 0; i < values.length; i++) if (values[i]! > most) most = values[i]!;
  return most;
}

function snapshot(run: Run, done: number, leftRange: number | undefined): PassState {
  return {
    done,
    depth: run.depth.slice(),
    pulses: run.pulses.slice(),
    removed: run.removed.slice(),
    slopes: run.slopes.slice(),
    level: run.level.slice(),
    leftRange,
  };
}

function restore(run: Run, { depth, pulses }: PassState): void {
  run.depth.set(depth);
  run.pulses.set(pulses);
}
