import { describe, expect, it, test } from 'vitest';
import { besselJ0 } from '../../lib/numerics/bessel.ts';
import { panelledRule } from '../../lib/numerics/gaussLegendre.ts';
import { irradianceOfCrossedStep } from '../../lib/optics/crossedStep.ts';
import { type Light, planeOfDefocus } from '../../lib/optics/light.ts';
import { readOffAxisTable, tabulateOffAxis } from '../../lib/optics/offAxisTable.ts';
import { radiusScale, roundIrradianceAt } from '../../lib/optics/roundSpot.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { tiltedSpot } from '../../lib/optics/tiltedSpot.ts';
import { gaussianSpot } from '../../lib/process/gaussianSpot.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';
import { lightBehind } from './lightBehind.ts';

/** From 1 at half the reach smoothly to 0 at the reach; what it leaves out turns the spectrum by 1e-5 at most. */
function taper(distance: number, reach: number): number {
  const t = Math.min(1, Math.max(0, 2 - (2 * distance) / reach));
  return t ** 4 * (35 - 84 * t + 70 * t * t - 20 * t ** 3);
}

/** ∫∫ I e^{−i(qx·x + qy·y)} over a square grid of `step`, x row by row. */
function transform(values: ArrayLike<number>, points: Float64Array, qx: number, qy: number) {
  let [re, im] = [0, 0];
  const step = points[1]! - points[0]!;
  for (let row = 0, i = 0; row < points.length; row++) {
    for (let column = 0; column < points.length; column++, i++) {
      const angle = qx * points[column]! + qy * points[row]!;
      re += values[i]! * Math.cos(angle) * step * step;
      im -= values[i]! * Math.sin(angle) * step * step;
    }
  }
  return { re, im };
}

/** None on an axis, where the spectrum of straight edges has its cusp, which the taper rounds off. */
const frequencies = [
  [0.7, 0.5],
  [1.1, 0.6],
  [-0.4, 1.9],
  [2.6, -1.3],
] as const;

describe('spectrum of a round spot', () => {
  const source = 'dose.json';
  for (const { name, zones, zeta, spectrum } of reference('dose').cases) {
    it(`is that of the reference: ${name}`, () => {
      const light = lightBehind(zones.map(([outer, phase]: [number, number]) => ({ outer, phase })));
      const z = planeOfDefocus(light, zeta);
      const spot = spotAt(light, z);
      for (const { q, M } of spectrum) {
        const scaled = q / radiusScale(light, z);
        expectClose(spot.spectrum(scaled, 0).re, M, { absolute: 1e-9, source });
        expectClose(spot.spectrum(0.6 * scaled, -0.8 * scaled).re, M, { absolute: 1e-9, source });
      }
      expect(spot.spectrum(0, 0)).toEqual({ re: 1, im: 0 });
    });
  }

  it('of M² = 1.3 is that of the blurred profile', () => {
    const light = lightBehind(
      [
        { outer: 1.1, phase: 2.5 },
        { outer: 1.5, phase: 0 },
      ],
      { beamPropagationRatio: 1.3 },
    );
    const z = planeOfDefocus(light, 0.8);
    const scale = radiusScale(light, z);
    const edges = Array.from({ length: 201 }, (_, i) => i);
    const { nodes: radii, weights } = panelledRule(edges, 16);
    const values = roundIrradianceAt(
      light,
      z,
      radii.map((radius) => radius * scale),
    );
    const whole = (Math.PI / 2) * spotAt(light, z).transmission;
    const ring = radii.map((r, i) => 2 * Math.PI * weights[i]! * r * values[i]! * taper(r, 200));
    const at = (q: number) => ring.reduce((sum, value, i) => sum + value * besselJ0(q * radii[i]!), 0);
    for (const q of [0.5, 1.5, 2.5, 4])
      expectClose(spotAt(light, z).spectrum(q / scale, 0).re, at(q) / whole, {
        absolute: 1e-5,
        source: 'Hankel transform of the profile out to 200 w0',
      });
  });

  it('ends at 4R/w behind a stop', () => {
    const light = lightBehind([
      { outer: 1, phase: Math.PI },
      { outer: 1.4, phase: 0 },
    ]);
    const spot = spotAt(light, 0);
    const end = spot.spectrumEnd(0.3);
    expectClose(end * radiusScale(light, 0), 4 * 1.4, { relative: 1e-12, source: 'discs no longer overlap' });
    expect(spot.spectrum(end * 1.0001, 0)).toEqual({ re: 0, im: 0 });
    expect(Math.abs(spot.spectrum(end * 0.97, 0).re)).toBeGreaterThan(1e-7);
  });
});

