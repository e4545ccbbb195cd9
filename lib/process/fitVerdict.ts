import { chiSquareTail, fewRunsProbability, fisherTail } from '../numerics/distributions.ts';
import { type Alternative, checkAlternatives, rounding } from './alternatives.ts';
import type { AreaFit } from './areaFit.ts';
import type { FitCheck } from './fitCheck.ts';
import type { SpotMark } from './spotMark.ts';
import { checkUnmarked, type Unmarked } from './unmarked.ts';

/** Whether a model describes the marks, and why. */
export interface FitVerdict {
  readonly verdict: 'describes' | 'does not describe' | 'too few';
  /** Sentences that give the reason. */
  readonly reason: string;
  /**
   * Mean squared deviation of repeated marks' means from the model over what the scatter among the repeats explains, or
   * with absolute uncertainties χ² over its degrees of freedom: near 1 where the model holds. Null without repeats.
   */
  readonly reducedChiSquare: number | null;
  /** Runs of deviations of one sign along the energy; what a random order gives on average. */
  readonly runs: { readonly count: number; readonly expected: number };
  readonly checks: readonly FitCheck[];
  /** A sentence that says what the fit has found otherwise than expected, though it describes the marks. */
  readonly doubt?: string;
}

/** False alarms of all checks together; measured they are fewer (tests). */
const alarmRate = 0.06;

/** How the false alarms are shared out (after Bonferroni): more for checks of one known fault, less for unspecific ones. */
const alarmShares: Readonly<Record<FitCheck['kind'], number>> = {
  scatter: 1,
  runs: 0.5,
  shape: 1,
  plane: 2,
  pulses: 1,
  z: 0.7,
  axes: 3,
  radius: 1,
  unmarked: 0,
};

/**
 * The verdict on a fit. Marks with equal energy, pulses and z are repeats. The checks are: the means of repeats against
 * the scatter among them (F, or χ² with absolute uncertainties), runs along the energy, each alternative (t of one more
 * parameter), further `checks` with their probability, and energies without a mark. Together they raise a false alarm in
 * 6 % of tables, or less.
 */
export function judgeFit(
  marks: readonly SpotMark[],
  fit: AreaFit,
  alternatives: readonly Alternative[],
  unmarked: readonly Unmarked[],
  further: readonly Omit<FitCheck, 'passed'>[] = [],
): FitVerdict {
  const deviations = marks.map((mark, i) => (mark.area - fit.area[i]!) / fit.spread[i]!);
  const groups = groupRepeats(marks, deviations);
  const scatter = checkScatter(marks.length, deviations, groups, fit);
  const runs = countRuns(groups);
  const asked = [
    ...(scatter.check ? [scatter.check] : []),
    ...(groups.length >= 6 ? [checkRuns(runs)] : []),
    ...checkAlternatives(alternatives, deviations, fit),
    ...further,
  ];
  const total = asked.reduce((sum, { kind }) => sum + alarmShares[kind], 0);
  const checks: FitCheck[] = asked.map((check) => {
    const limit = (alarmRate * alarmShares[check.kind]) / total;
    return { ...check, passed: check.probability >= limit };
  });
  checks.push(...checkUnmarked(unmarked));
  const failed = checks.filter(({ passed }) => !passed);
  const reducedChiSquare = scatter.ratio;
  if (failed.length > 0) {
    const reason = [...new Set(failed.map(({ text }) => text))].join(' ');
    return { verdict: 'does not describe', reason, reducedChiSquare, runs, checks };
  }
  // With no more energies than parameters every model of its kind goes through the means.
  if (groups.length < fit.parameters.length + 2) {
    const reason = `${groups.length === 1 ? 'One energy' : `${groups.length} different energies`} cannot tell a right model of ${fit.parameters.length} ${fit.parameters.length === 1 ? 'parameter' : 'parameters'} from a wrong one; mark at ${fit.parameters.length + 2} or more.`;
    return { verdict: 'too few', reason, reducedChiSquare, runs, checks };
  }
  // Only the scatter among repeats says something where all is well; the others say what is wrong.
  const reason = checks.find(({ kind }) => kind === 'scatter')?.text ?? '';
  return { verdict: 'describes', reason, reducedChiSquare, runs, checks };
}

interface Group {
  readonly energy: number;
  readonly size: number;
  /** Mean of the deviations in standard deviations. */
  readonly mean: number;
  /** Squared deviations from that mean. */
  readonly within: number;
}

/** Groups of repeats, ascending in energy. */
function groupRepeats(marks: readonly SpotMark[], deviations: readonly number[]): Group[] {
  const found = new Map<string, number[]>();
  marks.forEach(({ energy, pulses, z }, i) => {
    const key = `${energy} ${pulses} ${z}`;
    found.set(key, [...(found.get(key) ?? []), i]);
  });
  const groups = [...found.values()].map((members): Group => {
    const mean = members.reduce((sum, i) => sum + deviations[i]!, 0) / members.length;
    const within = members.reduce((sum, i) => sum + (deviations[i]! - mean) ** 2, 0);
    return { energy: marks[members[0]!]!.energy, size: members.length, mean, within };
  });
  return groups.sort((left, right) => left.energy - right.energy);
}

function checkScatter(
  count: number,
  deviations: readonly number[],
  groups: readonly Group[],
  fit: AreaFit,
): { readonly ratio: number | null; readonly check?: Omit<FitCheck, 'passed'> } {
  const shown = (value: number) => String(Number(value.toPrecision(2)));
  if (fit.scatter === null) {
    const squares = deviations.reduce((sum, value) => sum + value ** 2, 0);
    const ratio = squares / fit.degreesOfFreedom;
    const text = `With the uncertainties given, χ² is ${shown(ratio)} for each of ${fit.degreesOfFreedom} degrees of freedom, where about 1 is due.`;
    return {
      ratio,
      check: { kind: 'scatter', probability: chiSquareTail(squares, fit.degreesOfFreedom), text },
    };
  }
  const between = groups.length - fit.parameters.length;
  const inside = count - groups.length;
  // Fewer than four repeats say too little of the scatter.
  if (between < 1 || inside < 4) return { ratio: null };
  const within = groups.reduce((sum, group) => sum + group.within, 0) / inside;
  const apart = groups.reduce((sum, { size, mean }) => sum + size * mean ** 2, 0) / between;
  const ratio = apart / (within + rounding);
  const text = `The marks lie off the model by ${shown(Math.sqrt(ratio))} times what the scatter among repeats explains (χ² ${shown(ratio)} for each of ${between} degrees of freedom, where about 1 is due).`;
  return { ratio, check: { kind: 'scatter', probability: fisherTail(ratio, between, inside), text } };
}

interface Runs {
  readonly count: number;
  readonly expected: number;
  readonly above: number;
  readonly below: number;
}

function countRuns(groups: readonly Group[]): Runs {
  const signs = groups.map(({ mean }) => mean > 0);
  const count = signs.filter((sign, i) => i === 0 || sign !== signs[i - 1]).length;
  const above = signs.filter(Boolean).length;
  const below = signs.length - above;
  return { count, expected: 1 + (2 * above * below) / (signs.length || 1), above, below };
}

function checkRuns({ count, expected, above, below }: Runs): Omit<FitCheck, 'passed'> {
  const probability = fewRunsProbability(count, above, below);
  const text = `Along the energy the marks change sides of the model in ${count} runs, where a random order gives ${expected.toPrecision(2)}.`;
  return { kind: 'runs', probability, text };
}
