import { describe, expect, test } from 'vitest';
import { complexErrorFunction, errorFunction, faddeeva } from '../../lib/numerics/complexErrorFunction.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';

/** A function value re + i im at x + iy. */
interface Point {
  x: number;
  y: number;
  re: number;
  im: number;
}

const values: { faddeeva: Point[]; erf: Point[] } = reference('errorFunction');
const source = 'mpmath, 40 digits: reference/errorFunction.json';

describe('Faddeeva function', () => {
  test.each(values.faddeeva)('w($x + i $y)', ({ x, y, re, im }) => {
    const w = faddeeva(x, y);
    const size = Math.hypot(re, im);
    expectClose(Math.hypot(w.re - re, w.im - im) / size, 0, { absolute: 4e-15, source });
  });

  test('w(ix) = e^{x²} erfc x: erfcx(1) as tabulated', () => {
    // M. Abramowitz & I. A. Stegun, NBS AMS 55 (1964), table 7.1 (memory): erf 1 = 0.8427007929.
    expectClose(1 - faddeeva(0, 1).re / Math.E, 0.8427007929, { absolute: 5e-11, source: 'AMS 55 (memory)' });
  });

  test('derivative w′ = −2zw + 2i/√π at seeded points', () => {
    const random = createRandom(7101);
    for (let i = 0; i < cases(4000, 400); i++) {
      const x = random.between(-8, 8);
      const y = random.between(0, 8);
      const step = 1e-4;
      // Fourth-order difference: truncation 1e-16·|w⁗′|/30, rounding 1e-15/step.
      const slope =
        (8 * (faddeeva(x + step, y).re - faddeeva(x - step, y).re) -
          (faddeeva(x + 2 * step, y).re - faddeeva(x - 2 * step, y).re)) /
        (12 * step);
      const w = faddeeva(x, y);
      expectClose(slope, -2 * (x * w.re - y * w.im), { absolute: 4e-11, source: 'DLMF 7.10.2 (memory)' });
    }
  });

  test('stays finite far out', () => {
    for (const [x, y] of [
      [1e6, 0],
      [0, 1e6],
      [700, 60],
      [-300, 1],
    ] as const) {
      const w = faddeeva(x, y);
      expectClose(w.im * (x * x + y * y) * Math.sqrt(Math.PI), x, { absolute: 1e-3, relative: 1e-4 });
      expectClose(w.re * (x * x + y * y) * Math.sqrt(Math.PI), y, { absolute: 1e-3, relative: 1e-4 });
    }
  });
});

describe('error function', () => {
  test.each(values.erf)('erf($x + i $y)', ({ x, y, re, im }) => {
    const erf = complexErrorFunction(x, y);
    const size = Math.hypot(re, im);
    expectClose(Math.hypot(erf.re - re, erf.im - im) / size, 0, { absolute: 1e-14, source });
  });

  test('real argument: odd, one far out', () => {
    expect(errorFunction(-0.3)).toBe(-errorFunction(0.3));
    expect(errorFunction(8)).toBe(1);
  });
});
