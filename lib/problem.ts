/**
 * What went wrong, told apart by what the person can do about it.
 * - `unreadable`: a file or a text could not be understood.
 * - `impossible`: a value, or a combination of values, that cannot be.
 * - `outside`: the model does not cover this case.
 * - `absent`: there is nothing to show ("no plane in the range searched").
 */
export type ProblemKind = 'unreadable' | 'impossible' | 'outside' | 'absent';

/** Where a problem points: the input to change, the value it has and the range it should be in. */
export interface ProblemParts {
  /** Id of the input that the person should change, e.g. `plate.stepDiameter`. */
  readonly input?: string;
  /** The offending value as typed or read, already in words. */
  readonly value?: string;
  /** A value of that input, SI, with which it would work, and in words what setting it does. */
  readonly mend?: { readonly value: number; readonly words: string };
  /** The allowed range or form, in words with units. */
  readonly allowed?: string;
  /** Line of a table or text, counted from 1 with the header line included. */
  readonly row?: number;
  /** Column name or number of a table. */
  readonly column?: string;
  /** Place in a line of text, the first character is 1. */
  readonly character?: number;
}

/**
 * The one error that library functions throw on purpose. The message is a full sentence for the
 * person: what is wrong, with the value, the allowed range and the next step.
 */
export class Problem extends Error {
  override readonly name = 'Problem';
  constructor(
    readonly kind: ProblemKind,
    message: string,
    readonly parts: ProblemParts = {},
  ) {
    super(message);
  }
}
