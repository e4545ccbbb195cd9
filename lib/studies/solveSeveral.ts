import { solveUpper, triangularise } from '../numerics/linearLeastSquares.ts';
import { rounded } from './solveAlong.ts';

/** Residuals at shares of several numbers; undefined where there are none. */
export type Residuals = (place: readonly number[]) => readonly number[] | undefined;

interface Point {
  readonly place: readonly number[];
  readonly residuals: readonly number[];
  readonly cost: number;
}

/** A sum of squares below this is as good as 0: a hundred-millionth of a tolerance. */
const asGoodAsZero = 1e-20;
/** A step that takes off less than this part of the misfit is the last: towards a solution each takes off nearly all. */
const leastGain = 1e-4;

function pointAt(ask: Residuals, place: readonly number[]): Point | undefined {
  const residuals = ask(place);
  return residuals && { place, residuals, cost: residuals.reduce((sum, r) => sum + r * r, 0) };
}

/**
 * The places of least misfit near each of the starts, inside 0…1: damped least squares, and where none of them meets
 * all, steps from the best that need no slopes.
 */
export function refineAll(ask: Residuals, starts: readonly (readonly number[])[]): (readonly number[])[] {
  const ends = starts.flatMap((start) => pointAt(ask, start) ?? []).map((point) => bySlopes(ask, point));
  if (ends.length === 0) return [];
  const best = ends.reduce((least, end) => (rounded(end.cost) < rounded(least.cost) ? end : least));
  const last = best.cost > asGoodAsZero ? [bySteps(ask, best)] : [];
  return [...ends, ...last].map(({ place }) => place);
}

/**
 * Levenberg–Marquardt with differences for slopes, which stays inside: a number at its end whose slope points outwards
 * is held there.
 */
function bySlopes(ask: Residuals, start: Point): Point {
  let best = start;
  let damping = 1e-3;
  for (let step = 0; step < 40 && best.cost > asGoodAsZero; step++) {
    const slopes = slopesAt(ask, best);
    const free = freeOf(best, slopes);
    if (free.length === 0) return best;
    let next: Point | undefined;
    for (let tries = 0; tries < 8 && !next; tries++) {
      const trial = pointAt(ask, dampedStep(best, slopes, free, damping));
      if (trial && trial.cost < best.cost) next = trial;
      damping *= next ? 0.1 : 6;
    }
    if (!next) return best;
    const gain = 1 - next.cost / best.cost;
    best = next;
    if (gain < leastGain) return best;
  }
  return best;
}

/** Columns of slopes, one a number, from a step towards the inside. */
function slopesAt(ask: Residuals, { place, residuals }: Point): number[][] {
  return place.map((share, j) => {
    const sides = share > 0.5 ? [-1e-6, 1e-6] : [1e-6, -1e-6];
    for (const h of sides) {
      const other = clamped(share + h);
      if (other === share) continue;
      const moved = ask(place.map((one, k) => (k === j ? other : one)));
      if (moved) return moved.map((r, i) => (r - residuals[i]!) / (other - share));
    }
    return residuals.map(() => 0);
  });
}

function clamped(share: number): number {
  return Math.min(1, Math.max(0, share));
}

function freeOf({ place, residuals }: Point, slopes: readonly (readonly number[])[]): number[] {
  return place.flatMap((share, j) => {
    const down = -slopes[j]!.reduce((sum, slope, i) => sum + slope * residuals[i]!, 0);
    return down === 0 || (share === 0 && down < 0) || (share === 1 && down > 0) ? [] : [j];
  });
}

function dampedStep(
  { place, residuals }: Point,
  slopes: readonly (readonly number[])[],
  free: readonly number[],
  damping: number,
): number[] {
  const size = free.length;
  const rows = residuals.length + size;
  const matrix = new Float64Array(rows * size);
  const right = new Float64Array(rows);
  free.forEach((j, column) => {
    slopes[j]!.forEach((slope, i) => {
      matrix[i * size + column] = slope;
    });
    const length = Math.hypot(...slopes[j]!) || 1;
    matrix[(residuals.length + column) * size + column] = Math.sqrt(damping) * length;
  });
  residuals.forEach((r, i) => {
    right[i] = -r;
  });
  const { r, projected } = triangularise(matrix, right, rows, size);
  const move = solveUpper(r, projected, size);
  return place.map((share, j) => {
    const column = free.indexOf(j);
    return column < 0 ? share : clamped(share + move[column]!);
  });
}

/** Shares nearer than this show no difference to a person. */
const leastStep = 1e-5;

/** Steps along each number and each pair, halved where none is lower: kinks and gaps do not matter. */
function bySteps(ask: Residuals, start: Point): Point {
  let best = start;
  const directions = directionsOf(start.place.length);
  for (let size = 1 / 16; size > leastStep && best.cost > asGoodAsZero; ) {
    const centre = best;
    for (const direction of directions) {
      const trial = pointAt(
        ask,
        centre.place.map((share, j) => clamped(share + size * direction[j]!)),
      );
      if (trial && trial.cost < best.cost * (1 - 1e-9)) best = trial;
    }
    if (best === centre) size /= 2;
  }
  return best;
}

function directionsOf(size: number): number[][] {
  const unit = (j: number, sign: number) => Array.from({ length: size }, (_, k) => (k === j ? sign : 0));
  const single = Array.from({ length: size }, (_, j) => [unit(j, 1), unit(j, -1)]).flat();
  const pairs = single.flatMap((a, i) =>
    single.slice(i + 1).flatMap((b) => {
      const sum = a.map((x, k) => x + b[k]!);
      return sum.every((x) => x === 0) ? [] : [sum];
    }),
  );
  return [...single, ...pairs];
}
