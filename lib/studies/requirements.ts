import { longestNote, oneLine } from '../design/ownParts.ts';
import { mostRequirements } from '../design/savedStudies.ts';
import { hasValue, type Outcome } from '../graph/outcome.ts';
import type { Derived, NumberInput, Quantity } from '../graph/quantity.ts';
import type { DesignState } from '../graph/state.ts';
import { noStudies, type Requirement } from '../graph/studies.ts';
import { sameDimensions } from '../graph/unitScale.ts';
import { dimensionsOf, formatReadable, fromUnit, isKnownUnit } from '../graph/units.ts';
import { Problem } from '../problem.ts';

type Design = Omit<DesignState, 'revision'>;

/** How a number stands to what is asked of it. */
export type Verdict = 'met' | 'not met' | 'not known';

/** A quantity whose value is, or can be, a single number. */
export type NumberQuantity = NumberInput | Derived<number>;

/** Bounds are typed in decimal units and values worked out in binary ones: so far beyond a bound is still on it. */
const dust = 1e-9;

/** Whether a bound can be put to a quantity: it has a unit, and is no file, no choice and no list. */
export function canBeAsked(quantity: Quantity | undefined): quantity is NumberQuantity {
  const kind = quantity?.kind;
  return (kind === 'number' || kind === 'derived') && isNumberUnit(quantity!.unit);
}

const isNumberUnit = (unit: unknown) => typeof unit === 'string' && unit !== 'none';

/**
 * Whether a number is as it is required to be. Not known: a quantity without outcome, such as one that nobody knows, one
 * with a problem, and one that is no single number. A value beyond the validity of its model is judged all the same.
 */
export function judge(requirement: Requirement, outcome: Outcome | undefined): Verdict {
  const value = numberOf(outcome);
  if (value === undefined) return 'not known';
  return distanceBeyond(requirement, value) > 0 ? 'not met' : 'met';
}

/** The number of an outcome; undefined where it has none. */
export function numberOf(outcome: Outcome | undefined): number | undefined {
  const value = outcome && hasValue(outcome) ? outcome.value : undefined;
  return typeof value === 'number' ? value : undefined;
}

/**
 * How far a value lies beyond the nearest bound, in the unit of the requirement: above 0 where it is not met, else what
 * is to spare, below 0, and 0 on a bound.
 */
export function distanceBeyond({ atLeast, atMost }: Requirement, value: number): number {
  const below = atLeast === undefined ? -Infinity : settled(atLeast - value, atLeast);
  const above = atMost === undefined ? -Infinity : settled(value - atMost, atMost);
  return Math.max(below, above);
}

function settled(distance: number, bound: number): number {
  return Math.abs(distance) <= dust * Math.abs(bound) ? 0 : distance;
}

export const requirementsOf = ({ studies = noStudies }: Design): readonly Requirement[] =>
  studies.requirements;

/** What is asked of the quantity of that id; undefined where nothing is. */
export function requirementOf(design: Design, id: string): Requirement | undefined {
  return requirementsOf(design).find((one) => one.id === id);
}

/**
 * The requirement with its bounds in the unit of the quantity: one of a person's own may have been read before its line.
 * Undefined where the quantity is not there, is no number, or has become one of another kind.
 */
export function inUnitOf(requirement: Requirement, quantity: Quantity | undefined): Requirement | undefined {
  if (!canBeAsked(quantity)) return undefined;
  const { unit } = quantity;
  if (unit === requirement.unit) return requirement;
  if (!isKnownUnit(requirement.unit)) return undefined;
  if (!sameDimensions(dimensionsOf(unit), dimensionsOf(requirement.unit))) return undefined;
  const { id, atLeast, atMost, reason } = requirement;
  const inUnit = (bound: number) => fromUnit(bound, unit, requirement.unit);
  return {
    id,
    unit,
    ...(atLeast === undefined ? {} : { atLeast: inUnit(atLeast) }),
    ...(atMost === undefined ? {} : { atMost: inUnit(atMost) }),
    reason,
  };
}

/** What is asked of a number, as a person gives it: bounds in SI. */
export type Asked = Pick<Requirement, 'atLeast' | 'atMost' | 'reason'>;

/**
 * The design with bounds asked of a quantity, in place of those it had. A Problem where there is no bound, one is no
 * finite number, they are the wrong way round, the reason is too long, or no more fit.
 */
export function withRequirement(design: Design, quantity: Quantity, asked: Asked): Design {
  if (!canBeAsked(quantity))
    throw new Problem('impossible', `Of ${quantity.name} nothing can be asked: it is no number.`, {
      input: quantity.id,
    });
  checkBounds(quantity, asked);
  const { atLeast, atMost, reason } = asked;
  const made: Requirement = {
    id: quantity.id,
    unit: quantity.unit,
    ...(atLeast === undefined ? {} : { atLeast }),
    ...(atMost === undefined ? {} : { atMost }),
    reason: oneLine(reason, 'reason', longestNote, false),
  };
  const before = requirementsOf(design);
  const place = before.findIndex(({ id }) => id === quantity.id);
  if (place < 0 && before.length >= mostRequirements)
    throw new Problem(
      'impossible',
      `${mostRequirements} requirements are kept, and no more fit. Take one out first.`,
      { allowed: `up to ${mostRequirements}` },
    );
  // Of a file that asks twice of one number only the first counts, and the other ends here.
  const others = before.filter(({ id }) => id !== quantity.id);
  return withAll(design, others.toSpliced(place < 0 ? others.length : place, 0, made));
}

/** The design with nothing asked of the quantity of that id. */
export function withoutRequirement(design: Design, id: string): Design {
  return withAll(
    design,
    requirementsOf(design).filter((one) => one.id !== id),
  );
}

function withAll(design: Design, requirements: readonly Requirement[]): Design {
  return { ...design, studies: { ...(design.studies ?? noStudies), requirements } };
}

function checkBounds({ id, name, unit, display = unit }: NumberQuantity, { atLeast, atMost }: Asked): void {
  if (atLeast === undefined && atMost === undefined)
    throw new Problem('unreadable', `Give a least or a greatest value for ${name}, or both.`, { input: id });
  for (const bound of [atLeast, atMost])
    if (bound !== undefined && !Number.isFinite(bound))
      throw new Problem('unreadable', `What is asked of ${name} needs a number.`, { input: id });
  if (atLeast === undefined || atMost === undefined || atLeast <= atMost) return;
  const [low, high] = [atLeast, atMost].map((bound) => formatReadable(bound, unit, display, 12));
  throw new Problem(
    'impossible',
    `${name} cannot be at least ${low} and at most ${high} at once; the least value must not be above the greatest.`,
    { input: id, value: `${low} to ${high}`, allowed: 'the lower one first' },
  );
}
