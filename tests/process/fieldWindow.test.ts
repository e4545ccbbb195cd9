import { describe, expect, it } from 'vitest';
import { focusRadius } from '../../lib/optics/light.ts';
import { partsInWindow } from '../../lib/process/fieldWindow.ts';
import type { PulseWindow } from '../../lib/process/pulseWindow.ts';
import { long } from '../cases.ts';
import { expectClose } from '../close.ts';
import { countParts } from './countParts.ts';
import { crossedStep, gaussianLight, roundStep, spotAtDefocus } from './spots.ts';

const w0 = focusRadius(gaussianLight);
const open: PulseWindow = { low: 2000, high: 2600, pulsesLow: 1, pulsesHigh: 1e6, exponent: 1 };

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
      const counted = countParts(spot, unit, field, window, { columns, rows, reach: 3.2 * w0 });
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
