import { createEngine, type Engine } from '../../lib/graph/engine.ts';
import type { Graph } from '../../lib/graph/graph.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import { goneOutcome } from '../../lib/studies/ownGraph.ts';

/** Values of quantities under the inputs of now, computed without waiting; throws a Problem where one has none. */
export function createReader(
  present: () => { readonly graph: Graph; readonly inputs: Readonly<Record<string, unknown>> },
): (from: Readonly<Record<string, Quantity>>) => Record<string, unknown> {
  let engine: Engine | undefined;
  let of: Graph | undefined;
  return (from) => {
    const { graph, inputs } = present();
    if (!engine || of !== graph) engine = createEngine(graph);
    of = graph;
    engine.setInputs(inputs);
    const ids = Object.values(from).map(({ id }) => id);
    const outcomes = engine.evaluate(ids.filter((id) => graph.quantities.has(id)));
    return Object.fromEntries(
      Object.entries(from).map(([key, { id }]) => [key, valueOrThrow(outcomes[id] ?? goneOutcome(id))]),
    );
  };
}
