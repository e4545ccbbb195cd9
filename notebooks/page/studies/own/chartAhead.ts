import type { DesignState } from '../../../../lib/graph/state.ts';
import { overOf, type VaryPlan } from '../../../varyForm.ts';
import { startStudy } from '../desk/startStudy.ts';
import { chartComes, comingChart, keepChart, workedChart } from './workedCharts.ts';

/** Works a chart out before it is looked at, so that it stands there at once; nothing comes of it where that fails. */
export function workAhead(plan: VaryPlan, { inputs, studies }: DesignState): void {
  const own = studies?.ownLines ?? [];
  if (workedChart(inputs, plan, own) || comingChart(inputs, plan, own)) return;
  const ids = plan.results.map(({ id }) => id);
  const tool = { tool: `ahead-${ids.join('-')}-${Math.random()}` };
  const work = async () => {
    const found = await startStudy({ kind: 'vary', inputs, over: overOf(plan), ids, own }, tool).answer;
    if ('problem' in found) return;
    const now = await startStudy({ kind: 'evaluate', inputs, ids, own }, tool).answer;
    if ('value' in now) keepChart({ plan, columns: found.value, inputs, today: now.value }, own);
  };
  chartComes(inputs, plan, own, work());
}
