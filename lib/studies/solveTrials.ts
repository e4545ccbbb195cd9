import { createEngine } from '../graph/engine.ts';
import type { Graph } from '../graph/graph.ts';
import { hasValue, noteOf, type ProblemNote } from '../graph/outcome.ts';
import type { Report } from '../graph/quantity.ts';
import { checkInput, inputOf, type Patch } from '../graph/state.ts';
import { type Space, valueAt } from './solveSpace.ts';

/** One design that was tried. */
export interface Trial {
  /** Place among the combinations. */
  readonly combination: number;
  /** Shares of the axes. */
  readonly place: readonly number[];
  readonly patch: Patch;
  /** Values of the wants in their order; undefined where one has none. */
  readonly values?: readonly number[];
  readonly problem?: ProblemNote;
}

/** Tries designs, each once, up to a number of them. */
export interface Trials {
  /** The design at these shares; undefined where no more may be tried. */
  at(combination: number, place: readonly number[]): Trial | undefined;
  readonly all: readonly Trial[];
  /** From now on lets as many more be tried. */
  allow(more: number): void;
  left(): number;
  /** How many were asked for in vain. */
  refused(): number;
}

/** Trials of a graph from today's inputs, for the values of `ids`. */
export function createTrials(
  graph: Graph,
  inputs: Patch,
  space: Space,
  ids: readonly string[],
  most: number,
  report?: Report,
): Trials {
  const engine = createEngine(graph, inputs);
  const roots = [...new Set(ids)];
  const known = new Map<string, Trial>();
  const all: Trial[] = [];
  let allowed = most;
  let refused = 0;
  let told = 0;
  const tell = (part: number) => {
    told = Math.max(told, Math.min(1, part));
    report?.(told);
  };
  const evaluate = (patch: Patch): Pick<Trial, 'values' | 'problem'> => {
    const refused = refusalOf(graph, patch);
    if (refused) return { problem: refused };
    engine.setInputs({ ...inputs, ...patch });
    const outcomes = engine.evaluate(roots, { report: (part) => tell((all.length + part) / (2 * most)) });
    const values: number[] = [];
    for (const id of ids) {
      const outcome = outcomes[id]!;
      if (!hasValue(outcome)) return { problem: outcome.problem };
      if (typeof outcome.value !== 'number') return { problem: noSingleNumber(graph, id) };
      values.push(outcome.value);
    }
    return { values };
  };
  return {
    all,
    left: () => allowed - all.length,
    refused: () => refused,
    allow(more) {
      allowed = all.length + more;
    },
    at(combination, place) {
      const moved = Object.fromEntries(space.axes.map((axis, i) => [axis.id, valueAt(axis, place[i]!)]));
      const key = `${combination} ${Object.values(moved).join(' ')}`;
      const before = known.get(key);
      if (before) return before;
      if (all.length >= allowed) {
        refused += 1;
        return undefined;
      }
      const patch = { ...space.combinations[combination]!.patch, ...moved };
      const trial = { combination, place: [...place], patch, ...evaluate(patch) };
      known.set(key, trial);
      all.push(trial);
      tell(all.length / (2 * most));
      return trial;
    },
  };
}

/** A list of planes has a unit as a number has, and only its value tells them apart. */
function noSingleNumber(graph: Graph, id: string): ProblemNote {
  const message = `The ${graph.quantities.get(id)!.name} is no single number, so no value of it can be wanted.`;
  return { kind: 'impossible', message, parts: { input: id }, at: id };
}

/** Why an input does not take its value, such as the one value between the ends that it cannot have. */
function refusalOf(graph: Graph, patch: Patch): ProblemNote | undefined {
  for (const [id, value] of Object.entries(patch)) {
    try {
      checkInput(inputOf(graph, id), value);
    } catch (error) {
      return noteOf(error, id);
    }
  }
  return undefined;
}
