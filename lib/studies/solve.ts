import { descendantsOf } from '../graph/descendants.ts';
import { enteringOf } from '../graph/entering.ts';
import type { Graph } from '../graph/graph.ts';
import { orderOf } from '../graph/graph.ts';
import type { Quantity, Report } from '../graph/quantity.ts';
import type { Patch } from '../graph/state.ts';
import { Problem } from '../problem.ts';
import { rounded } from './solveAlong.ts';
import { blockedBy, limitsOf, type Searched } from './solveBlocked.ts';
import { boundsOf, createMeasure, type Measure } from './solveMeasure.ts';
import type { AtLimit, Move, Solution, SolveRequest, SolveResult, Want } from './solveRequest.ts';
import { lookRound, search } from './solveSearch.ts';
import { createSpace, type Space } from './solveSpace.ts';
import { createTrials, type Trial } from './solveTrials.ts';

/** Designs tried where every one is quick, and where one takes long; and for each number that moves in each combination. */
const usual = { light: 400, heavy: 60 } as const;
const leastEach = { light: 200, heavy: 8 } as const;
/** Long lists are tried with at most as many times the usual number. */
const mostByLists = 12;
/** Further solutions told. */
const mostOthers = 8;

/**
 * Looks for inputs that give what is wanted, from today's `inputs`. Ends and lists are kept exactly. Several solutions
 * are all told, the one nearest to today's design first; where there is none, the nearest to one and what stands in the
 * way. A design whose wanted values are a problem is no solution. Without a random draw: the same request has the same
 * answer everywhere. Throws a Problem where the request cannot be: an unknown id, a value outside an input's range,
 * nothing wanted, nothing that may move.
 */
export function solve(graph: Graph, inputs: Patch, request: SolveRequest, report?: Report): SolveResult {
  const result = solveWithin(graph, inputs, request, report);
  const { blocked } = result;
  if (blocked?.reason !== 'limits') return result;
  const wide = solveWithin(graph, inputs, {
    ...request,
    moves: request.moves.map((move) => widened(graph, move, blocked.limits)),
    most: result.tried,
  });
  const tried = result.tried + wide.tried;
  if (!wide.met) return { ...result, tried };
  const { patch, part, values } = wide as Solution;
  const beyond = { patch, values, ...(part === undefined ? {} : { part }) };
  return { ...result, tried, blocked: { ...blocked, beyond } };
}

/** The move with the end at which it stands put as far out as its input goes. */
function widened(graph: Graph, move: Move, limits: readonly AtLimit[]): Move {
  const input = graph.quantities.get(move.id)!;
  if ('values' in move || input.kind !== 'number') return move;
  const { min, max, above = false } = input.range;
  const ends = limits.filter(({ id }) => id === move.id).map(({ end }) => end);
  return {
    ...move,
    ...(ends.includes('from') && !above ? { from: min } : {}),
    ...(ends.includes('to') ? { to: max } : {}),
  };
}

function solveWithin(graph: Graph, inputs: Patch, request: SolveRequest, report?: Report): SolveResult {
  for (const want of request.wants) checkWant(graph, want);
  checkRequest(request);
  const space = createSpace(graph, inputs, request);
  const ids = request.wants.map(({ id }) => id);
  const most = request.most ?? usualMost(graph, inputs, ids, space);
  const trials = createTrials(graph, inputs, space, ids, most, report);
  lookRound(trials, space);
  const measure = createMeasure(
    request.wants,
    trials.all.flatMap(({ values }) => (values ? [values] : [])),
  );
  const found = search(trials, space, measure);
  const complete = trials.refused() === 0;
  const searched = { graph, inputs, request, space, trials, measure };
  return { ...answerOf(searched, sorted(found, space, measure)), tried: trials.all.length, complete };
}

/** By whether anything heavy stands between what moves and what is wanted. */
function usualMost(graph: Graph, inputs: Patch, ids: readonly string[], space: Space): number {
  const { combinations, axes } = space;
  const moved = [...axes.map(({ id }) => id), ...combinations.flatMap(({ patch }) => Object.keys(patch))];
  const again = descendantsOf(graph, new Set(moved), inputs);
  const behind = orderOf(
    ids.map((id) => graph.quantities.get(id)!),
    (quantity) => enteringOf(quantity, inputs),
  );
  const isHeavy = (quantity: Quantity) =>
    quantity.kind === 'derived' && quantity.heavy && again.has(quantity.id);
  const work = behind.some(isHeavy) ? 'heavy' : 'light';
  const each = leastEach[work] * axes.length || 1;
  const bound = mostByLists * usual[work];
  return Math.max(usual[work] * Math.max(1, axes.length - 1), Math.min(bound, each * combinations.length));
}

