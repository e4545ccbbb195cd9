import type { Graph } from '../../lib/graph/graph.ts';
import type { OwnLine } from '../../lib/graph/studies.ts';
import { goneOutcome, type OwnGraph, ownGraph, renewedBetween } from '../../lib/studies/ownGraph.ts';
import { isOwnId } from '../../lib/studies/ownLines.ts';
import { type Definable, define, defineDerived } from './graphVariables.ts';

/** The person's own quantities on the page: their variables come, change and go with their lines. */
export interface OwnVariables {
  /** The design's graph with the own quantities as they are. */
  graph(): Graph;
  /** Takes the lines as they are now; returns the ids that stand for something else from here on, or for nothing. */
  follow(lines: readonly OwnLine[] | undefined): readonly string[];
  /** Before it is watched: an own quantity that there is not yet may come later. */
  expect(id: string): void;
}

/** Variables that nobody watches cost nothing, so that those taken out stay and say so. */
export function createOwnVariables(module: { variable(): Definable }, base: Graph): OwnVariables {
  let present: OwnGraph = ownGraph(base, []);
  const variables = new Map<string, Definable>();
  const variableOf = (id: string): Definable => {
    const known = variables.get(id);
    if (known) return known;
    const made = module.variable();
    variables.set(id, made);
    return made;
  };
  return {
    graph: () => present.graph,
    follow(lines = []) {
      const next = ownGraph(base, lines, present);
      const renewed = renewedBetween(present, next);
      present = next;
      for (const id of renewed) {
        const quantity = next.own.get(id);
        if (quantity) defineDerived(variableOf(id), quantity);
        else define(variableOf(id), id, goneOutcome(id));
      }
      return renewed;
    },
    expect(id) {
      if (isOwnId(id) && !variables.has(id)) define(variableOf(id), id, goneOutcome(id));
    },
  };
}
