import { describe, expect, it } from 'vitest';
import { Problem } from '../../lib/problem.ts';
import { parseFormula } from '../../lib/studies/formulaParser.ts';
import { expectClose } from '../close.ts';
import { worked } from './formulas.ts';

const source = 'by hand';
const exactly = { relative: 4e-16, source };

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

describe('precedence', () => {
  it.each([
    ['1 + 2 * 3', 7],
    ['(1 + 2) * 3', 9],
    ['8 / 4 / 2', 1],
    ['8 − 4 - 2', 2],
    ['2^3^2', 512],
    ['(2^3)^2', 64],
    ['-2^2', -4],
    ['(-2)^2', 4],
    ['2^-2', 0.25],
    ['2^-2*4', 1],
    ['2*-3', -6],
    ['- -3', 3],
    ['+3 - +2', 1],
    ['6/2*10^3', 3000],
    ['10^2^3', 1e8],
    ['2²·3', 12],
    ['2⁻¹', 0.5],
    ['6 ÷ 3 × 2', 4],
  ])('%s = %d', (text, value) => {
    expectClose(worked(text).value, value, exactly);
  });
});

describe('values and units', () => {
  it.each([
    ['groove.depth / groove.topWidth', 0.5, '1'],
    ['2*sqrt(ln(spot.peakFluence/threshold.fluence)) * 3 um', 6e-6 * Math.sqrt(Math.log(4)), 'm'],
    ['3 um', 3e-6, 'm'],
    ['2.5 µm + 500 nm', 3e-6, 'm'],
    ['0.2 J/cm² * 3', 6000, 'J/m^2'],
    ['0.35 mm³/(W·min)', 0.35e-9 / 60, 'm^3/J'],
    ['200 /mm', 2e5, '1/m'],
    ['3.2 × 10^-7 m', 3.2e-7, 'm'],
    ['5 % + 0.05', 0.1, '1'],
    ['180°', Math.PI, 'rad'],
    ['0.5 waves', Math.PI, 'rad'],
    ['2 pi', 2 * Math.PI, 'rad'],
    ['3 um^2', 3e-12, 'm^2'],
    ['(3 um)^2', 9e-12, 'm^2'],
    ['2 um / groove.depth', 0.1, '1'],
    ['3 m-2 m', 1, 'm'],
    ['2 W*min(3 s, 4 s)', 6, 'J'],
    ['3/e', 3 / Math.E, '1'],
    ['3/(2*e)', 1.5 / Math.E, '1'],
    ['laser.energy / (pi * groove.depth²)', 50e-6 / (Math.PI * 4e-10), 'J/m^2'],
    ['sqrt(groove.depth * groove.topWidth)', Math.sqrt(8e-10), 'm'],
    ['sqrt(groove.depth)^2', 20e-6, 'm'],
    ['groove.depth^(1/2) * groove.depth^0.5', 20e-6, 'm'],
    ['cbrt(8 mm³)', 2e-3, 'm'],
    ['hypot(3 um, 4 um)', 5e-6, 'm'],
    ['max(groove.depth, 30 um, 1 nm)', 30e-6, 'm'],
    ['min(groove.depth, groove.topWidth)', 20e-6, 'm'],
    ['abs(-3 um)', 3e-6, 'm'],
    ['atan(groove.depth / groove.topWidth)', Math.atan(0.5), 'rad'],
    ['atan2(1 um, -1 um)', 0.75 * Math.PI, 'rad'],
    ['asin(1) + acos(1)', Math.PI / 2, 'rad'],
    ['sin(plate.phase) + cos(0) + tan(45°)', 3, '1'],
    ['plate.phase + 1', Math.PI / 2 + 1, 'rad'],
    ['plate.phase * groove.depth', (Math.PI / 2) * 20e-6, 'm'],
    ['exp(1) - e + ln(e) + log10(100)', 3, '1'],
    ['round(2.5) + floor(-0.5) + ceil(0.2)', 3, '1'],
    ['if(groove.depth < 30 um, 1 J, 2 J)', 1, 'J'],
    ['if(groove.depth >= 30 um, 1 J, 2 J)', 2, 'J'],
    ['if(heat.none == 0, 3, 1/heat.none)', 3, '1'],
    ['if(1 > 2, 1, if(1 ≤ 2, 5, 6))', 5, '1'],
    ['1 kg / 1 m / 1 s', 1, 'kg/(m*s)'],
    ['100 rad / 2 s', 50, 'rad/s'],
  ])('%s', (text, value, unit) => {
    const result = worked(text);
    expect(result.unit).toBe(unit);
    expectClose(result.value, value, exactly);
  });
});

describe('text that cannot be read says where, what stands there and what is expected', () => {
  it.each([
    ['', 1, "At character 1 the formula ends, where a number, a quantity, a function or '(' is expected."],
    ['2 * * 3', 5, "At character 5 stands '*', where a number, a quantity, a function or '(' is expected."],
    ['((1', 4, "At character 4 the formula ends, where one of + − * / ^ or ')' is expected."],
    ['1 + 2)', 6, "At character 6 stands ')', where one of + − * / ^ or the end is expected."],
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
    ['1 + 2/heat.none', "At character 5 '2/heat.none' divides by 0: 'heat.none' is 0 here."],
    ['heat.none^-1', "At character 1 'heat.none^-1' divides by 0: a negative power of 0 does not exist."],
    [
      'heat.loss^0.5',
      "At character 1 'heat.loss^0.5' is a broken power of a negative number, which does not exist.",
    ],
    [
      'sqrt(heat.loss)',
      "At character 1 'sqrt(heat.loss)' has no value here: the square root of a negative number does not exist.",
    ],
    [
      'ln(heat.loss)',
      "At character 1 'ln(heat.loss)' has no value here: the logarithm of a negative number does not exist.",
    ],
    [
      'log10(heat.none)',
      "At character 1 'log10(heat.none)' has no value here: the logarithm of 0 does not exist.",
    ],
    ['asin(heat.loss)', "At character 1 'asin(heat.loss)' has no value here: it needs a value from −1 to 1."],
    ['exp(1000) * 0', "At character 1 'exp(1000)' becomes infinite."],
    ['1e300 * 1e300', "At character 1 '1e300 * 1e300' becomes infinite."],
  ])('%s', (text, message) => {
    const problem = problemOf(text);
    expect(problem.kind).toBe('impossible');
    expect(problem.message).toBe(message);
  });
});

it('a tree keeps its places in the text, brackets included', () => {
  expect(parseFormula('2 * (a.b + 1)')).toMatchObject({
    kind: 'operation',
    from: 0,
    to: 13,
    right: {
      kind: 'operation',
      operator: '+',
      from: 4,
      to: 13,
      left: { kind: 'name', id: 'a.b', from: 5, to: 8 },
    },
  });
});
