import { describe, expect, test } from 'vitest';
import { axisThroughFocus, blurOfMap, familyMap, planMap } from '../../lib/optics/familyMap.ts';
import { spaced } from '../../lib/optics/focusMaps.ts';
import { focusRadius, type Light, planeOfDefocus, rayleighLength } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { lightBehind } from './lightBehind.ts';

/** Half-wave step as wide as the beam, a stop of 1.4. */
const light = (change: Partial<Light>, phase = Math.PI): Light =>
  lightBehind(
    [
      { outer: 1, phase },
      { outer: 1.4, phase: 0 },
    ],
    change,
  );

const cases: readonly (readonly [string, Light])[] = [
  ['coherent, half a wave', light({})],
  ['coherent, 0.9 half waves', light({}, 0.9 * Math.PI)],
  ['M² = 1.2', light({ beamPropagationRatio: 1.2 })],
  ['M² = 2, another phase', light({ beamPropagationRatio: 2 }, 2)],
  ['plate near the lens', light({ plateDistance: 0.02 })],
  ['plate far from the lens, M² = 1.1', light({ plateDistance: 0.4, beamPropagationRatio: 1.1 })],
  ['diverging wavefront', light({ wavefrontCurvature: 0.05 })],
  [
    'no stop',
    light({
      plate: {
        kind: 'round',
        zones: [
          { outer: 5e-3, phase: Math.PI },
          { outer: 0.028, phase: 0 },
        ],
      },
    }),
  ],
];

describe('the map through the focus is the spot in every plane', () => {
  test.each(cases)('%s', (_name, light) => {
    const planes = spaced(planeOfDefocus(light, -7), planeOfDefocus(light, 7), 57);
    const radii = spaced(0, 8 * focusRadius(light), 64);
    const map = familyMap(light, planes, radii);
    let most = 0;
    for (let row = 0; row < planes.length; row += 7) {
      const spot = spotAt(light, planes[row]!);
      for (let column = 0; column < radii.length; column += 5) {
        const value = map[row * radii.length + column]!;
        most = Math.max(most, Math.abs(value - spot.irradianceAt(radii[column]!, 0)));
      }
    }
    const axis = axisThroughFocus(light, planes);
    planes.forEach((_, row) => {
      most = Math.max(most, Math.abs(axis[row]! - map[row * radii.length]!));
    });
    // The map's own error is 1e-6 of the unshaped peak (throughFocusMap).
    expect(most).toBeLessThan(1e-6);
  });
});

test('a plan serves nearby beams, so that the blur is kept while the beam is dragged', () => {
  const plan = (beamRadius: number) => {
    const near = light({ beamRadius, beamPropagationRatio: 1.2 });
    const end = 7 * rayleighLength(light({}));
    return planMap(near, [-end, end], 9e-6 * 8);
  };
  expect(plan(5e-3)).toEqual(plan(5.02e-3));
  expect(blurOfMap(plan(5e-3))?.length).toBe(plan(5e-3).panels * 16 * plan(5e-3).coherentPanels * 16);
});

test('the outermost radius of a plan is read as well, for a plate away from the focal plane', () => {
  const near = light({ plateDistance: 0.02 });
  const plane = Float64Array.of(0);
  const { width, panels } = planMap(near, [0, 0], 4 * focusRadius(near));
  // On the last sample and a hair before it.
  const radii = Float64Array.of(1, 1 - 1e-9, 0.999).map((part) => part * panels * width * focusRadius(near));
  const map = familyMap(near, plane, radii, planMap(near, [0, 0], 4 * focusRadius(near)));
  const spot = spotAt(near, 0);
  radii.forEach((radius, i) => {
    expect(Math.abs(map[i]! - spot.irradianceAt(radius, 0))).toBeLessThan(1e-6);
  });
});

test('a plane behind the image of the plate is refused before radii are planned', () => {
  // B = f + z − d z/f: below 0 beyond z = f²/(d − f).
  const far = light({ plateDistance: 0.4 });
  const { focalLength } = far;
  const beyond = (1.1 * focalLength ** 2) / (0.4 - focalLength);
  expect(() => planMap(far, [0, beyond], 1e-5)).toThrow(/behind the image of the plate/);
  expect(() => familyMap(far, Float64Array.of(0, beyond), Float64Array.of(0, 1e-5))).toThrow(
    /behind the image of the plate/,
  );
});
