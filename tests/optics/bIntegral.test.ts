import { expect, test } from 'vitest';
import { nonlinearIndex } from '../../lib/materials/glasses.ts';
import { bIntegral } from '../../lib/optics/bIntegral.ts';
import { peakIrradiance, peakPower } from '../../lib/optics/pulse.ts';
import { expectClose } from '../close.ts';

test('a Gaussian pulse holds its energy', () => {
  const duration = 250e-15;
  const power = peakPower(1e-3, duration);
  const steps = 4000;
  const span = 8 * duration;
  let energy = 0;
  for (let i = 0; i < steps; i++) {
    const t = ((i + 0.5) / steps - 0.5) * span;
    energy += power * 2 ** -(((2 * t) / duration) ** 2) * (span / steps);
  }
  expectClose(energy, 1e-3, { relative: 1e-12, source: 'midpoint rule over eight durations' });
});

test('1 mJ, w = 5 mm, 250 fs: 9.57e9 W/cm² and 0.079 rad in 5 mm fused silica', () => {
  const irradiance = peakIrradiance(peakPower(1e-3, 250e-15), 5e-3);
  expectClose(irradiance / 1e4, 9.57e9, { absolute: 5.1e6, source: 'computed, three digits' });
  const b = bIntegral(irradiance, 5e-3, 1.03e-6, nonlinearIndex('fusedSilica'));
  expectClose(b, 0.079, {
    absolute: 5.1e-4,
    source: 'D. Milam, Appl. Opt. 37, 546 (1998) for n2, three digits',
  });
});

test('what cannot be', () => {
  expect(() => peakPower(1e-3, 0)).toThrow(/pulse duration 0 s must be above 0/);
  expect(() => peakIrradiance(1, -1)).toThrow(/beam radius/);
  expect(() => bIntegral(1, 1, 0, 1)).toThrow(/wavelength/);
});
