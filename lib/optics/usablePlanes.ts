import { depthFromSamples, depthOfPlane } from './depthOfFocus.ts';
import { type KindInterval, numbersInPlane } from './family.ts';
import type { FamilySamples } from './familySamples.ts';
import { type Light, planeOfDefocus } from './light.ts';
import { better, compareFor, type FoundPlane, type PlaneWish, type Scored, scoreFor } from './planeScores.ts';

/**
 * Coarse radii and a slightly tighter tolerance serve the search; what is found is worked out again finely. A depth that
 * ends in the next plane as soon as the tolerance is a little tighter is no depth to count on, and would jump.
 */
const searchRadii = 24;
const searchTolerance = 0.98;
/** Steps in ζ of the search where a score is read off one profile, and where it takes a walk along z. */
const profileStep = 0.04;
const depthStep = 0.1;
const fewestSteps = 6;
/** Planes are found to this ζ; nothing changes over it. */
const planeTolerance = 1e-4;
/** A plane nearer to the focus than this ζ, and no better than it, is the focus. */
const focusTolerance = 1e-3;
/** The ends of a stretch are known to 1e-5. */
const endMargin = 2e-5;

/**
 * The plane of a stretch that serves the wish best: the best of a grid, then a golden section between its neighbours.
 * Undefined where none is wanted.
 */
function bestPlane(
  score: (defocus: number) => number | undefined,
  { from, to }: KindInterval,
  step: number,
): { defocus: number; score: number } | undefined {
  const [low, high] = to - from > 4 * endMargin ? [from + endMargin, to - endMargin] : [from, to];
  const count = Math.max(fewestSteps, Math.ceil((high - low) / step));
  const grid = (high - low) / count;
  let best: { defocus: number; score: number } | undefined;
  // On the grid the first of equals counts; then every gain does.
  let onGrid = true;
  const look = (defocus: number): number => {
    const value = score(defocus);
    const gain =
      value === undefined ? 0 : !best ? 1 : onGrid ? better(best.score, value) : value - best.score;
    if (value !== undefined && gain > 0) best = { defocus, score: value };
    return value ?? Number.NEGATIVE_INFINITY;
  };
  for (let i = 0; i <= count; i++) look(low + grid * i);
  if (!best) return undefined;
  onGrid = false;
  narrow(look, Math.max(low, best.defocus - grid), Math.min(high, best.defocus + grid));
  return best;
}

/** Whether the best plane is the focus but for the tolerance of the search, as where both sides mirror each other. */
function isFocus(
  best: { readonly defocus: number; readonly score: number },
  { from, to }: KindInterval,
  score: (defocus: number) => number | undefined,
): boolean {
  if (Math.abs(best.defocus) > focusTolerance || from > 0 || to < 0) return false;
  const there = score(0);
  return there !== undefined && better(best.score, there) >= 0;
}

function narrow(look: (x: number) => number, low: number, high: number): void {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  let [c, d] = [b - golden * (b - a), a + golden * (b - a)];
  let [fc, fd] = [look(c), look(d)];
  while (b - a > planeTolerance) {
    if (fc > fd) {
      [b, d, fd] = [d, c, fc];
      c = b - golden * (b - a);
      fc = look(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + golden * (b - a);
      fd = look(d);
    }
  }
}

/**
 * The planes that serve a wish, one of each stretch of the family that has any. For `all`, along z: of a flat-top the
 * plane without a dip (or of the least) that has the greatest plateau ratio, of a ring the darkest, of a peaked stretch
 * the brightest, of a shallow ring the middle. Else the plane that is best for the goal, best first; flat-tops by least
 * dip, then depth. `zeroCurvature` are the ζ of planes without curvature on the axis.
 */
export function findUsablePlanes(
  light: Light,
  samples: FamilySamples,
  family: readonly KindInterval[],
  wish: PlaneWish,
  zeroCurvature: readonly number[],
): FoundPlane[] {
  const score = scoreFor(wish);
  const found = family.flatMap((stretch): Scored[] => {
    const scoreAt = (defocus: number) =>
      score(numbersInPlane(light, samples, defocus), stretch, () =>
        depthFromSamples(light, samples, defocus, searchTolerance * wish.tolerance, searchRadii),
      );
    const best = bestPlane(scoreAt, stretch, wish.goal === 'deepest' ? depthStep : profileStep);
    if (!best) return [];
    const defocus = isFocus(best, stretch, scoreAt) ? 0 : best.defocus;
    const plane = describePlane(light, samples, stretch, defocus, wish.tolerance, zeroCurvature);
    return [{ score: best.score, plane }];
  });
  found.sort((a, b) => compareFor(wish.goal, a, b) || a.plane.z - b.plane.z);
  return found.map(({ plane }) => plane);
}

function describePlane(
  light: Light,
  samples: FamilySamples,
  { kind, from, to }: KindInterval,
  defocus: number,
  tolerance: number,
  zeroCurvature: readonly number[],
): FoundPlane {
  const numbers = numbersInPlane(light, samples, defocus);
  const searched = depthFromSamples(light, samples, defocus, tolerance);
  // The depth does not end where the search does.
  const depth = searched?.cut ? depthOfPlane(light, defocus, searched.disc, tolerance) : searched;
  const depthFrom = depth ? planeOfDefocus(light, depth.from) : numbers.z;
  const depthTo = depth ? planeOfDefocus(light, depth.to) : numbers.z;
  return {
    ...numbers,
    kind,
    depthFrom,
    depthTo,
    depth: depthTo - depthFrom,
    deviation: depth?.deviation ?? 1,
    zeroCurvature: zeroCurvature.some((plane) => from <= plane && plane <= to),
  };
}
