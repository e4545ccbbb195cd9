import { Problem } from '../problem.ts';

/** A typed number as decimal text: value = mantissa × 10^exponent, so that a power of ten shifts it exactly. */
export interface DecimalText {
  /** Digits with an optional sign and decimal point, e.g. `-1.03`. */
  readonly mantissa: string;
  readonly exponent: number;
}

const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';
/** Longest text read as one quantity; longer ones are pasted by mistake. */
const longestText = 80;

/**
 * One plain spelling for what keyboards and papers offer: micro sign and Greek mu → u, superscripts → ^n,
 * all spaces → one plain space, typographic minus → -, × → x, middle dots → *, ° → deg, π → pi, Å → angstrom.
 */
export function normaliseQuantityText(text: string): string {
  return text
    .replace(/[\s\u00a0\u2000-\u200b\u202f\u2060]+/g, ' ')
    .trim()
    .replace(/[\u00b5\u03bc]/g, 'u')
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/[⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+/g, (run) => `^${plainDigits(run)}`)
    .replace(/\u00d7/g, 'x')
    .replace(/[\u00b7\u22c5]/g, '*')
    .replace(/°/g, 'deg')
    .replace(/π/g, 'pi')
    .replace(/[\u00c5\u212b]/g, 'angstrom');
}

function plainDigits(run: string): string {
  return Array.from(run, (c) => (c === '⁻' ? '-' : c === '⁺' ? '' : superscripts.indexOf(c))).join('');
}

/** Writes an integer in superscript digits: −7 → ⁻⁷. */
export function superscript(exponent: number): string {
  return String(exponent).replace(/[-\d]/g, (c) => (c === '-' ? '⁻' : superscripts[Number(c)]!));
}

const numberPattern =
  /^([+-]? ?)(\d{1,3}(?:[ '’]\d{3})+(?!\d)(?:[.,]\d*)?|\d[\d.,]*|[.,]\d+)?(?:[eE]([+-]?\d+))?(.*)$/;

/** "3.2 x 10^-7" → 3.2e-7 and "10^-7" → 1e-7. */
function joinPowerOfTen(text: string): string {
  return text
    .replace(/^([+-]?) ?10\^([+-]?\d+)/, '$11e$2')
    .replace(/^([^a-zA-Z]*?[\d.,]) ?[x*] ?10\^([+-]?\d+)/, '$1e$2');
}

/**
 * Splits a quantity text into its number and the unit behind it, still in plain spelling (see
 * `normaliseQuantityText`). `number` is undefined when the text starts with a unit ("π"; "−π" gives −1).
 * Decimal comma and point both count; a space or an apostrophe may part groups of three digits.
 * A single comma or point is always the decimal mark ("1,234 mm" = 1.234 mm); with both, the last one is the
 * decimal mark and the other parts groups of three ("1.030,5" has one reading only, so it is taken); one kind several
 * times parts groups ("1,234,567").
 * Throws `unreadable` for digits that follow none of these, and for texts of more than 80 characters.
 */
export function splitQuantityText(text: string): { number: DecimalText | undefined; unit: string } {
  if (text.length > longestText) {
    throw new Problem(
      'unreadable',
      `'${text.slice(0, 20)}…' is too long for one quantity; type a number and a unit.`,
    );
  }
  const plain = joinPowerOfTen(normaliseQuantityText(text));
  const [, sign = '', digits, exponent = '0', rest = ''] = numberPattern.exec(plain) ?? [];
  const minus = sign.startsWith('-') ? '-' : '';
  if (digits === undefined) {
    const name = plain.slice(sign.length);
    return {
      number: minus && name.startsWith('pi') ? { mantissa: '-1', exponent: 0 } : undefined,
      unit: name,
    };
  }
  const unit = rest.trim();
  if (/^[\d.,'’]/.test(unit) && !/^1 ?\//.test(unit)) throw unreadableNumber(text);
  return { number: { mantissa: minus + plainNumber(digits, text), exponent: Number(exponent) }, unit };
}

/** Digits with separators → digits with at most one decimal point. */
function plainNumber(digits: string, text: string): string {
  const joined = digits.replace(/[ '’]/g, '');
  const grouped = joined.length < digits.length;
  const marks = joined.match(/[.,]/g) ?? [];
  const last = marks.at(-1);
  if (last === undefined) return joined;
  const kinds = new Set(marks).size;
  if (kinds === 1 && marks.length === 1) return joined.replace(last, '.');
  const other = last === ',' ? '.' : ',';
  if (!grouped && kinds === 1 && matchesGroups(joined, last)) return joined.replaceAll(last, '');
  const [whole, fraction] = splitOnce(joined, last);
  if (!grouped && kinds === 2 && fraction !== undefined && matchesGroups(whole, other)) {
    return `${whole.replaceAll(other, '')}.${fraction}`;
  }
  throw unreadableNumber(text);
}

function matchesGroups(digits: string, separator: string): boolean {
  const [first = '', ...groups] = digits.split(separator);
  return /^\d{1,3}$/.test(first) && groups.length > 0 && groups.every((group) => /^\d{3}$/.test(group));
}

function splitOnce(digits: string, mark: string): [string, string | undefined] {
  const parts = digits.split(mark);
  return [parts[0]!, parts.length === 2 ? parts[1] : undefined];
}

function unreadableNumber(text: string): Problem {
  return new Problem(
    'unreadable',
    `The number in '${text.trim()}' cannot be read; write it like 1.03, 1,03, 1 030 or 5e-3, then the unit.`,
    { value: text },
  );
}
