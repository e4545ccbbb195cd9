import type { Graph } from '../../lib/graph/graph.ts';
import type { Outcome } from '../../lib/graph/outcome.ts';
import { type Derived, isInput, type Quantity } from '../../lib/graph/quantity.ts';
import type { DesignState } from '../../lib/graph/state.ts';
import { type Kept, step } from '../../lib/graph/step.ts';
import { notYet } from './heavy/heavyPart.ts';

/** What is needed of a variable of the reactive runtime, which live.ts alone knows. */
export interface Definable {
  define(name: string, inputs: readonly string[], compute: (...values: never[]) => unknown): unknown;
}

/** One variable a quantity, holding its outcome; nothing runs until it is watched. `heavy` ones hold what they are given. */
export function defineGraph<Variable extends Definable>(
  module: { variable(): Variable },
  graph: Graph,
  start: DesignState,
  heavy: readonly Quantity[],
): Map<string, Variable> {
  const variables = new Map<string, Variable>();
  for (const quantity of graph.order) {
    const variable = module.variable();
    variables.set(quantity.id, variable);
    if (heavy.includes(quantity)) define(variable, quantity.id, notYet(quantity.id));
    else if (isInput(quantity)) defineSource(variable, quantity.id, start.inputs[quantity.id]);
    else if (quantity.kind === 'constant') defineSource(variable, quantity.id, quantity.value);
    else defineDerived(variable, quantity);
  }
  return variables;
}

/** The variable works the quantity out of those that it is derived from. */
export function defineDerived(variable: Definable, quantity: Derived): void {
  let kept: Kept | undefined;
  const ids = Object.values(quantity.from).map((other) => other.id);
  variable.define(quantity.id, ids, (...outcomes: Outcome[]) => {
    kept = step(quantity, outcomes, kept);
    return kept.outcome;
  });
}

export function defineSource(variable: Definable, id: string, value: unknown): void {
  define(variable, id, { value });
}

export function define(variable: Definable, id: string, outcome: Outcome): void {
  variable.define(id, [], () => outcome);
}
