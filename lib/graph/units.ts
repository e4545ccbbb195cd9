import { Problem } from '../problem.ts';
import { beyondReach, noNumber, unknownUnit, wrongKind } from './unitKinds.ts';
import { type Dimensions, readUnitScale, sameDimensions, type UnitScale } from './unitScale.ts';
import { normaliseQuantityText, splitQuantityText, superscript } from './unitText.ts';

/** Between number and unit: narrow no-break space. */
const gap = '\u202f';
/** SI prefixes by their power of ten, for `auto:` units. */
const prefixes: readonly (readonly [power: number, prefix: string])[] = [
  [12, 'T'],
  [9, 'G'],
  [6, 'M'],
  [3, 'k'],
  [0, ''],
  [-3, 'm'],
  [-6, 'u'],
  [-9, 'n'],
  [-12, 'p'],
  [-15, 'f'],
  [-18, 'a'],
];
/** Numbers from here on, or below 1e-3, are written with a power of ten. */
const plainBelow = 1e6;
const plainFrom = 1e-3;

/** True for every unit that can be typed, declared or shown here, `'1'`, `''`, `'none'` and `auto:m` included. */
export function isKnownUnit(unit: string): boolean {
  return readUnitScale(declared(unit)) !== undefined;
}

/**
 * Exponents of the base units (m, kg, s, A, K, mol, cd, rad). Counts such as pulses, pixels and revolutions, `'1'`
 * and `'none'` (not a number) have none. Throws `impossible` for an unknown unit.
 */
export function dimensionsOf(unit: string): Dimensions {
  return scaleOf(unit).dimensions;
}

/**
 * Reads a typed quantity and gives its value in `unit` (an SI unit): "1,03 µm" → 1.03e-6 for 'm', "5 %" → 0.05 for
 * '1', "0.5 waves", "180°" and "π" → 3.14… for 'rad'. A number without unit is taken in `bare`, by default `unit`.
 * A single comma or point is the decimal mark, so "1,234 mm" is 1.234 mm (see `splitQuantityText` for the rules).
 * `examples` are texts that belong here, "1030 nm or 1.03 µm"; without them a Problem gives those of the kind.
 * Throws `unreadable` for text that is no quantity, `impossible` for another kind of quantity or beyond 1e±308.
 */
export function parseQuantity(
  text: string,
  unit: string,
  { bare = unit, examples }: { readonly bare?: string; readonly examples?: string } = {},
): number {
  const target = scaleOf(unit);
  const place = { target, examples };
  const { number, unit: typed } = splitQuantityText(text);
  const [, numerator, divisor] = /^(pi) ?\/ ?(\d{1,3})$/.exec(typed) ?? [];
  const name = numerator ?? typed;
  if (!number && name !== 'pi') throw noNumber(text, place);
  const scale = name === '' ? scaleOf(bare) : readUnitScale(name);
  if (!scale) throw unknownUnit(text, name, place);
  if (!sameDimensions(scale.dimensions, target.dimensions)) throw wrongKind(text, name, scale, place);
  const { mantissa, exponent } = number ?? { mantissa: '1', exponent: 0 };
  const shifted = Number(`${mantissa}e${exponent + scale.tens - target.tens}`);
  const value = (shifted * (scale.factor / target.factor)) / Number(divisor ?? 1);
  if (!Number.isFinite(value)) throw beyondReach(text, 'large');
  if (value === 0 && /[1-9]/.test(mantissa)) throw beyondReach(text, 'small');
  return value === 0 ? 0 : value;
}

/** Converts a value in `siUnit` to `displayUnit`, exact for powers of ten (2.5e-13 s is 250 fs). */
export function toUnit(value: number, siUnit: string, displayUnit: string): number {
  return convert(value, siUnit, displayUnit);
}

/** Converts a value in `displayUnit` back to `siUnit`. */
export function fromUnit(value: number, siUnit: string, displayUnit: string): number {
  return convert(value, displayUnit, siUnit);
}

function convert(value: number, from: string, to: string): number {
  const source = scaleOf(from);
  const target = scaleOf(to);
  if (!sameDimensions(source.dimensions, target.dimensions)) {
    throw new Problem(
      'impossible',
      `A value in '${from}' cannot be shown in '${to}'; choose a unit of the same kind.`,
    );
  }
  if (!Number.isFinite(value)) return value;
  const [mantissa, exponent = '0'] = String(value).split('e');
  const shifted = Number(`${mantissa}e${Number(exponent) + source.tens - target.tens}`);
  return shifted * (source.factor / target.factor);
}

/** The unit behind a declaration: `auto:m` stands for m with a prefix. */
function declared(unit: string): string {
  return normaliseQuantityText(unit.startsWith('auto:') ? unit.slice(5) : unit);
}

function scaleOf(unit: string): UnitScale {
  const scale = readUnitScale(declared(unit));
  if (!scale) {
    throw new Problem(
      'impossible',
      `The unit '${unit.slice(0, 40)}' is not known; use one such as mm, µJ or J/cm².`,
    );
  }
  return scale;
}

