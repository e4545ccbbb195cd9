import type { ProblemNote } from '../graph/outcome.ts';
import type { Patch } from '../graph/state.ts';

interface AnyWant {
  /** A quantity whose value is a number. */
  readonly id: string;
  /** How much a miss counts beside the others; 1 where left out. */
  readonly weight?: number;
  /** How far off is near enough, in the unit of the quantity; a millionth of what is wanted where left out. */
  readonly tolerance?: number;
}

/** What a result should be, SI. */
export type Want =
  | (AnyWant & { readonly kind: 'value' | 'atLeast' | 'atMost'; readonly value: number })
  | (AnyWant & { readonly kind: 'between'; readonly low: number; readonly high: number });

/**
 * An input that may move: a number between two ends, SI, which belong to it (its typical span, or its range, where left
 * out), or any input over a list of values.
 */
export type Move =
  | { readonly id: string; readonly from?: number; readonly to?: number }
  | { readonly id: string; readonly values: readonly unknown[] };

/** A named set of inputs, such as a lens of one's own. */
export interface NamedPatch {
  readonly name: string;
  readonly patch: Patch;
}

/** What is looked for, and what may change for it. */
export interface SolveRequest {
  readonly wants: readonly Want[];
  readonly moves: readonly Move[];
  /** One of these is taken at a time. */
  readonly patches?: readonly NamedPatch[];
  /** Most designs to try; chosen by the work that one takes where left out. */
  readonly most?: number;
}

/** Inputs to set, and what comes of it. */
export interface Solution {
  readonly patch: Patch;
  /** Name of the set of inputs that is in it. */
  readonly part?: string;
  /** Wanted quantities by id. */
  readonly values: Readonly<Record<string, number>>;
}

/** A want that is not met. */
export interface Missed {
  /** Place among the wants. */
  readonly index: number;
  readonly id: string;
  /** The value, or the end of the bound, that is missed. */
  readonly wanted: number;
  readonly reached: number;
  /** Reached less wanted. */
  readonly by: number;
  /** Reached over wanted, where both have the same sign. */
  readonly factor?: number;
}

/** An input that stands at an end of what was allowed. */
export interface AtLimit {
  readonly id: string;
  readonly end: 'from' | 'to';
  readonly value: number;
}

/**
 * What stands in the way.
 * - `problem`: designs there have no value; the commonest problem, and the part of those tried that have it.
 * - `limits`: the inputs at their ends, beyond which it would come nearer; `beyond` where further ends, inside the ranges
 *   of those inputs, are found to meet all wants: a solution there.
 * - `reach`: the value of `want` turns round, or runs out of choices, before it is there; it was found from low to high.
 * - `gap`: the value jumps over what is wanted, as between the lenses of a list; the nearest found on either side.
 * - `unmoved`: nothing that may move enters the want.
 * - `contradiction`: each of the wants can be met alone, but not both (or all) together.
 */
export type Blocked =
  | {
      readonly reason: 'problem';
      readonly problem: ProblemNote;
      readonly input?: string;
      readonly part: number;
    }
  | {
      readonly reason: 'limits';
      readonly want: number;
      readonly limits: readonly AtLimit[];
      readonly beyond?: Solution;
    }
  | { readonly reason: 'gap'; readonly want: number; readonly below: number; readonly above: number }
  | { readonly reason: 'reach'; readonly want: number; readonly low: number; readonly high: number }
  | { readonly reason: 'unmoved'; readonly want: number }
  | { readonly reason: 'contradiction'; readonly wants: readonly number[] };

/** The answer: a solution, or the nearest to one. */
export interface SolveResult extends Partial<Solution> {
  readonly met: boolean;
  readonly missed: readonly Missed[];
  readonly atLimits: readonly AtLimit[];
  /** Set where not met. */
  readonly blocked?: Blocked;
  /** Further solutions, those nearest to today's design first. */
  readonly others: readonly Solution[];
  /** Designs tried; what stands in the way is looked for with as many again at most, and beyond the limits too. */
  readonly tried: number;
  /** False where the bound on designs cut the search short: more may be found with a higher one. */
  readonly complete: boolean;
}
