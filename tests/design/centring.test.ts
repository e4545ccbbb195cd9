import { describe, expect, it } from 'vitest';
import { decentredCut, rimsOf } from '../../lib/optics/decentredCut.ts';
import type { Light } from '../../lib/optics/light.ts';
import { tellingPlane } from '../../lib/optics/offCentre.ts';
import { expectClose } from '../close.ts';
import { read } from '../notebooks/designOutcomes.ts';

const plate = (ratio: number, phase: number, stop = 1e4) => [
  { outer: ratio, phase },
  { outer: stop, phase: 0 },
];

describe('plane to centre the plate in', () => {
  it('shows the difference of the sides that the two parts of the plate give, each summed for itself', () => {
    const open = { 'plate.stop': 'open' };
    const value = read(open);
    const { left, right } = rimsOf(
      decentredCut(value('focus.light') as unknown as Light, value('centring.z'), value('centring.offset')),
    );
    const heights = [left.irradiance, right.irradiance];
    expectClose(value('centring.rise'), 1 - Math.min(...heights) / Math.max(...heights), {
      // Both routes look at places 0.05 apart: a crest is missed by up to 2·0.025² of its height, by each.
      absolute: 2.5e-3,
      source: 'closed form of the whole beam and harmonics of the step',
    });
    expect(value('centring.rise')).toBeGreaterThan(0.05);
    expectClose(value('centring.offset'), 0.25e-3, { relative: 1e-12 });
  });

  it('lies behind the focus where both sides tell alike, and changes sides with the sign of the phase', () => {
    expect(tellingPlane(plate(1, Math.PI, 1.4), 0.05).defocus).toBeGreaterThan(0);
    for (const phase of [0.7, 0.8, 1.3].map((halfWaves) => halfWaves * Math.PI)) {
      const [one, other] = [phase, -phase].map((turn) => tellingPlane(plate(1, turn, 1.5), 0.05));
      expect(one!.defocus).toBe(-other!.defocus);
      // U at −ζ with the phases turned round is the conjugate.
      expectClose(one!.rise, other!.rise, { absolute: 1e-9 });
    }
  });

  it('tells in step with the offset, and hardly at all for a step that shapes nothing', () => {
    const at = (offset: number) => tellingPlane(plate(1, Math.PI, 1.4), offset);
    expect(at(0.02).defocus).toBe(at(0.04).defocus);
    expectClose(at(0.04).rise, 2 * at(0.02).rise, { relative: 0.03 });
    expect(tellingPlane(plate(0.3, Math.PI), 0.05).rise).toBeLessThan(0.01);
    expect(tellingPlane(plate(1, 0), 0.05).rise).toBeLessThan(1e-6);
  });
});
