import type { Graph } from '../graph/graph.ts';
import type { NumberInput } from '../graph/quantity.ts';
import { rangeText } from '../graph/shown.ts';
import { checkInput, inputOf, type Patch, resolvePatch } from '../graph/state.ts';
import { Problem } from '../problem.ts';
import type { Move, SolveRequest } from './solveRequest.ts';

/** A number that may move, as a share 0…1 of the way from one end to the other. */
export interface Axis {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  readonly whole: boolean;
}

/** One choice out of each list. */
export interface Combination {
  readonly patch: Patch;
  readonly part?: string;
  /** How many of its values are other than today's. */
  readonly changes: number;
}

/** All that may be tried. */
export interface Space {
  readonly axes: readonly Axis[];
  readonly combinations: readonly Combination[];
  /** Today's design as shares, moved inside. */
  readonly today: readonly number[];
}

/** More combinations than this are no list of parts. */
const mostCombinations = 5000;
/** Whole numbers up to as many apart are tried one by one. */
const mostWhole = 60;
/** Ends further apart than this factor are gone between in equal ratios. */
const wideFactor = 8;

/** What the request lets move, checked; throws a Problem that names the input. */
export function createSpace(graph: Graph, inputs: Patch, request: SolveRequest): Space {
  refuseTwice(graph, request);
  const parts = request.moves.map((move) => readMove(graph, move));
  const axes = parts.filter((part): part is Axis => 'from' in part);
  const lists = parts.flatMap((part) => ('from' in part ? [] : [part.map((patch) => ({ patch }))]));
  const named = (request.patches ?? []).map(({ name, patch }) => ({
    patch: resolvePatch(graph, patch),
    part: name,
  }));
  const all = named.length > 0 ? [named, ...lists] : lists;
  const count = all.reduce((product, list) => product * list.length, 1);
  if (count > mostCombinations) throw tooMany(count);
  const combinations = all.reduce<Omit<Combination, 'changes'>[]>(
    (found, list) =>
      found.flatMap((one) =>
        list.map((other) => ({ ...one, ...other, patch: { ...one.patch, ...other.patch } })),
      ),
    [{ patch: {} }],
  );
  return {
    axes,
    combinations: combinations.map((one) => ({ ...one, changes: changesOf(one.patch, inputs) })),
    today: axes.map((axis) => shareAt(axis, inputs[axis.id] as number)),
  };
}

/** An input may move in one way only. */
function refuseTwice(graph: Graph, { moves, patches = [] }: SolveRequest): void {
  const ids = moves.map(({ id }) => id);
  const inPatches = patches.flatMap(({ patch }) => Object.keys(resolvePatch(graph, patch)));
  const twice = ids.find((id, i) => ids.indexOf(id) < i || inPatches.includes(id));
  if (twice === undefined) return;
  const { name } = inputOf(graph, twice);
  throw new Problem(
    'impossible',
    `The ${name} may move in two ways at once: leave out one of them, or the parts that bring it.`,
    { input: twice },
  );
}

function changesOf(patch: Patch, inputs: Patch): number {
  return Object.entries(patch).filter(([id, value]) => !Object.is(inputs[id], value)).length;
}

function tooMany(count: number): Problem {
  return new Problem(
    'impossible',
    `The lists make ${count} combinations; up to ${mostCombinations} can be tried. Leave some values out.`,
    { value: String(count), allowed: `up to ${mostCombinations}` },
  );
}

/** An axis, or a list of patches. */
function readMove(graph: Graph, move: Move): Axis | readonly Patch[] {
  const input = inputOf(graph, move.id);
  if ('values' in move) {
    if (move.values.length === 0) {
      throw new Problem('absent', `The list of values for ${input.name} is empty; add one.`, {
        input: move.id,
      });
    }
    return move.values.map((value) => ({ [move.id]: checkInput(input, value) }));
  }
  if (input.kind !== 'number') {
    throw new Problem('impossible', `${input.name} is no number; give a list of its values.`, {
      input: move.id,
    });
  }
  return axisOf(input, move.from, move.to);
}

function axisOf(input: NumberInput, given?: number, end?: number): Axis | readonly Patch[] {
  const { id, whole = false } = input;
  const usual = usualEnds(input);
  const from = checkInput(input, given ?? usual[0]);
  const to = checkInput(input, end ?? usual[1]);
  if ((from as number) > (to as number)) {
    throw new Problem(
      'impossible',
      `The lower limit of ${input.name} is above the upper one; exchange them. Allowed is ${rangeText(input)}.`,
      { input: id, allowed: rangeText(input) },
    );
  }
  const axis = { id, from: from as number, to: to as number, whole };
  const steps = axis.to - axis.from;
  if (steps === 0) return [{ [id]: axis.from }];
  if (!whole || steps > mostWhole) return axis;
  const first = Math.ceil(axis.from);
  return Array.from({ length: Math.floor(axis.to) - first + 1 }, (_, i) => ({ [id]: first + i }));
}

/** Ends between which an input moves where none are given: its typical span, or its range. */
export function usualEnds(input: NumberInput): readonly [from: number, to: number] {
  const { range, typical = [range.min, range.max] } = input;
  return [range.above && typical[0] === range.min ? justAbove(input) : typical[0], typical[1]];
}

/** A lower end for a range that does not hold its own. */
function justAbove({ range, initial }: NumberInput): number {
  return Math.min(initial, range.max) * 1e-3 + range.min * (1 - 1e-3);
}

/** The value at a share, never outside the ends. */
export function valueAt({ from, to, whole }: Axis, share: number): number {
  if (share <= 0) return from;
  if (share >= 1) return to;
  const value = isWide(from, to) ? from * (to / from) ** share : from + (to - from) * share;
  return Math.min(to, Math.max(from, whole ? Math.round(value) : value));
}

/** The share of a value, 0 or 1 where it lies outside. */
export function shareAt({ from, to }: Axis, value: number): number {
  if (!(value > from)) return 0;
  if (value >= to) return 1;
  return isWide(from, to) ? Math.log(value / from) / Math.log(to / from) : (value - from) / (to - from);
}

function isWide(from: number, to: number): boolean {
  return from > 0 && to > wideFactor * from;
}
