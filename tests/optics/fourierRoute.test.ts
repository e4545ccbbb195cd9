import { describe, expect, test } from 'vitest';
import { fieldOffAxis } from '../../lib/optics/azimuthalHarmonics.ts';
import { fieldAt } from '../../lib/optics/focalField.ts';
import {
  irradianceBehindLens,
  irradianceOfShapedBeam,
  type SampledIrradiance,
} from '../../lib/optics/fourierRoute.ts';
import { type PlateBeam, sampleShapedBeam } from '../../lib/optics/plateSampling.ts';
import { expectClose } from '../close.ts';

const w = 5e-3;
const f = 0.1;
const wavelength = 1030e-9;
const beam: PlateBeam = { wavelength, radiusX: w, radiusY: w };
const grid = { size: 1024, extent: 50e-3 };
const plates = [
  { name: 'π step, stop 1.4 w', phase: Math.PI, stop: 7e-3 },
  { name: '0.9π step, open', phase: 0.9 * Math.PI, stop: Number.POSITIVE_INFINITY },
];
const stepped = (phase: number, stop: number) => [
  { outer: 5e-3, phase },
  { outer: stop, phase: 0 },
];
const scaled = (zones: { outer: number; phase: number }[]) =>
  zones.map(({ outer, phase }) => ({ outer: outer / w, phase }));

/** Largest deviation from `expected(ξ, η)` over every third sample within ϱ < 5, as a share of the largest value. */
function deviation(
  found: SampledIrradiance,
  b: number,
  expected: (xi: number, eta: number) => number,
): number {
  const unit = (Math.PI * w * found.pitch) / (wavelength * b);
  const reach = Math.floor(5 / unit);
  let worst = 0;
  let peak = 0;
  for (let row = -reach; row <= reach; row += 3) {
    for (let column = -reach; column <= reach; column += 3) {
      if (Math.hypot(row, column) > reach) continue;
      const value = expected(column * unit, row * unit);
      const at = (row + found.size / 2) * found.size + column + found.size / 2;
      worst = Math.max(worst, Math.abs(found.irradiance[at]! - value));
      peak = Math.max(peak, value);
    }
  }
  return worst / peak;
}

