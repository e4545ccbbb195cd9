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

/** Charts that are being worked out ahead of time, by the same. */
const coming = new WeakMap<Patch, Map<string, Promise<void>>>();

/** Resolves once a chart that is worked out ahead is there, or will not be; nothing where nobody works on it. */
export function comingChart(
  inputs: Patch,
  plan: VaryPlan,
  own: readonly OwnLine[],
): Promise<void> | undefined {
  return coming.get(inputs)?.get(keyOf(plan, own));
}

export function chartComes(
  inputs: Patch,
  plan: VaryPlan,
  own: readonly OwnLine[],
  work: Promise<void>,
): void {
  const charts = coming.get(inputs) ?? new Map<string, Promise<void>>();
  const key = keyOf(plan, own);
  coming.set(inputs, charts);
  charts.set(
    key,
    work.finally(() => charts.delete(key)),
  );
}