describe('spectrum of straight steps', () => {
  const points = Float64Array.from({ length: 481 }, (_, i) => (i - 240) * 0.4);
  const window = points.map((x) => taper(Math.abs(x), 96));
  test.each([
    ['crossed', Math.PI],
    ['crossed', 2.4],
    ['island', 2.4],
  ] as const)('%s, phase %s, is the Fourier integral of the irradiance', (kind, phase) => {
    const plain = lightBehind([{ outer: 1, phase: 0 }]);
    // Kinks, which the taper rounds off, lie at 2(X ± κ) and 4κ: away from the frequencies asked.
    const [x, y, stop] = [0.93, 0.78, 1.4];
    const sides = { halfWidthX: x * plain.beamRadius, halfWidthY: y * plain.beamRadius };
    const light: Light = { ...plain, plate: { kind, ...sides, phase, stop: stop * plain.beamRadius } };
    const z = planeOfDefocus(light, 0.6);
    const spot = spotAt(light, z);
    const plate = { kind, halfWidthX: x, halfWidthY: y, phase, stopX: stop, stopY: stop };
    const values = irradianceOfCrossedStep(plate, 0.6, points, points);
    for (let i = 0; i < values.length; i++)
      values[i]! *= window[i % points.length]! * window[Math.floor(i / points.length)]!;
    for (const [qx, qy] of frequencies) {
      const expected = transform(values, points, qx, qy);
      const whole = (Math.PI / 2) * spot.transmission;
      const scale = radiusScale(light, z);
      const found = spot.spectrum(qx / scale, qy / scale);
      const closeness = { absolute: 2e-5, source: 'direct sum over 96 w0' };
      expectClose(found.re, expected.re / whole, closeness);
      expectClose(found.im, expected.im / whole, closeness);
    }
    const end = spot.spectrumEnd(0);
    expect(spot.spectrum(end * 1.001, 0).re).toBeCloseTo(0, 15);
    expect(spot.spectrumEnd(Math.PI / 4)).toBeCloseTo(end * Math.SQRT2, 0);
  });
});

describe('spectrum off the axis', () => {
  test.each([
    [{ decentreX: 1e-3 }, 1],
    [{ decentreX: -0.5e-3, decentreY: 0.8e-3, beamAspect: 1.3 }, 1.4],
    [{ decentreX: 0.5e-3, beamAspect: 0.8, wavefrontCurvature: 0.01 }, 1.4],
  ])('%j is the Fourier integral of the irradiance', (changes, stop) => {
    const zones = [
      { outer: 0.9, phase: 2.8 },
      { outer: stop, phase: 0 },
    ];
    const light = lightBehind(zones, changes);
    const z = planeOfDefocus(light, 0.5);
    const spot = spotAt(light, z);
    const scale = radiusScale(light, z);
    const aspect = Math.sqrt(light.beamAspect);
    const curvature = (Math.PI * light.beamRadius ** 2 * light.wavefrontCurvature) / light.wavelength;
    const [x0, y0] = [light.decentreX / light.beamRadius, light.decentreY / light.beamRadius];
    const beam = { x0, y0, ax: 1 / aspect, ay: aspect, qx: -curvature * x0, qy: -curvature * y0 };
    const reach = 60;
    const table = tabulateOffAxis(zones, beam, 0.5, reach);
    const points = Float64Array.from({ length: 241 }, (_, i) => (i - 120) * 0.5);
    const values = new Float64Array(points.length ** 2);
    for (let i = 0; i < values.length; i++) {
      const [x, y] = [points[i % points.length]!, points[Math.floor(i / points.length)]!];
      const weight = taper(Math.hypot(x - beam.qx, y - beam.qy), reach);
      if (weight === 0) continue;
      const { re, im } = readOffAxisTable(table, x, y);
      values[i] = weight * (re * re + im * im);
    }
    for (const [qx, qy] of frequencies) {
      const expected = transform(values, points, qx, qy);
      const whole = (Math.PI / 2) * spot.transmission;
      const found = spot.spectrum(qx / scale, qy / scale);
      const closeness = { absolute: 2e-5, source: 'direct sum over 60 w0' };
      expectClose(found.re, expected.re / whole, closeness);
      expectClose(found.im, expected.im / whole, closeness);
    }
  });
});

it('a tilted surface stretches the spot and lowers its frequencies', () => {
  const spot = tiltedSpot(gaussianSpot(1), 0.7, 0.4);
  const points = Float64Array.from({ length: 81 }, (_, i) => (i - 40) * 0.15);
  const values = new Float64Array(points.length ** 2).map((_, i) =>
    spot.irradianceAt(points[i % 81]!, points[Math.floor(i / 81)]!),
  );
  const whole = transform(values, points, 0, 0).re;
  for (const [qx, qy] of frequencies)
    expectClose(spot.spectrum(qx, qy).re, transform(values, points, qx, qy).re / whole, {
      absolute: 1e-9,
      source: 'direct sum',
    });
  const end = spot.spectrumEnd(0.4);
  expectClose(end, 17.6 * Math.cos(0.7), { relative: 1e-12, source: 'stretched by 1/cos θ' });
});
