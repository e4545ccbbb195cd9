import { descendantsOf } from '../graph/descendants.ts';
import type { Graph } from '../graph/graph.ts';
import type { Patch } from '../graph/state.ts';
import { rounded } from './solveAlong.ts';
import type { Measure } from './solveMeasure.ts';
import type { AtLimit, Blocked, SolveRequest } from './solveRequest.ts';
import { search } from './solveSearch.ts';
import { type Space, valueAt } from './solveSpace.ts';
import type { Trial, Trials } from './solveTrials.ts';

/** Everything that a search had. */
export interface Searched {
  readonly graph: Graph;
  readonly inputs: Patch;
  readonly request: SolveRequest;
  readonly space: Space;
  readonly trials: Trials;
  readonly measure: Measure;
}

/** Moved numbers that stand at an end. */
export function limitsOf({ axes }: Space, { place }: Trial): AtLimit[] {
  return axes.flatMap((axis, i): AtLimit[] => {
    const value = valueAt(axis, place[i]!);
    if (value === axis.from) return [{ id: axis.id, end: 'from', value }];
    return value === axis.to ? [{ id: axis.id, end: 'to', value }] : [];
  });
}

/** What stands in the way of the wants that the best trial misses; without one, no design has values. */
export function blockedBy(searched: Searched, best: Trial | undefined): Blocked {
  const { trials, measure, request } = searched;
  const commonest = commonestProblem(trials);
  if (!best?.values) return commonest!;
  const missed = measure.missed(best.values).map(({ index }) => index);
  const unmoved = missed.find((index) => !isMoved(searched, request.wants[index]!.id));
  if (unmoved !== undefined) return { reason: 'unmoved', want: unmoved };
  const alone = measure.indices.length === 1 ? undefined : unmetAlone(searched);
  if (alone)
    return alone.length === 1 ? stopOf(searched, alone[0]!) : { reason: 'contradiction', wants: alone };

  return stopOf(searched, missed[0]!, best);
}

/** Combinations looked at for what enters a want; a choice among more is no list of parts. */
const mostLookedAt = 50;

/** Whether anything that may move enters a quantity, under one of the combinations. */
function isMoved({ graph, inputs, space }: Searched, id: string): boolean {
  return space.combinations.slice(0, mostLookedAt).some(({ patch }) => {
    const moved = [...space.axes.map((axis) => axis.id), ...Object.keys(patch)];
    return descendantsOf(graph, moved, { ...inputs, ...patch }).has(id);
  });
}

/** The want that cannot be met alone, else the first two that cannot together, else all. */
function unmetAlone({ space, trials, measure }: Searched): readonly number[] {
  const { indices } = measure;
  const pairs = indices.flatMap((a) => indices.filter((b) => b > a).map((b) => [a, b]));
  const groups = [...indices.map((index) => [index]), ...(indices.length > 2 ? pairs : [])];

  const share = Math.ceil(trials.all.length / groups.length);
  return (
    groups.find((group) => {
      const part = measure.only(group);
      const met = (trial: Trial) => trial.values !== undefined && part.missed(trial.values).length === 0;
      if (trials.all.some(met)) return false;
      trials.allow(share);
      return !search(trials, space, part).some(met);
    }) ?? indices
  );
}

/** Why one want cannot be met. */
function stopOf({ space, trials, measure }: Searched, index: number, near?: Trial): Blocked {
  const part = measure.only([index]);
  const withValues = trials.all.filter(({ values }) => values);
  const costOf = (trial: Trial) => rounded(part.cost(trial.values!));
  const best = near ?? withValues.reduce((least, trial) => (costOf(trial) < costOf(least) ? trial : least));
  trials.allow(4 * space.axes.length);
  const stops = stopsAt(space, trials, part, best);
  if (stops.problem) return stops.problem;
  if (stops.limits.length > 0) return { reason: 'limits', want: index, limits: stops.limits };
  const reached = withValues.map(({ values }) => values![index]!);
  const [{ target }] = part.edges as [Measure['edges'][number]];
  const below = Math.max(...reached.filter((value) => value < target));
  const above = Math.min(...reached.filter((value) => value > target));
  if (Number.isFinite(below) && Number.isFinite(above)) return { reason: 'gap', want: index, below, above };
  return { reason: 'reach', want: index, low: Math.min(...reached), high: Math.max(...reached) };
}

/** Ends and problems just beyond the best place, where going on would come nearer. */
function stopsAt(space: Space, trials: Trials, measure: Measure, best: Trial) {
  const limits: AtLimit[] = [];
  let problem: Blocked | undefined;
  const cost = measure.cost(best.values!);
  const standing = limitsOf(space, best);
  const step = 1e-3;
  space.axes.forEach((axis, i) => {
    for (const side of [-1, 1]) {
      const probe = (distance: number) =>
        trials.at(
          best.combination,
          best.place.map((share, k) => (k === i ? Math.min(1, Math.max(0, share + distance)) : share)),
        );
      const inner = probe(-side * step);
      if (!inner?.values || !(measure.cost(inner.values) > cost)) continue;
      const end = standing.find(({ id, end }) => id === axis.id && end === (side < 0 ? 'from' : 'to'));
      if (end) limits.push(end);
      else {
        const outer = probe(side * step);
        if (outer?.problem) problem ??= problemOf(outer, trials);
      }
    }
  });
  return { limits, problem };
}

/** The problem of most of the designs tried, the first of equal ones. */
function commonestProblem(trials: Trials): Blocked | undefined {
  const counts = new Map<string, number>();
  for (const { problem } of trials.all)
    if (problem) counts.set(problem.message, (counts.get(problem.message) ?? 0) + 1);
  const most = Math.max(...counts.values());
  const first = trials.all.find(({ problem }) => problem && counts.get(problem.message) === most);
  return first && problemOf(first, trials);
}

function problemOf({ problem }: Trial, trials: Trials): Blocked {
  const { input } = problem!.parts;
  const same = trials.all.filter((trial) => trial.problem?.at === problem!.at).length;
  return {
    reason: 'problem',
    problem: problem!,
    ...(input === undefined ? {} : { input }),
    part: same / trials.all.length,
  };
}
