import { describe, expect, it } from 'vitest';
import type { Light } from '../../lib/optics/light.ts';
import { roundProfileAt } from '../../lib/optics/roundSpot.ts';
import { windowedDiameter } from '../../lib/optics/secondMoment.ts';
import { expectClose } from '../close.ts';

function lightOf(stepRatio: number, stopRatio: number, phase: number, beamPropagationRatio = 1): Light {
  const beamRadius = 5e-3;
  return {
    wavelength: 1.03e-6,
    beamRadius,
    wavefrontCurvature: 0,
    beamPropagationRatio,
    decentreX: 0,
    decentreY: 0,
    beamAspect: 1,
    plate: {
      kind: 'round',
      zones: [
        { outer: stepRatio * beamRadius, phase },
        { outer: stopRatio * beamRadius, phase: 0 },
      ],
    },
    focalLength: 0.1,
    plateDistance: 0.1,
  };
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

  it('says so, and gives no advice about z, where the window goes beyond the radii computed', () => {
    const light = lightOf(1, 1.4, Math.PI);
    expect(() => windowedDiameter(roundProfileAt(light, 0, 3 * w0))).toThrowError(/tail .* spot width/s);
  });
});
