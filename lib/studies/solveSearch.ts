import { haltonDimensions, haltonPoint } from '../numerics/halton.ts';
import { placesAlong, rounded } from './solveAlong.ts';
import type { Measure } from './solveMeasure.ts';
import { refineAll } from './solveSeveral.ts';
import type { Space } from './solveSpace.ts';
import type { Trial, Trials } from './solveTrials.ts';

/** Starts of a search in several numbers. */
const mostStarts = 4;

/** Designs all over the space, for a first look: today's in every combination, and points between the limits. */
export function lookRound(trials: Trials, space: Space): void {
  const { axes, combinations, today } = space;
  const share = trials.left() / (3 * combinations.length);
  const points = axes.length === 0 ? 0 : Math.max(2, Math.min(32 * axes.length, Math.floor(share)));
  const places: (readonly number[])[] = [today];
  for (let k = 1; k <= (axes.length === 1 ? Math.min(points, 4) : points); k++)
    places.push(pointOf(k, axes.length));
  for (const place of places) for (const combination of combinations.keys()) trials.at(combination, place);
}

/** Beyond ten numbers the rest stand in the middle. */
function pointOf(index: number, size: number): number[] {
  const point = haltonPoint(index, Math.min(size, haltonDimensions));
  return Array.from({ length: size }, (_, j) => point[j] ?? 0.5);
}

/** The places of least misfit in every combination, the most promising combination first, each with its share of trials. */
export function search(trials: Trials, space: Space, measure: Measure): Trial[] {
  const costOf = (trial: Trial) =>
    trial.values ? rounded(measure.cost(trial.values)) : Number.POSITIVE_INFINITY;
  const seen = [...trials.all].sort((a, b) => costOf(a) - costOf(b) || a.combination - b.combination);
  const order = [...new Set(seen.map(({ combination }) => combination))];
  let left = trials.left();
  const found = order.flatMap((combination, i) => {
    const before = trials.all.length;
    trials.allow(Math.floor(left / (order.length - i)));
    const starts = seen.filter((trial) => trial.combination === combination && trial.values);
    const places = placesIn(trials, space, measure, combination, starts);
    left -= trials.all.length - before;
    return places;
  });
  trials.allow(left);
  return found.filter(({ values }) => values);
}

function placesIn(
  trials: Trials,
  space: Space,
  measure: Measure,
  combination: number,
  starts: readonly Trial[],
): Trial[] {
  const at = (place: readonly number[]) => trials.at(combination, place);
  const { axes, today } = space;
  const along = () => alongOne(at, measure, today[0]!, trials.left());
  const places = axes.length === 0 ? [] : axes.length === 1 ? along() : inSeveral(at, measure, space, starts);
  return [today, ...places].flatMap((place) => at(place) ?? []);
}

type At = (place: readonly number[]) => Trial | undefined;

function alongOne(at: At, measure: Measure, today: number, budget: number): number[][] {
  const count = Math.max(8, Math.min(128, Math.floor(budget / 3)));
  return placesAlong((share) => at([share])?.values, measure, count, today).map((share) => [share]);
}

function inSeveral(at: At, measure: Measure, space: Space, starts: readonly Trial[]): (readonly number[])[] {
  const residuals = (place: readonly number[]) => {
    const values = at(place)?.values;
    return values && measure.residuals(values);
  };
  const first = [space.today, ...starts.slice(0, mostStarts).map(({ place }) => place)];
  const ends = refineAll(residuals, first);
  const oneSided = measure.edges.every(({ index }) => measure.oneSided(index));
  return oneSided ? ends.map((end) => towardsToday(at, measure, space.today, end)) : ends;
}

/** The place nearest to today's on the straight way to a solution that is one too. */
function towardsToday(
  at: At,
  measure: Measure,
  today: readonly number[],
  end: readonly number[],
): readonly number[] {
  const isMet = (place: readonly number[]) => {
    const values = at(place)?.values;
    return values !== undefined && measure.missed(values).length === 0;
  };
  if (!isMet(end)) return end;
  let best = end;
  let [none, all] = [0, 1];
  for (let i = 0; i < 16; i++) {
    const part = (none + all) / 2;
    const place = end.map((share, j) => today[j]! + (share - today[j]!) * part);
    if (isMet(place)) {
      best = place;
      all = part;
    } else none = part;
  }
  return best;
}
