import { derived } from '../graph/define.ts';
import type { Graph } from '../graph/graph.ts';
import type { Outcome, ProblemNote } from '../graph/outcome.ts';
import type { Derived, Quantity } from '../graph/quantity.ts';
import type { OwnLine } from '../graph/studies.ts';
import { isOwnId, type OwnProblem } from './ownLines.ts';
import { extendGraph, ownQuantities } from './ownQuantities.ts';

/** A design's graph with a person's own quantities in it. */
export interface OwnGraph {
  readonly base: Graph;
  readonly lines: readonly OwnLine[];
  readonly graph: Graph;
  /** One a line whose id can stand in the graph; a line with a mistake holds its problem and never a value. */
  readonly own: ReadonlyMap<string, Derived>;
  readonly problems: readonly OwnProblem[];
}

/**
 * The graph with these lines. Given the one `before` over the same graph, quantities that mean the same are the same
 * objects, so that what rests on them need not be worked out again.
 */
export function ownGraph(base: Graph, lines: readonly OwnLine[], before?: OwnGraph): OwnGraph {
  const known = before?.base === base ? before : undefined;
  if (known && sameLines(known.lines, lines)) return known;
  const { quantities, problems } = ownQuantities(base, lines);
  const fresh = new Map<string, Derived>(quantities.map((quantity) => [quantity.id, quantity]));
  const lineOf = new Map(lines.map((line) => [line.id, line]));
  const earlier = new Map((known?.lines ?? []).map((line) => [line.id, line]));
  const own = new Map<string, Derived>();
  const settle = (quantity: Quantity): Quantity => {
    const { id } = quantity;
    if (fresh.get(id) !== quantity) return quantity;
    const made = own.get(id);
    if (made) return made;
    const from = Object.fromEntries(
      Object.entries((quantity as Derived).from).map(([key, other]) => [key, settle(other)]),
    );
    const old = known?.own.get(id);
    const same = old && sameLine(earlier.get(id)!, lineOf.get(id)!) && sameFrom(old.from, from);
    const settled = same ? old : { ...(quantity as Derived), from };
    own.set(id, settled);
    return settled;
  };
  for (const { id } of lines) {
    const quantity = fresh.get(id);
    if (quantity) settle(quantity);
    else if (isOwnId(id) && !own.has(id)) {
      const { problem } = problems.find((one) => one.id === id)!;
      const old = known?.own.get(id);
      own.set(id, old && messageOf(old) === problem.message ? old : mistaken(lineOf.get(id)!, problem));
    }
  }
  return { base, lines, own, problems, graph: own.size === 0 ? base : extendGraph(base, [...own.values()]) };
}

/** Ids of own quantities that are others in one graph than in the other, or are in one only. */
export function renewedBetween(one: OwnGraph, other: OwnGraph): readonly string[] {
  const ids = new Set([...one.own.keys(), ...other.own.keys()]);
  return [...ids].filter((id) => one.own.get(id) !== other.own.get(id));
}

/** What stands in place of an own quantity that is no longer there, or never was. */
export function goneOutcome(id: string): Outcome & { readonly problem: ProblemNote } {
  const message = `The own quantity ‘${id.slice(0, 40)}’ has been taken out; choose another, or write it again.`;
  return { problem: { kind: 'absent', message, parts: {}, at: id } };
}

/** A line that cannot be worked out as a quantity without a value, so that what shows it says why. */
function mistaken({ id, name }: OwnLine, problem: Error): Derived {
  const quantity = derived({
    id,
    name: name.trim() || id,
    symbol: `\\text{${id.slice('own.'.length)}}`,
    unit: 'none',
    about: 'Own quantity whose formula has a mistake.',
    from: {},
    compute: (): null => {
      throw problem;
    },
    formula: '\\text{?}',
    source: 'own',
  });
  mistakes.set(quantity, problem.message);
  return quantity;
}

const mistakes = new WeakMap<Quantity, string>();
const messageOf = (quantity: Quantity): string | undefined => mistakes.get(quantity);

function sameFrom(one: Derived['from'], other: Derived['from']): boolean {
  const keys = Object.keys(one);
  return keys.length === Object.keys(other).length && keys.every((key) => one[key] === other[key]);
}

function sameLines(one: readonly OwnLine[], other: readonly OwnLine[]): boolean {
  return one === other || (one.length === other.length && one.every((line, i) => sameLine(line, other[i]!)));
}

/** Same in every field; the order in which they stand does not count. */
function sameLine(one: OwnLine, other: OwnLine): boolean {
  return (['id', 'name', 'formula', 'display', 'about'] as const).every((key) => one[key] === other[key]);
}
