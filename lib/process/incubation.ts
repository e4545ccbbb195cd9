import { fisherTail } from '../numerics/distributions.ts';
import { fitNonlinear } from '../numerics/leastSquares.ts';
import type { FitResult } from '../numerics/linearLeastSquares.ts';
import { Problem } from '../problem.ts';

/** How the threshold falls with the number of pulses on a place. */
export interface Incubation {
  /** Threshold of one pulse, J/m². */
  readonly first: number;
  /** S of N^(S−1): 1 where pulses do not add up, usually 0.8 to 1. */
  readonly exponent: number;
  /** Threshold of endless pulses, J/m²; 0 for the plain power law. At most `first`. */
  readonly floor: number;
}

/**
 * F_th(N) = F_∞ + (F_1 − F_∞) N^(S−1), J/m²: the power law of Y. Jee, M. F. Becker & R. M. Walser, J. Opt. Soc. Am. B 5,
 * 648 (1988), with the floor of F. Di Niso et al., Opt. Express 22, 12200 (2014). Never below the floor, so that no
 * removal is predicted there. Throws Problem 'impossible' below one pulse, and where the floor lies above `first`.
 */
export function thresholdAt({ first, exponent, floor }: Incubation, pulses: number): number {
  if (!(pulses >= 1)) {
    throw new Problem('impossible', `${pulses} pulses cannot be: a place gets at least one.`, {
      value: `${pulses}`,
      allowed: '1 or more',
    });
  }
  if (!(floor >= 0 && floor <= first)) {
    throw new Problem(
      'impossible',
      `The threshold of endless pulses (${floor} J/m²) must lie between 0 and that of one pulse (${first} J/m²).`,
      { input: 'threshold.floor', value: `${floor} J/m²`, allowed: `0 to ${first} J/m²` },
    );
  }
  return floor + (first - floor) * pulses ** (exponent - 1);
}

/** A threshold measured with a number of pulses on each place. */
export interface IncubationPoint {
  readonly pulses: number;
  /** Threshold fluence, J/m². */
  readonly fluence: number;
  /** Its standard uncertainty, J/m²; points count alike, in proportion to their fluence, where one has none. */
  readonly uncertainty?: number;
}

/** One of the two laws, fitted. */
export interface IncubationLaw extends Incubation {
  /** Standard uncertainties; of the floor 0 where there is none. */
  readonly uncertainties: Incubation;
  /** Covariance of first, exponent and, with a floor, floor. */
  readonly covariance: readonly Float64Array[];
  readonly residualSumOfSquares: number;
  readonly degreesOfFreedom: number;
  readonly reducedChiSquare: number;
}

export interface IncubationFit {
  readonly power: IncubationLaw;
  /** With a floor; null where the points ask for none, or are too few to tell. */
  readonly floored: IncubationLaw | null;
  /** The law that the points speak for: the power law unless a floor makes it better by more than chance (5 %, F). */
  readonly better: 'power' | 'floored';
  /** A sentence with the reason. */
  readonly reason: string;
}

/**
 * Fits F_1 N^(S−1), and with four or more numbers of pulses F_∞ + (F_1 − F_∞) N^(S−1), to thresholds. Without `absolute`
 * only ratios of uncertainties count, and the scatter about the law sets those of the result. Throws Problem
 * 'impossible' below three different numbers of pulses and for thresholds that are not above 0.
 */
export function fitIncubation(
  points: readonly IncubationPoint[],
  options: { readonly absolute?: boolean } = {},
): IncubationFit {
  checkPoints(points);
  const absolute = options.absolute ?? false;
  const power = fitPower(points, absolute);
  const counts = new Set(points.map(({ pulses }) => pulses)).size;
  if (counts < 4 || points.length < 4) {
    const reason = `Thresholds at ${counts} numbers of pulses cannot tell a floor from a slow fall; measure at four or more, some of them a thousand pulses.`;
    return { power, floored: null, better: 'power', reason };
  }
  const floored = fitFloored(points, power, absolute);
  if (!floored) {
    const reason = 'The thresholds fall at least as steeply as a power law: no floor shows.';
    return { power, floored: null, better: 'power', reason };
  }
  const gain = power.residualSumOfSquares - floored.residualSumOfSquares;
  const scale = absolute ? 1 : floored.reducedChiSquare;
  const below = absolute ? 1e6 : floored.degreesOfFreedom;
  const probability = fisherTail(gain / (scale || Number.MIN_VALUE), 1, below);
  const better = probability < 0.05 && gain > 0 ? 'floored' : 'power';
  const reason =
    better === 'floored'
      ? `A floor describes the thresholds better than a power law alone (a chance of ${chanceText(probability)} if there were none).`
      : `A floor describes the thresholds no better than chance does (${chanceText(probability)}): the power law is enough.`;
  return { power, floored, better, reason };
}

