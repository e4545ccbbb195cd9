import { kindOf } from '../graph/unitKinds.ts';
import { baseUnits, type Dimensions } from '../graph/unitScale.ts';
import { dimensionsOf, formatUnit } from '../graph/units.ts';
import {
  addFractions,
  type Fraction,
  fraction,
  fractionText,
  multiplyFractions,
  sameFraction,
} from './fraction.ts';

/**
 * Powers of the base units m, kg, s, A, K, mol, cd and rad in this order, as rational numbers: a square root halves them.
 * Radians are carried along to know an angle, but never tell two kinds apart: an angle is a pure number.
 */
export type UnitPowers = readonly Fraction[];

const angleAt = baseUnits.indexOf('rad');
/** Powers stay this simple, and so exact. */
const mostOver = 60;
const mostUnder = 60;

export const noPowers: UnitPowers = baseUnits.map(() => fraction(0));
export const anglePowers: UnitPowers = baseUnits.map((_, i) => fraction(i === angleAt ? 1 : 0));

/** Throws `impossible` for an unknown unit. */
export function powersOfUnit(unit: string): UnitPowers {
  const dimensions = dimensionsOf(unit);
  return baseUnits.map((base) => fraction(dimensions[base]));
}

/** Of a product, for `sign` −1 of a quotient. */
export function combinePowers(a: UnitPowers, b: UnitPowers, sign: 1 | -1): UnitPowers {
  return a.map((power, i) => addFractions(power, multiplyFractions(b[i]!, fraction(sign))));
}

export function raisePowers(powers: UnitPowers, exponent: Fraction): UnitPowers {
  return powers.map((power) => multiplyFractions(power, exponent));
}

/** False for powers such as 1/64 or 70, which no unit in use has on the way. */
export function areModest(powers: UnitPowers): boolean {
  return powers.every(({ over, under }) => Math.abs(over) <= mostOver && under <= mostUnder);
}

export function samePowers(a: UnitPowers, b: UnitPowers): boolean {
  return a.every((power, i) => i === angleAt || sameFraction(power, b[i]!));
}

export function isPure(powers: UnitPowers): boolean {
  return samePowers(powers, noPowers);
}

/** An angle is told as one alone or by time; in any other company radians are left out: an arc is a length. */
function withoutIdleAngle(powers: UnitPowers): UnitPowers {
  const others = powers.filter((_, i) => i !== angleAt);
  const seconds = powers[baseUnits.indexOf('s')]!;
  const alone =
    isPure(powers) ||
    (sameFraction(seconds, fraction(-1)) && others.filter(({ over }) => over !== 0).length === 1);
  const keeps = alone && sameFraction(powers[angleAt]!, fraction(1));
  return powers.map((power, i) => (i === angleAt && !keeps ? fraction(0) : power));
}

/**
 * The SI unit with these powers in plain spelling: `J/m^2`, `kg*m/s`, `1/m`; undefined where a power is no whole number
 * or above 9, which no unit text holds. Radians are left out where they tell nothing.
 */
export function unitTextOf(powers: UnitPowers): string | undefined {
  return exactUnitText(withoutIdleAngle(powers));
}

/** The same with all radians kept. */
export function exactUnitText(powers: UnitPowers): string | undefined {
  if (powers.some(({ over, under }) => under !== 1 || Math.abs(over) > 9)) return undefined;
  const dimensions = Object.fromEntries(baseUnits.map((base, i) => [base, powers[i]!.over])) as Dimensions;
  return kindOf(dimensions)?.unit ?? composedText(dimensions);
}

function composedText(dimensions: Dimensions): string {
  const factors = (sign: 1 | -1) =>
    baseUnits
      .filter((base) => dimensions[base] * sign > 0)
      .map((base) => (Math.abs(dimensions[base]) === 1 ? base : `${base}^${Math.abs(dimensions[base])}`));
  const [above, below] = [factors(1), factors(-1)];
  const divisor = below.length > 1 ? `(${below.join('*')})` : below.join('');
  return `${above.join('*') || '1'}${divisor === '' ? '' : `/${divisor}`}`;
}

/** What is measured, in words with its article: "a length", "a quantity in m·kg", "a quantity in m^(1/2)". */
export function kindWords(powers: UnitPowers): string {
  const text = unitTextOf(powers);
  const named = text === undefined ? undefined : kindOf(dimensionsOf(text));
  if (named) return named.name;
  return `a quantity in ${text === undefined ? fractionalText(powers) : formatUnit(text)}`;
}

function fractionalText(powers: UnitPowers): string {
  const factors = powers.flatMap((power, i) => {
    if (power.over === 0) return [];
    const whole = power.under === 1 && power.over > 0;
    const exponent = whole ? fractionText(power) : `(${fractionText(power)})`;
    return [exponent === '1' ? baseUnits[i]! : `${baseUnits[i]}^${exponent}`];
  });
  return factors.join('·');
}

/** The same without article, where kinds are named side by side: "length and fluence". */
export function bareKindWords(powers: UnitPowers): string {
  const words = kindWords(powers);
  return words.startsWith('a quantity in') ? words : words.replace(/^an? /, '');
}
