import { describe, expect, it } from 'vitest';
import { decentredCut, rimsOf, riseOverMean } from '../../lib/optics/decentredCut.ts';
import { defocusAt } from '../../lib/optics/light.ts';
import { alongOffset } from '../../lib/optics/offCentre.ts';
import { radiusScale } from '../../lib/optics/roundSpot.ts';
import { expectClose } from '../close.ts';
import { lightBehind } from './lightBehind.ts';

/** The plate goes on to 9 w, where e^{−81} of the field is left: as good as without a stop. */
const light = lightBehind([
  { outer: 0.95, phase: 2.8 },
  { outer: 9, phase: 0 },
]);
const decentre = 0.3e-3;

describe('a cut through the spot of a beam that misses the middle', () => {
  it.each([-80e-6, 0, 47.6e-6])('is the sum over the whole plate at z = %d m', (z) => {
    const { x, irradiance } = decentredCut(light, z, decentre);
    // B = f with the plate in the front focal plane, so that nothing but |U|² is left.
    const places = x.map((at) => at / radiusScale(light, z));
    const zones = [
      { outer: 0.95, phase: 2.8 },
      { outer: 9, phase: 0 },
    ];
    const summed = alongOffset(zones, decentre / light.beamRadius, defocusAt(light, z), places);
    for (const [i, value] of irradiance.entries())
      expectClose(value, summed[i]!, { absolute: 1e-9, source: 'sum over the plate, ring included' });
  });

  it('is alike on both sides with the beam in the middle', () => {
    const cut = decentredCut(light, 47.6e-6, 0);
    const { left, right } = rimsOf(cut);
    expect(left.x).toBe(-right.x);
    expect(Math.abs(riseOverMean(cut))).toBeLessThan(1e-12);
  });
});
