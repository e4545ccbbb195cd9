import { readUnitScale } from '../graph/unitScale.ts';
import { Problem } from '../problem.ts';
import { formulaProblem, quoted } from './formulaProblem.ts';
import {
  type FormulaComparison,
  type FormulaOperator,
  type FormulaSpan,
  formulaLimits,
} from './formulaSyntax.ts';
import { unitBehind } from './formulaUnitText.ts';

/** What a formula is read in: numbers with their units, names, signs, and one end behind the last. */
export type FormulaToken = FormulaSpan &
  (
    | { readonly kind: 'number'; readonly value: number; readonly digits: string; readonly unit: string }
    | { readonly kind: 'name'; readonly id: string }
    | { readonly kind: 'sign'; readonly sign: FormulaOperator | FormulaComparison | '(' | ')' | ',' }
    | { readonly kind: 'end' }
  );

type Sign = Extract<FormulaToken, { kind: 'sign' }>['sign'];

/** Signs as keyboards and papers offer them. */
const signs: ReadonlyMap<string, Sign> = new Map<string, Sign>([
  ...(['+', '-', '*', '/', '^', '(', ')', ',', '<', '<=', '>', '>=', '=='] as const).map(
    (sign): [string, Sign] => [sign, sign],
  ),
  ...['−', '–'].map((minus): [string, Sign] => [minus, '-']),
  ...['×', '·', '⋅'].map((times): [string, Sign] => [times, '*']),
  ['÷', '/'],
  ['≤', '<='],
  ['≥', '>='],
]);

const blank = /[\s\u00a0\u2000-\u200b\u202f\u2060]*/y;
/** 10^-7 or 10⁻⁷; one that is itself a base, 10^2^3, is arithmetic. */
const tens = '10(?:\\^[+\\-−]?\\d{1,3}|[⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]{1,3})(?![\\d.⁺⁻⁰¹²³⁴⁵⁶⁷⁸⁹]|[^\\S\\n]*\\^)';
/** A power of ten may stand alone, as in 10^-7 m. */
const powerOfTen = new RegExp(tens, 'y');
/** The way in which values are shown, 3.2 × 10⁻⁷: one number behind a stroke too. With * it is arithmetic. */
const shownNumber = new RegExp(`(?:\\d+\\.?\\d*|\\.\\d+)[^\\S\\n]*×[^\\S\\n]*${tens}`, 'y');
const plainNumber = /(?:\d+\.?\d*|\.\d+)(?:[eE][+\-−]?\d+)?/y;
const name = /π|[A-Za-z_][A-Za-z0-9_]*(?:\.[A-Za-z_][A-Za-z0-9_]*)*/y;
const sign = /<=|>=|==|[-+*/^(),<>−–×·⋅÷≤≥]/y;
const superscripts = /[⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]{1,3}(?![⁰¹²³⁴⁵⁶⁷⁸⁹])/y;

/**
 * A formula cut into its tokens; the last is the end. Throws `unreadable` for a text of more than 500 characters and for
 * what is no token, `impossible` for a number beyond 1e±308.
 */
export function formulaTokens(text: string): FormulaToken[] {
  const { characters } = formulaLimits;
  if (text.length > characters) {
    throw new Problem(
      'unreadable',
      `The formula has ${text.length} characters; at most ${characters} are read. Give a part of it a name of its own.`,
      { allowed: `at most ${characters} characters` },
    );
  }
  const tokens: FormulaToken[] = [];
  let at = skipBlanks(text, 0);
  while (at < text.length) {
    const found = tokensAt(text, at, tokens.at(-1));
    tokens.push(...found);
    at = skipBlanks(text, found.at(-1)!.to);
  }
  return [...tokens, { kind: 'end', from: text.length, to: text.length }];
}

function skipBlanks(text: string, at: number): number {
  return at + matchAt(blank, text, at)!.length;
}

function matchAt(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0];
}

