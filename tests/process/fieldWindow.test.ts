import { describe, expect, it } from 'vitest';
import type { Spot } from '../../lib/optics/askedSpot.ts';
import { focusRadius } from '../../lib/optics/light.ts';
import { partsInWindow, type ScannedField } from '../../lib/process/fieldWindow.ts';
import type { PulseWindow } from '../../lib/process/pulseWindow.ts';
import { long } from '../cases.ts';
import { expectClose } from '../close.ts';
import { crossedStep, gaussianLight, roundStep, spotAtDefocus } from './spots.ts';

const w0 = focusRadius(gaussianLight);
const open: PulseWindow = { low: 2000, high: 2600, pulsesLow: 1, pulsesHigh: 1e6, exponent: 1 };

/** Parts by counting places of a fine grid, each pulse asked of the spot itself. */
function count(
  spot: Spot,
  unit: number,
  field: ScannedField,
  window: PulseWindow,
  columns: number,
  rows: number,
) {
  let [inside, much] = [0, 0];
  const reach = 3.2 * w0;
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const x = ((column + 0.5) / columns) * field.pulseSpacing;
      const y = ((row + 0.5) / rows) * field.lineSpacing;
      const all: number[] = [];
      for (let l = Math.floor((y - reach) / field.lineSpacing); l <= (y + reach) / field.lineSpacing; l++)
        for (
          let m = Math.floor((x - reach) / field.pulseSpacing);
          m <= (x + reach) / field.pulseSpacing;
          m++
        ) {
          const F = unit * spot.irradianceAt(x - m * field.pulseSpacing, y - l * field.lineSpacing);
          for (let pass = 0; pass < field.passes; pass++) all.push(F);
        }
      all.sort((a, b) => b - a);
      const bound = (F: number, n: number) => F * Math.max(1, n / window.pulsesLow) ** (window.exponent - 1);
      const enough = all.some((F, i) => i + 1 >= window.pulsesLow && F >= bound(window.low, i + 1));
      const tooMuch =
        all.some((F, i) => F > bound(window.high, i + 1)) ||
        all.some((F, i) => i + 1 > window.pulsesHigh && F >= bound(window.low, i + 1));
      if (tooMuch) much++;
      else if (enough) inside++;
    }
  return { inside: inside / (columns * rows), tooMuch: much / (columns * rows) };
}

describe('a scanned field in a window', () => {
  it('of lone Gaussian pulses: π w²/2 ln(F2/F1) a cell inside, π w²/2 ln(F0/F2) at too much', () => {
    const spot = spotAtDefocus(gaussianLight, 0);
    const cell = 8 * w0;
    const parts = partsInWindow(spot, 5000, { pulseSpacing: cell, lineSpacing: cell, passes: 1 }, open);
    const disc = (Math.PI * w0 * w0) / 2 / cell ** 2;
    expectClose(parts.inside, disc * Math.log(1.3), { absolute: 1e-4, relative: 0 });
    expectClose(parts.tooMuch, disc * Math.log(5000 / 2600), { absolute: 1e-4, relative: 0 });
    expectClose(parts.inside + parts.tooLittle + parts.tooMuch, 1, { absolute: 1e-12, relative: 0 });
  });

  it.each([
    ['Gaussian', gaussianLight, 0, 2500, { pulsesLow: 3, pulsesHigh: 4 }, [0.15, 0.7, 1]],
    [
      'Gaussian, incubation, two passes',
      gaussianLight,
      0.5,
      3100,
      { pulsesLow: 2, pulsesHigh: 30, exponent: 0.9 },
      [0.3, 0.9, 2],
    ],
    ['flat-top', roundStep(1, 1.4), 0.3, 14_000, { pulsesLow: 5, pulsesHigh: 9 }, [0.4, 1.4, 1]],
    [
      'ring, S above 1',
      roundStep(1),
      0,
      13_500,
      { pulsesLow: 6, pulsesHigh: 8, exponent: 1.05 },
      [0.5, 1.6, 1],
    ],
    ['crossed steps', crossedStep(0.8), 0.4, 16_000, { pulsesLow: 4, pulsesHigh: 50 }, [0.5, 1.5, 1]],
  ] as const)(
    '%s: agrees with counting places ten times closer',
    (_name, light, defocus, unit, more, [p, h, passes]) => {
      const spot = spotAtDefocus(light, defocus);
      const field = { pulseSpacing: p * w0, lineSpacing: h * w0, passes };
      const window = { ...open, ...more };
      const parts = partsInWindow(spot, unit, field, window);
      const [columns, rows, tolerance] = long ? [160, 960, 1e-3] : [24, 240, 5e-3];
      const counted = count(spot, unit, field, window, columns, rows);
      // Counting itself is good to half a row at each of two edges.
      expectClose(parts.inside, counted.inside, { absolute: tolerance, relative: 0 });
      expectClose(parts.tooMuch, counted.tooMuch, { absolute: tolerance, relative: 0 });
    },
  );

  it('without a mark everything gets too little', () => {
    const spot = spotAtDefocus(gaussianLight, 0);
    const parts = partsInWindow(spot, 10, { pulseSpacing: w0, lineSpacing: w0, passes: 1 }, open);
    expect(parts).toEqual({ inside: 0, tooMuch: 0, tooLittle: 1 });
  });

  it('pulses far apart and very close are worked out as fast, and as if they were not', () => {
    const spot = spotAtDefocus(gaussianLight, 0);
    const cell = { pulseSpacing: 1, lineSpacing: 8 * w0, passes: 1 };
    const lone = partsInWindow(spot, 5000, cell, open);
    const disc = (Math.PI * w0 * w0) / 2 / (8 * w0);
    expectClose(lone.inside, disc * Math.log(1.3), { relative: 2e-3, absolute: 0 });
    // Lines of pulses a 200th of a w0 apart: above F1 along a chord of y < w0·√(½ ln 1.25), enough where it is long enough.
    const p = w0 / 200;
    const enough = 40;
    const window = { ...open, pulsesLow: enough, exponent: 1 };
    const line = partsInWindow(spot, 2500, { pulseSpacing: p, lineSpacing: 4 * w0, passes: 1 }, window);
    const half = Math.sqrt(0.5 * Math.log(1.25) * w0 ** 2 - ((enough - 1) * p * 0.5) ** 2);
    expectClose(line.inside, (2 * half) / (4 * w0), { absolute: 3e-3, relative: 0 });
    const all = { pulseSpacing: 1e-12, lineSpacing: 1e-12, passes: 1000 };
    expect(partsInWindow(spot, 2500, all, { ...open, exponent: 0.9 }).tooMuch).toBeCloseTo(1, 6);
  });
});