describe('two-dimensional route in physical units', () => {
  const planes = plates.flatMap((plate) =>
    [0.4, 1, 1.8].flatMap((ratio) => [0, 0.15e-3, -0.3e-3].map((z) => ({ ...plate, ratio, z }))),
  );
  test.each(planes)('$name, d/f = $ratio, z = $z m: the radial integral', ({ phase, stop, ratio, z }) => {
    const b = f + z - ratio * z;
    const zeta = (Math.PI * w * w * z) / (wavelength * f * b);
    const zones = stepped(phase, stop);
    const view = { focalLength: f, distance: ratio * f, z };
    const found = irradianceOfShapedBeam(beam, zones, grid, view);
    const off = deviation(found, b, (xi, eta) => {
      const { re, im } = fieldAt(scaled(zones), Math.hypot(xi, eta), zeta);
      return (f / b) ** 2 * (re * re + im * im);
    });
    expectClose(off, 0, { absolute: 1e-6, source: 'focalField.ts' });
  });

  test('a diverging beam is a shift of the focus: ζ_eff = ζ − πw²/(λR_b)', () => {
    const curvature = 1 / 50;
    const zones = stepped(Math.PI, 7e-3);
    const view = { focalLength: f, distance: f, z: 0.1e-3 };
    const curved = { ...beam, curvatureX: curvature, curvatureY: curvature };
    const found = irradianceOfShapedBeam(curved, zones, grid, view);
    const zeta = ((Math.PI * w * w) / wavelength) * (view.z / (f * f) - curvature);
    const off = deviation(found, f, (xi, eta) => {
      const { re, im } = fieldAt(scaled(zones), Math.hypot(xi, eta), zeta);
      return re * re + im * im;
    });
    expectClose(off, 0, { absolute: 1e-6, source: 'focalField.ts' });
  });

  test('decentred, elliptical, astigmatic and tilted: the azimuthal harmonics', () => {
    const k = (2 * Math.PI) / wavelength;
    const offAxis = { x0: 0.1, y0: -0.15, ax: 1.1, ay: 1 / 1.1, qx: 0.4, qy: -0.3, alpha: 0.2 };
    const physical: PlateBeam = {
      wavelength,
      radiusX: offAxis.ax * w,
      radiusY: offAxis.ay * w,
      centreX: offAxis.x0 * w,
      centreY: offAxis.y0 * w,
      curvatureX: (-2 * offAxis.alpha) / (k * w * w),
      curvatureY: (2 * offAxis.alpha) / (k * w * w),
      tiltX: Math.asin((2 * offAxis.qx) / (k * w)),
      tiltY: Math.asin((2 * offAxis.qy) / (k * w)),
    };
    const zones = stepped(0.9 * Math.PI, 7e-3);
    const z = 0.06e-3;
    const zeta = (Math.PI * w * w * z) / (wavelength * f * f);
    const found = irradianceOfShapedBeam(physical, zones, grid, { focalLength: f, distance: f, z });
    const off = deviation(found, f, (xi, eta) => {
      const { re, im } = fieldOffAxis(scaled(zones), offAxis, zeta, { xi: [xi], eta: [eta] });
      return re[0]! ** 2 + im[0]! ** 2;
    });
    expectClose(off, 0, { absolute: 1e-6, source: 'azimuthalHarmonics.ts' });
  });

  test('a sampled field, defocused afterwards: the same within the stated 2e-4', () => {
    const zones = stepped(Math.PI, 7e-3);
    const field = sampleShapedBeam(beam, zones, grid);
    for (const z of [0, -0.3e-3]) {
      const view = { focalLength: f, distance: f, z };
      const found = irradianceBehindLens(field, w, view);
      const whole = irradianceOfShapedBeam(beam, zones, grid, view);
      const peak = whole.irradiance.reduce((a, b) => Math.max(a, b));
      const worst = found.irradiance.reduce((a, b, i) => Math.max(a, Math.abs(b - whole.irradiance[i]!)), 0);
      // Second order in the pixel: 1e-4 at 34 µm, here 49 µm.
      expectClose(worst / peak, 0, { absolute: z === 0 ? 1e-12 : 2.2e-4, source: 'irradianceOfShapedBeam' });
    }
  });

  test('energy and pitch: ∫|U|² d²ϱ = (π/2)(1 − e^{−2R²/w²}), samples λB/extent apart', () => {
    const view = { focalLength: f, distance: 0.4 * f, z: 0.15e-3 };
    const found = irradianceOfShapedBeam(beam, stepped(Math.PI, 7e-3), grid, view);
    const b = f + view.z * 0.6;
    expectClose(found.pitch, (wavelength * b) / grid.extent, {
      relative: 1e-14,
      source: 'Fourier transform',
    });
    const sum = found.irradiance.reduce((a, value) => a + value, 0);
    const area = ((Math.PI * w * found.pitch) / (wavelength * f)) ** 2;
    // The window ends at ϱ = 160 and holds all but 1e-3 of the tail.
    expectClose(sum * area, (Math.PI / 2) * (1 - Math.exp(-2 * 1.4 ** 2)), {
      relative: 3e-3,
      source: 'Parseval',
    });
  });

  test('a defocus that the samples cannot follow is refused', () => {
    const coarse = { size: 64, extent: 20e-3 };
    const view = { focalLength: f, distance: f, z: 3e-3 };
    const zones = stepped(Math.PI, 7e-3);
    expect(() => irradianceOfShapedBeam(beam, zones, coarse, view)).toThrow(/nearer to the focus/);
    expect(() => irradianceBehindLens(sampleShapedBeam(beam, zones, coarse), w, view)).toThrow(
      /more samples/,
    );
  });
});
