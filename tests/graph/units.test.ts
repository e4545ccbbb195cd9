import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readRadii } from '../../lib/graph/radiiText.ts';
import {
  dimensionsOf,
  formatNumber,
  formatQuantity,
  formatReadable,
  formatUnit,
  fromUnit,
  isKnownUnit,
  parseQuantity,
  readableUnit,
  toUnit,
} from '../../lib/graph/units.ts';
import { Problem } from '../../lib/problem.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';

const thin = '\u202f';
const noBreak = '\u00a0';

function problemOf(run: () => unknown): Problem {
  try {
    run();
  } catch (error) {
    if (error instanceof Problem) return error;
    throw error;
  }
  throw new Error('no problem was thrown');
}

describe('typed quantities', () => {
  test.each<[string, string, number]>([
    ['1.03 um', 'm', 1.03e-6],
    ['1,03 \u00b5m', 'm', 1.03e-6],
    ['1.03 \u03bcm', 'm', 1.03e-6],
    ['1.03 micron', 'm', 1.03e-6],
    ['0,5 in', 'm', 0.0127],
    ['10mm', 'm', 0.01],
    ['5e-3 m', 'm', 0.005],
    ['3.2 × 10⁻⁷ m', 'm', 3.2e-7],
    ['3.2x10^-7 m', 'm', 3.2e-7],
    ['10^-6 m', 'm', 1e-6],
    ['10⁻⁶ m', 'm', 1e-6],
    ['-10^-6 m', 'm', -1e-6],
    ['1 030 nm', 'm', 1.03e-6],
    [`1${noBreak}030 nm`, 'm', 1.03e-6],
    [`1${thin}030,5 nm`, 'm', 1.0305e-6],
    ['1’030 nm', 'm', 1.03e-6],
    ['12 345 678.5 nm', 'm', 0.0123456785],
    ['1,234 mm', 'm', 1.234e-3],
    ['1.234 mm', 'm', 1.234e-3],
    ['1.234,5 mm', 'm', 1.2345],
    ['1,234.5 mm', 'm', 1.2345],
    ['1,234,567 nm', 'm', 1.234567e-3],
    ['1.234.567,8 nm', 'm', 1.2345678e-3],
    ['.5 mm', 'm', 5e-4],
    ['5. mm', 'm', 5e-3],
    ['−3 mm', 'm', -3e-3],
    ['- 3 mm', 'm', -3e-3],
    ['+3 mm', 'm', 3e-3],
    ['0 mm', 'm', 0],
    ['0.2 J/cm²', 'J/m^2', 2000],
    ['0.2 J/cm^2', 'J/m^2', 2000],
    ['0.2 J cm⁻²', 'J/m^2', 2000],
    ['0.2 J·cm^-2', 'J/m^2', 2000],
    ['0.35 mm³/(W·min)', 'm^3/J', 0.35e-9 / 60],
    ['250 fs', 's', 2.5e-13],
    ['200 kHz', 'Hz', 2e5],
    ['50 uJ', 'J', 5e-5],
    ['180°', 'rad', Math.PI],
    ['180 deg', 'rad', Math.PI],
    ['0.5 waves', 'rad', Math.PI],
    ['0.9 pi', 'rad', 0.9 * Math.PI],
    ['0.9 π', 'rad', 0.9 * Math.PI],
    ['0,9π', 'rad', 0.9 * Math.PI],
    ['π', 'rad', Math.PI],
    ['-π', 'rad', -Math.PI],
    ['π/2', 'rad', Math.PI / 2],
    ['3π/4', 'rad', 0.75 * Math.PI],
    ['5 %', '1', 0.05],
    ['5%', '1', 0.05],
    ['3 pulses', '1', 3],
    ['3 pulses', 'pulses', 3],
    ['1 pulse', 'pulses', 1],
    ['5 1/mm', '1/m', 5000],
    ['5/mm', '1/m', 5000],
    ['5 mm⁻¹', '1/m', 5000],
    ['0.4 µm/px', 'm', 4e-7],
    ['20 °C', 'K', 20],
    ['2.7e-20 m²/W', 'm^2/W', 2.7e-20],
    ['7.94', 'm', 7.94],
  ])('%s in %s', (text, unit, value) => {
    expectClose(parseQuantity(text, unit), value, { relative: 4e-16, source: 'one rounding' });
  });

  test('powers of ten convert without rounding', () => {
    expect(parseQuantity('1.03 um', 'm')).toBe(1.03e-6);
    expect(parseQuantity('250 fs', 's')).toBe(250e-15);
    expect(toUnit(250e-15, 's', 'fs')).toBe(250);
    expect(fromUnit(0.2, 'J/m^2', 'J/cm^2')).toBe(2000);
  });

  test('a bare number is in the unit of the field', () => {
    expect(parseQuantity('7', 'm', { bare: 'mm' })).toBe(0.007);
    expect(parseQuantity('7 um', 'm', { bare: 'mm' })).toBe(7e-6);
    expect(parseQuantity('0,5', 'rad', { bare: 'waves' })).toBe(Math.PI);
    expect(parseQuantity('18', '1', { bare: '%' })).toBe(0.18);
  });

  test.each([
    ['5 kg', 'm', 'impossible', "'5 kg' is a mass; a length such as 10 mm, 0.4 in or 250 µm belongs here."],
    [
      '5 J',
      'J/m^2',
      'impossible',
      "'5 J' is an energy; a fluence such as 0.2 J/cm² or 2000 J/m² belongs here.",
    ],
    ['', 's', 'unreadable', 'The field is empty; a time such as 250 fs or 30 s belongs here.'],
    ['mm', 'm', 'unreadable', "'mm' has no number"],
    ['-', 'm', 'unreadable', "'-' has no number"],
    ['-mm', 'm', 'unreadable', "'-mm' has no number"],
    ['e5 π', 'rad', 'unreadable', 'no number'],
    ['-e5 π', 'rad', 'unreadable', 'no number'],
    ['5 blorps', 'm', 'unreadable', "The unit 'blorps' in '5 blorps' is not known"],
    ['5 khz', 'Hz', 'unreadable', "The unit 'khz'"],
    ['1e999 m', 'm', 'impossible', 'too large'],
    ['1e-999 m', 'm', 'impossible', 'too small'],
    ['Infinity', 'm', 'unreadable', 'no number'],
    ['∞ m', 'm', 'unreadable', 'no number'],
    ['NaN', 'm', 'unreadable', 'no number'],
    ['10 20 mm', 'm', 'unreadable', 'cannot be read'],
    ['1 1/2 in', 'm', 'unreadable', 'not known'],
    ['1,23,456 mm', 'm', 'unreadable', 'cannot be read'],
    ['1.2.3 mm', 'm', 'unreadable', 'cannot be read'],
    ['1 030 12 mm', 'm', 'unreadable', 'cannot be read'],
    ['5 constructor', 'm', 'unreadable', 'not known'],
    ['5 toString', 'm', 'unreadable', 'not known'],
    ['5 bytes', '1', 'unreadable', 'not known'],
    ['5 tempC', 'K', 'unreadable', 'not known'],
    ['5 m^', 'm', 'unreadable', 'not known'],
    ['5 m--m', 'm', 'unreadable', 'not known'],
    [`1${'0'.repeat(100)} m`, 'm', 'unreadable', 'too long'],
  ])('%s for %s: %s', (text, unit, kind, message) => {
    const problem = problemOf(() => parseQuantity(text, unit));
    expect(problem.message).toContain(message);
    expect(problem.kind).toBe(kind);
  });
});

