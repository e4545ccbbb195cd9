import { Problem, type ProblemKind, type ProblemParts } from '../problem.ts';

/** Why there is no value: kind, sentence, parts, and the id of the quantity where it arose. */
export interface ProblemNote {
  /** `waiting`: not computed yet, for the first moments of a page. `stopped`: the person stopped it on the way. */
  readonly kind: ProblemKind | 'fault' | 'waiting' | 'stopped';
  readonly message: string;
  readonly parts: ProblemParts;
  readonly at: string;
}

/** A value, perhaps with a note on validity, or a problem. Nothing in the graph ever rejects or is NaN. */
export type Outcome<T = unknown> =
  | { readonly value: T; readonly note?: string }
  | { readonly problem: ProblemNote };

export function hasValue<T>(outcome: Outcome<T>): outcome is { readonly value: T; readonly note?: string } {
  return 'value' in outcome;
}

/** The problem note of an error thrown while computing `at`. Anything but a Problem is a fault of the program. */
export function noteOf(error: unknown, at: string): ProblemNote {
  if (error instanceof Problem) return { kind: error.kind, message: error.message, parts: error.parts, at };
  const message = error instanceof Error ? error.message : String(error);
  return { kind: 'fault', message: `This could not be computed: ${message}`, parts: {}, at };
}

/** The value of an outcome; throws its problem as a Problem where there is none. `label` goes before the message. */
export function valueOrThrow<T = unknown>(outcome: Outcome<T>, label = ''): T {
  if (hasValue(outcome)) return outcome.value;
  const { kind, message, parts } = outcome.problem;
  const own = kind === 'fault' || kind === 'waiting' || kind === 'stopped' ? 'outside' : kind;
  throw new Problem(own, `${label}${message}`, parts);
}
