import { describe, test } from 'vitest';
import { findRoot } from '../../lib/numerics/roots.ts';
import { focusRadius } from '../../lib/optics/light.ts';
import { gaussianRatioOfDiameter } from '../../lib/process/gaussianRemoval.ts';
import { handbookMaterials } from '../../lib/process/handbook.ts';
import { markOf } from '../../lib/process/marks.ts';
import { energyAtPeak } from '../../lib/process/removal.ts';
import { expectClose } from '../close.ts';
import { crossedStep, gaussianLight, roundStep, spotAtDefocus } from '../process/spots.ts';

const width = focusRadius(gaussianLight);
const gaussian = spotAtDefocus(gaussianLight, 0);

describe('published thresholds become mark diameters and back', () => {
  const rows = handbookMaterials.flatMap(({ name, rows }) =>
    rows.map((row) => [name, row.fluence, row] as const),
  );
  test.each(rows)('%s, %f J/m²', (_, threshold) => {
    for (const ratio of [1.2, 3, 20]) {
      const energy = energyAtPeak(gaussian, ratio * threshold);
      const unit = (2 * energy) / (Math.PI * width * width);
      const { outerDiameter } = markOf(gaussian, threshold / unit);
      const back = (2 * energy) / (Math.PI * width ** 2) / gaussianRatioOfDiameter(width, outerDiameter);
      expectClose(back, threshold, { relative: 1e-6, source: 'J. M. Liu, Opt. Lett. 7, 196 (1982)' });
    }
  });

  test.each([
    ['round', roundStep(1, 1.4)],
    ['crossed', crossedStep(1.0877, 1.5)],
  ])('and behind a %s step by its area', (_, light) => {
    const spot = spotAtDefocus(light, 0);
    for (const [, threshold] of rows) {
      const unit = (3 * threshold) / spot.peak;
      const { area } = markOf(spot, threshold / unit);
      // The level whose area is the one marked, searched again.
      const level = findRoot((l) => spot.areaAbove(l) - area, 0.05 * spot.peak, 0.9 * spot.peak);
      expectClose(level * unit, threshold, { relative: 1e-6, source: 'area above threshold' });
    }
  });
});
