import type { Graph } from '../lib/graph/graph.ts';
import type { ProblemNote } from '../lib/graph/outcome.ts';
import { isInput, type Quantity } from '../lib/graph/quantity.ts';
import { checkInput } from '../lib/graph/state.ts';
import type { StepwellDocument } from './document.ts';

/** What the top of a document says where its result is missing. */
export interface MissingResult {
  readonly text: string;
  /** Input that the problem names, if there is one. */
  readonly input: Quantity | undefined;
  /** A value of that input which mends it. */
  readonly mend: { readonly value: number; readonly words: string } | undefined;
}

/** The words for a missing result, and what can be done about it. */
export function missingResult(
  graph: Graph,
  { missing }: NonNullable<StepwellDocument['result']>,
  { message, parts }: ProblemNote,
): MissingResult {
  const input = graph.quantities.get(parts.input ?? '');
  const mend = input && parts.mend && allows(input, parts.mend.value) ? parts.mend : undefined;
  // Where one value would mend it, the design is none without a result: the message alone says what is so.
  return { text: mend ? message : `${missing} ${message}`, input, mend };
}

/** Whether the input can be set to that value. */
function allows(quantity: Quantity, value: number): boolean {
  try {
    if (!isInput(quantity)) return false;
    checkInput(quantity, value);
    return true;
  } catch {
    return false;
  }
}
