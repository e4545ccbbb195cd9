import { hasValue, type Outcome } from './outcome.ts';
import type {
  ChoiceInput,
  Constant,
  Derived,
  Entered,
  FileInput,
  Heaviness,
  ListInput,
  NumberInput,
  Quantity,
  Report,
  UnitOf,
  ValuesOf,
} from './quantity.ts';

type Without<T, K extends keyof T> = Omit<T, K>;

/** A number input; ranges in SI. */
export function number(definition: Without<NumberInput, 'kind'>): NumberInput {
  return Object.freeze({ kind: 'number', ...definition });
}

/** A choice input; `initial` is one of the keys of `options`. */
export function choice<const T extends string>(
  definition: Without<ChoiceInput<string>, 'kind' | 'unit' | 'initial' | 'options'> & {
    readonly initial: NoInfer<T>;
    readonly options: { readonly [K in T]: string };
  },
): ChoiceInput<T> {
  return Object.freeze({ kind: 'choice', unit: 'none', ...definition }) as unknown as ChoiceInput<T>;
}

/** A file input; what was read from the file is its value, without a unit where none is given. */
export function file<T>(
  definition: Without<FileInput<T>, 'kind' | 'unit' | 'initial'> & { readonly unit?: UnitOf<T> },
): FileInput<T> {
  return Object.freeze({ kind: 'file', unit: 'none', initial: null, ...definition }) as FileInput<T>;
}

/** A list input, empty at first; the unit of an item holds that of each of its inputs. */
export function list(definition: Without<ListInput, 'kind' | 'unit' | 'initial'>): ListInput {
  const unit = Object.fromEntries(definition.of.map((input) => [input.id, input.unit]));
  return Object.freeze({ kind: 'list', unit, initial: Object.freeze([]), ...definition }) as ListInput;
}

/** A constant with its unit and source. */
export function constant<T>(
  definition: Without<Constant<T>, 'kind' | 'unit'> & { unit: UnitOf<NoInfer<T>> },
): Constant<T> {
  return Object.freeze({ kind: 'constant', ...definition }) as Constant<T>;
}

interface DerivedDefinition<F, T> {
  readonly id: string;
  readonly name: string;
  readonly symbol: string;
  readonly unit: UnitOf<NoInfer<T>>;
  readonly about: string;
  readonly display?: string;
  readonly digits?: number;
  readonly zeroBelow?: number;
  readonly from: F;
  readonly compute: (values: ValuesOf<F>, report?: Report) => T;
  readonly formula: string;
  readonly source: string;
  readonly sourceFor?: (values: ValuesOf<F>) => string | undefined;
  readonly enteredFor?: (values: ValuesOf<F>) => Entered;
  readonly shownAs?: (value: NoInfer<T>) => string;
  readonly valid?: (values: ValuesOf<F>) => string | undefined;
  readonly heavy?: Heaviness;
  readonly assigns?: (value: NoInfer<T>) => Readonly<Record<string, unknown>>;
}

/** A derived quantity; values of `from` and the result are inferred. */
export function derived<const F extends Readonly<Record<string, Quantity>>, T>(
  definition: DerivedDefinition<F, T>,
): Derived<T> {
  return Object.freeze({ kind: 'derived', ...definition }) as unknown as Derived<T>;
}

/**
 * A quantity that takes the value of one of several others, as a choice says. Problems of those not chosen
 * do not count. Its `from` holds `choice` and one quantity an option.
 */
export function picked<const K extends string, T>(
  definition: Without<DerivedDefinition<never, T>, 'from' | 'compute' | 'valid' | 'unit' | 'source'> & {
    readonly unit: UnitOf<NoInfer<T>>;
    readonly by: ChoiceInput<K>;
    readonly cases: Readonly<Record<K, Quantity<T>>>;
  },
): Derived<T> {
  const { by, cases, ...rest } = definition;
  const picks = (outcomes: Readonly<Record<string, Outcome>>): Outcome => {
    const chosen = outcomes['choice']!;
    return 'problem' in chosen ? chosen : outcomes[chosen.value as string]!;
  };
  const from = { choice: by, ...(cases as Record<string, Quantity>) };
  const compute = () => {
    throw new Error('picked quantities are not computed');
  };
  const enteredFor = ({ choice }: Readonly<Record<string, unknown>>): Entered => ({
    keys: ['choice', choice as K],
    formula: cases[choice as K].symbol,
  });
  const more = { source: 'chosen', enteredFor };
  return Object.freeze({ kind: 'derived', ...rest, ...more, from, picks, compute }) as unknown as Derived<T>;
}

/**
 * A quantity that has the value of another, and null where that has none: for what is drawn beside something that does
 * not need it.
 */
export function ifThere<T>(
  definition: Without<
    DerivedDefinition<never, T>,
    'from' | 'compute' | 'valid' | 'unit' | 'source' | 'formula'
  > & {
    readonly unit: UnitOf<NoInfer<T>>;
    readonly of: Quantity<T>;
    /** While the other is being computed, so is this: for what would be said otherwise without it. */
    readonly waits?: boolean;
  },
): Derived<T | null> {
  const { of, waits = false, ...rest } = definition;
  const picks = ({ of: outcome }: Readonly<Record<string, Outcome>>): Outcome => {
    if (outcome === undefined) return { value: null };
    const coming = !hasValue(outcome) && outcome.problem.kind === 'waiting';
    return hasValue(outcome) || (waits && coming) ? outcome : { value: null };
  };
  const compute = () => {
    throw new Error('picked quantities are not computed');
  };
  const more = { source: 'chosen', formula: of.symbol };
  return Object.freeze({
    kind: 'derived',
    ...rest,
    ...more,
    from: { of },
    picks,
    compute,
  }) as unknown as Derived<T | null>;
}
