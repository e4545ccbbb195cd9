import { describe, expect, it, test } from 'vitest';
import { expectClose } from '../close.ts';
import { noteIn, numberIn, openPlane, problemIn } from './outcomesIn.ts';

const exact = { relative: 1e-12 };

describe('safety figures', () => {
  it('B-integral of the check value: 0.079 rad', () => {
    const check = { 'laser.pulseEnergy': 1e-3, 'plate.thickness': 5e-3 };
    expectClose(numberIn(check, 'safety.plateIrradiance'), 9.57e13, {
      relative: 1e-3,
      source: 'physics.md §3',
    });
    expectClose(numberIn(check, 'safety.bIntegral'), 0.079, { relative: 5e-3, source: 'physics.md §3' });
    expect(noteIn(check, 'safety.bIntegral')).toBeUndefined();
    expect(noteIn({ ...check, 'plate.thickness': 0.1 }, 'safety.bIntegral')).toMatch(/From about 1 rad/);
    expect(problemIn({ 'plate.glass': 'bk7' }, 'safety.bIntegral').message).toMatch(
      /No nonlinear index is kept/,
    );
    expect(problemIn({ 'plate.glass': 'typed' }, 'safety.bIntegral').parts.input).toBe(
      'plate.nonlinearSource',
    );
    const typed = {
      'plate.glass': 'typed',
      'plate.nonlinearSource': 'typed',
      'plate.typedNonlinearIndex': 2.7e-20,
    };
    expectClose(numberIn(typed, 'safety.bIntegral'), numberIn({}, 'safety.bIntegral'), exact);
  });

  it('taking the plate out raises the peak 4.9 times', () => {
    expectClose(numberIn(openPlane, 'safety.plateOutFactor'), 4.9, {
      absolute: 0.05,
      source: 'physics.md §11',
    });
  });

  it('nothing near the focus is above the irradiance in air', () => {
    const air = numberIn({}, 'safety.airIrradiance');
    for (const z of [-2e-4, -5e-5, 0, 5e-5, 2e-4]) {
      for (const id of ['safety.peakIrradiance', 'unshaped.safety.peakIrradiance'])
        expect(numberIn({ 'workpiece.z': z }, id)).toBeLessThanOrEqual(air * (1 + 1e-8));
    }
    expectClose(numberIn({}, 'unshaped.safety.peakIrradiance'), air, {
      relative: 1e-8,
      source: 'closed form',
    });
  });

  test.each([
    [20e-6, /lies at or above it: speak with radiation protection/],
    [5e-6, /lies just below it, by less than a factor of two: bursts/],
    [1e-6, /within a factor of a hundred below it: bursts/],
    [2e-9, /further than a factor of a hundred below it, which is no all-clear/],
  ])('X-rays are spoken of at %f J', (energy, text) => {
    const design = { 'laser.pulseEnergy': energy };
    for (const id of ['safety.xRayRatio', 'safety.peakIrradiance', 'unshaped.safety.peakIrradiance'])
      expect(noteIn(design, id), id).toMatch(/^X-rays from ultrashort pulses/);
    expect(noteIn(design, 'safety.peakIrradiance')).toMatch(text);
  });
});
