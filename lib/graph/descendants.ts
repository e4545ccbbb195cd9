import { enteringOf } from './entering.ts';
import type { Graph } from './graph.ts';

/** Ids that depend on any of `ids`, these included; under `inputs` where given, in which cases not chosen do not count. */
export function descendantsOf(
  graph: Graph,
  ids: Iterable<string>,
  inputs: Readonly<Record<string, unknown>> = {},
): ReadonlySet<string> {
  const touched = new Set(ids);
  for (const quantity of graph.order) {
    if (quantity.kind !== 'derived') continue;
    if (enteringOf(quantity, inputs).some((other) => touched.has(other.id))) touched.add(quantity.id);
  }
  return touched;
}
