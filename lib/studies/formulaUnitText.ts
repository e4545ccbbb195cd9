import { isKnownUnit } from '../graph/units.ts';
import { normaliseQuantityText } from '../graph/unitText.ts';

const blanks = '[ \\u00a0\\u2000-\\u200a\\u202f]*';
/**
 * Letters and signs of a unit with a power: mm, cm^2, cm², s^-1, mm2. A minus sign without ^ is arithmetic. No unit has more
 * than 20 letters (`revolutions` has 11): the reader of units need not search longer ones.
 */
const atom = '(?:[A-Za-zµμÅ\\u212b]{1,20}|°[CF]|[°%π])(?:\\^[+\\-−]?\\d|[⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]|\\d)?';
/** Not the first letters of a longer name, an id or a function with its bracket. */
const atomEnd = `(?![A-Za-z0-9_µμÅ.⁰¹²³⁴⁵⁶⁷⁸⁹]|${blanks}\\()`;
const first = new RegExp(`${blanks}(${atom})${atomEnd}`, 'y');
const factor = new RegExp(`${blanks}([*/·⋅]?)${blanks}(${atom})${atomEnd}`, 'y');
const bracketed = new RegExp(
  `${blanks}([*/·⋅])${blanks}\\(${blanks}(${atom}(?:${blanks}[*/·⋅]${blanks}${atom}|[ \\u00a0]+${atom}){0,5})${blanks}\\)`,
  'y',
);

/** Names that are constants of a formula wherever they are a factor: 3/e, 2 * pi. */
const constants: ReadonlySet<string> = new Set(['e', 'pi', 'π']);
/** Most factors of one unit. */
const mostFactors = 8;

/** A unit behind a number in plain spelling, `''` where there is none, and where it ends. */
export interface UnitBehind {
  readonly unit: string;
  readonly to: number;
}

/**
 * The longest unit that stands behind a number which ends at `at`, as it can be typed in a field: ` µm`, ` J/cm²`,
 * `/mm`, ` mm³/(W·min)`, `%`. What follows and is no unit belongs to the formula: in `2 um / spot.width` the unit is um.
 */
export function unitBehind(text: string, at: number): UnitBehind {
  let best: UnitBehind = { unit: '', to: at };
  for (let count = 0; count < mostFactors; count++) {
    const to = nextFactor(text, best.to, best.unit === '');
    if (to === undefined) break;
    const unit = normaliseQuantityText(text.slice(at, to));
    if (!isKnownUnit(unit)) break;
    best = { unit, to };
  }
  return best;
}

/** Where the next factor of a unit ends; the first one may be a constant, as in 0.9 π, and may follow a stroke alone. */
function nextFactor(text: string, at: number, isFirst: boolean): number | undefined {
  if (isFirst) {
    const name = execAt(first, text, at)?.[1];
    if (name !== undefined) return name === 'e' ? undefined : first.lastIndex;
  }
  const [, operator, name] = execAt(factor, text, at) ?? [];
  if (name !== undefined && operator !== undefined) {
    const allowed = isFirst ? operator === '/' : true;
    return allowed && !constants.has(name) ? factor.lastIndex : undefined;
  }
  const [, stroke, inside] = execAt(bracketed, text, at) ?? [];
  const factors = inside?.split(/[ \u00a0*/·⋅]+/) ?? [];
  const allowed = stroke === '/' || !isFirst;
  return inside !== undefined && allowed && !factors.some((one) => constants.has(one))
    ? bracketed.lastIndex
    : undefined;
}

function execAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}
