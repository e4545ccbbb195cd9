import { Problem, type ProblemKind } from '../problem.ts';
import type { FormulaSpan } from './formulaSyntax.ts';

/** Longest piece of a formula that is quoted. */
const longestQuote = 40;

/** A piece of text as it is quoted: `'spot.width'`, its end left out where it is long. */
export function quoted(text: string): string {
  const characters = Array.from(text.trim());
  const shown =
    characters.length > longestQuote
      ? `${characters.slice(0, longestQuote - 1).join('')}…`
      : characters.join('');
  return `'${shown}'`;
}

/** The piece of the formula that a node stands for, quoted. */
export function quotedPart(text: string, { from, to }: FormulaSpan): string {
  return quoted(text.slice(from, to));
}

/**
 * A problem that points into a formula: its sentence begins with the number of the character, counted from 1, and its
 * parts hold that number and what stands there.
 */
export function formulaProblem(
  text: string,
  span: FormulaSpan,
  sentence: string,
  kind: ProblemKind = 'unreadable',
): Problem {
  const character = span.from + 1;
  return new Problem(kind, `At character ${character} ${sentence}`, {
    value: text.slice(span.from, span.to),
    character,
  });
}

/** The problem of something that stands where something else is expected. */
export function unexpected(text: string, span: FormulaSpan, expected: string): Problem {
  const there = text.slice(span.from, span.to);
  const stands = there === '' ? 'the formula ends' : `stands ${quoted(there)}`;
  return formulaProblem(text, span, `${stands}, where ${expected} is expected.`);
}
