import type { ChoiceInput } from '../lib/graph/quantity.ts';

/** A choice that has a value, and where `and` is given, another beside it. */
export interface Condition {
  readonly choice: ChoiceInput;
  readonly is: string;
  readonly and?: Condition;
}

/** True where the condition, or any of several, holds for the inputs. */
export function conditionHolds(
  when: Condition | readonly Condition[],
  inputs: Readonly<Record<string, unknown>>,
): boolean {
  if ('choice' in when)
    return inputs[when.choice.id] === when.is && (when.and === undefined || conditionHolds(when.and, inputs));
  return when.some((one) => conditionHolds(one, inputs));
}
