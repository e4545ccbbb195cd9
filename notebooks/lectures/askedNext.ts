import { createEngine } from '../../lib/graph/engine.ts';
import { type Graph, orderOf } from '../../lib/graph/graph.ts';
import type { Outcome } from '../../lib/graph/outcome.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import type { DesignState } from '../../lib/graph/state.ts';
import { ownProse } from '../ownProse.ts';
import { proseText } from '../slotPieces.ts';
import { designsOf, type Giving, goTo, stepOf } from './giving.ts';

/** What the next step asks, with the numbers of its own design; empty where it asks nothing. */
export function askedNext(graph: Graph, design: DesignState, giving: Giving): string {
  const next = goTo(giving, giving.place + 1);
  const ask = stepOf(next)?.ask;
  if (next.place === giving.place || !ask) return '';
  const engine = createEngine(graph, designsOf(graph, design, next).present.inputs);
  const outcomeOf = (quantity: Quantity): Outcome =>
    isQuick(quantity) ? engine.evaluate([quantity.id])[quantity.id]! : absent;
  return proseText(ownProse(graph, ask.question), outcomeOf).trim();
}

/** Nothing that takes longer than a frame is worked out for a look ahead. */
const isQuick = (quantity: Quantity) => orderOf([quantity]).every((one) => !('heavy' in one && one.heavy));

const absent = { problem: { kind: 'absent', message: '…', parts: {}, at: '' } } as const;
