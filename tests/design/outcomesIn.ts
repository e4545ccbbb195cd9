import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue, type Outcome } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';

/** Of a quantity in the initial design, changed by a patch. */
export function outcomeIn(patch: Patch, id: string): Outcome {
  const { inputs } = applyPatch(designGraph, initialState(designGraph), patch);
  return createEngine(designGraph, inputs).evaluate([id])[id]!;
}

export function numberIn(patch: Patch, id: string): number {
  const outcome = outcomeIn(patch, id);
  if (!hasValue(outcome)) throw new Error(outcome.problem.message);
  return outcome.value as number;
}

export function problemIn(patch: Patch, id: string) {
  const outcome = outcomeIn(patch, id);
  if (hasValue(outcome)) throw new Error(`${id} has a value`);
  return outcome.problem;
}

export function noteIn(patch: Patch, id: string): string | undefined {
  const outcome = outcomeIn(patch, id);
  return hasValue(outcome) ? outcome.note : undefined;
}

/** The open plate of κ = 1, in the plane ζ = 0.363 of zero curvature; energies are set apart. */
export const openPlane = { 'plate.stop': 'open', 'workpiece.z': 0.3630835645960674 * 1.3114367318781787e-4 };
