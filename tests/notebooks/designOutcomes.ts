import { designGraph } from '../../lib/design/design.ts';
import { createEngine, type Engine } from '../../lib/graph/engine.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';

export type Values = Readonly<Record<string, unknown>>;

/** One engine a design: cases of the same design share its searches. Files and pictures count as the same object only. */
const engines = new Map<string, Engine>();
const objects = new Map<object, string>();

function nameOf(value: unknown): string {
  if (typeof value !== 'object' || value === null) return `${typeof value} ${String(value)}`;
  const name = objects.get(value) ?? `object ${objects.size}`;
  objects.set(value, name);
  return name;
}

function engineOf(design: Values): Engine {
  const key = Object.entries(design)
    .map(([id, value]) => `${id}: ${nameOf(value)}`)
    .sort()
    .join('; ');
  const engine =
    engines.get(key) ??
    createEngine(designGraph, applyPatch(designGraph, initialState(designGraph), design).inputs);
  engines.set(key, engine);
  return engine;
}

/** Outcomes by id of the initial design with changes and pins. */
export function outcomesOf(design: Values = {}, pins: Values = {}) {
  const engine = engineOf(design);
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
