import type { Patch } from '../../../../lib/graph/state.ts';
import type { OwnLine } from '../../../../lib/graph/studies.ts';
import type { Varied } from '../../../varied.ts';
import { overOf, type VaryPlan } from '../../../varyForm.ts';

/** Charts that were worked out, by the inputs that they are of: who comes back to a page, or reveals a chart, need not wait. */
const worked = new WeakMap<Patch, Map<string, Varied>>();

const keyOf = (plan: VaryPlan, own: readonly OwnLine[]) =>
  JSON.stringify([overOf(plan), plan.results.map(({ id }) => id), own]);

export function workedChart(inputs: Patch, plan: VaryPlan, own: readonly OwnLine[]): Varied | undefined {
  const found = worked.get(inputs)?.get(keyOf(plan, own));
  // Names and units are those of the graph as it stands.
  return found && { ...found, plan };
}

export function keepChart(varied: Varied, own: readonly OwnLine[]): void {
  const charts = worked.get(varied.inputs) ?? new Map<string, Varied>();
  charts.set(keyOf(varied.plan, own), varied);
  worked.set(varied.inputs, charts);
}
