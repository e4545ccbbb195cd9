import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';

export type Values = Readonly<Record<string, unknown>>;

/** Outcomes by id of the initial design with changes and pins. */
export function outcomesOf(design: Values = {}, pins: Values = {}) {
  const engine = createEngine(designGraph, applyPatch(designGraph, initialState(designGraph), design).inputs);
  return (id: string) => engine.evaluate([id], { pins })[id]!;
}

/** Numbers by id; NaN where there is none. */
export function read(design: Values = {}, pins: Values = {}) {
  const outcomeOf = outcomesOf(design, pins);
  return (id: string): number => {
    const outcome = outcomeOf(id);
    return hasValue(outcome) ? (outcome.value as number) : Number.NaN;
  };
}
