import type { Graph } from '../graph/graph.ts';
import type { Patch } from '../graph/state.ts';

/**
 * Number of the set of initial values in use. A link holds what differs from it, so a change of any initial value makes
 * a new set, and the former value goes into `earlier` under the former number.
 */
export const initialSet = 1;

/** By the number of a former set: values that it had and the next one has not. */
const earlier: Readonly<Record<number, Patch>> = {};

/** Initial values of all inputs in that set; undefined for a number that is no set known here. */
export function initialValues(graph: Graph, set: number): Patch | undefined {
  if (!Number.isInteger(set) || set < 1 || set > initialSet) return undefined;
  let values: Patch = graph.initial;
  for (let number = initialSet - 1; number >= set; number--) values = { ...values, ...earlier[number] };
  return values;
}
