import { expect, it } from 'vitest';
import { besselJ0 } from '../../lib/numerics/bessel.ts';
import { tabulate, tabulated } from '../../lib/numerics/polynomialTable.ts';

it('holds J0 to 8e-10 up to both ends of every piece', () => {
  for (const end of [0, 0.3, 1, 47.04, 600]) {
    const table = tabulate(besselJ0, end);
    let most = 0;
    for (let i = 0; i <= 5000; i++) {
      const x = (end * i) / 5000;
      most = Math.max(most, Math.abs(tabulated(table, x) - besselJ0(x)));
    }
    expect(most, `up to ${end}`).toBeLessThan(8e-10);
  }
});

it('is exact for a polynomial of degree 7', () => {
  const f = (x: number) => 1 + x - 2 * x ** 3 + 0.5 * x ** 7;
  const table = tabulate(f, 1.9);
  for (const x of [0, 0.25, 0.999, 1, 1.5, 1.9]) expect(tabulated(table, x)).toBeCloseTo(f(x), 12);
});