function tokensAt(text: string, at: number, last: FormulaToken | undefined): FormulaToken[] {
  // 2^3 × 10² has the exponent 3, not 300.
  const afterPower = last?.kind === 'sign' && last.sign === '^';
  const shown = afterPower ? undefined : matchAt(shownNumber, text, at);
  const digits = shown ?? matchAt(powerOfTen, text, at) ?? matchAt(plainNumber, text, at);
  if (digits !== undefined) return [numberAt(text, at, digits)];
  const id = matchAt(name, text, at);
  if (id !== undefined) return [{ kind: 'name', id: id === 'π' ? 'pi' : id, from: at, to: at + id.length }];
  const mark = matchAt(sign, text, at);
  if (mark !== undefined) return [signAt(text, at, mark)];
  const raised = matchAt(superscripts, text, at);
  if (raised !== undefined) return powerAt(at, raised);
  throw unknownCharacter(text, at);
}

/** A comma between two digits may be meant as a decimal mark: nobody can tell. */
function signAt(text: string, at: number, mark: string): FormulaToken {
  if (mark === ',' && /\d,\d/.test(text.slice(Math.max(0, at - 1), at + 2))) {
    const sentence =
      "a comma stands between two digits; write a decimal point, as in 1.5, or a space behind a comma between two values, as in 'min(1, 5)'.";
    throw formulaProblem(text, { from: at, to: at + 1 }, sentence);
  }
  return { kind: 'sign', sign: signs.get(mark)!, from: at, to: at + mark.length };
}

/** A raised number is a power: cm² behind a number is a unit, spot.width² is spot.width^2. */
function powerAt(from: number, raised: string): FormulaToken[] {
  const to = from + raised.length;
  const plain = loweredDigits(raised);
  return [
    { kind: 'sign', sign: '^', from, to },
    { kind: 'number', value: Number(plain), digits: plain, unit: '', from, to },
  ];
}

function loweredDigits(raised: string): string {
  return raised.normalize('NFKC').replace('−', '-').replace('+', '');
}

/** 3.2 × 10⁻⁷ and 10^-7 as 3.2e-7 and 1e-7. */
function plainDigits(digits: string): string {
  return digits
    .replaceAll('−', '-')
    .replace(/[⁺⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+/, (raised) => `^${loweredDigits(raised)}`)
    .replace(/\s*×\s*10\^\+?/, 'e')
    .replace(/^10\^\+?/, '1e');
}

function numberAt(text: string, from: number, digits: string): FormulaToken {
  const plain = plainDigits(digits);
  if (/^0\d/.test(plain)) {
    throw formulaProblem(
      text,
      { from, to: from + digits.length },
      `${quoted(digits)} begins with 0; write it without.`,
    );
  }
  const { unit, to } = unitBehind(text, from + digits.length);
  const value = numberValue(plain, unit);
  const lost = value === 0 && /[1-9]/.test(plain.replace(/e.*/i, ''));
  if (!Number.isFinite(value) || lost) {
    const size = lost ? 'small' : 'large';
    const sentence = `${quoted(text.slice(from, to))} is too ${size}; numbers from 1e-300 to 1e300 can be used.`;
    throw formulaProblem(text, { from, to }, sentence, 'impossible');
  }
  return { kind: 'number', value, digits: plain, unit, from, to };
}

/** Converted as typed quantities are, exactly for powers of ten: 2.5 um is 2.5e-6. */
function numberValue(digits: string, unit: string): number {
  const [mantissa, exponent = '0'] = digits.toLowerCase().split('e');
  const { factor, tens } = readUnitScale(unit)!;
  return Number(`${mantissa}e${Number(exponent) + tens}`) * factor;
}

function unknownCharacter(text: string, at: number): Problem {
  const there = String.fromCodePoint(text.codePointAt(at)!);
  const span = { from: at, to: at + there.length };
  const units = /[µμ°%Åµ]/.test(there);
  const hint = units ? 'a unit needs a number before it, such as 1 µm' : 'it has no meaning in a formula';
  const single = there === '=' ? "to compare, write '=='" : hint;
  return formulaProblem(text, span, `stands ${quoted(there)}; ${single}.`);
}
