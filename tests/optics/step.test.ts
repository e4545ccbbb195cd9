import { expect, test } from 'vitest';
import { fresnelReflectance, phaseOfStep, stepHeightForPhase } from '../../lib/optics/step.ts';
import { expectClose } from '../close.ts';

test('height and phase are each other’s inverse, recesses included', () => {
  for (const phase of [-Math.PI, 0, 0.9 * Math.PI, Math.PI, 7]) {
    const height = stepHeightForPhase(phase, 1.03e-6, 1.45);
    expectClose(phaseOfStep(height, 1.03e-6, 1.45), phase, { relative: 1e-15, source: 'inverse' });
  }
  expectClose(stepHeightForPhase(Math.PI, 1e-6, 1.5), 1e-6, {
    relative: 1e-15,
    source: 'λ/2 over n−1 = 0.5',
  });
});

test('Fresnel reflectance', () => {
  expectClose(fresnelReflectance(1.5), 0.04, { relative: 1e-15, source: '(0.5/2.5)²' });
  expect(fresnelReflectance(1)).toBe(0);
  expect(fresnelReflectance(1 / 1.5)).toBeCloseTo(0.04, 14);
});

test('what cannot be', () => {
  for (const index of [1, 0.5, Number.NaN]) {
    expect(() => stepHeightForPhase(Math.PI, 1e-6, index)).toThrow(/must be above 1/);
    expect(() => phaseOfStep(1e-6, 1e-6, index)).toThrow(/must be above 1/);
  }
  expect(() => phaseOfStep(1e-6, 0, 1.5)).toThrow(/wavelength/);
  expect(() => fresnelReflectance(-1)).toThrow(/above 0/);
});
