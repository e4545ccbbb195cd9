import type { Graph } from '../../../lib/graph/graph.ts';
import type { DesignState } from '../../../lib/graph/state.ts';
import { designsOf, type Giving, goTo, keepDesigns, stepOf } from '../../lectures/giving.ts';
import { stepContents } from '../../lectures/lectureContents.ts';
import { workAhead } from '../studies/own/chartAhead.ts';

/** Has the own charts of the next step worked out; the lecture with the design that they are of, shown as before. */
export function stepAhead(graph: Graph, design: DesignState, giving: Giving): Giving {
  const next = goTo(giving, giving.place + 1);
  const step = stepOf(next);
  if (next === giving || giving.blank || !step) return giving;
  const designs = designsOf(graph, design, next);
  const plans = stepContents(graph, step, (place) => `ahead-${place}`).flatMap((content) =>
    content.kind === 'chart' ? [content.plan] : [],
  );
  if (plans.length === 0) return giving;
  for (const plan of plans) workAhead(plan, designs.present);
  // Charts are known by the very inputs that they are of.
  return goTo(keepDesigns(next, designs), giving.place);
}
