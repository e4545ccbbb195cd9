import { labelled, type NamedQuantity } from '../../studyNames.ts';
import type { PageContext } from '../context.ts';
import { nameList } from './formField.ts';

/** The list behind search fields; it follows the graph, in which own quantities come and go. */
export function createNames(
  { document, live }: PageContext,
  id: string,
  isOne: (quantity: NamedQuantity['quantity']) => boolean,
  stops: (() => void)[],
) {
  let { graph } = live;
  let names = labelled([...graph.quantities.values()].filter(isOne));
  const list = nameList(document, id, names);
  stops.push(
    live.onState(() => {
      if (live.graph === graph) return;
      ({ graph } = live);
      names = labelled([...graph.quantities.values()].filter(isOne));
      list.replaceChildren(...nameList(document, id, names).children);
    }),
  );
  return { element: list, names: () => names };
}
