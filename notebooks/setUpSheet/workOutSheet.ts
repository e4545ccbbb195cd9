import type { Graph } from '../../lib/graph/graph.ts';
import { isInput, type Report } from '../../lib/graph/quantity.ts';
import type { DesignState } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { blockQuantities } from '../blockQuantities.ts';
import { uncertaintyOf } from '../paper/uncertainties.ts';
import { type ToldDesign, toldDesign } from '../rationale/told.ts';
import { evaluateAll } from '../rationale/workOut.ts';
import { setUpBlocks } from './setUpBlocks.ts';

type Design = Omit<DesignState, 'revision'>;

/** Ids of all results that the set-up sheet of this design is written from. */
function setUpIds(graph: Graph, { inputs, studies = noStudies }: Design): string[] {
  const shown = setUpBlocks.flatMap((block) => blockQuantities(block));
  const required = studies.requirements.flatMap(({ id }) => graph.quantities.get(id) ?? []);
  const uncertain = shown.flatMap((quantity) => uncertaintyOf(quantity, { inputs }) ?? []);
  const all = [...shown, ...required, ...uncertain];
  return [...new Set(all.filter((one) => !isInput(one) && one.kind !== 'constant').map(({ id }) => id))];
}

/** Works out all that the set-up sheet is written from, without a page. `report` hears how far it is. */
export function workOutSheet(graph: Graph, design: Design, report: Report = () => {}): ToldDesign {
  return toldDesign(graph, design, evaluateAll(graph, design.inputs, setUpIds(graph, design), report));
}