/** A probability in per cent, as far as it means anything. */
function chanceText(probability: number): string {
  return probability < 0.001 ? 'below 0.1\u202f%' : `${(100 * probability).toPrecision(2)}\u202f%`;
}

function checkPoints(points: readonly IncubationPoint[]): void {
  const wrong = points.find(({ pulses, fluence }) => !(pulses >= 1 && fluence > 0));
  if (wrong) {
    throw new Problem(
      'impossible',
      `A threshold of ${wrong.fluence} J/m² for ${wrong.pulses} pulses cannot be: both are above 0, and a place gets at least one pulse.`,
      { value: `${wrong.fluence} J/m²`, allowed: 'above 0' },
    );
  }
  const counts = new Set(points.map(({ pulses }) => pulses)).size;
  if (counts >= 3) return;
  throw new Problem(
    'impossible',
    `Thresholds at ${counts === 1 ? 'one number' : `${counts} different numbers`} of pulses do not show how they fall: at least 3 are needed, such as 1, 10 and 100.`,
    { value: `${counts}`, allowed: '3 or more' },
  );
}

function uncertaintiesOf(points: readonly IncubationPoint[]): number[] {
  const all = points.every(({ uncertainty = 0 }) => uncertainty > 0);
  return points.map(({ uncertainty, fluence }) => (all ? uncertainty! : fluence));
}

function fitPower(points: readonly IncubationPoint[], absolute: boolean): IncubationLaw {
  const [first, slope] = lineThrough(points);
  const fit = fitNonlinear({
    observed: points.map(({ fluence }) => fluence),
    uncertainties: uncertaintiesOf(points),
    absolute,
    start: [first, slope + 1],
    model: (p, into) =>
      points.forEach(({ pulses }, i) => {
        into[i] = p[0]! * pulses ** (p[1]! - 1);
      }),
  });
  return lawOf(fit);
}

/** Start of the power law: ln F against ln N. */
function lineThrough(points: readonly IncubationPoint[]): [number, number] {
  const x = points.map(({ pulses }) => Math.log(pulses));
  const y = points.map(({ fluence }) => Math.log(fluence));
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [mx, my] = [mean(x), mean(y)];
  const slope =
    x.reduce((sum, value, i) => sum + (value - mx) * (y[i]! - my), 0) /
    x.reduce((sum, value) => sum + (value - mx) ** 2, 0);
  return [Math.exp(my - slope * mx), slope];
}

/** Undefined where the best floor is not above 0 and below the first threshold, or does not settle. */
function fitFloored(
  points: readonly IncubationPoint[],
  power: IncubationLaw,
  absolute: boolean,
): IncubationLaw | undefined {
  const lowest = Math.min(...points.map(({ fluence }) => fluence));
  const found = [0.3, 0.7, 0.95].flatMap((part) => {
    try {
      const fit = fitNonlinear({
        observed: points.map(({ fluence }) => fluence),
        uncertainties: uncertaintiesOf(points),
        absolute,
        start: [power.first, Math.min(power.exponent, 0.95) - 0.1 * part, part * lowest],
        model: (p, into) =>
          points.forEach(({ pulses }, i) => {
            into[i] = p[2]! + (p[0]! - p[2]!) * pulses ** (p[1]! - 1);
          }),
      });
      const law = lawOf(fit);
      return law.floor > 0 && law.floor < law.first && law.exponent < 1 ? [law] : [];
    } catch (error) {
      if (error instanceof Problem) return [];
      throw error;
    }
  });
  return found.sort((left, right) => left.residualSumOfSquares - right.residualSumOfSquares)[0];
}

function lawOf(fit: FitResult): IncubationLaw {
  const [first, exponent, floor = 0] = fit.parameters as unknown as [number, number, number?];
  const [u1, u2, u3 = 0] = fit.standardUncertainties as unknown as [number, number, number?];
  const { covariance, residualSumOfSquares, degreesOfFreedom, reducedChiSquare } = fit;
  const uncertainties = { first: u1, exponent: u2, floor: u3 };
  return {
    first,
    exponent,
    floor,
    uncertainties,
    covariance,
    residualSumOfSquares,
    degreesOfFreedom,
    reducedChiSquare,
  };
}
