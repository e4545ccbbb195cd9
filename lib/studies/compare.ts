import { createEngine } from '../graph/engine.ts';
import { enteringOf } from '../graph/entering.ts';
import { type Graph, orderOf } from '../graph/graph.ts';
import { hasValue, type Outcome } from '../graph/outcome.ts';
import { isInput, type Quantity, type Report } from '../graph/quantity.ts';
import { shownValue } from '../graph/shown.ts';

/** A design to be held against others. */
export interface ComparedDesign {
  readonly name: string;
  /** Values of all inputs, SI. */
  readonly inputs: Readonly<Record<string, unknown>>;
}

/** One number or choice in every design. */
export interface ComparedRow {
  readonly id: string;
  readonly name: string;
  /** As shown, design by design. */
  readonly texts: readonly string[];
  /** Change against the first design in parts of it; undefined where one has no number, or the first is 0. */
  readonly changes: readonly (number | undefined)[];
}

/** Designs held against each other. */
export interface Comparison {
  /** Inputs in which any differs from the first. */
  readonly inputs: readonly ComparedRow[];
  /** Results that differ, in the order asked for. */
  readonly results: readonly ComparedRow[];
  /** How many of the results asked for are the same in all. */
  readonly same: number;
  /** Results asked for that take a search or a picture, and are not compared; none where all were asked for. */
  readonly heavy: readonly string[];
}

/** Whether a quantity, or anything that it rests on in a design with these inputs, takes longer than a frame. */
export function isHeavy(quantity: Quantity, inputs: ComparedDesign['inputs']): boolean {
  const order = orderOf([quantity], (one) => enteringOf(one, inputs));
  return order.some((one) => one.kind === 'derived' && one.heavy !== undefined);
}

/**
 * Compares designs, the first with all others, in their inputs and in the results with these ids: those that take longer
 * too where `all` are asked for, which may take seconds a design. `report` hears of the part that is done.
 */
export function compareDesigns(
  graph: Graph,
  designs: readonly ComparedDesign[],
  ids: readonly string[],
  { all = false, report }: { readonly all?: boolean; readonly report?: Report } = {},
): Comparison {
  const asked = [...new Set(ids)].map((id) => graph.quantities.get(id)!).filter((one) => !isInput(one));
  const takesLong = (one: Quantity) => !all && designs.some(({ inputs }) => isHeavy(one, inputs));
  const heavy = new Set(asked.filter(takesLong));
  const light = asked.filter((one) => !heavy.has(one));
  const outcomes = designs.map(({ inputs }, i) =>
    outcomesOf(graph, inputs, light, (part) => report?.((i + part) / designs.length)),
  );
  const results = light.map((quantity) =>
    rowOf(
      quantity,
      outcomes.map((one) => one[quantity.id]!),
    ),
  );
  const given = [...graph.quantities.values()].filter(isInput);
  const inputs = given
    .filter(({ id }) => designs.some((one) => !Object.is(one.inputs[id], designs[0]!.inputs[id])))
    .map((input) =>
      rowOf(
        input,
        designs.map((one) => ({ value: one.inputs[input.id] })),
      ),
    )
    .sort((a, b) => (a.id < b.id ? -1 : 1));
  const differing = results.filter(({ texts }) => new Set(texts).size > 1);
  return {
    inputs,
    results: differing,
    same: results.length - differing.length,
    heavy: [...heavy].map(({ name }) => name),
  };
}

/** One after the other on one engine, which works out once what they share. */
function outcomesOf(
  graph: Graph,
  inputs: ComparedDesign['inputs'],
  quantities: readonly Quantity[],
  report: Report,
): Readonly<Record<string, Outcome>> {
  const engine = createEngine(graph, inputs);
  const found = quantities.map(({ id }, i) => {
    const outcome = engine.evaluate([id])[id]!;
    report((i + 1) / quantities.length);
    return [id, outcome] as const;
  });
  return Object.fromEntries(found);
}

function rowOf(quantity: Quantity, outcomes: readonly Outcome[]): ComparedRow {
  const numbers = outcomes.map((one) =>
    hasValue(one) && typeof one.value === 'number' ? one.value : undefined,
  );
  const [first] = numbers;
  return {
    id: quantity.id,
    name: quantity.name,
    texts: outcomes.map((one) => shownValue(quantity, one)),
    changes: numbers.map((value) =>
      value === undefined || first === undefined || first === 0 ? undefined : value / first - 1,
    ),
  };
}
