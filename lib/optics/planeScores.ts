import type { DepthOfFocus } from './depthOfFocus.ts';
import type { KindInterval } from './family.ts';
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
export type Score = (
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

/** How the planes of a stretch are ranked for a wish. */
export function scoreFor({ goal, largestDip, leastContrast }: PlaneWish): Score {
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

/** y − x, 0 where they are equal as mirror images are. */
const better = (x: number, y: number): number => (Math.abs(x - y) <= 1e-5 * Math.abs(x + y) ? 0 : y - x);

/** Which of two planes comes first for a goal: below 0 the first. */
export function compareFor(goal: PlaneGoal, a: Scored, b: Scored): number {
  const byDepth = better(a.plane.depth, b.plane.depth);
  switch (goal) {
    case 'all':
      return 0;
    case 'flat':
      return better(-visibleDip(a.plane), -visibleDip(b.plane)) || byDepth;
    case 'deepest':
      return byDepth;
    default:
      return better(a.score, b.score);
  }
}

/** A plane found, with what its search ranked it by. */
export interface Scored {
  readonly plane: FoundPlane;
  readonly score: number;
}
