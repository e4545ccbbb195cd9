import { createEngine } from '../graph/engine.ts';
import { enteringInputsOf } from '../graph/entering.ts';
import type { Graph } from '../graph/graph.ts';
import { hasValue } from '../graph/outcome.ts';
import type { NumberInput } from '../graph/quantity.ts';
import { checkInput, type Patch } from '../graph/state.ts';
import { Problem } from '../problem.ts';

/** What an input does to a result. */
export interface Influence {
  readonly id: string;
  readonly name: string;
  /**
   * Change of the result, in parts of it, over the change of the input, in parts of its value (of its usual span where it
   * is 0): 2 is a square, −1 an inverse.
   */
  readonly strength: number;
}

/** The input is moved by this part to either side: its square times the third derivative is what is left out. */
const part = 1e-3;

/**
 * The number inputs that a result depends on as the design stands, the strongest first, by a central difference. Throws a
 * Problem where the result has no number, or is 0, of which nothing is a part. Inputs near an end of their range are moved
 * to one side.
 */
export function influencesOn(graph: Graph, inputs: Patch, id: string): Influence[] {
  const quantity = graph.quantities.get(id);
  if (!quantity) throw new Problem('unreadable', `There is no quantity '${id}'.`);
  const engine = createEngine(graph, inputs);
  const at = (patch: Patch): number | undefined => {
    engine.setInputs({ ...inputs, ...patch });
    const outcome = engine.evaluate([id])[id]!;
    return hasValue(outcome) && typeof outcome.value === 'number' ? outcome.value : undefined;
  };
  const value = at({});
  if (value === undefined || value === 0)
    throw new Problem(
      'absent',
      `${quantity.name} ${value === 0 ? 'is 0' : 'is no number as the design stands'}, so that no change can be given in parts of it.`,
      { input: id },
    );
  const found = [...enteringInputsOf(quantity, inputs)].flatMap((input) => {
    const one = graph.quantities.get(input);
    if (one?.kind !== 'number') return [];
    const strength = strengthOf(one, inputs[input] as number, (x) => at({ [input]: x }), value);
    return strength === undefined || strength === 0 ? [] : [{ id: input, name: one.name, strength }];
  });
  // Rounded, or equal ones would stand in an order that depends on the last bit.
  const size = ({ strength }: Influence) => Number(Math.abs(strength).toPrecision(6));
  return found.toSorted((a, b) => size(b) - size(a) || (a.id < b.id ? -1 : 1));
}

function strengthOf(
  input: NumberInput,
  today: number,
  at: (x: number) => number | undefined,
  value: number,
): number | undefined {
  const scale = today === 0 ? spanOf(input) : Math.abs(today);
  if (input.whole || scale === 0) return undefined;
  const ends = [today - part * scale, today + part * scale].map((x) => (allows(input, x) ? x : today));
  const [low, high] = ends as [number, number];
  const [before, after] = [at(low), at(high)];
  if (before === undefined || after === undefined || low === high) return undefined;
  return (after - before) / value / ((high - low) / scale);
}

function spanOf({ typical, range }: NumberInput): number {
  const [low, high] = typical ?? [range.min, range.max];
  return high - low;
}

function allows(input: NumberInput, value: number): boolean {
  try {
    checkInput(input, value);
    return true;
  } catch {
    return false;
  }
}
