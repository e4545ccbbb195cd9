import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import type { OwnLine } from '../../lib/graph/studies.ts';
import { extendGraph, ownQuantities } from '../../lib/studies/ownQuantities.ts';

/** An own line with a name made of its id. */
export const line = (id: string, formula: string, more: Partial<OwnLine> = {}): OwnLine => ({
  id: `own.${id}`,
  name: `${id} of mine`,
  formula,
  ...more,
});

/** Outcomes of own lines over the design, and their texts. */
export function evaluated(lines: readonly OwnLine[], inputs: Readonly<Record<string, unknown>> = {}) {
  const { quantities, problems } = ownQuantities(designGraph, lines);
  const graph = extendGraph(designGraph, quantities);
  const ids = quantities.map(({ id }) => id);
  const outcomes = createEngine(graph, { ...graph.initial, ...inputs }).evaluate(ids);
  const texts = Object.fromEntries(
    quantities.map((quantity) => [quantity.id, shownValue(quantity, outcomes[quantity.id]!)]),
  );
  return { quantities, problems, outcomes, texts };
}
