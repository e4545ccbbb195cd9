import { describe, expect, it } from 'vitest';
import { backFactor, type HeatInput, pulseRise } from '../../lib/process/heatPulse.ts';
import {
  allowedInputs,
  inverseRootSum,
  linesRise,
  planeRise,
  pointRise,
  scanRise,
  staticRise,
  zetaThreeHalves,
} from '../../lib/process/heatSums.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';

const { cases: rows, zeta32 } = reference('heat');
// biome-ignore lint/suspicious/noExplicitAny: plain data of the reference
const cases: { name: string; [key: string]: any }[] = rows;
// Stated precision of the reference; sums of up to 1000 rounded terms add 1e-13.
const closeness = { relative: 1.1e-12, source: 'heat.json, mpmath sums' };

describe.each(cases)('$name, as in heat.json', (one) => {
  const heat: HeatInput = {
    energy: one.Q,
    radius: one.w,
    diffusivity: one.k / (one.rho * one.c),
    heatCapacity: one.rho * one.c,
  };
  const line = { speed: one.v, rate: one.f, count: one.N };

  it('one pulse', () => {
    expectClose(heat.diffusivity, one.chi, closeness);
    for (const { r, t, dT } of one.single) expectClose(pulseRise(heat, r * r, t), dT, closeness);
  });

  it('pulses in one place', () => {
    for (const { r, N, dT } of one.static) expectClose(staticRise(heat, one.f, N, r), dT, closeness);
  });

  it('pulses along a line', () => {
    for (const { x, y, dT } of one.scan) expectClose(scanRise(heat, line, x, y), dT, closeness);
  });

  it('lines beside each other', () => {
    const field = { ...line, lines: one.L, spacing: one.pitch, period: one.period };
    for (const { x, y, dT } of one.lines) expectClose(linesRise(heat, field, x, y), dT, closeness);
  });

  it('the point limit', () => {
    expectClose(zetaThreeHalves, zeta32, closeness);
    expectClose(pointRise(heat, one.f, one.pointLimit.N), one.pointLimit.dT, closeness);
    expectClose(pointRise(heat, one.f), one.pointLimit.infinite, closeness);
    expectClose(pointRise({ ...heat, radius: 0 }, one.f, 20), staticRise({ ...heat, radius: 0 }, one.f, 20), {
      relative: 1e-13,
      source: 'a spot without size',
    });
  });
});

describe('heat into the depth only', () => {
  const steel = { diffusivity: 3.75e-6, heatCapacity: 4e6 };

  it('a wide spot gives the same as an even surface', () => {
    const radius = 1;
    const wide = { ...steel, radius, energy: 100 * (Math.PI * radius ** 2) * 0.5 };
    // Spreading over 8χt/w² = 3e-7 at the oldest is left out of the even surface.
    expectClose(staticRise(wide, 1e5, 1000), planeRise(steel, 100, 1e5, 1000), { relative: 3e-7 });
  });

  it('Σ n^(−1/2) by Euler and Maclaurin', () => {
    for (const count of [31, 100, 5000]) {
      let sum = 0;
      for (let n = count; n >= 1; n--) sum += 1 / Math.sqrt(n);
      expectClose(inverseRootSum(count), sum, { relative: 1e-12, source: 'one by one' });
    }
  });

  // Σ n^(−1/2) = 2√N − 1.46: the allowed number goes with the square of the limit over the fluence, to 1.46/√N.
  it('the allowed number goes with 1/P² (Weber et al. 2017)', () => {
    const [limit, rate] = [1000, 1e5];
    for (const fluence of [5, 50, 500]) {
      const count = allowedInputs(steel, fluence, rate, limit);
      expect(planeRise(steel, fluence, rate, count)).toBeLessThanOrEqual(limit);
      expect(planeRise(steel, fluence, rate, count + 1)).toBeGreaterThan(limit);
      const twice = allowedInputs(steel, 2 * fluence, rate, limit);
      expectClose(count / twice, 4, { relative: 3 / Math.sqrt(twice), source: '1/P², weber2017' });
    }
    // Twice the rate at the same fluence: twice the power, but pulses twice as often count twice; in time it is 1/P² again.
    const perTime = [rate, 2 * rate].map((f) => allowedInputs(steel, 50, f, limit) / f);
    expectClose(perTime[0]! / perTime[1]!, 4, { relative: 1e-2, source: '1/P², weber2017' });
  });
});

it('the back of a plate: both sums agree, and late heat fills the thickness', () => {
  for (const spread of [0.3, 1, 3, 10].map((part) => part / Math.PI)) {
    let images = 1;
    for (let m = 1; m < 40; m++) images += 2 * Math.exp((-m * m) / spread);
    expectClose(backFactor(1, spread), images, { relative: 1e-14, source: 'images, one by one' });
  }
  const plate: HeatInput = {
    energy: 1,
    radius: 1e3,
    diffusivity: 1e-5,
    heatCapacity: 3e6,
    thickness: 1e-3,
  };
  const even = 2 / (Math.PI * 1e6) / (3e6 * 1e-3);
  // A second of diffusion, ten times d²/χ: all depths alike to e^(−π²·10), and the spread of 8χt/w² is 1e-10.
  expectClose(pulseRise(plate, 0, 1), even, { relative: 1e-9, source: 'heat over capacity' });
});
