import { hasValue, type Outcome } from '../lib/graph/outcome.ts';
import type { Quantity } from '../lib/graph/quantity.ts';
import type { Requirement } from '../lib/graph/studies.ts';
import { typedText } from '../lib/graph/typedNumber.ts';
import { formatReadable } from '../lib/graph/units.ts';
import {
  canBeAsked,
  distanceBeyond,
  inUnitOf,
  judge,
  numberOf,
  type Verdict,
} from '../lib/studies/requirements.ts';
import { listed } from './shortTexts.ts';

/** A requirement held against the design: its bounds in the unit of its quantity, and the verdict. */
export interface Standing {
  readonly requirement: Requirement;
  /** Undefined where nothing of that id is known, or only what no number can be asked of. */
  readonly quantity: Quantity | undefined;
  readonly outcome: Outcome | undefined;
  readonly verdict: Verdict;
}

/** Holds a requirement against an outcome; what is `older` than the design says nothing about it. */
export function standingOf(
  requirement: Requirement,
  quantity: Quantity | undefined,
  outcome: Outcome | undefined,
  older = false,
): Standing {
  const own = inUnitOf(requirement, quantity);
  if (own === undefined)
    return { requirement, quantity: undefined, outcome: undefined, verdict: 'not known' };
  const counted = older ? undefined : outcome;
  return { requirement: own, quantity, outcome: counted, verdict: judge(own, counted) };
}

/** "at least 3 µm", "at most 5 µm", "from 3 µm to 5 µm", "3 µm exactly". */
export function boundsText({ atLeast, atMost, unit }: Requirement, quantity?: Quantity): string {
  const show = (bound: number) =>
    canBeAsked(quantity) ? typedText(quantity, bound) : formatReadable(bound, unit, unit, 12);
  if (atLeast === undefined) return `at most ${show(atMost!)}`;
  if (atMost === undefined) return `at least ${show(atLeast)}`;
  return atLeast === atMost ? `${show(atLeast)} exactly` : `from ${show(atLeast)} to ${show(atMost)}`;
}

/** How far a number is from the nearest bound, or why nobody knows. */
export function howFarText({ requirement, quantity, outcome }: Standing): string {
  if (!canBeAsked(quantity)) return 'no such number in this design';
  const value = numberOf(outcome);
  if (value === undefined) return whyNotKnown(outcome);
  const beyond = distanceBeyond(requirement, value);
  if (beyond === 0) return 'on the bound';
  const { unit, display = unit } = quantity;
  const distance = formatReadable(Math.abs(beyond), unit, display, 3);
  if (beyond < 0) return `${distance} to spare`;
  return `${distance} too ${value < (requirement.atLeast ?? -Infinity) ? 'little' : 'much'}`;
}

function whyNotKnown(outcome: Outcome | undefined): string {
  if (outcome === undefined) return 'still being worked out';
  if (hasValue(outcome)) return 'it is no single number';
  if (outcome.problem.kind === 'waiting') return 'still being worked out';
  if (outcome.problem.kind === 'stopped') return 'its computation was stopped';
  return withoutStop(outcome.problem.message);
}

/** Beside a number, for those who read by ear or point at it: "required: at most 3°, not met, 0.2° too much". */
export function markText(standing: Standing): string {
  const { requirement, quantity, verdict } = standing;
  return `required: ${boundsText(requirement, quantity)}, ${verdict}, ${howFarText(standing)}`;
}

/** A requirement in full: "Required: at most 3°, because the lens is long. Not met: 0.2° too much." */
export function requirementSaid(standing: Standing): string {
  const { requirement, quantity, outcome, verdict } = standing;
  const reason = withoutStop(requirement.reason);
  const why = reason === '' ? '' : /^because\b/i.test(reason) ? `, ${reason}` : `, because: ${reason}`;
  const note = outcome && hasValue(outcome) && outcome.note !== undefined ? ` But: ${outcome.note}` : '';
  return `Required: ${boundsText(requirement, quantity)}${why}. ${verdictWord(verdict)}: ${howFarText(standing)}.${note}`;
}

export function verdictWord(verdict: Verdict): string {
  return verdict.charAt(0).toUpperCase() + verdict.slice(1);
}

const withoutStop = (text: string) => text.replace(/\.$/, '');

/** How many of all requirements are met, the failed ones first. */
export function requirementsSaid(verdicts: readonly Verdict[]): string {
  const all = verdicts.length;
  if (all === 0) return 'Nothing is asked of the design yet.';
  const count = (verdict: Verdict) => verdicts.filter((one) => one === verdict).length;
  const [met, failed, unknown] = [count('met'), count('not met'), count('not known')];
  if (all === 1) return `The one requirement is ${verdicts[0]!}.`;
  if (met === all) return `All ${all} requirements are met.`;
  const told = [
    [failed, 'not met'],
    [unknown, 'not known'],
    [met, 'met'],
  ] as const;
  const parts = told
    .filter(([number]) => number > 0)
    .map(([number, words]) => `${number} ${number === 1 ? 'is' : 'are'} ${words}`);
  return `Of ${all} requirements ${listed(parts)}.`;
}

const ranks: Readonly<Record<Verdict, number>> = { 'not met': 0, 'not known': 1, met: 2 };

/** Failed ones first, then those that are not known, then those met; among equals as they were asked. */
export function failedFirst<T extends { readonly verdict: Verdict }>(standings: readonly T[]): T[] {
  return standings.toSorted((one, other) => ranks[one.verdict] - ranks[other.verdict]);
}

/** One verdict for many: not met where any is not, not known where of any it is not known. */
export function worstOf(verdicts: readonly Verdict[]): Verdict {
  return failedFirst(verdicts.map((verdict) => ({ verdict })))[0]?.verdict ?? 'met';
}

/** Designs of which something that is asked takes a longer computation. */
export function longWorkSaid(names: readonly string[]): string {
  const of = listed(names.map((name) => `‘${name}’`));
  return `Something that is asked takes a longer computation for ${of}.`;
}
