import { describe, expect, test } from 'vitest';
import { besselOrders, scaledModifiedBesselOrders } from '../../lib/numerics/besselOrders.ts';
import { findRoot } from '../../lib/numerics/roots.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';

const { bessel } = reference('apertures');
const orders = reference('besselOrders');
/** Values of several orders at one argument. */
interface Listed {
  x: number;
  orders: number[];
  values: number[];
}

const source = 'mpmath, 40 digits: reference/besselOrders.json';

describe('J_m', () => {
  test.each(bessel.values as { x: number; J0: number; J1: number }[])('J0 and J1 at $x', ({ x, J0, J1 }) => {
    const found = besselOrders(x, 30);
    expectClose(found[0]!, J0, { absolute: 1e-15, source: 'reference/apertures.json' });
    expectClose(found[1]!, J1, { absolute: 1e-15, source: 'reference/apertures.json' });
  });

  test.each(['J0_zeros', 'J1_zeros', 'J2_zeros'].map((name, order) => ({ name, order })))(
    '$name as published',
    ({ name, order }) => {
      for (const zero of bessel[name]) {
        const found = findRoot((x) => besselOrders(x, 2)[order]!, zero - 0.3, zero + 0.3, 1e-15);
        expectClose(found, zero, { relative: 1e-14, source: bessel.published });
      }
    },
  );

  test.each(orders.J as Listed[])('orders $orders at $x', ({ x, orders: list, values }) => {
    const found = besselOrders(x, Math.max(...list));
    const upward = besselOrders(x, Math.min(Math.max(...list), Math.floor(x)));
    list.forEach((m, i) => {
      expectClose(found[m]!, values[i]!, { absolute: 1e-14, source });
      // Beyond the turning point the recurrence is relative.
      if (m > x) expectClose(found[m]!, values[i]!, { relative: 1e-13, source });
      if (m < upward.length) expectClose(upward[m]!, values[i]!, { absolute: 1e-14, source });
    });
  });

  test('J_m(−x) = (−1)^m J_m(x); J_m(0) = 0 but for m = 0; J0 alone', () => {
    const there = besselOrders(3.7, 9);
    besselOrders(-3.7, 9).forEach((value, m) => {
      expect(value).toBe(m % 2 ? -there[m]! : there[m]!);
    });
    expect([...besselOrders(0, 3)]).toEqual([1, 0, 0, 0]);
    expectClose(besselOrders(0.4, 0)[0]!, 0.960398226659563, { absolute: 1e-15, source: 'mpmath' });
  });

  test('no overflow for many orders of a small argument', () => {
    const found = besselOrders(1e-7, 200);
    expectClose(found[1]!, 5e-8, { relative: 1e-14, source: 'series' });
    expect(found.every(Number.isFinite)).toBe(true);
  });
});

describe('scaled I_m', () => {
  test.each(orders.scaledI as Listed[])('orders $orders at $x', ({ x, orders: list, values }) => {
    const found = scaledModifiedBesselOrders(x, Math.max(...list));
    list.forEach((m, i) => {
      expectClose(found[m]!, values[i]!, { relative: 1e-14, source });
    });
  });

  test('generating function: I0 + 2ΣI_m = e^x', () => {
    const found = scaledModifiedBesselOrders(-12, 60);
    const sum = found.reduce((total, value, m) => total + (m ? 2 : 1) * value * (-1) ** m, 0);
    expectClose(sum, 1, { absolute: 1e-14, source: 'DLMF 10.35.5 (memory)' });
  });
});
