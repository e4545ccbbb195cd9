import { type Progress, portion } from '../numerics/progress.ts';
import { Problem } from '../problem.ts';
import { describeMarks, type Fitted, type MarkFit, mixedAlternatives } from './markFit.ts';
import { fitPlanes, judgePlanes, type MarksOfSpot, type PlaneFit } from './planeFit.ts';

/** A row of marks along z, to find the focus by. */
export interface LadderProposal {
  /** Distance of neighbouring marks along z, m. */
  readonly step: number;
  /** Readings of z, m, ascending. */
  readonly readings: readonly number[];
  /** |z| from the focus beyond which no mark appears, m. */
  readonly reach: number;
}

/** Rungs that fit on a workpiece and are read in an hour. */
const mostRungs = 61;

/**
 * Proposes a ladder for a spot whose relative peak falls along z as `peakAt`: marks `part` of a Rayleigh length apart (a
 * quarter when left out), about the reading `expected`, as far as the focus may be off (`doubt`, m) and a rung beyond the
 * last plane with a mark. `excess` is the peak fluence of the unshaped focus at the ladder's energy over the threshold.
 * `settable` rounds the step to one that can be set. Planes are asked every half step, as far as the longest row goes.
 * Throws Problem 'impossible' where no plane would be marked, or the row would have more than 61 rungs.
 */
export function proposeLadder(ladder: {
  readonly rayleighLength: number;
  readonly excess: number;
  readonly peakAt: (z: number) => number;
  readonly expected: number;
  readonly doubt: number;
  readonly part?: number;
  readonly settable?: (step: number) => number;
}): LadderProposal {
  const { rayleighLength, excess, peakAt, expected, doubt, part = 0.25, settable = (step) => step } = ladder;
  const exact = part * rayleighLength;
  let reach = -1;
  for (const z of askedPlanes(rayleighLength, part)) {
    if (excess * Math.max(peakAt(z), peakAt(-z)) > 1) reach = z;
  }
  if (reach < 0) {
    throw new Problem(
      'impossible',
      `At this energy no plane is above the threshold: the unshaped focus has ${excess.toPrecision(3)} times the threshold fluence. Raise the energy.`,
      { input: 'laser.pulseEnergy', value: excess.toPrecision(3) },
    );
  }
  const half = Math.ceil((reach + doubt) / exact) + 1;
  if (2 * half + 1 > mostRungs) {
    throw new Problem(
      'impossible',
      `The ladder would have ${2 * half + 1} rungs, where ${mostRungs} are the most: choose larger steps, less energy, or begin nearer to the focus.`,
      { value: `${2 * half + 1}`, allowed: `${mostRungs} or fewer` },
    );
  }
  const step = settable(exact);
  const readings = Array.from({ length: 2 * half + 1 }, (_, i) => expected + (i - half) * step);
  return { step, readings, reach };
}

/**
 * Distances from the focus, m, at which a ladder with steps of `part` of a Rayleigh length asks for marks: every half
 * step from 0, as far as half of the longest row, and within 11.9 Rayleigh lengths, since planes are known to 12.
 */
export function askedPlanes(rayleighLength: number, part: number): number[] {
  const count = Math.floor(Math.min(11.9 / part, (mostRungs - 1) / 2) * 2);
  return Array.from({ length: count + 1 }, (_, i) => (i * part * rayleighLength) / 2);
}

/** Zero and direction of the z scale from measured ladders. */
export interface LadderFit extends MarkFit {
  /** Reading of z at which the workpiece is in the focus, m, with uncertainty and 95 % interval. */
  readonly zero: Fitted;
  /** 1: z grows away from the lens as the readings do; −1: the other way; null: these marks do not tell. */
  readonly direction: 1 | -1 | null;
  /** How much better the better direction fits, in −2 ln of the likelihood; above 9 (90 to 1) it counts as found. */
  readonly directionEvidence: number;
  /** Fluence at the threshold, J/m². */
  readonly thresholdFluence: Fitted;
  /** Both directions, each fitted alone: the better first. */
  readonly alone: readonly [LadderPlace, LadderPlace];
  /** Other zeros, m, that fit about as well (less than 6 in −2 ln of the likelihood, 20 to 1), in the order of their misfit. */
  readonly rivals: readonly number[];
}

