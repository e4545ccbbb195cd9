import { describe, expect, it } from 'vitest';
import table from '../../data/materials/opticalConstants.json' with { type: 'json' };
import { isKnownSource } from '../../lib/materials/bibliography.ts';
import {
  constantsAt,
  sampleById,
  samples,
  samplesOf,
  wavelengthsOf,
} from '../../lib/materials/opticalConstants.ts';
import { expectClose } from '../close.ts';

describe('optical constants', () => {
  it('every row names a sample and its paper', () => {
    expect(table.rows).toHaveLength(724);
    for (const [sample, , , , paper] of table.rows) {
      expect(sampleById(sample as string).source).toBe(paper);
      expect(isKnownSource(paper as string)).toBe(true);
    }
    expect(new Set(table.rows.map(([sample]) => sample)).size).toBe(samples.length);
  });

  it('are those of the row at its wavelength', () => {
    for (const [sample, wavelength, n, k] of table.rows as [string, number, number, number, string][]) {
      const at = constantsAt(sample, wavelength * 1e-6);
      expectClose(at.n, n, { relative: 1e-9, absolute: 1e-12 });
      expectClose(at.k, k, { relative: 1e-9, absolute: 1e-12 });
    }
  });

  // Titanium at 1030 nm as three papers have it, to the digits of the table.
  it.each([
    ['titaniumJohnson', 3.42, 3.99],
    ['titaniumMash', 3.39, 3.61],
    ['titaniumPalm', 2.86, 2.72],
  ])('between rows: %s at 1030 nm %d + %di', (sample, n, k) => {
    const at = constantsAt(sample, 1.03e-6);
    expectClose(at.n, n, { absolute: 5e-3, relative: 0 });
    expectClose(at.k, k, { absolute: 5e-3, relative: 0 });
  });

  it('are linear between rows', () => {
    const [[, low, nLow], [, high, nHigh]] = table.rows.filter(([sample]) => sample === 'gold') as [
      [string, number, number],
      [string, number, number],
    ];
    const middle = constantsAt('gold', 1e-6 * (low + 0.25 * (high - low)));
    expectClose(middle.n, nLow + 0.25 * (nHigh - nLow), { relative: 1e-12 });
  });

  it('end with their wavelengths, and say so', () => {
    for (const { id } of samples) {
      const [first, last] = wavelengthsOf(id);
      expect(constantsAt(id, first).n).toBeGreaterThan(0);
      expect(constantsAt(id, last).n).toBeGreaterThan(0);
      expect(() => constantsAt(id, last * 1.01)).toThrow(/are known from \d+\snm to \d+\snm/);
      expect(() => constantsAt(id, first * 0.99)).toThrow(/Choose another sample/);
    }
    expect(() => constantsAt('cheese', 1e-6)).toThrow(/There are no optical constants of 'cheese'/);
  });

  it('of titanium there are three samples, and of brass none', () => {
    expect(samplesOf('titanium').map(({ id }) => id)).toEqual([
      'titaniumJohnson',
      'titaniumMash',
      'titaniumPalm',
    ]);
    expect(samplesOf('brass')).toEqual([]);
  });
});
