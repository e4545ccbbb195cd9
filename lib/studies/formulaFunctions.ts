/** How the units of arguments and result belong together. */
export type UnitRule =
  /** Pure numbers in, a pure number out. */
  | 'pure'
  /** A pure number in, an angle out. */
  | 'toAngle'
  /** All arguments of one kind, the result as well. */
  | 'same'
  /** Two arguments of one kind, an angle out. */
  | 'direction'
  /** Powers halve, or become a third. */
  | 'half'
  | 'third'
  /** A comparison, and two values of one kind. */
  | 'choice';

/** A function that formulas may use. */
export interface FormulaFunction {
  readonly units: UnitRule;
  /** Fewest and most arguments. */
  readonly takes: readonly [fewest: number, most: number];
  /** The value for numbers in SI; a missing one for what is not defined there. */
  value(...args: readonly number[]): number;
  /** What the function cannot take, in words; undefined where it can. */
  refuses?(x: number): string | undefined;
}

const one = [1, 1] as const;
const two = [2, 2] as const;
/** The text limits them: two and more. */
const several = [2, 100] as const;

const notNegative = (x: number) =>
  x < 0 ? 'the square root of a negative number does not exist' : undefined;
const aboveZero = (x: number) =>
  x > 0 ? undefined : `the logarithm of ${x < 0 ? 'a negative number' : '0'} does not exist`;
const withinOne = (x: number) => (Math.abs(x) > 1 ? 'it needs a value from −1 to 1' : undefined);

/** The closed set of functions; `if` chooses between two values and is worked out by the evaluator. */
export const formulaFunctions: ReadonlyMap<string, FormulaFunction> = new Map<string, FormulaFunction>([
  ['sqrt', { units: 'half', takes: one, value: Math.sqrt, refuses: notNegative }],
  ['cbrt', { units: 'third', takes: one, value: Math.cbrt }],
  ['abs', { units: 'same', takes: one, value: Math.abs }],
  ['exp', { units: 'pure', takes: one, value: Math.exp }],
  ['ln', { units: 'pure', takes: one, value: Math.log, refuses: aboveZero }],
  ['log10', { units: 'pure', takes: one, value: Math.log10, refuses: aboveZero }],
  ['sin', { units: 'pure', takes: one, value: Math.sin }],
  ['cos', { units: 'pure', takes: one, value: Math.cos }],
  ['tan', { units: 'pure', takes: one, value: Math.tan }],
  ['asin', { units: 'toAngle', takes: one, value: Math.asin, refuses: withinOne }],
  ['acos', { units: 'toAngle', takes: one, value: Math.acos, refuses: withinOne }],
  ['atan', { units: 'toAngle', takes: one, value: Math.atan }],
  ['atan2', { units: 'direction', takes: two, value: Math.atan2 }],
  ['min', { units: 'same', takes: several, value: Math.min }],
  ['max', { units: 'same', takes: several, value: Math.max }],
  ['hypot', { units: 'same', takes: several, value: Math.hypot }],
  ['round', { units: 'pure', takes: one, value: Math.round }],
  ['floor', { units: 'pure', takes: one, value: Math.floor }],
  ['ceil', { units: 'pure', takes: one, value: Math.ceil }],
  ['if', { units: 'choice', takes: [3, 3], value: (condition, yes, no) => (condition ? yes! : no!) }],
]);

/** Names that stand for a number. */
export const formulaConstants: ReadonlyMap<string, number> = new Map([
  ['pi', Math.PI],
  ['e', Math.E],
]);
