import { hasValue, type Outcome } from './outcome.ts';

/**
 * The unit of a value mirrors the value: a number has a unit text ('m', 'J/m^2', '1'), a structure a unit a field,
 * an array the unit of its elements. 'none' marks what is not a number or does not scale: names, images, kernels.
 */
export type UnitOf<T> = T extends number
  ? string
  : T extends string | boolean | null | undefined
    ? 'none'
    : T extends Float64Array
      ? string
      : T extends readonly (infer E)[]
        ? UnitOf<E> | 'none'
        : { readonly [K in keyof T]: UnitOf<T[K]> } | 'none';

/** What every quantity says about itself. */
interface Described<T> {
  /** Dotted and public: `plate.stepDiameter`. Never changes once committed. */
  readonly id: string;
  /** Short name in words, as a label: "step diameter". */
  readonly name: string;
  /** TeX of the symbol, e.g. `w_0`. */
  readonly symbol: string;
  readonly unit: UnitOf<T>;
  /** Meaning and convention (1/e² radius or diameter, peak or mean, per pulse), one or two sentences. */
  readonly about: string;
  /** Unit it is shown in; the SI unit when left out. `auto:m` picks a prefix. */
  readonly display?: string;
  /** Significant digits shown, 4 when left out. */
  readonly digits?: number;
  /** A few words in place of a value that is no single number. */
  shownAs?(value: NonNullable<T>): string;
  /**
   * Sizes below this are shown as 0: what cancels to less than the arithmetic holds, or lies beneath any use. The
   * value itself is kept.
   */
  readonly zeroBelow?: number;
}

/** Allowed values of a number, SI. Ends belong to the range unless `above` is set. */
export interface Range {
  readonly min: number;
  readonly max: number;
  /** True: the value must lie above `min`, not on it. */
  readonly above?: boolean;
  /** One value between the ends that is not allowed: a focal length of 0. */
  readonly except?: number;
}

/** A number that a person can hold or read off. */
export interface NumberInput extends Described<number> {
  readonly kind: 'number';
  readonly initial: number;
  readonly range: Range;
  /** Where a slider makes sense: the usual span. */
  readonly typical?: readonly [number, number];
  /** A whole number, else rounded: what is typed, stepped or slid to is one; the ends of range and span are. */
  readonly whole?: boolean;
}

/** One of a few named ways. */
export interface ChoiceInput<T extends string = string> extends Described<T> {
  readonly kind: 'choice';
  readonly initial: T;
  /** Each way with its words for the person. */
  readonly options: Readonly<Record<T, string>>;
}

/** Something read from a file, or null while there is none. */
export interface FileInput<T = unknown> extends Described<T | null> {
  readonly kind: 'file';
  readonly initial: null;
}

/** Several of what a few inputs describe together, such as a file with the place it was measured in; none at first. */
export interface ListInput extends Described<readonly ListItem[]> {
  readonly kind: 'list';
  readonly initial: readonly ListItem[];
  /** Every item has a value for each of these, checked as if it were set alone; a file is never missing. */
  readonly of: readonly (NumberInput | ChoiceInput<string> | FileInput)[];
  /** As many items fit. */
  readonly most: number;
}

/** Values in SI by the id of their input. */
export type ListItem = Readonly<Record<string, unknown>>;

/** A fixed value of nature or of a convention, with its unit. */
export interface Constant<T = unknown> extends Described<T> {
  readonly kind: 'constant';
  readonly value: T;
  readonly source: string;
}

/** What a result was worked out from, for the values as they are. */
export interface Entered {
  /** Keys of `from` that entered; all of them where left out. */
  readonly keys?: readonly string[];
  /** TeX of the right-hand side for these values, where it is another one. */
  readonly formula?: string;
  /** Numbers out of a table that entered: TeX of the symbol, and the number with its unit. */
  readonly table?: readonly (readonly [symbol: string, shown: string])[];
}

/** Work of a few frames at most, as for a picture, or a search of many; a search must not keep a picture waiting. */
export type Heaviness = 'picture' | 'search';

/** Told in the middle of long work: the part of it that is done, 0…1, never less than before. */
export type Report = (part: number) => void;

/**
 * A value that follows from others. `compute` is pure and synchronous; it may throw a Problem. `report` only listens:
 * with it or without, the value is the same.
 */
export interface Derived<T = unknown> extends Described<T> {
  readonly kind: 'derived';
  readonly from: Readonly<Record<string, Quantity>>;
  compute(values: Readonly<Record<string, unknown>>, report?: Report): T;
  /** Set instead of `compute` reading values: gets the outcomes, problems included, and passes one on. */
  readonly picks?: (outcomes: Readonly<Record<string, Outcome>>) => Outcome;
  /** TeX of the right-hand side, with the symbols of what goes in. */
  readonly formula: string;
  /** Key into the bibliography, or one of the words for what is unpublished. */
  readonly source: string;
  /** What entered for these values, where not everything does. */
  enteredFor?(values: Readonly<Record<string, unknown>>): Entered;
  /** Key of the source for these values where it depends on them; undefined where the value was typed. */
  sourceFor?(values: Readonly<Record<string, unknown>>): string | undefined;
  /** A note beside the result where the model no longer holds; undefined where it does. */
  valid?(values: Readonly<Record<string, unknown>>): string | undefined;
  /** Where computing takes longer than a frame may. */
  readonly heavy?: Heaviness;
  /** Where a person may set it all the same: the inputs to set instead. */
  assigns?(value: T): Readonly<Record<string, unknown>>;
}

export type InputQuantity = NumberInput | ChoiceInput | FileInput | ListInput;
// biome-ignore lint/suspicious/noExplicitAny: a quantity of any value; method members keep Derived<number> assignable
export type Quantity<T = any> = InputQuantity | Constant<T> | Derived<T>;

/** Value that a quantity holds. */
export type ValueOf<Q> = Q extends NumberInput
  ? number
  : Q extends ChoiceInput<infer T>
    ? T
    : Q extends FileInput<infer T>
      ? T | null
      : Q extends ListInput
        ? readonly ListItem[]
        : Q extends Constant<infer T>
          ? T
          : Q extends Derived<infer T>
            ? T
            : never;

/** Values of a record of quantities. */
export type ValuesOf<F> = { readonly [K in keyof F]: ValueOf<F[K]> };

export function isInput(quantity: Quantity): quantity is InputQuantity {
  return quantity.kind !== 'constant' && quantity.kind !== 'derived';
}

/** Key of the source of a result as the design stands; undefined where the value was typed. */
export function sourceOf(quantity: Derived, outcomeOf: (quantity: Quantity) => Outcome): string | undefined {
  if (!quantity.sourceFor) return quantity.source;
  const values: Record<string, unknown> = {};
  for (const [key, other] of Object.entries(quantity.from)) {
    const outcome = outcomeOf(other);
    if (!hasValue(outcome)) return quantity.source;
    values[key] = outcome.value;
  }
  return quantity.sourceFor(values);
}

/** What a result was worked out from as the design stands: `enteredFor` gets the values that there are. */
export function enteredIn(quantity: Derived, outcomeOf: (quantity: Quantity) => Outcome): Entered {
  if (!quantity.enteredFor) return {};
  const values: Record<string, unknown> = {};
  for (const [key, other] of Object.entries(quantity.from)) {
    const outcome = outcomeOf(other);
    if (hasValue(outcome)) values[key] = outcome.value;
  }
  return quantity.enteredFor(values);
}
