import { goldenSection } from '../numerics/goldenSection.ts';
import { findRoot } from '../numerics/roots.ts';
import type { Measure } from './solveMeasure.ts';

/** Wanted values at a share 0…1 of the one number that moves; undefined where there are none. */
export type Along = (share: number) => readonly number[] | undefined;

interface Sample {
  readonly share: number;
  readonly values: readonly number[];
}

/** Shares nearer than this are the same place. */
const sameShare = 1e-13;
/** Turning points looked at closely, those that come nearest. */
const mostTurns = 3;

/**
 * Shares at which one number meets a want or comes nearest: where a value crosses an edge of its want or touches it, and
 * where the misfit of all is least, from `count` equal steps and today's share. Where values end between two steps, the
 * last place that has one counts too. Finds all roots that lie further apart than a step, and pairs about a turn.
 */
export function placesAlong(at: Along, measure: Measure, count: number, today: number): number[] {
  const stretches = stretchesOf(at, count, today);
  const found: number[] = [];
  for (const samples of stretches) {
    found.push(samples[0]!.share, samples.at(-1)!.share);
    for (const { index, target, near } of measure.edges) {
      const off = (share: number) => (at(share)?.[index] ?? Number.NaN) - target;
      const offs = samples.map(({ values }) => values[index]! - target);
      found.push(...crossings(off, samples, offs), ...touches(off, samples, offs, near));
    }
    const cost = (share: number) => costAt(at, measure, share);
    const costs = samples.map(({ values }) => measure.cost(values));
    const least = turnsOf(costs).sort((a, b) => rounded(costs[a]!) - rounded(costs[b]!) || a - b)[0];
    if (least !== undefined && measure.indices.length > 1 && costs[least]! > 0) {
      found.push(lowestIn(cost, samples[least - 1]!.share, samples[least + 1]!.share, 1e-9));
    }
  }
  return found.filter(Number.isFinite);
}

function costAt(at: Along, measure: Measure, share: number): number {
  const values = at(share);
  return values ? measure.cost(values) : Number.POSITIVE_INFINITY;
}

/** Runs of neighbouring samples that have values, each drawn out to where they end. */
function stretchesOf(at: Along, count: number, today: number): Sample[][] {
  const shares = Array.from({ length: count + 1 }, (_, i) => i / count);
  if (shares.every((share) => Math.abs(share - today) > sameShare)) shares.push(today);
  shares.sort((a, b) => a - b);
  const runs: Sample[][] = [];
  let run: Sample[] = [];
  let before: number | undefined;
  for (const share of shares) {
    const values = at(share);
    if (values) {
      if (run.length === 0 && before !== undefined) run.push(...lastWithValues(at, share, before));
      run.push({ share, values });
    } else if (run.length > 0) {
      run.push(...lastWithValues(at, run.at(-1)!.share, share));
      runs.push(run);
      run = [];
    }
    before = share;
  }
  return run.length > 0 ? [...runs, run] : runs;
}

/** The last place with values on the way from one that has them to one that has none. */
function lastWithValues(at: Along, has: number, none: number): Sample[] {
  let last: Sample | undefined;
  let [inside, outside] = [has, none];
  for (let i = 0; i < 24; i++) {
    const share = (inside + outside) / 2;
    const values = at(share);
    if (values) {
      last = { share, values };
      inside = share;
    } else outside = share;
  }
  return last ? [last] : [];
}

type Off = (share: number) => number;

function crossings(off: Off, samples: readonly Sample[], offs: readonly number[]): number[] {
  const found: number[] = [];
  for (let i = 0; i < samples.length; i++) {
    if (offs[i] === 0) found.push(samples[i]!.share);
    if (i === 0 || offs[i]! * offs[i - 1]! >= 0) continue;
    found.push(rootBetween(off, samples[i - 1]!.share, samples[i]!.share));
  }
  return found;
}

function rootBetween(off: Off, low: number, high: number): number {
  return findRoot(off, low, high, sameShare / 4);
}

/** Where a value turns towards its target: the turn itself, and the two crossings beside it where it goes beyond. */
function touches(off: Off, samples: readonly Sample[], offs: readonly number[], near: number): number[] {
  const sizes = offs.map(Math.abs);
  const turns = turnsOf(sizes)
    .filter((i) => offs[i - 1]! * offs[i]! > 0 && offs[i + 1]! * offs[i]! > 0)
    .sort((a, b) => rounded(sizes[a]!) - rounded(sizes[b]!) || a - b)
    .slice(0, mostTurns);
  return turns.flatMap((i) => {
    const [left, right] = [samples[i - 1]!.share, samples[i + 1]!.share];
    const sign = Math.sign(offs[i]!);
    const height = (share: number) => sign * off(share);
    const turn = lowestIn(height, left, right, 1e-4 * (right - left));
    if (height(turn) < 0) return [rootBetween(off, left, turn), rootBetween(off, turn, right)];
    return [height(turn) <= 1e3 * near || i === turns[0] ? levelPlace(height, turn, right - left) : turn];
  });
}

/** Places among the inner ones that are lower than the next on one side and no higher than on the other. */
function turnsOf(costs: readonly number[]): number[] {
  return costs.flatMap((cost, i) => {
    if (i === 0 || i === costs.length - 1) return [];
    const [before, after] = [costs[i - 1]!, costs[i + 1]!];
    return (cost < before && cost <= after) || (cost <= before && cost < after) ? [i] : [];
  });
}

/**
 * A lowest place to the rounding of the values rather than to its square root: where the five-point slope is 0, h² wide
 * errors cancel; the place itself where that finds nothing lower.
 */
function levelPlace(height: Off, turn: number, width: number): number {
  const h = 2e-2 * width;
  const reach = Math.min(h, turn - 2 * h, 1 - turn - 2 * h);
  if (reach <= 0) return turn;
  const slope = (share: number) =>
    height(share - 2 * h) - height(share + 2 * h) + 8 * (height(share + h) - height(share - h));
  if (!(slope(turn - reach) < 0 && slope(turn + reach) > 0)) return turn;
  const level = findRoot(slope, turn - reach, turn + reach, sameShare);
  return height(level) <= height(turn) ? level : turn;
}

/** The lowest place of a function with one valley between the ends, by golden sections; what has no value is never lowest. */
function lowestIn(f: Off, low: number, high: number, tolerance: number): number {
  const ask = (share: number) => {
    const value = f(share);
    return Number.isNaN(value) ? Number.POSITIVE_INFINITY : value;
  };
  return goldenSection(ask, low, high, tolerance);
}

/** To nine digits, so that rounding decides nothing. */
export function rounded(value: number): number {
  return Number.isFinite(value) ? Number(value.toPrecision(9)) : value;
}
