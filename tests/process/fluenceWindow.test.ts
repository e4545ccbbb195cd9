import { describe, expect, it, test } from 'vitest';
import { highestBetween } from '../../lib/numerics/highestBetween.ts';
import type { Zone } from '../../lib/optics/zones.ts';
import {
  areaBetween,
  bestWindow,
  gainBestPeak,
  gainPeakAtTop,
  gaussianBestWindow,
  windowEfficiency,
} from '../../lib/process/fluenceWindow.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { lightBehind } from '../optics/lightBehind.ts';
import { reference } from '../reference.ts';
import { crossedStep, gaussianLight, roundStep, spotAtDefocus } from './spots.ts';

const source = 'window.json';
const table = reference('window');

interface Row {
  readonly ratio: number;
  readonly gainPeakAtF2: number;
  readonly bestPeakOverF1: number;
  readonly efficiency: number;
  readonly gainBestPeak: number;
}

function lightOf(zones: readonly (readonly [number, number])[]) {
  return lightBehind(zones.map(([outer, phase]): Zone => ({ outer, phase })));
}

describe('area between two fluences per energy', () => {
  test.each(
    table.cases as { name: string; zones: [number, number][]; zeta: number; rows: Row[]; peak: number }[],
  )('$name, ζ $zeta', ({ zones, zeta, rows, peak }) => {
    const spot = spotAtDefocus(lightOf(zones), zeta);
    expectClose(spot.peak, peak, { relative: 1e-9, source });
    for (const row of rows) {
      const close = { relative: 1e-6, source };
      const best = bestWindow(spot, row.ratio);
      expectClose(gainPeakAtTop(spot, row.ratio), row.gainPeakAtF2, close);
      expectClose(best.efficiency, row.efficiency, close);
      expectClose(best.peakOverLow, row.bestPeakOverF1, close);
      expectClose(gainBestPeak(spot, row.ratio), row.gainBestPeak, close);
    }
  });
});

interface BestPlane {
  readonly name: string;
  readonly zones: [number, number][];
  readonly ratio: number;
  readonly zeta: number;
  readonly gainPeakAtF2: number;
}

describe('the plane with most gain, peaks at the upper bound', () => {
  test.each(table.bestPlane as BestPlane[])(
    '$name, window of $ratio',
    ({ zones, ratio, zeta, gainPeakAtF2 }) => {
      const light = lightOf(zones);
      const gain = (defocus: number) => gainPeakAtTop(spotAtDefocus(light, defocus), ratio);
      expectClose(gain(zeta), gainPeakAtF2, { relative: 1e-6, source });
      const step = cases(0.005, 0.04);
      const grid = Array.from({ length: Math.round(2 / step) + 1 }, (_, i) => i * step);
      const gains = grid.map(gain);
      expect(Math.max(...gains)).toBeLessThanOrEqual(gainPeakAtF2 * (1 + 1e-6));
      const best = grid[gains.indexOf(Math.max(...gains))]!;
      const found = highestBetween(gain, Math.max(0, best - step), best + step);
      expectClose(gain(found), gainPeakAtF2, { relative: 1e-6, source });
      expectClose(found, zeta, { absolute: 1e-4, source });
    },
  );
});

describe('what physics.md says of it', () => {
  const gaussian = spotAtDefocus(gaussianLight, 0);

  test.each([1.2, 2, Math.E, 5])('a Gaussian gains nothing over itself, window of %f', (ratio) => {
    expectClose(gainPeakAtTop(gaussian, ratio), 1, { relative: 1e-8, source: 'closed form' });
    const { peakOverLow, efficiency } = bestWindow(gaussian, ratio);
    const closed = gaussianBestWindow(ratio);
    expectClose(efficiency, closed.efficiency, { relative: 1e-8, source: 'closed form' });
    // A maximum is flat: 1e-8 in height is 1e-4 of its place.
    expectClose(peakOverLow, closed.peakOverLow, { relative: 1e-4, source: 'min(F2, e F1)' });
    expect(closed.efficiency).toBeLessThanOrEqual(Math.exp(-1));
  });

  it('best peak 1.31 F1 and 0.469 at most, 1.27 over the Gaussian for wide windows; stop 1.4 less', () => {
    const open = spotAtDefocus(roundStep(1), 0.3630835645960674);
    expectClose(bestWindow(open, 20).peakOverLow, 1.31, { absolute: 0.005, source });
    expectClose(bestWindow(open, 20).efficiency, 0.469, { absolute: 5e-4, source });
    expectClose(gainBestPeak(open, 20), 1.27, { absolute: 0.005, source });
  });

  it('crossed steps: nothing lies above the peak, and the Gaussian behind them follows the closed form', () => {
    const spot = spotAtDefocus(crossedStep(1.0877, 1.5), 0);
    const { peakOverLow, efficiency } = bestWindow(spot, 1.5);
    expectClose(efficiency, windowEfficiency(spot, peakOverLow), { relative: 1e-12 });
    const low = spot.peak / peakOverLow;
    expectClose(areaBetween(spot, low, 2 * spot.peak), spot.areaAbove(low), { relative: 1e-12 });
    expect(gainPeakAtTop(spot, 1.2)).toBeGreaterThan(1);
    const plain = spotAtDefocus(
      { ...crossedStep(1.0877), plate: { ...crossedStep(1).plate, phase: 0 } as never },
      0,
    );
    expectClose(gainPeakAtTop(plain, 2), 1, { relative: 2e-4, source: 'closed form, areas to 1e-4' });
  });

  it('an empty window is refused', () => {
    expect(() => bestWindow(gaussian, 1)).toThrow(/upper bound must lie above/);
    expect(() => gainPeakAtTop(gaussian, 0.5)).toThrow(/empty/);
  });
});
