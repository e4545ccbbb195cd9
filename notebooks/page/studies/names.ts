import { labelled, type NamedQuantity } from '../../studyNames.ts';
import type { Live } from '../live.ts';

/** Names of quantities for search fields; they follow the graph, in which own quantities come and go. */
export function createNames(
  live: Live,
  isOne: (quantity: NamedQuantity['quantity']) => boolean,
): () => readonly NamedQuantity[] {
  let graph: Live['graph'] | undefined;
  let names: readonly NamedQuantity[] = [];
  return () => {
    if (live.graph !== graph) {
      ({ graph } = live);
      names = labelled([...graph.quantities.values()].filter(isOne));
    }
    return names;
  };
}
