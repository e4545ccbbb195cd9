import { enteringOf } from '../graph/entering.ts';
import type { Graph } from '../graph/graph.ts';
import type { Quantity } from '../graph/quantity.ts';
import { type ComparedRow, compareDesigns } from './compare.ts';

type Inputs = Readonly<Record<string, unknown>>;

/** A number that moved, and the way on which the change came to it. */
export interface MovedRow extends ComparedRow {
  /** Names from the changed input to the number itself. */
  readonly chain: readonly string[];
}

/** What a change did. */
export interface ChangeStudy {
  readonly inputs: readonly ComparedRow[];
  /** The numbers that moved; what moved furthest in parts of itself stands first, what is no number last. */
  readonly moved: readonly MovedRow[];
  /** How many of those asked for stayed as they were, and the names of those that take a search. */
  readonly same: number;
  readonly heavy: readonly string[];
}

/** What changed from one design to the next among the results with these ids. */
export function studyChange(graph: Graph, before: Inputs, now: Inputs, ids: readonly string[]): ChangeStudy {
  const designs = [
    { name: 'before', inputs: before },
    { name: 'now', inputs: now },
  ];
  const { inputs, results, same, heavy } = compareDesigns(graph, designs, ids);
  const changed = new Set(inputs.map(({ id }) => id));
  const moved = results.map((row) => ({ ...row, chain: chainTo(graph, row.id, changed, now) }));
  // Rounded, or two equal changes would stand in an order that depends on the last bit.
  const size = ({ changes }: ComparedRow) =>
    changes[1] === undefined ? -1 : Number(Math.abs(changes[1]).toPrecision(9));
  return { inputs, moved: moved.toSorted((a, b) => size(b) - size(a)), same, heavy };
}

/**
 * The shortest way from one of the changed inputs to a quantity, by names; of cases that are picked only the one chosen
 * in `inputs` counts, unless the change lies in another. Empty where none leads there.
 */
export function chainTo(
  graph: Graph,
  id: string,
  changed: ReadonlySet<string>,
  inputs: Inputs,
): readonly string[] {
  const target = graph.quantities.get(id)!;
  return (
    shortestChain(target, changed, (one) => (one.kind === 'derived' ? enteringOf(one, inputs) : [])) ??
    shortestChain(target, changed, (one) => (one.kind === 'derived' ? Object.values(one.from) : [])) ??
    []
  );
}

function shortestChain(
  target: Quantity,
  changed: ReadonlySet<string>,
  behind: (quantity: Quantity) => readonly Quantity[],
): readonly string[] | undefined {
  const towards = new Map<Quantity, Quantity | undefined>([[target, undefined]]);
  // A map is walked in the order in which it grows: breadth first.
  for (const [quantity] of towards) {
    if (changed.has(quantity.id)) return namesFrom(quantity, towards);
    for (const other of behind(quantity)) if (!towards.has(other)) towards.set(other, quantity);
  }
  return undefined;
}

function namesFrom(start: Quantity, towards: ReadonlyMap<Quantity, Quantity | undefined>): string[] {
  const names: string[] = [];
  for (let at: Quantity | undefined = start; at; at = towards.get(at)) names.push(at.name);
  return names;
}
