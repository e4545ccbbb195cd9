import type { Graph } from './graph.ts';

/** Ids that depend on any of `ids`, these included. */
export function descendantsOf(graph: Graph, ids: Iterable<string>): ReadonlySet<string> {
  const touched = new Set(ids);
  for (const quantity of graph.order) {
    if (quantity.kind !== 'derived') continue;
    if (Object.values(quantity.from).some((other) => touched.has(other.id))) touched.add(quantity.id);
  }
  return touched;
}
