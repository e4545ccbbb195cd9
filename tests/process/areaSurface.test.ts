import { describe, expect, it } from 'vitest';
import { rayleighLength } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { spotSurface } from '../../lib/process/areaSurface.ts';
import { roundLight } from './spotsUnderTest.ts';

describe('areas of a spot through the focus', () => {
  it('are not above 0 where the light does not reach the level', () => {
    // The plate of the rain-gauge funnel: far out rings light up at once, and slopes differ from plane to plane.
    const light = { ...roundLight(4 / 3.75, 1.6), beamPropagationRatio: 1.15 };
    const step = rayleighLength(light) / 16;
    const surface = spotSurface((z) => spotAt(light, z), step);
    const marked: string[] = [];
    // A hundredth of a Rayleigh length: where slopes are very different, the sign turns in a few planes only.
    for (let k = 0; k <= 60; k++) {
      const z = (k / 100 - 4.5) * 16 * step;
      const peak = spotAt(light, z).peak;
      for (const above of [1.3, 2, 2.75, 4])
        if (surface.areaAt(z, Math.log(above * peak)) > 0) marked.push(`${k}: ${above}`);
    }
    expect(marked).toEqual([]);
  });
});
