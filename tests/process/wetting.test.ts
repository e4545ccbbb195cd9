import { describe, expect, it } from 'vitest';
import { cassieAngle, sinusoidRoughness, wenzelAngle } from '../../lib/process/wetting.ts';
import { expectClose } from '../close.ts';

/** Mean of √(1 + a² cos² t) over a period by the trapezium rule, which converges fast for what repeats. */
function byArcLength(depth: number, period: number): number {
  const [a, count] = [(Math.PI * depth) / period, 200_000];
  let sum = 0;
  for (let i = 0; i < count; i++) sum += Math.hypot(1, a * Math.cos((2 * Math.PI * i) / count));
  return sum / count;
}

describe('roughness of a sinusoidal profile', () => {
  it.each([1e-9, 50e-9, 200e-9, 1e-6, 20e-6])('%d m deep: the arc length', (depth) => {
    expectClose(sinusoidRoughness(depth, 1e-6), byArcLength(depth, 1e-6), { relative: 1e-9 });
  });

  it('is 1 where flat, 1 + a²/4 where shallow and 2h/Λ where deep', () => {
    expect(sinusoidRoughness(0, 1e-6)).toBe(1);
    const a = Math.PI * 0.01;
    // The next term is 3a⁴/64.
    expectClose(sinusoidRoughness(10e-9, 1e-6), 1 + (a * a) / 4, { absolute: a ** 4 / 20, relative: 0 });
    expectClose(sinusoidRoughness(1e-3, 1e-6), 2000, { relative: 1e-5 });
  });
});

describe('contact angles', () => {
  const degree = Math.PI / 180;

  it('Wenzel: 60° at r = 1.5 is 41.41°, 120° is 138.59°, and neither goes beyond its ends', () => {
    expectClose(wenzelAngle(60 * degree, 1.5), Math.acos(0.75), { relative: 1e-12 });
    expectClose(wenzelAngle(120 * degree, 1.5), Math.acos(-0.75), { relative: 1e-12 });
    expect(wenzelAngle(30 * degree, 3)).toBe(0);
    expect(wenzelAngle(170 * degree, 3)).toBe(Math.PI);
  });

  it('Cassie and Baxter: 110° with a tenth touching is 159.1°, and all touching changes nothing', () => {
    expectClose(cassieAngle(110 * degree, 0.1), 159.1 * degree, { absolute: 0.05 * degree, relative: 0 });
    expectClose(cassieAngle(110 * degree, 1), 110 * degree, { relative: 1e-12 });
  });
});
