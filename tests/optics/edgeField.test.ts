import fc from 'fast-check';
import { describe, it } from 'vitest';
import { valueAt } from '../../lib/numerics/panelledFunction.ts';
import { fieldFromEdges } from '../../lib/optics/edgeField.ts';
import { irradianceFromEdges } from '../../lib/optics/edgeIrradiance.ts';
import { fieldAt } from '../../lib/optics/focalField.ts';
import { planRoundProfile, prepareRoundProfile, roundProfile } from '../../lib/optics/roundProfile.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';

describe('focal field from the edges of the zones', () => {
  for (const item of reference('focus').cases) {
    it(`${item.name}: to 1e-12`, () => {
      for (const point of item.field) {
        const { re, im } = fieldFromEdges(item.zones, Float64Array.of(point.rho), point.zeta);
        const source = 'tests/reference/focus.json, adaptive quadrature with 25 digits';
        expectClose(re[0]!, point.re, { absolute: 1e-12, source });
        expectClose(im[0]!, point.im, { absolute: 1e-12, source });
      }
    });
  }

  it('is the field by quadrature, near and far, for stops from tiny to open', () => {
    const span = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const logs = (min: number, max: number) =>
      span(0, 1).map((part) => (part === 0 ? min : min * (max / min) ** part));
    fc.assert(
      fc.property(logs(0.03, 8), span(0.1, 0.99), span(-4, 4), logs(1e-6, 120), span(-12, 12), (...of) => {
        const [stop, step, phase, radius, defocus] = of;
        const zones = [
          { outer: step * stop, phase },
          { outer: stop, phase: 0.3 },
        ];
        const { re, im } = fieldFromEdges(zones, Float64Array.of(radius), defocus);
        const expected = fieldAt(zones, radius, defocus);
        expectClose(re[0]!, expected.re, { absolute: 1e-12, source: 'Gauss–Legendre quadrature' });
        expectClose(im[0]!, expected.im, { absolute: 1e-12, source: 'Gauss–Legendre quadrature' });
      }),
      { seed: 31, numRuns: cases(20000, 1500) },
    );
  });

  for (const ratio of [1, 1.0005, 1.1, 2.5]) {
    it(`irradiance is that of the profile for M² = ${ratio}, from any first radius`, () => {
      for (const [stop, defocus] of [
        [1.4, 0.42],
        [0.4, -3],
        [40, 1.5],
      ] as const) {
        const zones = [
          { outer: 1, phase: 2.9 },
          { outer: stop / 0.35, phase: 0 },
        ];
        const focus = { zones, stepRatio: 0.35, defocus, beamPropagationRatio: ratio };
        const profile = roundProfile(focus, prepareRoundProfile(focus, planRoundProfile(focus, 20)));
        for (const first of [0.1, 7, 13]) {
          const radii = Float64Array.of(first, first + 1, first + 5);
          irradianceFromEdges(focus, radii).forEach((value, i) => {
            // Both blurs are good to 1e-9 of the unshaped peak.
            expectClose(value, valueAt(profile, radii[i]!), { absolute: 3e-9, source: 'Bessel matrix' });
          });
        }
      }
    });
  }
});