describe('shown quantities', () => {
  test.each<[number, string, string, string]>([
    [0.01, 'm', 'mm', `10${thin}mm`],
    [1.31234e-4, 'm', 'um', `131.2${thin}µm`],
    [700, 'J/m^2', 'J/cm^2', `0.07${thin}J/cm²`],
    [0.18, '1', '%', `18${thin}%`],
    [2.5e-13 * (1 - 2 ** -52), 's', 'fs', `250${thin}fs`],
    [0, 'm', 'mm', `0${thin}mm`],
    [-0, 'm', 'mm', `0${thin}mm`],
    [-0.0005, 'm', 'mm', `−0.5${thin}mm`],
    [3.2e-7, 'm', 'm', `3.2 × 10⁻⁷${thin}m`],
    [-1e13, 'W/m^2', 'W/m^2', `−1 × 10¹³${thin}W/m²`],
    [Math.PI, 'rad', 'deg', '180°'],
    [Math.PI, 'rad', 'pi', `1${thin}π`],
    [Math.PI, 'rad', 'waves', `0.5${thin}waves`],
    [2 * Math.PI, 'rad', 'waves', `1${thin}wave`],
    [3, 'pulses', 'pulses', `3${thin}pulses`],
    [1, '1', 'pulses', `1${thin}pulse`],
    [1.295512, '1', '1', '1.296'],
    [250e3, '1/m', '1/mm', `250${thin}mm⁻¹`],
    [Infinity, 'm', 'mm', `∞${thin}mm`],
    [1.31e-4, 'm', 'auto:m', `131${thin}µm`],
    [0.9999999, 'm', 'auto:m', `1${thin}m`],
    [9.99999e-4, 'm', 'auto:m', `1${thin}mm`],
    [2e5, 'Hz', 'auto:Hz', `200${thin}kHz`],
    [5e-5, 'J', 'auto:J', `50${thin}µJ`],
    [2.5e-13, 's', 'auto:s', `250${thin}fs`],
    [0, 's', 'auto:s', `0${thin}s`],
    [999, 's', 'auto:s', `999${thin}s`],
    [1800, 's', 'auto:s', `30${thin}min`],
    [89e3, 's', 'auto:s', `24.72${thin}h`],
    [4e9, 'W', 'auto:W', `4${thin}GW`],
    [3.83e-10, 'm^2', 'auto:m^2', `383${thin}µm²`],
    [5e-5, 'm^2', 'auto:m^2', `50${thin}mm²`],
    [3.48e-17, 'm^3', 'auto:m^3', `34.8${thin}µm³`],
  ])('%s %s in %s: %s', (value, siUnit, displayUnit, text) => {
    expect(formatQuantity(value, siUnit, displayUnit)).toBe(text);
  });

  test.each([
    ['J/cm^2', 'J/cm²'],
    ['um', 'µm'],
    ['um/px', 'µm/px'],
    ['uJ', 'µJ'],
    ['mm^3/(W*min)', 'mm³/(W·min)'],
    ['deg', '°'],
    ['m^-1', 'm⁻¹'],
    ['1/m^2', 'm⁻²'],
    ['1', ''],
  ])('unit %s is written %s', (unit, text) => {
    expect(formatUnit(unit)).toBe(text);
  });

  test('NaN is never shown, units of another kind neither', () => {
    expect(problemOf(() => formatNumber(Number.NaN)).kind).toBe('impossible');
    expect(problemOf(() => formatQuantity(1, 'm', 's')).message).toContain('same kind');
    expect(problemOf(() => toUnit(1, 'm', 'blorps')).message).toContain('not known');
  });
});

