import { type DepthOfFocus, depthFromSamples } from './depthOfFocus.ts';
import { type KindInterval, numbersInPlane } from './family.ts';
import type { FamilySamples } from './familySamples.ts';
import { type Light, planeOfDefocus } from './light.ts';
import type { PlaneNumbers } from './planeNumbers.ts';

/** What a plane is wanted for. */
export type PlaneGoal =
  | 'all'
  | 'flat'
  | 'flatEdge'
  | 'flatArea'
  | 'ring'
  | 'ringWidth'
  | 'smallest'
  | 'deepest';

/** What is asked of the planes. */
export interface PlaneWish {
  readonly goal: PlaneGoal;
  /** Largest dip of a flat-top; flat-tops stay below 5 % anyway. */
  readonly largestDip: number;
  /** Least dip of a ring, its contrast. */
  readonly leastContrast: number;
  /** Tolerance of the depth of focus. */
  readonly tolerance: number;
}

/** A plane found, with its depth of focus in metres. */
export interface FoundPlane extends PlaneNumbers {
  /** Ends in z; both are the plane's own z where it has no depth within the tolerance. */
  readonly depthFrom: number;
  readonly depthTo: number;
  /** 0 where the profile leaves the tolerance in the plane itself. */
  readonly depth: number;
  /** Largest |H/H̄ − 1| over the plateau in the plane itself. */
  readonly deviation: number;
  /** True where a plane without curvature on the axis lies in the stretch of the same kind (coherent light). */
  readonly zeroCurvature: boolean;
}

/** How good a plane of a stretch is, the higher the better; undefined where it is not wanted. */
type Score = (
  plane: PlaneNumbers,
  stretch: KindInterval,
  depth: () => DepthOfFocus | undefined,
) => number | undefined;

/** A twentieth of a per cent is beneath any camera: dips below it count as none. */
const noDip = 5e-4;
const visibleDip = ({ dip }: PlaneNumbers): number => Math.max(0, dip - noDip);

/** A thousandth of dip outweighs any plateau ratio: the ratio decides between planes without a dip. */
const flatness = (plane: PlaneNumbers): number => plane.areaRatio - 1000 * visibleDip(plane);

/** What serves best where every kind is wanted. */
function ownBest(plane: PlaneNumbers, { kind, from, to }: KindInterval): number {
  if (kind === 'flat-top') return flatness(plane);
  if (kind === 'ring') return plane.dip;
  return kind === 'peaked' ? plane.relativePeak : -Math.abs(plane.defocus - (from + to) / 2);
}

function scoreFor({ goal, largestDip, leastContrast }: PlaneWish): Score {
  const flat =
    (value: (plane: PlaneNumbers) => number | undefined): Score =>
    (plane, { kind }) =>
      kind === 'flat-top' && plane.dip <= largestDip ? value(plane) : undefined;
  const ring =
    (value: (plane: PlaneNumbers) => number): Score =>
    (plane, { kind }) =>
      (kind === 'ring' || kind === 'shallow ring') && plane.dip >= leastContrast ? value(plane) : undefined;
  const scores: Readonly<Record<PlaneGoal, Score>> = {
    all: ownBest,
    flat: flat(flatness),
    flatEdge: flat(({ edgeWidth }) => edgeWidth && -edgeWidth),
    flatArea: flat(({ areaRatio, width }) => areaRatio * width ** 2),
    ring: ring(({ dip }) => dip),
    ringWidth: ring(({ ringWidth }) => -ringWidth),
    smallest: ({ width }) => -width,
    deepest: (_, { kind }, depth) => {
      const found = kind === 'ring' ? undefined : depth();
      return found && found.to > found.from ? found.to - found.from : undefined;
    },
  };
  return scores[goal];
}

/** Puts planes in order: along z, or best first; equal ones, as mirror images are, along z. */
function comparePlanes(goal: PlaneGoal): (a: Scored, b: Scored) => number {
  return (a, b) => {
    const [one, other] = [a.plane, b.plane];
    const better = (x: number, y: number) => (Math.abs(x - y) <= 1e-5 * Math.abs(x + y) ? 0 : y - x);
    const byGoal =
      goal === 'all'
        ? 0
        : goal === 'flat'
          ? better(-visibleDip(one), -visibleDip(other)) || better(one.depth, other.depth)
          : better(a.score, b.score);
    return byGoal || one.z - other.z;
  };
}

interface Scored {
  readonly plane: FoundPlane;
  readonly score: number;
}

/** Coarse radii serve the search; what is found is worked out again finely. */
const searchRadii = 24;
/** Steps in ζ of the search where a score is read off one profile, and where it takes a walk along z. */
const profileStep = 0.04;
const depthStep = 0.1;
const fewestSteps = 6;
/** Planes are found to this ζ; nothing changes over it. */
const planeTolerance = 1e-4;
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
  const look = (defocus: number): number => {
    const value = score(defocus);
    if (value !== undefined && (!best || value > best.score)) best = { defocus, score: value };
    return value ?? Number.NEGATIVE_INFINITY;
  };
  for (let i = 0; i <= count; i++) look(low + grid * i);
  if (!best) return undefined;
  narrow(look, Math.max(low, best.defocus - grid), Math.min(high, best.defocus + grid));
  return best;
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
        depthFromSamples(light, samples, defocus, wish.tolerance, searchRadii),
      );
    const best = bestPlane(scoreAt, stretch, wish.goal === 'deepest' ? depthStep : profileStep);
    if (!best) return [];
    const plane = describePlane(light, samples, stretch, best.defocus, wish.tolerance, zeroCurvature);
    return [{ score: best.score, plane }];
  });
  return found.sort(comparePlanes(wish.goal)).map(({ plane }) => plane);
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
  const depth = depthFromSamples(light, samples, defocus, tolerance);
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
