import { Problem } from '../problem.ts';
import type { FitVerdict } from './fitVerdict.ts';
import type { Mark } from './marks.ts';
import type { SpotMark } from './spotMark.ts';

/** A measured mark of a coupon, with the diameter of its unmarked centre where one was seen, m. */
export interface CouponMark extends SpotMark {
  readonly innerDiameter?: number;
}

/** What the fit of a predicted profile to the marks of one plane says. */
export interface PlaneFit extends Pick<FitVerdict, 'verdict' | 'reason'> {
  /** Peak fluence at the threshold and its standard uncertainty, J/m². */
  readonly thresholdFluence: number;
  readonly uncertainties: { readonly thresholdFluence: number };
}

/** Whether the marks of one plane, made with one number of pulses, are those of the predicted profile. */
export interface PlaneVerdict {
  readonly z: number;
  readonly pulses: number;
  /** Marks, and places where none was seen. */
  readonly seen: number;
  readonly unmarked: number;
  readonly verdict: 'confirmed' | 'not confirmed' | 'undecided';
  /** Why, a sentence each. */
  readonly reasons: readonly string[];
  /** Threshold that the predicted profile asks for here, J/m²; null where it cannot be told. */
  readonly threshold: { readonly value: number; readonly uncertainty: number } | null;
}

/** Asks the process for what the verdicts rest on. */
export interface PlaneQuestions {
  /** Fits the profile predicted at z to marks of that plane; may throw a Problem, which leaves the plane undecided. */
  fitPlane(marks: readonly CouponMark[], z: number): PlaneFit;
  /** The mark predicted for that energy and plane at a threshold, J/m². */
  predict(energy: number, z: number, threshold: number): Mark;
}

/**
 * Thresholds apart by more than this many standard uncertainties are another one: in 15 planes chance does that in 1 of
 * 140 coupons, with uncertainties as well known as from some 30 marks.
 */
const apart = 4;
/** Fewer marks than this against the prediction may be dust. */
const fewestHollow = 2;
/** An unmarked centre of less than this part of the mark is easily missed, or taken for one, under a microscope. */
const clearlyHollow = 0.15;

/**
 * A verdict for each plane and number of pulses, ascending. The predicted profile is confirmed where it describes the areas,
 * with a threshold that the other planes of as many pulses ask for too, and where marks are hollow as predicted. Which of
 * two planes that disagree is wrong cannot be told: both say so.
 */
export function judgePlanes(marks: readonly CouponMark[], questions: PlaneQuestions): PlaneVerdict[] {
  const looked = marks.some(({ innerDiameter }) => innerDiameter !== undefined);
  const planes = groupsOf(marks).map((group) => ({ group, ...fitOrReason(group, questions) }));
  return planes.map(({ group, fit, why }) => {
    const [{ z, pulses }] = group as [CouponMark];
    const seen = group.filter(({ area }) => area > 0).length;
    const counts = { z, pulses, seen, unmarked: group.length - seen };
    if (!fit) return { ...counts, verdict: 'undecided', reasons: [why], threshold: null };
    const hollow = judgeHollow(group, fit, looked, questions);
    const others = planes.filter(
      (other) => other.fit && other.fit !== fit && other.group[0]!.pulses === pulses,
    );
    const against = [
      fit.verdict === 'does not describe' ? fit.reason : undefined,
      thresholdReason(
        fit,
        others.map((other) => other.fit!),
      ),
      hollow.against,
    ].filter((reason) => reason !== undefined);
    const threshold = { value: fit.thresholdFluence, uncertainty: fit.uncertainties.thresholdFluence };
    if (against.length > 0) return { ...counts, verdict: 'not confirmed', reasons: against, threshold };
    const verdict = fit.verdict === 'too few' ? 'undecided' : 'confirmed';
    return {
      ...counts,
      verdict,
      reasons: [fit.reason, hollow.note].filter((reason) => reason !== ''),
      threshold,
    };
  });
}

/** Marks of one plane and number of pulses together, ascending in z, then in pulses. */
function groupsOf(marks: readonly CouponMark[]): CouponMark[][] {
  const groups = new Map<string, CouponMark[]>();
  for (const mark of marks) {
    const key = `${mark.z} ${mark.pulses}`;
    groups.set(key, [...(groups.get(key) ?? []), mark]);
  }
  const all = [...groups.values()] as [CouponMark, ...CouponMark[]][];
  return all.sort(([a], [b]) => a.z - b.z || a.pulses - b.pulses);
}

function fitOrReason(
  group: readonly CouponMark[],
  { fitPlane }: PlaneQuestions,
): { fit?: PlaneFit; why: string } {
  try {
    return { fit: fitPlane(group, group[0]!.z), why: '' };
  } catch (error) {
    if (error instanceof Problem) return { why: error.message };
    throw error;
  }
}

/** What this plane’s threshold against the weighted mean of the others’ says, on logarithms. */
function thresholdReason(fit: PlaneFit, others: readonly PlaneFit[]): string | undefined {
  if (others.length === 0) return undefined;
  const relative = (one: PlaneFit) => one.uncertainties.thresholdFluence / one.thresholdFluence;
  // A threshold known exactly, as from calculated marks, would count alone.
  const weight = (one: PlaneFit) => 1 / Math.max(1e-6, relative(one)) ** 2;
  const weights = others.reduce((sum, one) => sum + weight(one), 0);
  const mean = others.reduce((sum, one) => sum + weight(one) * Math.log(one.thresholdFluence), 0) / weights;
  const difference = Math.log(fit.thresholdFluence) - mean;
  const uncertainty = Math.sqrt(1 / weight(fit) + 1 / weights);
  if (Math.abs(difference) <= apart * uncertainty) return undefined;
  const factor = Math.exp(Math.abs(difference)).toPrecision(3);
  const [side, size] = difference > 0 ? ['higher', 'smaller'] : ['lower', 'larger'];
  return `The threshold it asks for is ${factor} times ${side} than that of the other planes, ${(Math.abs(difference) / uncertainty).toPrecision(2)} standard uncertainties: the marks here are ${size} than predicted.`;
}

/** Marks that are hollow where none should be, or full where they should be hollow; a note where nobody looked. */
function judgeHollow(
  group: readonly CouponMark[],
  fit: PlaneFit,
  looked: boolean,
  { predict }: PlaneQuestions,
): { readonly against?: string; readonly note: string } {
  const marked = group.filter(({ area }) => area > 0);
  const states = marked.map((mark) => {
    const { innerDiameter, outerDiameter } = predict(mark.energy, mark.z, fit.thresholdFluence);
    return {
      expected: innerDiameter > clearlyHollow * outerDiameter,
      possible: innerDiameter > 0,
      found: (mark.innerDiameter ?? 0) > clearlyHollow * Math.sqrt((4 * mark.area) / Math.PI),
    };
  });
  const wrongly = states.filter(({ possible, found }) => found && !possible).length;
  if (wrongly >= fewestHollow) {
    const against = `${wrongly} of ${marked.length} marks have an unmarked centre where none is predicted: the dip is deeper than predicted here.`;
    return { against, note: '' };
  }
  const missed = states.filter(({ expected, found }) => expected && !found).length;
  if (missed < fewestHollow) return { note: '' };
  if (looked) {
    const against = `${missed} of ${marked.length} marks have no unmarked centre where one is predicted: the dip is shallower than predicted here.`;
    return { against, note: '' };
  }
  return {
    note: `${missed} marks should have an unmarked centre, and the table gives no inner diameter: look for it.`,
  };
}
