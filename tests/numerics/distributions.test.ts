import { describe, expect, it } from 'vitest';
import {
  chiSquareTail,
  fewRunsProbability,
  fisherTail,
  incompleteBeta,
  logGamma,
  studentQuantile,
  studentTails,
} from '../../lib/numerics/distributions.ts';
import { expectClose } from '../close.ts';

describe('distributions', () => {
  it('the gamma function: factorials and √π', () => {
    expectClose(Math.exp(logGamma(6)), 120, { relative: 1e-13, source: '5!' });
    expectClose(logGamma(0.5), Math.log(Math.PI) / 2, { relative: 1e-13, source: 'closed form' });
  });

  it('incomplete beta: closed forms', () => {
    for (const x of [0.01, 0.3, 0.77, 0.999]) {
      expectClose(incompleteBeta(x, 3, 1), x ** 3, { relative: 1e-12, source: 'x³' });
      expectClose(incompleteBeta(x, 2, 2), x * x * (3 - 2 * x), { relative: 1e-12, source: 'closed form' });
    }
  });

  it.each([
    [1, 12.706204736432095],
    [2, 4.302652729911275],
    [10, 2.2281388519649385],
    [30, 2.0422724563012373],
    [1e6, 1.9599663],
  ])('Student, %d degrees of freedom, 95 %%', (freedom, quantile) => {
    expectClose(studentQuantile(0.95, freedom), quantile, {
      relative: 1e-6,
      source: 'JCGM 100 table G.2, and scipy',
    });
    expectClose(studentTails(quantile, freedom), 0.05, { relative: 1e-5 });
  });

  it('Fisher: the square of t, and a closed form', () => {
    expectClose(fisherTail(2.5 ** 2, 1, 7), studentTails(2.5, 7), {
      relative: 1e-12,
      source: 'F(1, n) = t²',
    });
    // F(2, n): (1 + 2F/n)^(−n/2).
    expectClose(fisherTail(3, 2, 9), (1 + 6 / 9) ** -4.5, { relative: 1e-12, source: 'closed form' });
  });

  it('χ²: closed forms for even degrees of freedom, both routes', () => {
    for (const value of [0.5, 2, 5, 9, 30]) {
      expectClose(chiSquareTail(value, 2), Math.exp(-value / 2), { relative: 1e-12, source: 'e^(−x/2)' });
      const half = value / 2;
      const six = Math.exp(-half) * (1 + half + half ** 2 / 2);
      expectClose(chiSquareTail(value, 6), six, { relative: 1e-11, source: 'Poisson sum' });
    }
  });

  it('runs: counted by hand', () => {
    // Two of each: + + − −, + − + −, + − − + and their mirrors: two of six have two runs, two have three.
    expectClose(fewRunsProbability(2, 2, 2), 2 / 6, { relative: 1e-12, source: 'counted' });
    expectClose(fewRunsProbability(3, 2, 2), 4 / 6, { relative: 1e-12, source: 'counted' });
    expect(fewRunsProbability(4, 2, 2)).toBe(1);
    // One plus among four: 2 of 5 places are ends with two runs.
    expectClose(fewRunsProbability(2, 1, 4), 2 / 5, { relative: 1e-12, source: 'counted' });
    expect(fewRunsProbability(1, 3, 0)).toBe(1);
  });
});
