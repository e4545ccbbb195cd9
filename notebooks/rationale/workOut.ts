import { createEngine } from '../../lib/graph/engine.ts';
import type { Graph } from '../../lib/graph/graph.ts';
import type { DesignState } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { alternativeIds, rationaleIds } from './rationaleIds.ts';
import { type ToldDesign, toldDesign } from './told.ts';

/** Works out all that a rationale is written from, at once and without a page. */
export function workOut(graph: Graph, design: Omit<DesignState, 'revision'>): ToldDesign {
  const { alternatives } = design.studies ?? noStudies;
  const evaluate = (inputs: DesignState['inputs'], ids: readonly string[]) =>
    createEngine(graph, { ...graph.initial, ...inputs }).evaluate(ids);
  return toldDesign(
    graph,
    design,
    evaluate(design.inputs, rationaleIds(graph, design)),
    alternatives.map(({ inputs }) => evaluate(inputs, alternativeIds(graph, design, inputs))),
  );
}