describe('quantities of any size', () => {
  test.each([
    [5e-3, 'm', 'nm', '5 mm'],
    [2.3e-6, 'm', 'nm', '2300 nm'],
    [9.9994e-6, 'm', 'nm', '9999 nm'],
    [20, 'm', 'mm', '20 m'],
    [-20, 'm', 'mm', '−20 m'],
    [0, 'm', 'mm', '0 mm'],
    [1e-6, 'm', 'mm', '1 µm'],
    [1e-5, 'm', 'mm', '0.01 mm'],
    [1e-6, 's', 'fs', '1 µs'],
    [3e5, '1', '1', '300000'],
    [2e12, 'W/m^2', 'W/cm^2', '2 × 10⁸ W/cm²'],
    [1e4, 'rad', 'waves', '1592 waves'],
  ])('%f %s in %s reads %s', (value, si, display, text) => {
    expect(formatReadable(value, si, display).replace('\u202f', ' ')).toBe(text);
  });
  test.each([
    [5e-3, 'm', 'nm', 'mm'],
    [2.3e-6, 'm', 'nm', 'nm'],
    [2.3e-6, 'm', 'auto:m', 'um'],
    [0, 's', 'auto:s', 's'],
    [2e12, 'W/m^2', 'W/cm^2', 'W/cm^2'],
  ])('%f %s in %s is shown in %s', (value, si, display, unit) => {
    expect(readableUnit(value, si, display)).toBe(unit);
  });
});

