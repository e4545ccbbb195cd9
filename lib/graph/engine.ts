import { enteringOf } from './entering.ts';
import { type Graph, orderOf } from './graph.ts';
import type { Outcome } from './outcome.ts';
import type { Quantity, Report } from './quantity.ts';
import { type Kept, step } from './step.ts';

/** Computes a graph without a page: sweeps, budgets, the command line, workers. */
export interface Engine {
  /** Replaces the inputs that the next evaluation uses. */
  setInputs(inputs: Readonly<Record<string, unknown>>): void;
  /**
   * Outcomes of the ids, with any quantity pinned to a value, derived ones too. `report` hears how far those of the ids
   * are that are heavy; what they rest on says nothing, since nobody knows beforehand how long it takes beside them.
   */
  evaluate(
    ids: readonly string[],
    options?: { readonly pins?: Readonly<Record<string, unknown>>; readonly report?: Report },
  ): Record<string, Outcome>;
}

/** An incremental engine: what did not change is not computed again. */
export function createEngine(
  graph: Graph,
  inputs: Readonly<Record<string, unknown>> = graph.initial,
): Engine {
  const kept = new Map<string, Kept>();
  const sources = new Map<string, { value: unknown; outcome: Outcome }>();
  const orders = new Map<string, readonly Quantity[]>();
  let current = inputs;

  const sourceOutcome = (id: string, value: unknown): Outcome => {
    const known = sources.get(id);
    if (known && Object.is(known.value, value)) return known.outcome;
    const outcome = { value };
    sources.set(id, { value, outcome });
    return outcome;
  };
  const rootsOf = (ids: readonly string[]) => ids.map((id) => graph.quantities.get(id)!);
  const compiled = (ids: readonly string[]): readonly Quantity[] => {
    const key = ids.join(' ');
    const known = orders.get(key);
    if (known) return known;
    const order = orderOf(rootsOf(ids));
    orders.set(key, order);
    return order;
  };
  const choices = [...graph.quantities.values()].filter(({ kind }) => kind === 'choice').map(({ id }) => id);
  const chosen = new Map<string, readonly Quantity[]>();
  // A case that is not chosen may be a fit of seconds. A pinned choice is none of the inputs: all cases count then.
  const needed = (ids: readonly string[], pins: object): readonly Quantity[] => {
    if (Object.keys(pins).length > 0) return compiled(ids);
    const key = ids.join(' ');
    const known = chosen.get(key);
    if (known) return known;
    const order = orderOf(rootsOf(ids), (quantity) => enteringOf(quantity, current));
    chosen.set(key, order);
    return order;
  };
  return {
    setInputs(next) {
      // In a sweep numbers move and choices stay: finding the order again would take most of the time.
      if (choices.some((id) => !Object.is(next[id], current[id]))) chosen.clear();
      current = next;
    },
    evaluate(ids, { pins = {}, report } = {}) {
      const outcomes = new Map<Quantity, Outcome>();
      const place = { outcomes, pins, inputs: current, kept, sourceOutcome };
      for (const quantity of needed(ids, pins)) {
        const heard = quantity.kind === 'derived' && quantity.heavy && ids.includes(quantity.id);
        outcomes.set(quantity, outcomeOf(quantity, place, heard ? report : undefined));
      }
      return Object.fromEntries(ids.map((id) => [id, outcomes.get(graph.quantities.get(id)!)!]));
    },
  };
}

/** What one quantity is worked out from. */
interface Place {
  readonly outcomes: ReadonlyMap<Quantity, Outcome>;
  readonly pins: Readonly<Record<string, unknown>>;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly kept: Map<string, Kept>;
  sourceOutcome(id: string, value: unknown): Outcome;
}

function outcomeOf(
  quantity: Quantity,
  { outcomes, pins, inputs, kept, sourceOutcome }: Place,
  report: Report | undefined,
): Outcome {
  const { id } = quantity;
  if (Object.hasOwn(pins, id)) return sourceOutcome(id, pins[id]);
  if (quantity.kind === 'constant') return sourceOutcome(id, quantity.value);
  if (quantity.kind !== 'derived')
    return sourceOutcome(id, Object.hasOwn(inputs, id) ? inputs[id] : quantity.initial);
  const args = Object.values(quantity.from).map((other) => outcomes.get(other)!);
  const next = step(quantity, args, kept.get(id), report);
  kept.set(id, next);
  return next.outcome;
}
