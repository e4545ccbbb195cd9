import { createEngine } from '../../lib/graph/engine.ts';
import type { Graph } from '../../lib/graph/graph.ts';
import type { Outcome } from '../../lib/graph/outcome.ts';
import type { Report } from '../../lib/graph/quantity.ts';
import type { DesignState } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { alternativeIds, rationaleIds } from './rationaleIds.ts';
import { type ToldDesign, toldDesign } from './told.ts';

type Outcomes = Readonly<Record<string, Outcome>>;

/** Works out all that a rationale is written from, without a page. `report` hears how far it is. */
export function workOut(
  graph: Graph,
  design: Omit<DesignState, 'revision'>,
  report: Report = () => {},
): ToldDesign {
  const { alternatives } = design.studies ?? noStudies;
  const jobs = [
    { inputs: design.inputs, ids: rationaleIds(graph, design) },
    ...alternatives.map(({ inputs }) => ({ inputs, ids: alternativeIds(graph, design, inputs) })),
  ];
  const [own, ...ofAlternatives] = jobs.map(({ inputs, ids }, i) =>
    evaluateAll(graph, inputs, ids, (part) => report((i + part) / jobs.length)),
  );
  return toldDesign(graph, design, own!, ofAlternatives);
}

/** One after the other on one engine, so that each can be told. */
export function evaluateAll(
  graph: Graph,
  inputs: DesignState['inputs'],
  ids: readonly string[],
  report: Report,
): Outcomes {
  const engine = createEngine(graph, { ...graph.initial, ...inputs });
  const outcomes: Record<string, Outcome> = {};
  ids.forEach((id, i) => {
    outcomes[id] = engine.evaluate([id], { report: (part) => report((i + part) / ids.length) })[id]!;
    report((i + 1) / ids.length);
  });
  return outcomes;
}
