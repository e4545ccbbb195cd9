import { describe, expect, it } from 'vitest';
import { reachOf, valueAt } from '../../lib/numerics/panelledFunction.ts';
import { type Light, planeOfDefocus } from '../../lib/optics/light.ts';
import { roundIrradianceAt, roundProfileAt } from '../../lib/optics/roundSpot.ts';
import { windowedDiameter } from '../../lib/optics/secondMoment.ts';
import { expectClose } from '../close.ts';
import { lightBehind } from './lightBehind.ts';

function lightOf(stepRatio: number, stopRatio: number, phase: number, beamPropagationRatio = 1): Light {
  const zones = [
    { outer: stepRatio, phase },
    { outer: stopRatio, phase: 0 },
  ];
  return lightBehind(zones, { beamPropagationRatio });
}

describe('second-moment diameter in a threefold window', () => {
  const w0 = (1.03e-6 * 0.1) / (Math.PI * 5e-3);

  for (const [ratio, defocus] of [
    [1, 0],
    [1, 1.5],
    [1.3, 0],
  ] as const) {
    it(`is the 1/e² diameter of an open Gaussian, M² = ${ratio}, ζ = ${defocus}`, () => {
      const light = lightOf(1, 1000, 0, ratio);
      const z = (defocus * Math.PI * w0 * w0) / 1.03e-6;
      // The window of three diameters cuts e^{−18} = 1.5e-8 of the energy, at 9 times the mean square radius or so.
      expectClose(windowedDiameter(roundProfileAt(light, z)), 2 * w0 * Math.hypot(ratio, defocus), {
        relative: 1e-6,
        source: 'closed form',
      });
    });
  }

  it('does not depend on the reach of the profile where it settles', () => {
    const light = lightOf(1, 1.4, Math.PI);
    const near = windowedDiameter(roundProfileAt(light, 0));
    const far = windowedDiameter(roundProfileAt(light, 0, 20 * w0));
    // The same fixed point from another start; both iterations stop at 1e-9 of the window.
    expectClose(near, far, { relative: 1e-7 });
  });

  for (const [stepRatio, stopRatio, phase, defocus, ratio] of [
    [0.5, 0.55, Math.PI, -1.5, 1],
    [0.5, 1000, Math.PI, 1.5, 1],
    [0.5, 1000, Math.PI, 1.5, 1.6],
    [0.07, 0.1, Math.PI, 0, 1],
    [1, 1.4, Math.PI, 12, 1.05],
  ] as const) {
    it(`holds where the window goes beyond the radii: κ = ${stepRatio}, R/w = ${stopRatio}, ζ = ${defocus}, M² = ${ratio}`, () => {
      const light = lightOf(stepRatio, stopRatio, phase, ratio);
      const z = planeOfDefocus(light, defocus);
      const near = roundProfileAt(light, z);
      expect(() => windowedDiameter(near)).toThrowError(/tail/);
      const diameter = windowedDiameter(near, (radii) => roundIrradianceAt(light, z, radii));
      // The defining equation, by the midpoint rule over a profile that reaches that far by quadrature on the plate.
      const window = 1.5 * diameter;
      expect(window).toBeGreaterThan(reachOf(near));
      const far = roundProfileAt(light, z, window);
      let [energy, square] = [0, 0];
      for (let i = 0.5; i < 20000; i++) {
        const r = (i / 20000) * window;
        energy += valueAt(far, r) * r;
        square += valueAt(far, r) * r ** 3;
      }
      expectClose(diameter, Math.sqrt((8 * square) / energy), { relative: 1e-6, source: 'definition' });
    });
  }

  it('says so, and gives no advice about z, where the window goes beyond the radii computed', () => {
    const light = lightOf(1, 1.4, Math.PI);
    expect(() => windowedDiameter(roundProfileAt(light, 0, 3 * w0))).toThrowError(/tail .* spot width/s);
  });
});
