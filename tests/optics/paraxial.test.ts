import { describe, expect, it } from 'vitest';
import { panelledRule } from '../../lib/numerics/gaussLegendre.ts';
import type { Light } from '../../lib/optics/light.ts';
import { convergenceOf, paraxialError, paraxialNote } from '../../lib/optics/paraxial.ts';
import { expectClose } from '../close.ts';

/** Irradiance on the axis in the focus of an aplanatic lens over the paraxial one, for a Gaussian of 1/e² radius s·f. */
function aplanaticGain(s: number): number {
  const rule = panelledRule([0, 0.25, 0.5, 0.75, 0.9], 24);
  let [paraxial, debye] = [0, 0];
  rule.nodes.forEach((sine, i) => {
    const weight = rule.weights[i]! * sine * Math.exp(-((sine / s) ** 2));
    paraxial += weight;
    // √cos θ for the energy through the sine condition, 1/cos θ for the solid angle.
    debye += weight * (1 - sine * sine) ** -0.25;
  });
  return (debye / paraxial) ** 2;
}

describe('how far the paraxial model holds', () => {
  for (const s of [0.05, 0.1, 0.2, 0.25]) {
    it(`sine ${s}: half its square is the gain of the Debye integral, to the next order`, () => {
      const source = 'Debye integral, Richards & Wolf 1959 (memory), by quadrature';
      expectClose(paraxialError(s), aplanaticGain(s) - 1, { relative: 2 * s * s, source });
    });
  }

  it('takes the smaller of beam and stop', () => {
    const light = {
      beamRadius: 5e-3,
      focalLength: 0.1,
      plate: { kind: 'round', zones: [{ outer: 7e-3, phase: 0 }] },
    } as unknown as Light;
    expect(convergenceOf(light)).toBeCloseTo(0.05, 12);
    const stopped = {
      ...light,
      plate: { kind: 'round', zones: [{ outer: 2e-3, phase: 0 }] },
    } as unknown as Light;
    expect(convergenceOf(stopped)).toBeCloseTo(0.02, 12);
  });

  it('says nothing below 2 %, how much above, and that no lens does it from a sine of 1', () => {
    expect(paraxialNote(0.199)).toBeUndefined();
    expect(paraxialNote(0.25)).toMatch(/sin θ = 0\.25.*about 3\.1 %/);
    expect(paraxialNote(1)).toMatch(/wider than any lens/);
  });
});