/** Solutions first, each best of its kind: least misfit, then least change, then the order of the lists. */
function sorted(found: readonly Trial[], space: Space, measure: Measure): Trial[] {
  const key = (trial: Trial) => {
    const cost = measure.cost(trial.values!);
    const moved = Math.hypot(...trial.place.map((share, i) => share - space.today[i]!));
    return [
      measure.missed(trial.values!).length === 0 ? 0 : 1,
      Math.round(cost * 1e6) / 1e6,
      rounded(space.combinations[trial.combination]!.changes + Math.round(moved * 1e9) / 1e9),
      trial.combination,
    ];
  };
  const keyed = found.map((trial) => ({ trial, key: key(trial) }));
  keyed.sort((a, b) => a.key.reduce((order, value, i) => order || value - b.key[i]!, 0));
  return keyed.map(({ trial }) => trial);
}

function answerOf(searched: Searched, found: readonly Trial[]): Omit<SolveResult, 'tried' | 'complete'> {
  const { measure, space, request } = searched;
  const best = found[0];
  if (!best)
    return { met: false, missed: [], atLimits: [], others: [], blocked: blockedBy(searched, undefined) };
  const missed = measure.missed(best.values!);
  const shown = { ...solutionOf(best, space, request), missed, atLimits: limitsOf(space, best) };
  if (missed.length > 0) return { ...shown, met: false, others: [], blocked: blockedBy(searched, best) };
  const kept: Trial[] = [best];
  for (const trial of found) {
    if (kept.length > mostOthers || measure.missed(trial.values!).length > 0) break;
    if (kept.every((other) => !isSame(trial, other))) kept.push(trial);
  }
  return { ...shown, met: true, others: kept.slice(1).map((trial) => solutionOf(trial, space, request)) };
}

/** Places nearer than this are one solution. */
const samePlace = 1e-6;

function isSame(one: Trial, other: Trial): boolean {
  const near = one.place.every((share, i) => Math.abs(share - other.place[i]!) < samePlace);
  return one.combination === other.combination && near;
}

function solutionOf({ combination, patch, values }: Trial, space: Space, { wants }: SolveRequest): Solution {
  const { part } = space.combinations[combination]!;
  return {
    patch,
    ...(part === undefined ? {} : { part }),
    values: Object.fromEntries(wants.map(({ id }, i) => [id, values![i]!])),
  };
}

function checkRequest({ wants, moves, patches = [] }: SolveRequest): void {
  if (wants.length === 0) {
    throw new Problem('absent', 'Nothing is wanted yet; choose a result and the value it should have.');
  }
  if (moves.length + patches.length === 0) {
    throw new Problem('absent', 'Nothing may move yet; choose an input that may.');
  }
}

function checkWant(graph: Graph, want: Want): void {
  const quantity: Quantity | undefined = graph.quantities.get(want.id);
  if (!quantity) throw new Problem('unreadable', `There is no quantity '${want.id}'; choose another one.`);
  if (typeof quantity.unit !== 'string' || quantity.unit === 'none') {
    throw new Problem(
      'impossible',
      `The ${quantity.name} is no single number, so no value of it can be wanted.`,
      {
        input: want.id,
      },
    );
  }
  const { weight = 1, tolerance = 0 } = want;
  const [low, high] = boundsOf(want);
  const typed = want.kind === 'between' ? [want.low, want.high] : [want.value];
  if (
    !(low <= high) ||
    !(weight > 0) ||
    !(tolerance >= 0) ||
    ![...typed, weight, tolerance].every(Number.isFinite)
  ) {
    throw new Problem(
      'impossible',
      `What is wanted of ${quantity.name} needs numbers, the lower bound below the upper one, a weight above 0 and a tolerance of 0 or more.`,
      { input: want.id },
    );
  }
}
