import { createEngine, type Engine } from '../graph/engine.ts';
import { enteringOf } from '../graph/entering.ts';
import { type Graph, orderOf } from '../graph/graph.ts';
import { hasValue, type Outcome } from '../graph/outcome.ts';
import type { Derived, Quantity } from '../graph/quantity.ts';

type Inputs = Readonly<Record<string, unknown>>;

/** Outcomes of kept designs by id: what is light at once, what rests on long work once that has been brought. */
export interface KeptOutcomes {
  /** Outcomes by id; undefined for what is unknown, and for what waits for work that has not been brought. */
  of(inputs: Inputs, ids: readonly string[]): Record<string, Outcome | undefined>;
  /** Ids of the long work that these wait for, so that it can be done elsewhere. */
  workFor(inputs: Inputs, ids: readonly string[]): readonly string[];
  /** Brings outcomes of long work of a design. */
  bring(inputs: Inputs, outcomes: Readonly<Record<string, Outcome>>): void;
}

interface Kept {
  readonly engine: Engine;
  /** Outcomes of long work, by id. */
  readonly brought: Map<string, Outcome>;
}

/**
 * Works kept designs out over a graph. Their inputs never change: each has an engine of its own, which knows what it has been
 * asked before, for as long as somebody holds the inputs.
 */
export function createKeptOutcomes(graph: Graph): KeptOutcomes {
  const designs = new WeakMap<Inputs, Kept>();
  const keptOf = (inputs: Inputs): Kept => {
    const kept = designs.get(inputs) ?? { engine: createEngine(graph, inputs), brought: new Map() };
    designs.set(inputs, kept);
    return kept;
  };
  return {
    of(inputs, ids) {
      const kept = keptOf(inputs);
      return Object.fromEntries(ids.map((id) => [id, outcomeIn(kept, graph.quantities.get(id), inputs)]));
    },
    workFor(inputs, ids) {
      const { brought } = keptOf(inputs);
      const known = ids.flatMap((id) => graph.quantities.get(id) ?? []);
      const work = known.flatMap((quantity) => longWorkOf(quantity, inputs)).map(({ id }) => id);
      return [...new Set(work)].filter((id) => !brought.has(id));
    },
    bring(inputs, outcomes) {
      const { brought } = keptOf(inputs);
      for (const [id, outcome] of Object.entries(outcomes)) brought.set(id, outcome);
    },
  };
}

function outcomeIn(
  { engine, brought }: Kept,
  quantity: Quantity | undefined,
  inputs: Inputs,
): Outcome | undefined {
  if (!quantity) return undefined;
  const pins: Record<string, unknown> = {};
  for (const { id } of longWorkOf(quantity, inputs)) {
    const outcome = brought.get(id);
    if (outcome === undefined || !hasValue(outcome)) return outcome;
    pins[id] = outcome.value;
  }
  return engine.evaluate([quantity.id], { pins })[quantity.id];
}

/** The quantities nearest to this one that take a search or a picture in a design with these inputs; itself, if it does. */
function longWorkOf(quantity: Quantity, inputs: Inputs): readonly Derived[] {
  const isLong = (one: Quantity): one is Derived => one.kind === 'derived' && one.heavy !== undefined;
  return orderOf([quantity], (one) => (isLong(one) ? [] : enteringOf(one, inputs))).filter(isLong);
}
