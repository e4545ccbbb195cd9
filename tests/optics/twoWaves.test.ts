import { describe, expect, it } from 'vitest';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { alongOffset, riseOverHigher } from '../../lib/optics/offCentre.ts';
import { twoWavesInFocus } from '../../lib/optics/twoWaves.ts';
import type { Zone } from '../../lib/optics/zones.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { outcomesOf } from '../notebooks/designOutcomes.ts';

/** ∫ f over [0, end] by Simpson's rule. */
function simpson(f: (x: number) => number, end: number, steps: number): number {
  const h = end / steps;
  let sum = f(0) + f(end);
  for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * f(i * h);
  return (sum * h) / 3;
}

/** J0 as the mean of cos(x sin t) over t: no Bessel routine. */
function meanCosine(x: number): number {
  let sum = 0;
  for (let k = 0; k < 64; k++) sum += Math.cos(x * Math.sin(((k + 0.5) * Math.PI) / 64));
  return sum / 64;
}

describe('two waves in the focus', () => {
  const radii = Float64Array.from({ length: 21 }, (_, i) => i / 5);

  it('without a stop the whole beam is e^{−ϱ²}', () => {
    const { whole } = twoWavesInFocus(1.1, radii, undefined);
    for (const [i, u] of whole.entries())
      expectClose(u, Math.exp(-(radii[i]! ** 2)), { absolute: 1e-12, source: 'closed form' });
  });

  it('each part is its Hankel integral, summed by Simpson’s rule', () => {
    const random = createRandom(5210);
    for (let n = 0; n < cases(40, 6); n++) {
      const [ratio, stop] = [random.between(0.4, 1.8), random.between(1.05, 2)];
      const { whole, centre } = twoWavesInFocus(ratio, radii, stop);
      for (const i of [0, 3, 8, 20]) {
        const integrand = (x: number) => 2 * x * Math.exp(-x * x) * meanCosine(2 * radii[i]! * x);
        const closeness = { absolute: 1e-8, source: 'Simpson’s rule' };
        expectClose(centre[i]!, simpson(integrand, ratio, 600), closeness);
        expectClose(whole[i]!, simpson(integrand, ratio * stop, 600), closeness);
      }
    }
  });

  it('what is left has the irradiance of the profile in the focus, whatever the phase', () => {
    for (const phase of [0.3, 1, 1.7]) {
      const design = { 'plate.designPhase': phase * Math.PI, 'plate.apertureDiameter': 13e-3 };
      const outcomeOf = outcomesOf(design);
      const value = <T>(id: string) => valueOrThrow<T>(outcomeOf(id) as never);
      const waves = value<Record<string, Float64Array>>('explain.amplitudeOverRadius');
      expectClose(waves['irradiance']![0]!, value<number>('explain.axisIrradianceInFocus'), {
        absolute: 1e-12,
        source: 'closed form on the axis',
      });
      const highest = Math.max(...waves['irradiance']!);
      expectClose(highest, value<number>('spot.relativePeak'), {
        relative: 2e-3,
        source: 'peak of the profile',
      });
    }
  });

  it('the energy through the step is that of a Gaussian inside a disc', () => {
    const outcome = outcomesOf({ 'expander.magnification': 1.7 })('explain.centreEnergy');
    const ratio = 10 / 8.5;
    const inside = simpson((x) => 4 * x * Math.exp(-2 * x * x), ratio, 400);
    expectClose(valueOrThrow<number>(outcome as never), inside, { relative: 1e-9, source: 'Simpson’s rule' });
  });
});

/** |U|² at (ξ, 0) summed over the plate in polar coordinates. */
function bySum(zones: readonly Zone[], offset: number, zeta: number, xi: number): number {
  const [rings, angles] = [300, 128];
  let [re, im, inner] = [0, 0, 0];
  for (const { outer, phase } of zones) {
    const end = Math.min(outer, 6);
    const h = (end - inner) / rings;
    for (let n = 0; n <= rings; n++) {
      const r = inner + n * h;
      const weight = ((n === 0 || n === rings ? 1 : n % 2 === 1 ? 4 : 2) * h * r) / 3;
      for (let k = 0; k < angles; k++) {
        const [x, y] = [r * Math.cos((2 * Math.PI * k) / angles), r * Math.sin((2 * Math.PI * k) / angles)];
        const amplitude = (weight * 2 * Math.exp(-((x - offset) ** 2) - y * y)) / angles;
        const angle = phase - zeta * r * r - 2 * xi * x;
        re += amplitude * Math.cos(angle);
        im += amplitude * Math.sin(angle);
      }
    }
    inner = end;
  }
  return re * re + im * im;
}

describe('a beam beside the middle of the plate', () => {
  const zones = (stop: number, phase = Math.PI) => [
    { outer: 1, phase },
    { outer: stop, phase: 0 },
  ];

  it('is the sum over the plate', () => {
    const places = Float64Array.of(-2.1, -0.9, 0, 0.4, 1.3);
    for (const [stop, zeta, offset] of [
      [1.4, 0, 0.05],
      [1.4, 0.42, 0.1],
      [9, 0.363, 0.05],
    ] as const) {
      const values = alongOffset(zones(stop, 2.9), offset, zeta, places);
      for (const [i, value] of values.entries())
        expectClose(value, bySum(zones(stop, 2.9), offset, zeta, places[i]!), {
          absolute: 1e-6,
          source: 'Simpson’s rule over rings, 128 angles',
        });
    }
  });

  it('behind half a wave the focus is alike on both sides, a plane beside it is not', () => {
    const places = Float64Array.from({ length: 161 }, (_, i) => i / 20 - 4);
    const imbalance = (zeta: number, phase?: number) =>
      riseOverHigher(places, alongOffset(zones(1e4, phase), 0.05, zeta, places));
    expect(imbalance(0)).toBeLessThan(1e-9);
    expect(imbalance(0, 0.9 * Math.PI)).toBeGreaterThan(0.03);
    expect(imbalance(0.363)).toBeGreaterThan(0.06);
    expect(imbalance(0.363)).toBeLessThan(0.09);
    expect(riseOverHigher(Float64Array.of(-1, 0, 1), Float64Array.of(2, 0, 1))).toBe(0.5);
  });
});