describe('units of the library', () => {
  test('dimensions', () => {
    const none = { m: 0, kg: 0, s: 0, A: 0, K: 0, mol: 0, cd: 0, rad: 0 };
    for (const unit of ['1', '', 'none', 'pulses', 'px', 'rev', '%'])
      expect(dimensionsOf(unit)).toEqual(none);
    expect(dimensionsOf('J')).toEqual({ ...none, m: 2, kg: 1, s: -2 });
    expect(dimensionsOf('W/m^2')).toEqual({ ...none, kg: 1, s: -3 });
    expect(dimensionsOf('J/m^2')).toEqual({ ...none, kg: 1, s: -2 });
    expect(dimensionsOf('m^2/W')).toEqual({ ...none, kg: -1, s: 3 });
    expect(dimensionsOf('m^3/J')).toEqual({ ...none, m: 1, kg: -1, s: 2 });
    expect(dimensionsOf('Hz')).toEqual({ ...none, s: -1 });
    expect(dimensionsOf('1/m')).toEqual({ ...none, m: -1 });
    expect(dimensionsOf('rad')).toEqual({ ...none, rad: 1 });
    expect(dimensionsOf('W/(m*K)')).toEqual({ ...none, m: 1, kg: 1, s: -3, K: -1 });
  });

  test('known and unknown', () => {
    for (const unit of ['auto:m', 'µm', 'J/cm²', 'mm/s', '°', 'none']) expect(isKnownUnit(unit)).toBe(true);
    for (const unit of ['blorp', 'm/', 'auto:', 'usd', 'tempC'])
      expect(isKnownUnit(unit)).toBe(unit === 'auto:');
  });
});

describe('any text, any value', () => {
  const units: [string, string][] = [
    ['m', 'um'],
    ['m', 'auto:m'],
    ['m', 'in'],
    ['rad', 'deg'],
    ['rad', 'pi'],
    ['rad', 'waves'],
    ['J/m^2', 'J/cm^2'],
    ['1/m', '1/mm'],
    ['1', '%'],
    ['m^3/J', 'mm^3/(W*min)'],
    ['K', 'K'],
  ];

  test('what is shown reads back to the digits shown', () => {
    const value = fc
      .double({ min: -1e20, max: 1e20, noNaN: true })
      .filter((x) => x === 0 || Math.abs(x) > 1e-20);
    fc.assert(
      fc.property(value, fc.constantFrom(...units), (x, [si, display]) => {
        const back = parseQuantity(formatQuantity(x, si, display, 12), si);
        expectClose(back, x, { relative: 6e-12, source: 'half a unit of the twelfth digit' });
      }),
      { seed: 20, numRuns: cases(2000, 300) },
    );
  });

  test('hostile texts end in a number or in a Problem', () => {
    const pieces = fc.constantFrom(
      ...[
        '1',
        '0',
        '9',
        ',',
        '.',
        ' ',
        '-',
        '+',
        'e',
        'E',
        '/',
        '(',
        ')',
        '^',
        '*',
        'x',
        '10^',
        '⁻',
        '²',
        'm',
      ],
      ...[
        'um',
        'J',
        'pi',
        'π',
        '°',
        '%',
        "'",
        '"',
        '__proto__',
        'constructor',
        'kg',
        thin,
        'µ',
        '\u0000',
        '𝛑',
      ],
    );
    const mixed = fc.array(pieces, { maxLength: 14 }).map((parts) => parts.join(''));
    const text = fc.oneof(fc.string({ unit: 'binary', maxLength: 100 }), mixed);
    fc.assert(
      fc.property(text, fc.constantFrom('m', 'rad', '1', 'J/m^2'), (typed, unit) => {
        try {
          expect(Number.isFinite(parseQuantity(typed, unit))).toBe(true);
        } catch (error) {
          expect(error).toBeInstanceOf(Problem);
        }
      }),
      { seed: 21, numRuns: cases(20_000, 2000) },
    );
  });
});

describe('lists of radii', () => {
  test('both ends and equal steps', () => {
    const radii = readRadii('0:20:101 um');
    expect(radii).toHaveLength(101);
    expect(radii[0]).toBe(0);
    expect(radii[100]).toBe(20e-6);
    expectClose(radii[50]!, 10e-6, { relative: 4e-16 });
    expect([...readRadii('0,5:1:2 mm')]).toEqual([5e-4, 1e-3]);
    expect([...readRadii('0:1:2')]).toEqual([0, 1]);
    expect([...readRadii('3:3:1 mm')]).toEqual([3e-3]);
  });

  test.each([
    ['', 'unreadable'],
    ['0:20', 'unreadable'],
    ['0:20:1.5 um', 'unreadable'],
    ['0:20:101:3 um', 'unreadable'],
    ['0:20:101 kg', 'impossible'],
    ['20:0:101 um', 'impossible'],
    ['-1:20:101 um', 'impossible'],
    ['0:20:0 um', 'impossible'],
    ['0:20:1 um', 'impossible'],
    ['0:20:999999999 um', 'impossible'],
  ])('%s: %s', (text, kind) => {
    expect(problemOf(() => readRadii(text)).kind).toBe(kind);
  });
});
