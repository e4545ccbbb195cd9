import { describe, expect, it } from 'vitest';
import { planeOfDefocus, rayleighLength } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { planesMet } from '../../lib/process/planesMet.ts';
import { expectClose } from '../close.ts';
import { crossedStep, gaussianLight, roundStep } from './spots.ts';

describe('profiles in the planes met', () => {
  const zR = rayleighLength(gaussianLight);

  it('a Gaussian: 1/(1 + ζ²), highest in the focus, lowest at the further end', () => {
    const met = { from: -0.3 * zR, to: 0.8 * zR };
    const found = planesMet((z) => spotAt(gaussianLight, z), spotAt(gaussianLight, 0.5 * zR), met, met, zR);
    const set = 1 / (1 + 0.5 ** 2);
    expectClose(found.highest.peak, 1 / set, { relative: 1e-3, source: '1/(1+ζ²)' });
    expectClose(found.highest.z, 0, { absolute: 5e-3 * zR, source: 'focus' });
    expectClose(found.lowest.peak, 1 / (1 + 0.8 ** 2) / set, { relative: 1e-6, source: '1/(1+ζ²)' });
    expect(found.lowest.z).toBe(met.to);
    expectClose(found.deepest.dip, 0, { absolute: 1e-7 });
  });

  it.each([
    ['round', roundStep(1, 1.4), 0.1, 0.9],
    ['crossed', crossedStep(0.8), -0.2, 0.7],
  ] as const)('%s: extremes as planes ten times closer have them', (_, light, low, high) => {
    const [from, to] = [planeOfDefocus(light, low), planeOfDefocus(light, high)];
    const set = spotAt(light, from);
    const parts: number[] = [];
    const found = planesMet(
      (z) => spotAt(light, z),
      set,
      { from, to },
      { from, to },
      zR,
      (part) => parts.push(part),
    );
    const close = Array.from({ length: 331 }, (_, i) => spotAt(light, from + ((to - from) * i) / 330));
    const peaks = close.map(({ peak }) => peak / set.peak);
    const dips = close.map((spot) => 1 - spot.irradianceAt(0, 0) / spot.peak);
    expectClose(found.lowest.peak, Math.min(...peaks), { relative: 1e-3, source: '331 planes' });
    expectClose(found.highest.peak, Math.max(...peaks), { relative: 1e-3, source: '331 planes' });
    expectClose(found.deepest.dip, Math.max(...dips), { absolute: 1e-3, source: '331 planes' });
    expect(parts.every((part, i) => part >= 0 && part <= 1 && (i === 0 || part >= parts[i - 1]!))).toBe(true);
  });

  it('one plane where nothing moves, and a few to either side for the chart', () => {
    const met = { from: 0, to: 0 };
    const shown = { from: -1e-5, to: 2e-5 };
    const light = roundStep(1, 1.4);
    const found = planesMet((z) => spotAt(light, z), spotAt(light, 0), met, shown, zR);
    expect([found.lowest.peak, found.highest.peak]).toEqual([1, 1]);
    expect([found.z[0], found.z.at(-1), found.z.length]).toEqual([-1e-5, 2e-5, 9]);
    expect(found.z.every((z, i) => i === 0 || z > found.z[i - 1]!)).toBe(true);
  });
});
