import { createEngine, type Engine } from '../graph/engine.ts';
import type { Graph } from '../graph/graph.ts';
import type { Outcome } from '../graph/outcome.ts';
import { isHeavy } from './compare.ts';

type Inputs = Readonly<Record<string, unknown>>;

/** Outcomes of whole designs by id; undefined for what is unknown, and for what takes a search or a picture. */
export type LightOutcomes = (inputs: Inputs, ids: readonly string[]) => Record<string, Outcome | undefined>;

/**
 * Works designs out over a graph. Inputs of a kept design never change: each has an engine of its own, which knows what it
 * has been asked before, for as long as the design is kept.
 */
export function createLightOutcomes(graph: Graph): LightOutcomes {
  const engines = new WeakMap<Inputs, Engine>();
  return (inputs, ids) => {
    const engine = engines.get(inputs) ?? createEngine(graph, inputs);
    engines.set(inputs, engine);
    const light = ids.filter((id) => {
      const quantity = graph.quantities.get(id);
      return quantity !== undefined && !isHeavy(quantity, inputs);
    });
    return engine.evaluate(light);
  };
}
