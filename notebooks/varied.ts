import type { Outcome } from '../lib/graph/outcome.ts';
import { hasValue } from '../lib/graph/outcome.ts';
import type { Derived, NumberInput, Quantity } from '../lib/graph/quantity.ts';
import { shownValue } from '../lib/graph/shown.ts';
import type { Patch } from '../lib/graph/state.ts';
import { readableUnit, toUnit } from '../lib/graph/units.ts';
import type { VariedResult } from '../lib/studies/vary.ts';
import type { VaryAxis, VaryPlan } from './varyForm.ts';

/** Results over one or two inputs, and today's design beside them. */
export interface Varied {
  readonly plan: VaryPlan;
  /** In the order of the results; the first axis moves fastest. */
  readonly columns: readonly VariedResult[];
  readonly inputs: Patch;
  readonly today: Readonly<Record<string, Outcome>>;
}

/** A unit with the way into it. */
export interface ChartUnit {
  readonly unit: string;
  of(value: number | undefined): number;
}

/** The unit in which a quantity is shown where its largest value is among these. */
export function chartUnit(quantity: Quantity, values: readonly (number | undefined)[]): ChartUnit {
  const si = typeof quantity.unit === 'string' ? quantity.unit : '1';
  const largest = values.reduce<number>((most, value) => Math.max(most, Math.abs(value ?? 0)), 0);
  const unit = readableUnit(largest, si, quantity.display ?? si);
  return { unit, of: (value) => (value === undefined ? Number.NaN : toUnit(value, si, unit)) };
}

/** Today's value of a result; undefined where it has none. */
export function todayOf({ today }: Varied, { id }: Derived<number>): number | undefined {
  const outcome = today[id];
  return outcome && hasValue(outcome) && typeof outcome.value === 'number' ? outcome.value : undefined;
}

/** A value of an axis as text: "100 mm", or the words of a choice. */
export function placeText({ input }: VaryAxis, value: unknown): string {
  return shownValue(input, { value });
}

/** Whether today's value lies on an axis. */
export function holdsToday({ input, values }: VaryAxis, inputs: Patch): boolean {
  const today = inputs[input.id];
  if (input.kind === 'choice') return values.includes(today);
  const numbers = values as readonly number[];
  return (today as number) >= numbers[0]! && (today as number) <= numbers.at(-1)!;
}

/** The axis where it is one of numbers. */
export function numberAxis(
  axis: VaryAxis | undefined,
): { input: NumberInput; values: readonly number[] } | undefined {
  if (axis?.input.kind !== 'number') return undefined;
  return { input: axis.input, values: axis.values as readonly number[] };
}
