import { describe, expect, it } from 'vitest';
import type { Spot } from '../../lib/optics/askedSpot.ts';
import type { Light } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { type CouponGrid, layCoupon, steps } from '../../lib/process/coupon.ts';
import { markOf } from '../../lib/process/marks.ts';
import { expectClose } from '../close.ts';
import { lightBehind } from '../optics/lightBehind.ts';

const round = lightBehind([
  { outer: 1, phase: Math.PI },
  { outer: 1.4, phase: 0 },
]);
const half = 1.09 * round.beamRadius;
const lights: Readonly<Record<string, Light>> = {
  round,
  crossed: {
    ...round,
    plate: { kind: 'crossed', halfWidthX: half, halfWidthY: half, phase: Math.PI, stop: 0 },
  },
};
const grid: CouponGrid = {
  energies: [1e-6, 2e-6, 4e-6, 8e-6],
  planes: [-5e-5, 0],
  pulses: [1, 10],
  repeats: 2,
};
const spacing = { pitchFactor: 3, leastPitch: 1e-5 };

describe.each(Object.entries(lights))('a coupon for a %s spot', (_kind, light) => {
  const spots = new Map<number, Spot>(grid.planes.map((z) => [z, spotAt(light, z)]));
  // In the focus 1 µJ lies just below threshold; ten pulses lower it by a third.
  const levelOf = (energy: number, pulses: number) =>
    (1.05 * spots.get(0)!.peak * 1e-6 * pulses ** -0.18) / energy;
  const coupon = layCoupon(
    grid,
    (energy, z, pulses) => markOf(spots.get(z)!, levelOf(energy, pulses)),
    spacing,
  );

  it('has every energy in every plane with every number of pulses, as often as wanted', () => {
    expect(coupon.spots).toHaveLength(4 * 2 * 2 * 2);
    const kinds = coupon.spots.map(({ energy, z, pulses }) => `${energy} ${z} ${pulses}`);
    expect(new Set(kinds).size).toBe(16);
    expect(coupon.spots.map(({ number }) => number)).toEqual(kinds.map((_, i) => i + 1));
  });

  it('predicts marks as large as the spot is above threshold', () => {
    for (const { energy, z, pulses, mark } of coupon.spots) {
      const level = levelOf(energy, pulses);
      const area = level < spots.get(z)!.peak ? spots.get(z)!.areaAbove(level) : 0;
      expectClose(mark.area, area, { relative: 1e-12, source: 'Spot.areaAbove' });
    }
    const focus = coupon.spots.filter(({ z, pulses }) => z === 0 && pulses === 1);
    expect(focus[0]!.mark.area).toBe(0);
    expect(focus[1]!.mark.area).toBeGreaterThan(0);
  });

  it('lies on a grid whose pitch is that of the largest mark, and leaves a row between planes', () => {
    const largest = Math.max(...coupon.spots.map(({ mark }) => mark.outerDiameter));
    expect(coupon.pitch).toBeGreaterThanOrEqual(3 * largest * (1 - 1e-9));
    expect(coupon.pitch).toBeLessThan(3 * largest * 1.1);
    const places = coupon.spots.map(
      ({ x, y }) => `${Math.round(x / coupon.pitch)} ${Math.round(y / coupon.pitch)}`,
    );
    expect(new Set(places).size).toBe(coupon.spots.length);
    expect(new Set(places.map((place) => place.split(' ')[1]))).toEqual(
      new Set(['0', '1', '2', '3', '5', '6', '7', '8']),
    );
  });
});

describe('what is dialled', () => {
  it.each([
    [steps(2e-6, 40e-6, 4, true), [2e-6, 5.43e-6, 14.7e-6, 40e-6]],
    [steps(-1e-4, 1e-4, 3), [-1e-4, 0, 1e-4]],
    [steps(1e-4, -1e-4, 4), [1e-4, 3.33e-5, -3.33e-5, -1e-4]],
    [steps(3e-6, 9e-6, 1, true), [3e-6]],
    [steps(1e-6, 1e-6, 5, true), [1e-6]],
  ])('%j', (found, expected) => {
    expect(found).toEqual(expected);
  });
});

it('a coupon without any mark has the least pitch', () => {
  const none = { area: 0, outerDiameter: 0, innerDiameter: 0, cut: false };
  expect(layCoupon(grid, () => none, spacing).pitch).toBe(1e-5);
});
