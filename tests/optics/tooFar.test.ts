import { describe, expect, it } from 'vitest';
import { defocusAt, type Light, planeOfDefocus } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import type { Problem } from '../../lib/problem.ts';
import { expectClose } from '../close.ts';
import { lightBehind } from './lightBehind.ts';

// One focal length before the lens, so that light comes to every plane however far it is.
const round = lightBehind([
  { outer: 1, phase: Math.PI },
  { outer: 1.5, phase: 0 },
]);
const oneFocalLength: Light = { ...round, plateDistance: round.focalLength };
const halfWidth = round.beamRadius;
const lights: readonly (readonly [string, Light])[] = [
  ['round', oneFocalLength],
  ['round, beam not flat', { ...oneFocalLength, wavefrontCurvature: 0.05 }],
  [
    'crossed',
    {
      ...oneFocalLength,
      plate: { kind: 'crossed', halfWidthX: halfWidth, halfWidthY: halfWidth, phase: Math.PI, stop: 0 },
    },
  ],
];

describe.each(lights)('a workpiece too far from the focus, %s', (_, light) => {
  const problemAt = (defocus: number): Problem => {
    try {
      spotAt(light, planeOfDefocus(light, defocus));
    } catch (error) {
      return error as Problem;
    }
    throw new Error('there is a spot');
  };

  it('is said in plain numbers', () => {
    expect(problemAt(13).message).toMatch(/^The workpiece is 13 Rayleigh lengths from the focus/);
    expect(problemAt(-76_312).message).toMatch(/ is 76300 Rayleigh lengths from .* computed up to 12\./);
  });

  it('is mended by the plane of the focus', () => {
    const { input, mend } = problemAt(13).parts;
    expect([input, mend!.words]).toEqual(['workpiece.z', 'Bring the workpiece to the focus']);
    expectClose(defocusAt(light, mend!.value), 0, { absolute: 1e-9, source: 'definition of ζ' });
    expect(() => spotAt(light, mend!.value)).not.toThrow();
  });
});
