import { describe, expect, it } from 'vitest';
import { Problem } from '../../lib/problem.ts';
import { worked } from './formulas.ts';

function problemOf(text: string): Problem {
  try {
    worked(text);
  } catch (error) {
    if (error instanceof Problem) return error;
    throw error;
  }
  return expect.fail(`${text} was taken`);
}

function expectMessage({ message }: Problem, expected: string | RegExp): void {
  if (typeof expected === 'string') expect(message).toBe(expected);
  else expect(message).toMatch(expected);
}

describe('text that cannot be read says where, what stands there and what is expected', () => {
  it.each([
    ['', 1, "At character 1 the formula ends, where a number, a quantity, a function or '(' is expected."],
    ['2 * * 3', 5, "At character 5 stands '*', where a number, a quantity, a function or '(' is expected."],
    ['((1', 4, "At character 4 the formula ends, where one of + − * / ^ or ')' is expected."],
    ['1 + 2)', 6, "At character 6 stands ')', where one of + − * / ^ or the end is expected."],
    [
      '2 umm',
      3,
      "At character 3 stands 'umm', which is no unit here, where one of + − * / ^ or the end is expected.",
    ],
    [`2${'²'.repeat(9)}`, 2, "At character 2 stands '²'; it has no meaning in a formula."],
    ['groove.depth 2', 14, "At character 14 stands '2', where one of + − * / ^ or the end is expected."],
    ['min(1, 2', 9, "At character 9 the formula ends, where one of + − * / ^, ',' or ')' is expected."],
    ['min(1)', 1, 'At character 1 min has 1 value in its brackets, where 2 or more belong.'],
    ['sqrt(1, 2)', 1, 'At character 1 sqrt has 2 values in its brackets, where 1 belongs.'],
    ['sqrt + 1', 6, "At character 6 stands '+', where '(' behind sqrt is expected."],
    [
      '1 + squrt(2)',
      5,
      /^At character 5 stands 'squrt' with a bracket, which is no function\. Did you mean sqrt\? There are sqrt, .*, if\.$/,
    ],
    ['min(1,5)', 6, /^At character 6 a comma stands between two digits; write a decimal point/],
    ['1,5', 2, /^At character 2 a comma stands between two digits/],
    ['3 um ^2', 6, /^At character 6 a power follows '3 um'; write \(3 um\)\^…/],
    [
      '1 < 2',
      3,
      "At character 3 stands '<'; values are compared only at the start of if, as in 'if(a < b, x, y)'.",
    ],
    ['if(1, 2, 3)', 5, "At character 5 stands ',', where one of < <= > >= == is expected."],
    ['if(1 < 2 < 3, 2, 3)', 10, /^At character 10 a second comparison follows/],
    ['1 = 2', 3, "At character 3 stands '='; to compare, write '=='."],
    ['µm', 1, "At character 1 stands 'µ'; a unit needs a number before it, such as 1 µm."],
    ['1 + 😀', 5, "At character 5 stands '😀'; it has no meaning in a formula."],
    ['03', 1, "At character 1 '03' begins with 0; write it without."],
    ['1 + 1e999 m', 5, "At character 5 '1e999 m' is too large; numbers from 1e-300 to 1e300 can be used."],
    ['1e-400', 1, "At character 1 '1e-400' is too small; numbers from 1e-300 to 1e300 can be used."],
  ])('%s', (text, character, message) => {
    const problem = problemOf(text);
    expectMessage(problem, message);
    expect(problem.parts.character).toBe(character);
  });

  it('and how large a formula may be', () => {
    expect(problemOf(`1${' '.repeat(500)}`).message).toBe(
      'The formula has 501 characters; at most 500 are read. Give a part of it a name of its own.',
    );
    expect(worked(`${'('.repeat(31)}1${')'.repeat(31)}`).value).toBe(1);
    expect(problemOf(`${'('.repeat(32)}1${')'.repeat(32)}`).message).toMatch(/beyond 32 levels/);
    expect(problemOf(`${'-'.repeat(400)}1`).message).toMatch(/beyond 32 levels/);
    expect(problemOf('1^'.repeat(200) + '1').message).toMatch(/beyond 32 levels/);
    expect(worked('1+'.repeat(99) + '1').value).toBe(100);
    expect(problemOf('1+'.repeat(100) + '1').message).toMatch(/beyond 200 parts/);
  });
});

describe('units that do not fit say what does not', () => {
  it.each([
    [
      'groove.depth + threshold.fluence',
      "At character 1 length and fluence cannot be added: 'groove.depth' is a length, 'threshold.fluence' is a fluence.",
    ],
    [
      '1 - groove.depth',
      "At character 1 pure number and length cannot be subtracted: '1' is a pure number, 'groove.depth' is a length.",
    ],
    [
      'max(1 um, 2, 3 um)',
      /pure number cannot be taken together by max: '1 um' is a length, '2' is a pure number\.$/,
    ],
    [
      'if(1 um < 2 s, 1, 2)',
      "At character 4 length and time cannot be compared: '1 um' is a length, '2 s' is a time.",
    ],
    ['if(1 < 2, 1 um, 2 s)', /^At character 1 length and time cannot be the two results of one if/],
    [
      '2 + sin(groove.depth)',
      "At character 9 'groove.depth' is a length, but sin needs a pure number; divide by a value of its kind first.",
    ],
    ['2^groove.depth', /^At character 3 'groove.depth' is a length, but an exponent needs a pure number/],
    [
      'groove.depth^heat.none',
      /^At character 14 'groove.depth' is a length, which only a fixed power such as 2 or 1\/2 gives a unit/,
    ],
    ['groove.depth^0.333', /'0\.333' is no such power/],
    ['groove.depth^61', /'61' is no such power/],
    ['(groove.depth^60)^2', /powers of units beyond 60/],
    ['sqrt(groove.depth) + 1', /a quantity in m\^\(1\/2\) and pure number cannot be added/],
  ])('%s', (text, message) => {
    const problem = problemOf(text);
    expect(problem.kind).toBe('impossible');
    expectMessage(problem, message);
  });
});

describe('what has no value says which part', () => {
  it.each([
    [
      '1 + 2/heat.none',
      "'2/heat.none' divides by 0: 'heat.none' is 0 here; change the design or the formula.",
    ],
    [
      'heat.none^-1',
      "'heat.none^-1' divides by 0: a negative power of 0 does not exist; change the design or the formula.",
    ],
    [
      'heat.loss^0.5',
      "'heat.loss^0.5' is a broken power of a negative number, which does not exist; change the design or the formula.",
    ],
    [
      'sqrt(heat.loss)',
      "'sqrt(heat.loss)' has no value here: the square root of a negative number does not exist; change the design or the formula.",
    ],
    [
      'ln(heat.loss)',
      "'ln(heat.loss)' has no value here: the logarithm of a negative number does not exist; change the design or the formula.",
    ],
    [
      'log10(heat.none)',
      "'log10(heat.none)' has no value here: the logarithm of 0 does not exist; change the design or the formula.",
    ],
    [
      'asin(heat.loss)',
      "'asin(heat.loss)' has no value here: it needs a value from −1 to 1; change the design or the formula.",
    ],
    ['exp(1000) * 0', "'exp(1000)' becomes infinite; change the design or the formula."],
    ['1e300 * 1e300', "'1e300 * 1e300' becomes infinite; change the design or the formula."],
  ])('%s', (text, message) => {
    const problem = problemOf(text);
    expect(problem.kind).toBe('impossible');
    expect(problem.message).toBe(message);
  });
});
