import { hasValue, noteOf, type Outcome } from './outcome.ts';
import type { Derived, Report } from './quantity.ts';

/** What is remembered of the last computation of a quantity. */
export interface Kept {
  readonly args: readonly Outcome[];
  readonly outcome: Outcome;
}

/**
 * The one step that both engines share: outcome of a derived quantity from the outcomes of its `from`, in the order
 * of its keys. Identical arguments (by Object.is) return what was kept; an equal result keeps the old outcome object,
 * so that nothing after it runs again. `report` hears of the part that is done.
 */
export function step(quantity: Derived, args: readonly Outcome[], kept?: Kept, report?: Report): Kept {
  if (kept && kept.args.length === args.length && kept.args.every((arg, i) => Object.is(arg, args[i]))) {
    return kept;
  }
  const outcome = computeOutcome(quantity, args, report);
  return { args, outcome: kept && equalOutcomes(kept.outcome, outcome) ? kept.outcome : outcome };
}

function computeOutcome(quantity: Derived, args: readonly Outcome[], report?: Report): Outcome {
  const keys = Object.keys(quantity.from);
  if (quantity.picks) {
    return quantity.picks(Object.fromEntries(keys.map((key, i) => [key, args[i]!])));
  }
  const values: Record<string, unknown> = {};
  for (let i = 0; i < keys.length; i++) {
    const arg = args[i]!;
    if (!hasValue(arg)) return arg;
    values[keys[i]!] = arg.value;
  }
  try {
    const value = quantity.compute(values, report);
    if (typeof value === 'number' && !Number.isFinite(value)) {
      throw new Error(`${quantity.name} came out as ${value}.`);
    }
    const note = quantity.valid?.(values);
    return note === undefined ? { value } : { value, note };
  } catch (error) {
    return { problem: noteOf(error, quantity.id) };
  }
}

function equalOutcomes(a: Outcome, b: Outcome): boolean {
  if (hasValue(a) && hasValue(b)) return Object.is(a.value, b.value) && a.note === b.note;
  if (hasValue(a) || hasValue(b)) return false;
  return a.problem.message === b.problem.message && a.problem.at === b.problem.at;
}