/**
 * A value in `siUnit` as text in `displayUnit`: "131.2 µm", "0.07 J/cm²", "−5 %", "3.2 × 10⁻⁷ m". Rounded to
 * `digits` significant digits first, trailing zeros dropped, minus sign U+2212, U+202F before the unit (none before
 * °). `auto:m` (m, s, J, W, Hz) picks the SI prefix for 1 ≤ |x| < 1000, minutes or hours for times from 1000 s on. Infinity is shown as ∞; NaN throws
 * `impossible`, as do units that do not fit. `auto:m^2` and `auto:m^3` do the same with 1e6 and 1e9 between prefixes.
 */
export function formatQuantity(value: number, siUnit: string, displayUnit: string, digits = 4): string {
  const unit = displayUnit.startsWith('auto:')
    ? prefixedUnit(value, siUnit, displayUnit.slice(5), digits)
    : displayUnit;
  return withUnit(formatNumber(toUnit(value, siUnit, unit), digits), unit);
}

/** A number that is text already, with its unit behind it: U+202F between, none before °, "1 wave" but "2 waves". */
export function withUnit(number: string, unit: string): string {
  const name = number === '1' && /^[a-z]{2,}[^s]s$/.test(unit) ? unit.slice(0, -1) : formatUnit(unit);
  return name === '' ? number : name === '°' ? number + name : number + gap + name;
}

/** Units that take an SI prefix, and so may stand behind `auto:`; that of a power of metres counts as often. */
export const prefixed: readonly string[] = ['m', 's', 'J', 'W', 'Hz', 'm^2', 'm^3'];

/**
 * Like {@link formatQuantity}, but where the number would be 10 000 or more, or below 0.01, the unit is changed for one
 * with another prefix as far as it takes any: 5 mm, not 5 × 10⁶ nm.
 */
export function formatReadable(value: number, siUnit: string, displayUnit: string, digits = 4): string {
  return formatQuantity(value, siUnit, readableUnit(value, siUnit, displayUnit, digits), digits);
}

/** The unit in which {@link formatReadable} shows a value, to show others beside it in the same; never `auto:`. */
export function readableUnit(value: number, siUnit: string, displayUnit: string, digits = 4): string {
  const size = Math.abs(toUnit(value, siUnit, displayUnit));
  const isAuto = displayUnit.startsWith('auto:');
  const plain = size === 0 || (size >= 0.01 && size < 1e4) || !prefixed.includes(siUnit);
  if (plain && !isAuto) return displayUnit;
  return prefixedUnit(value, siUnit, plain ? displayUnit.slice('auto:'.length) : siUnit, digits);
}

/** A number to `digits` significant digits, trailing zeros dropped: 0.07, −131.2, 3.2 × 10⁻⁷, 0, ∞. */
export function formatNumber(value: number, digits = 4): string {
  if (Number.isNaN(value))
    throw new Problem('impossible', 'This result is not a number and cannot be shown.');
  const size = Math.abs(value);
  // Twelve digits first: a tie such as 96.75 must not be decided by the last bit, which processors differ in.
  const rounded = Number(Number(size.toPrecision(12)).toPrecision(digits));
  const sign = value < 0 && rounded > 0 ? '\u2212' : '';
  if (size === Infinity) return `${sign}∞`;
  if (rounded === 0 || (rounded >= plainFrom && rounded < plainBelow)) return sign + rounded;
  const [mantissa = '', power] = rounded.toExponential().split('e');
  return `${sign}${mantissa} × 10${superscript(Number(power))}`;
}

/** Seconds from which minutes, and from two hours on hours, are told instead. */
const longTime = 1000;

/** The base unit with the prefix that leaves 1 ≤ |x| < 1000 after rounding, squared or cubed for `m^2` and `m^3`. */
function prefixedUnit(value: number, siUnit: string, base: string, digits: number): string {
  const size = Math.abs(Number(toUnit(value, siUnit, base).toPrecision(digits)));
  if (size === 0 || !Number.isFinite(size)) return base;
  // Nobody reads kiloseconds off a clock.
  if (base === 's' && size >= longTime) return size < 2 * 3600 ? 'min' : 'h';
  const exponent = Number(/\^(\d)$/.exec(base)?.[1] ?? 1);
  const [, prefix] = prefixes.find(([power]) => size >= Number(`1e${power * exponent}`)) ?? prefixes.at(-1)!;
  return prefix + base;
}

/** Pretty unit: `J/cm^2` → J/cm², `um` → µm, `1/mm` → mm⁻¹, `deg` → °, `pi` → π, `1` → nothing. */
export function formatUnit(unit: string): string {
  if (unit === '1' || unit === 'none') return '';
  return unit
    .replace(/^1\/([A-Za-z]+)(?:\^(\d))?$/, (_, name: string, power = '1') => `${name}^-${power}`)
    .replace(/\bu(?=(?:m|s|J|W|Hz|rad|A|K)\b)/g, 'µ')
    .replace(/\^(-?\d+)/g, (_, power: string) => superscript(Number(power)))
    .replace(/\bdeg\b/g, '°')
    .replace(/\bpi\b/g, 'π')
    .replace(/\*/g, '·');
}