/** Where the focus lies if z counts in one of the directions. */
export interface LadderPlace {
  readonly direction: 1 | -1;
  /** m */
  readonly zero: number;
  /** Fluence at the threshold, J/m². */
  readonly thresholdFluence: number;
}

const placeOf = ({ direction, zero, logFluence }: PlaneFit): LadderPlace => ({
  direction,
  zero,
  thresholdFluence: Math.exp(logFluence),
});

const decided = 9;

/**
 * Zero and direction from marks along z; ladders with and without the plate count together, each with its spot. A ladder
 * without the plate, or with a plate whose planes are alike on both sides of the focus, gives the zero but not the
 * direction. Zeros are searched between the ends of `searched`, or of the readings. Where the directions cannot be told
 * apart, the interval of the zero covers the zeros of both. Intervals are for nine rungs or more: with five, a quarter of a
 * Rayleigh length apart, they hold the zero in 15 of 20 ladders behind crossed steps (nine: 19). `progress` hears the part
 * done. Throws Problem 'impossible' below four marks.
 */
export function fitLadder(
  spots: readonly MarksOfSpot[],
  options: {
    readonly absolute?: boolean;
    readonly searched?: readonly [number, number];
    readonly progress?: Progress | undefined;
  } = {},
): LadderFit {
  const readings = spots.flatMap(({ marks }) => marks.map(({ z }) => z));
  const range = options.searched ?? ([Math.min(...readings), Math.max(...readings)] as const);
  const { absolute = false, progress } = options;
  const found = ([1, -1] as const).map((direction, i) =>
    fitPlanes(spots, direction, range, { absolute, progress: portion(progress, i / 2, (i + 1) / 2) }),
  );
  const [first, second] = found.map(([best]) => best!).sort((left, right) => left.misfit - right.misfit) as [
    PlaneFit,
    PlaneFit,
  ];
  const directionEvidence = second.misfit - first.misfit;
  const told = directionEvidence > decided;
  const { fit, seen } = first;
  const alternatives = mixedAlternatives(seen, fit).filter(({ kind }) => kind === 'pulses');
  const unmarked = spots.reduce((sum, { marks }) => sum + marks.length, 0) - seen.length;
  return {
    zero: told ? first.zeroFitted : coverBoth(first.zeroFitted, second.zeroFitted),
    direction: told ? first.direction : null,
    directionEvidence,
    thresholdFluence: first.fluenceFitted,
    alone: [placeOf(first), placeOf(second)],
    rivals: rivalsOf(first, found.flat(), spots[0]!.surface.step),
    ...describeMarks(seen, fit, unmarked, null),
    ...judgePlanes(spots, first, alternatives),
  };
}

/** Zeros besides the best that fit about as well; neighbours within a step of each other are one. */
function rivalsOf(best: PlaneFit, all: readonly PlaneFit[], step: number): number[] {
  const near = (one: number, other: number) => Math.abs(one - other) <= step;
  const zeros: number[] = [];
  for (const { zero, misfit } of [...all].sort((left, right) => left.misfit - right.misfit)) {
    if (misfit - best.misfit < 6 && ![best.zero, ...zeros].some((other) => near(zero, other)))
      zeros.push(zero);
  }
  return zeros;
}

/** The better of two that both remain possible, with an interval over both. */
function coverBoth(better: Fitted, other: Fitted): Fitted {
  const low = Math.min(better.interval[0], other.interval[0]);
  const high = Math.max(better.interval[1], other.interval[1]);
  const uncertainty = Math.max(better.uncertainty, Math.abs(better.value - other.value) / 2);
  return { value: better.value, uncertainty, interval: [low, high] };
}
