import type { Outcome } from '../../../lib/graph/outcome.ts';
import type { Derived } from '../../../lib/graph/quantity.ts';

/** What the button says that has stopped work done after all. */
export const workOutWords = 'Work it out';

/** A heavy quantity that is being worked out, or that the person stopped. */
export interface Work {
  readonly id: string;
  readonly name: string;
  /** `waiting`: for its turn, behind other work. */
  readonly state: 'waiting' | 'working' | 'stopped';
  /** Part done, 0…1; undefined where nothing is reported. */
  readonly part: number | undefined;
  /**
   * Since when it is worked out, ms of the page's clock; where it waits, since when it waits for what runs now. Undefined
   * while nothing runs, as until a worker has started.
   */
  readonly since: number | undefined;
  /** The person asked for it by the button, and wants to see it at once. */
  readonly pressed: boolean;
}

/** Work that takes longer than this is told of, ms: below, nothing appears that would be gone before it is read. */
export const longWork = 1000;

/** Whether there is something to tell of this work: a person may stop it, or have it done after all. */
export function isTold({ state, since, pressed }: Work, now: number): boolean {
  return state === 'stopped' || pressed || (since !== undefined && now - since >= longWork);
}

/** What a heavy quantity holds once the person has stopped it. */
export function stoppedOutcome({ id, name }: Derived): Outcome {
  const words = `${name[0]!.toUpperCase()}${name.slice(1)}`;
  const message = `${words}: stopped by you before it was worked out. Choose “${workOutWords}”, or change the design.`;
  return { problem: { kind: 'stopped', message, parts: {}, at: id } };
}
