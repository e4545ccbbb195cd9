import { createEngine } from '../../../../lib/graph/engine.ts';
import type { Graph } from '../../../../lib/graph/graph.ts';
import { noteOf, type Outcome } from '../../../../lib/graph/outcome.ts';
import type { Report } from '../../../../lib/graph/quantity.ts';
import { inputOf, type Patch } from '../../../../lib/graph/state.ts';
import type { OwnLine } from '../../../../lib/graph/studies.ts';
import { compareDesigns } from '../../../../lib/studies/compare.ts';
import { influencesOn } from '../../../../lib/studies/influence.ts';
import { type OwnGraph, ownGraph } from '../../../../lib/studies/ownGraph.ts';
import { solve } from '../../../../lib/studies/solve.ts';
import { vary } from '../../../../lib/studies/vary.ts';
import type { StudyAnswers, StudyKind, StudyRequest } from './studyMessages.ts';

type Answer = Outcome<StudyAnswers[StudyKind]>;

/** Makes studies over a graph; what is thrown on the way becomes a problem, so that every request has an answer. */
export function createStudyAnswers(graph: Graph): (request: StudyRequest, report: Report) => Answer {
  let kept: OwnGraph | undefined;
  const graphWith = (own: readonly OwnLine[]): Graph => {
    // Kept while the lines say the same: a graph is checked and put in order anew for each list.
    kept = ownGraph(graph, own, kept);
    return kept.graph;
  };
  return (request, report) => {
    try {
      return { value: answerOf(graphWith(request.own), request, report) };
    } catch (error) {
      return { problem: noteOf(error, request.kind) };
    }
  };
}

function answerOf(graph: Graph, request: StudyRequest, report: Report): StudyAnswers[StudyKind] {
  switch (request.kind) {
    case 'vary':
      return vary(graph, request.inputs, request.over, request.ids, report);
    case 'solve':
      return solve(graph, request.inputs, request.request, report);
    case 'influence':
      return influencesOn(graph, request.inputs, request.id);
    case 'compare':
      return compareDesigns(graph, request.designs, request.ids, { all: request.all ?? false, report });
    case 'evaluate':
      return evaluateAll(graph, request.inputs, request.ids, report);
  }
}

/** One after the other on one engine: what they share is worked out once, and each tells that it is done. */
function evaluateAll(graph: Graph, inputs: Patch, ids: readonly string[], report: Report) {
  const engine = createEngine(graph, inputs);
  const outcomes: Record<string, Outcome> = {};
  ids.forEach((id, i) => {
    if (!graph.quantities.has(id)) inputOf(graph, id);
    const heard = (part: number) => report((i + part) / ids.length);
    outcomes[id] = engine.evaluate([id], { report: heard })[id]!;
    report((i + 1) / ids.length);
  });
  return outcomes;
}
