import { describe, expect, it } from 'vitest';
import { focusRadius } from '../../lib/optics/light.ts';
import { markOf } from '../../lib/process/marks.ts';
import { takenAsGaussian } from '../../lib/process/takenAsGaussian.ts';
import { expectClose } from '../close.ts';
import { crossedStep, gaussianLight, roundStep, spotAtDefocus } from './spots.ts';

describe('marks read as those of a Gaussian', () => {
  it.each([
    [0, 3],
    [0.6, 20],
    [1.5, 20],
  ])('of a Gaussian at ζ = %d: threshold and radius are its own', (defocus, upTo) => {
    const w0 = focusRadius(gaussianLight);
    const { energyFactor, fluenceFactor, beamRadius } = takenAsGaussian(
      spotAtDefocus(gaussianLight, defocus),
      w0,
      upTo,
    );
    const source = 'Liu, Opt. Lett. 7, 196 (1982)';
    expectClose(energyFactor, 1, { relative: 1e-6, absolute: 0, source });
    expectClose(fluenceFactor, 1, { relative: 1e-6, absolute: 0, source });
    expectClose(beamRadius, w0 * Math.hypot(1, defocus), { relative: 1e-6, absolute: 0, source });
  });

  it.each([
    ['round step in the focus', roundStep(1, 1.4), 0, 20],
    ['round step off the focus', roundStep(1, 1.4), 1, 3],
    ['crossed steps', crossedStep(0.8), 1, 20],
  ] as const)('of a %s: as drawn with a ruler through the same marks', (_name, light, defocus, upTo) => {
    const spot = spotAtDefocus(light, defocus);
    const w0 = focusRadius(light);
    const taken = takenAsGaussian(spot, w0, upTo);
    // Plain least squares of D² on ln E; the fit weighs marks by their scatter, which moves it by some per cent.
    const points = Array.from({ length: 8 }, (_, i) => {
      const energy = 1.2 * (upTo / 1.2) ** (i / 7);
      return [Math.log(energy), (4 / Math.PI) * markOf(spot, spot.peak / energy).area] as const;
    });
    const mean = (of: (point: readonly [number, number]) => number) =>
      points.reduce((sum, point) => sum + of(point), 0) / points.length;
    const [x, y] = [mean(([x]) => x), mean(([, y]) => y)];
    const slope = mean((p) => (p[0] - x) * (p[1] - y)) / mean((p) => (p[0] - x) ** 2);
    const [energy, radius] = [Math.exp(x - y / slope), Math.sqrt(slope / 2)];
    expectClose(taken.beamRadius, radius, { relative: 0.15, absolute: 0 });
    expectClose(taken.fluenceFactor, (energy * w0 ** 2) / (radius ** 2 * spot.peak), {
      relative: 0.3,
      absolute: 0,
    });
    expect(Math.abs(taken.fluenceFactor - 1)).toBeGreaterThan(0.05);
  });
});
