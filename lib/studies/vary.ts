import { createEngine } from '../graph/engine.ts';
import type { Graph } from '../graph/graph.ts';
import { hasValue } from '../graph/outcome.ts';
import type { Report } from '../graph/quantity.ts';
import { checkInput, inputOf, type Patch } from '../graph/state.ts';
import { Problem } from '../problem.ts';

/** An input and the values that it takes one after another, SI. */
export interface VariedInput {
  readonly id: string;
  readonly values: readonly unknown[];
}

/** A result over all places of the inputs, the last input moving fastest; undefined where it has no number. */
export interface VariedResult {
  readonly id: string;
  readonly values: readonly (number | undefined)[];
  /** Why it has none, for the first of its places without. */
  readonly problem?: string;
}

/** As many places as are worked out in one go: 60 × 60 and more, but no accident with three zeros too many. */
export const mostPlaces = 20_000;

/**
 * Results with these ids while one or two inputs take values, all else as in `inputs`. Only what depends on them is worked
 * out again. Throws a Problem where a value is not allowed, an id is unknown, or the places are too many.
 */
export function vary(
  graph: Graph,
  inputs: Patch,
  over: readonly VariedInput[],
  ids: readonly string[],
  report?: Report,
): VariedResult[] {
  const places = checked(graph, over, ids);
  const engine = createEngine(graph, inputs);
  const columns = ids.map((id) => ({ id, values: [] as (number | undefined)[], problem: '' }));
  for (let place = 0; place < places; place++) {
    engine.changeInputs(patchAt(over, place));
    const outcomes = engine.evaluate(ids);
    for (const column of columns) {
      const outcome = outcomes[column.id]!;
      const given = hasValue(outcome) && typeof outcome.value === 'number';
      column.values.push(given ? (outcome.value as number) : undefined);
      if (!given && column.problem === '')
        column.problem = hasValue(outcome) ? 'It is no single number.' : outcome.problem.message;
    }
    report?.((place + 1) / places);
  }
  return columns.map(({ problem, ...column }) => (problem === '' ? column : { ...column, problem }));
}

/** The inputs at a place, counted with the last of them moving fastest. */
export function patchAt(over: readonly VariedInput[], place: number): Patch {
  const patch: Record<string, unknown> = {};
  let rest = place;
  for (const { id, values } of over.toReversed()) {
    patch[id] = values[rest % values.length];
    rest = Math.floor(rest / values.length);
  }
  return patch;
}

function checked(graph: Graph, over: readonly VariedInput[], ids: readonly string[]): number {
  if (over.length < 1 || over.length > 2)
    throw new Problem('impossible', `One or two inputs can be varied at a time, not ${over.length}.`, {
      value: String(over.length),
      allowed: '1 or 2',
    });
  for (const id of ids)
    if (!graph.quantities.has(id)) throw new Problem('unreadable', `There is no quantity '${id}'.`);
  for (const { id, values } of over) {
    const input = inputOf(graph, id);
    for (const value of values) checkInput(input, value);
  }
  const places = over.reduce((product, { values }) => product * values.length, 1);
  if (places < 1 || places > mostPlaces)
    throw new Problem(
      'impossible',
      `These are ${places} places; from 1 to ${mostPlaces} are worked out in one go. Take fewer values.`,
      { value: String(places), allowed: `1 to ${mostPlaces}` },
    );
  return places;
}

/** Values from one end to the other, both among them: by equal steps, or by equal factors where both are above 0. */
export function valuesBetween(from: number, to: number, count: number, by: 'steps' | 'factors'): number[] {
  if (by === 'factors' && !(from > 0 && to > 0))
    throw new Problem('impossible', 'Equal factors need both ends above 0; take equal steps instead.');
  return Array.from({ length: count }, (_, i) => {
    if (i === count - 1 && count > 1) return to;
    const part = i / Math.max(1, count - 1);
    return by === 'steps' ? from + part * (to - from) : from * (to / from) ** part;
  });
}
