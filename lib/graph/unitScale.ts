import Qty from 'js-quantities';

/** The base units that dimensions are counted in; plane angle is kept apart from pure numbers. */
export const baseUnits = ['m', 'kg', 's', 'A', 'K', 'mol', 'cd', 'rad'] as const;
export type BaseUnit = (typeof baseUnits)[number];
/** Exponent of each base unit: J = m² kg s⁻² has m: 2, kg: 1, s: −2. */
export type Dimensions = Readonly<Record<BaseUnit, number>>;

/** A unit as a multiple of its base units: factor × 10^tens. Powers of ten are kept apart to convert exactly. */
export interface UnitScale {
  readonly factor: number;
  readonly tens: number;
  readonly dimensions: Dimensions;
}

const noDimensions: Dimensions = { m: 0, kg: 0, s: 0, A: 0, K: 0, mol: 0, cd: 0, rad: 0 };
const pureNumber: UnitScale = { factor: 1, tens: 0, dimensions: noDimensions };
const angle = (factor: number): UnitScale => ({ factor, tens: 0, dimensions: { ...noDimensions, rad: 1 } });
const degree = angle(Math.PI / 180);
const kelvin: UnitScale = { factor: 1, tens: 0, dimensions: { ...noDimensions, K: 1 } };
const micrometre: UnitScale = { factor: 1, tens: -6, dimensions: { ...noDimensions, m: 1 } };
const percent: UnitScale = { factor: 1, tens: -2, dimensions: noDimensions };

/** Units the package lacks, knows too coarsely (deg to 15 digits) or counts otherwise. A wave is a phase of 2π. */
const ownUnits = new Map<string, UnitScale>([
  ...['pulse', 'pulses', 'shot', 'shots', 'spot', 'spots', 'line', 'lines', 'pass', 'passes'].map(countUnit),
  ...['px', 'pixel', 'pixels', 'rev', 'revolution', 'revolutions'].map(countUnit),
  ...['%', 'percent'].map((name): [string, UnitScale] => [name, percent]),
  ...['deg', 'degree', 'degrees'].map((name): [string, UnitScale] => [name, degree]),
  ...['wave', 'waves'].map((name): [string, UnitScale] => [name, angle(2 * Math.PI)]),
  ...['micron', 'microns'].map((name): [string, UnitScale] => [name, micrometre]),
  ...['K', 'kelvin', 'degC', 'degK'].map((name): [string, UnitScale] => [name, kelvin]),
  ['pi', angle(Math.PI)],
]);

function countUnit(name: string): [string, UnitScale] {
  return [name, pureNumber];
}

const packageBases: Readonly<Record<string, BaseUnit | '1'>> = {
  '<meter>': 'm',
  '<kilogram>': 'kg',
  '<second>': 's',
  '<ampere>': 'A',
  '<kelvin>': 'K',
  '<mole>': 'mol',
  '<candela>': 'cd',
  '<radian>': 'rad',
  '<1>': '1',
};

/** Answers are kept: a page shows the same few dozen units at every move. Bounded, since people type freely. */
const known = new Map<string, UnitScale | undefined>();
const mostKept = 500;

/**
 * Scale and dimensions of a unit in plain spelling: `mm`, `J/cm^2`, `mm^3/(W*min)`, `1/m`, `m/s`; undefined if not
 * known. `''`, `'1'` and `'none'` (not a number) are pure numbers. A stroke divides by the one factor or bracket
 * behind it. Celsius and Fahrenheit are differences; readings with an offset are not units here.
 */
export function readUnitScale(unit: string): UnitScale | undefined {
  if (known.has(unit)) return known.get(unit);
  const scale = unit === 'none' ? pureNumber : readExpression(unit);
  if (known.size >= mostKept) known.clear();
  known.set(unit, scale);
  return scale;
}

const factorPattern = /^ ?([*/]?) ?(?:([A-Za-z%]+)(?:\^?([+-]?\d))?|(1)(?!\d)|\(([^()]*)\)) ?/;

function readExpression(unit: string): UnitScale | undefined {
  let scale = pureNumber;
  let rest = unit.trim();
  while (rest !== '') {
    const match = factorPattern.exec(rest);
    if (!match) return undefined;
    const [taken, operator, name, exponent, , bracket] = match;
    const one =
      name !== undefined ? readAtom(name) : bracket !== undefined ? readExpression(bracket) : pureNumber;
    if (!one) return undefined;
    scale = multiply(scale, one, Number(exponent ?? 1) * (operator === '/' ? -1 : 1));
    rest = rest.slice(taken.length);
  }
  return Number.isFinite(scale.factor) && scale.factor > 0 ? scale : undefined;
}

function multiply(a: UnitScale, b: UnitScale, exponent: number): UnitScale {
  const dimensions = { ...a.dimensions };
  for (const base of baseUnits) dimensions[base] += exponent * b.dimensions[base];
  return { factor: a.factor * b.factor ** exponent, tens: a.tens + b.tens * exponent, dimensions };
}

/** One named unit, ours first; the package throws its own errors for what it does not know. */
function readAtom(name: string): UnitScale | undefined {
  const own = ownUnits.get(name);
  if (own) return own;
  try {
    const base = new Qty(1, name).toBase();
    const dimensions: Record<BaseUnit, number> = { ...noDimensions };
    for (const [list, sign] of [
      [base.numerator, 1],
      [base.denominator, -1],
    ] as const) {
      for (const item of list) {
        const key = packageBases[item];
        if (key === undefined) return undefined;
        if (key !== '1') dimensions[key] += sign;
      }
    }
    return { ...splitTens(base.scalar), dimensions };
  } catch {
    return undefined;
  }
}

/** 1e-6 → 10^−6 with factor 1; other factors (inch, hour) stay as they are. 1e-12: rounding of the package. */
function splitTens(scalar: number): { factor: number; tens: number } {
  const tens = Math.round(Math.log10(scalar));
  const isPower = Math.abs(scalar / 10 ** tens - 1) < 1e-12;
  return isPower ? { factor: 1, tens } : { factor: scalar, tens: 0 };
}

export function sameDimensions(a: Dimensions, b: Dimensions): boolean {
  return baseUnits.every((base) => a[base] === b[base]);
}
