import { createEngine } from '../../lib/graph/engine.ts';
import type { Graph } from '../../lib/graph/graph.ts';
import { isInput } from '../../lib/graph/quantity.ts';
import type { DesignState } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { blockQuantities } from '../blockQuantities.ts';
import { uncertaintyOf } from '../paper/uncertainties.ts';
import { type ToldDesign, toldDesign } from '../rationale/told.ts';
import { setUpBlocks } from './setUpBlocks.ts';

type Design = Omit<DesignState, 'revision'>;

/** Ids of all results that the set-up sheet of this design is written from. */
export function setUpIds(graph: Graph, { inputs, studies = noStudies }: Design): string[] {
  const shown = setUpBlocks.flatMap((block) => blockQuantities(block));
  const required = studies.requirements.flatMap(({ id }) => graph.quantities.get(id) ?? []);
  const uncertain = shown.flatMap((quantity) => uncertaintyOf(quantity, { inputs }) ?? []);
  const all = [...shown, ...required, ...uncertain];
  return [...new Set(all.filter((one) => !isInput(one) && one.kind !== 'constant').map(({ id }) => id))];
}

/** Works out all that the set-up sheet is written from, at once and without a page. */
export function workOutSheet(graph: Graph, design: Design): ToldDesign {
  const engine = createEngine(graph, { ...graph.initial, ...design.inputs });
  return toldDesign(graph, design, engine.evaluate(setUpIds(graph, design)));
}
