import { describe, it } from 'vitest';
import { fieldAt } from '../../lib/optics/focalField.ts';
import { axisDiscs, axisMap, focusAgainstRatio, focusDiscs, spaced } from '../../lib/optics/focusMaps.ts';
import { irradianceOnAxis } from '../../lib/optics/onAxis.ts';
import { expectClose } from '../close.ts';

const plates = [
  [
    { outer: 1, phase: Math.PI },
    { outer: 1.4, phase: 0 },
  ],
  [
    { outer: 1, phase: -2 },
    { outer: 1e4, phase: 0 },
  ],
  [
    { outer: 1, phase: 0.7 },
    { outer: 1.5, phase: 4 },
    { outer: 2.2, phase: -1 },
  ],
];
const source = 'fieldAt, 24 nodes a panel, 1e-12';

describe('maps over the step ratio, by sums over discs', () => {
  for (const plate of plates) {
    const phases = plate.map(({ phase }) => phase);
    const edges = plate.map(({ outer }) => outer);
    const scaled = (ratio: number) => plate.map(({ outer, phase }) => ({ outer: outer * ratio, phase }));

    it(`axis of ${plate.length} zones, stop at ${edges.at(-1)}: as the field at single points`, () => {
      const [ratios, distances] = [spaced(0.5, 1.6, 5), spaced(-7, 7, 9)];
      const map = axisMap(axisDiscs(edges, ratios, distances, { bend: 0, shift: 0 }), phases);
      ratios.forEach((ratio, column) => {
        distances.forEach((distance, row) => {
          const defocus = distance / (ratio * ratio);
          const { re, im } = fieldAt(scaled(ratio), 0, defocus);
          const at = row * ratios.length + column;
          expectClose(map.irradiance[at]!, re * re + im * im, { absolute: 1e-10, source });
          const { slope } = irradianceOnAxis(scaled(ratio), defocus);
          expectClose(map.curvature[at]!, slope, { absolute: 1e-12, source: 'closed form' });
        });
      });
    });

    it(`focus of ${plate.length} zones, stop at ${edges.at(-1)}: as the field at single points`, () => {
      const [ratios, radii] = [spaced(0.5, 1.6, 6), spaced(0, 5, 11)];
      const map = focusAgainstRatio(focusDiscs(edges, ratios, radii), phases, ratios);
      ratios.forEach((ratio, row) => {
        radii.forEach((v, column) => {
          const { re, im } = fieldAt(scaled(ratio), v / (2 * ratio), 0);
          const expected = (re * re + im * im) / (ratio * ratio);
          expectClose(map.values[row * radii.length + column]!, expected, { absolute: 1e-10, source });
        });
      });
    });
  }
});
