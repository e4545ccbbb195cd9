import { describe, expect, it } from 'vitest';
import { openCase } from '../../../notebooks/lessons/lessonCase.ts';
import { sideOfFocus } from '../../../notebooks/lessons/sideOfFocus.ts';
import { expectClose } from '../../close.ts';
import { irradianceBySum } from './bySum.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(sideOfFocus);

describe('one case by hand: 0.46 waves, beam 9.5 mm, lens 100 mm', () => {
  const one = openCase(sideOfFocus, 2);
  const right = (id: string) => one.at(id).right;
  /** κ = 10/9.5; w0 = 1.03 µm · 100 mm/(π · 4.75 mm) = 6.9023 µm; z_R = π · 6.9023² µm²/1.03 µm = 145.31 µm. */
  const [ratio, length] = [1.052632, 145.31e-6];
  const phase = 0.46 * 2 * Math.PI;
  /** The ring raised is the middle early. */
  const plate = { ratio, stop: 3, phase: -phase };

  it('has these inputs', () => {
    expect(one.inputs).toMatchObject({
      'plate.stop': 'open',
      'plate.stepDiameter': 10e-3,
      'laser.beamDiameter': 5e-3,
      'expander.magnification': 1.9,
      'lens.focalLength': 0.1,
      'laser.wavelength': 1.03e-6,
    });
    expectClose(one.inputs['plate.designPhase'] as number, 2.890265, { relative: 1e-6 });
  });

  it('the level place', () => {
    const z = right('nearest') as number;
    // ζ = 32.7 µm/145.31 µm = 0.2251: from there the irradiance neither rises nor falls at first, as ϱ leaves 0.
    const bend = (place: number) => {
      const zeta = place / length;
      return irradianceBySum(plate, 0.02, zeta) - irradianceBySum(plate, 0, zeta);
    };
    expectClose(z, 32.7e-6, { relative: 2e-3, source: 'place where the difference changes its sign' });
    expect(bend(32.5e-6) * bend(32.9e-6)).toBeLessThan(0);
  });

  it('the brightest place', () => {
    const place = (right('brightest') as number) * 1e-3;
    const axis = (z: number) => irradianceBySum(plate, 0, z / length);
    // The hill is lower 10 µm to either side, and the other hill is lower than it.
    expect(axis(place)).toBeGreaterThan(axis(place - 10e-6));
    expect(axis(place)).toBeGreaterThan(axis(place + 10e-6));
    for (let z = 50e-6; z < 1e-3; z += 10e-6) expect(axis(-z)).toBeLessThan(axis(place));
    expect(place).toBeGreaterThan(0);
  });

  it('the side of a plate near the lens', () => {
    // d = 20 mm, z = 2 z_R = 0.291 mm behind: B = 100 + 0.291 − 20 · 0.291/100 = 100.233 mm, wider and so dimmer;
    // before the focus 100 − 0.233 = 99.767 mm, brighter.
    expect(one.at('distance').inputs['lens.typedPlateDistance']).toBe(20e-3);
    expectClose(100 + 0.291 - (20 * 0.291) / 100, 100.233, { relative: 1e-5 });
    expect(right('distance')).toBe('before');
  });

  it('the same plate with a raised middle', () => {
    // 1 − 0.46 = 0.54 waves; · 2π = 3.3929 rad.
    expectClose(right('same-plate') as number, 3.3929, { relative: 1e-4 });
    // And it is the same: in any place.
    for (const [rho, zeta] of [
      [0, 1.3],
      [0.7, -0.4],
      [1.5, 2],
    ] as const) {
      const middle = irradianceBySum({ ...plate, phase: 3.3929 }, rho, zeta);
      expectClose(middle, irradianceBySum(plate, rho, zeta), { absolute: 1e-5 });
    }
  });
});
