import { describe, expect, it } from 'vitest';
import { besselJ0 } from '../../lib/numerics/bessel.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { findRoot, findRoots } from '../../lib/numerics/roots.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';

describe('one root', () => {
  const known: readonly [name: string, f: (x: number) => number, low: number, high: number, root: number][] =
    [
      ['√2', (x) => x * x - 2, 0, 2, Math.SQRT2],
      ['ln 2', (x) => Math.exp(x) - 2, -5, 5, Math.LN2],
      ['π', Math.sin, 3, 4, Math.PI],
      ['of a falling function', (x) => 1 - x, -3, 7, 1],
      ['of a steep function', (x) => Math.expm1(50 * (x - 0.1)), 0, 3, 0.1],
      ['of a kinked function', (x) => (x < 0.3 ? x - 0.3 : 1e3 * (x - 0.3)), -1, 1, 0.3],
      ['at a jump', (x) => (x < 0.7 ? -1 : 1), 0, 1, 0.7],
      ['between tiny numbers', (x) => x - 3e-7, 0, 1e-6, 3e-7],
    ];
  for (const [name, f, low, high, root] of known) {
    it(`${name}: to 1e-13`, () => {
      const found = findRoot(f, low, high);
      expectClose(found, root, { absolute: 1e-13, relative: 1e-15, source: 'closed form' });
      expectClose(findRoot(f, high, low), root, { absolute: 1e-13, relative: 1e-15, source: 'ends swapped' });
    });
  }

  it('a root of third order: as exact as the function tells it from 0', () => {
    // (x − 1)³ is below 1e-39 within 1e-13 of its root; the bracket still closes there.
    expectClose(
      findRoot((x) => (x - 1) ** 3, -3, 2.5),
      1,
      { absolute: 1e-13, source: 'closed form' },
    );
  });

  it('cubics with known roots: to 1e-12', () => {
    const random = createRandom(5);
    for (let i = 0; i < cases(2000, 200); i++) {
      const root = random.between(-4, 4);
      const b = random.between(-2, 2);
      const c = b * b + random.between(0.1, 3);
      // The other two roots are complex: x² + bx + c with c > b²/4.
      const f = (x: number) => (x - root) * (x * x + b * x + c);
      expectClose(findRoot(f, -5, 5), root, { absolute: 1e-12, source: 'by construction' });
    }
  });

  it('an end that is a root is the answer; one sign at both ends is refused', () => {
    expect(findRoot((x) => x, 0, 1)).toBe(0);
    expect(findRoot((x) => x - 1, 0, 1)).toBe(1);
    expect(() => findRoot((x) => x * x + 1, -1, 1)).toThrow(RangeError);
  });
});

describe('all roots', () => {
  it('zeros of J0 in order', () => {
    const found = findRoots(besselJ0, 0, 16, 64);
    const expected: number[] = reference('apertures').bessel.J0_zeros;
    expect(found).toHaveLength(expected.length);
    expected.forEach((zero, i) => {
      // Zeros are given to 16 digits; J0 is good to 4e-16 and its slope there is above 0.2.
      expectClose(found[i]!, zero, { absolute: 1e-13, relative: 1e-15, source: 'apertures.json' });
    });
  });

  it('roots on the points looked at count once', () => {
    expect(findRoots((x) => x * (x - 1) * (x - 2), 0, 2, 4)).toEqual([0, 1, 2]);
    expect(findRoots((x) => x * x + 1, -1, 1, 10)).toEqual([]);
  });
});
