import { describe, expect, it } from 'vitest';
import { valueAt } from '../../lib/numerics/panelledFunction.ts';
import { axisDiscs, axisMap, distanceScale, shownPlaces } from '../../lib/optics/focusMaps.ts';
import { focusRadius, type Light, planeOfDefocus } from '../../lib/optics/light.ts';
import { radiusScale, roundProfileAt } from '../../lib/optics/roundSpot.ts';
import { expectClose } from '../close.ts';
import { lightBehind } from './lightBehind.ts';

const focalLength = 2;
const stepRadius = 1e-3;
const zones = [
  { outer: 1, phase: 2.6 },
  { outer: 1.5, phase: 0 },
];
const ratios = Float64Array.of(0.6, 1, 1.4);

function lightOf(ratio: number, distance: number, curvature: number): Light {
  const inBeamRadii = zones.map(({ outer, phase }) => ({ outer: outer * ratio, phase }));
  return lightBehind(inBeamRadii, {
    beamRadius: stepRadius / ratio,
    wavefrontCurvature: curvature,
    focalLength,
    plateDistance: distance * focalLength,
  });
}

describe('map of the axis over step ratio and distance', () => {
  for (const distance of [0.4, 1, 1.8]) {
    for (const curvature of [0, 0.7, -0.4]) {
      it(`is the profile on the workpiece, d/f = ${distance}, 1/R = ${curvature} /m`, () => {
        const scale = distanceScale(lightOf(1, distance, curvature), stepRadius);
        const [low, high] = shownPlaces([-3, 3], scale);
        const places = Float64Array.from([0, 0.25, 0.6, 0.8, 1], (part) => low + part * (high - low));
        const edges = zones.map(({ outer }) => outer);
        const map = axisMap(
          axisDiscs(edges, ratios, places, scale),
          zones.map(({ phase }) => phase),
        );
        ratios.forEach((ratio, column) => {
          const light = lightOf(ratio, distance, curvature);
          places.forEach((place, row) => {
            const z = place * scale.unit;
            const profile = roundProfileAt(light, z);
            const source = 'Bessel matrix, to 1e-9 of the unshaped peak';
            const axis = valueAt(profile, 0);
            // Near the axis I = I(0) + slope ϱ²; the next term is about ϱ² of it.
            const near = valueAt(profile, 1e-3 * radiusScale(light, z));
            const strength = (focusRadius(light) / radiusScale(light, z)) ** 2;
            const at = row * ratios.length + column;
            expectClose(map.irradiance[at]!, axis, { absolute: 2e-9 * strength, source });
            expectClose(map.curvature[at]! * 1e-6, near - axis, { absolute: 2e-9 * strength, source });
          });
        });
      });

      it(`shows the same span of ζκ² for every beam, d/f = ${distance}, 1/R = ${curvature} /m`, () => {
        const scale = distanceScale(lightOf(1, distance, curvature), stepRadius);
        const ends = shownPlaces([-3, 1], scale);
        for (const ratio of ratios) {
          const light = lightOf(ratio, distance, curvature);
          [-3, 1].forEach((end, i) => {
            const z = planeOfDefocus(light, end / ratio ** 2);
            const size = radiusScale(light, z) / focusRadius(light);
            // Where the spot would grow tenfold, and behind that, the map ends sooner.
            if (size > 9.9 || size < 0) expect(ends[i]).toBeLessThan(11 / Math.abs(scale.bend));
            else expectClose(ends[i]! * scale.unit, z, { relative: 1e-12, source: 'Collins coordinates' });
          });
        }
      });
    }
  }
});
