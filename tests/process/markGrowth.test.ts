import { describe, expect, it } from 'vitest';
import { focusRadius } from '../../lib/optics/light.ts';
import { energiesAbout, markGrowth, thresholdEnergyOf } from '../../lib/process/markGrowth.ts';
import { markOf } from '../../lib/process/marks.ts';
import { expectClose } from '../close.ts';
import { crossedStep, gaussianLight, roundStep, spotAtDefocus } from './spots.ts';

/** Threshold in relative irradiance at an energy of one joule. */
const levelOfOne = 2e-7;

describe('marks against pulse energy', () => {
  it('of a Gaussian follow D² = 2w² ln(E/E_th)', () => {
    const spot = spotAtDefocus(gaussianLight, 0);
    const start = thresholdEnergyOf(spot, levelOfOne);
    const energies = Float64Array.of(0.9, 1.1, 2, 10, 30).map((factor) => factor * start);
    const { outer, inner } = markGrowth(
      spot,
      energies.map((energy) => levelOfOne / energy),
    );
    const w0 = focusRadius(gaussianLight);
    expect(outer[0]).toBe(0);
    energies.subarray(1).forEach((energy, i) => {
      const source = 'Liu, Opt. Lett. 7, 196 (1982)';
      expectClose(outer[i + 1]!, Math.sqrt(2 * w0 * w0 * Math.log(energy / start)), {
        relative: 1e-6,
        absolute: 0,
        source,
      });
    });
    expect([...inner]).toEqual([0, 0, 0, 0, 0]);
  });

  it.each([
    ['round step', roundStep(1), 0.2],
    ['crossed steps', crossedStep(0.8), 0.1],
  ] as const)('of a %s begin at the threshold energy with an unmarked centre', (_name, light, defocus) => {
    const spot = spotAtDefocus(light, defocus);
    const start = thresholdEnergyOf(spot, levelOfOne);
    const energies = Float64Array.of(0.999, 1.001, 1.5, 4).map((factor) => factor * start);
    const { outer, inner } = markGrowth(
      spot,
      energies.map((energy) => levelOfOne / energy),
    );
    expect(outer[0]).toBe(0);
    energies.forEach((energy, i) => {
      const mark = markOf(spot, levelOfOne / energy);
      expect(outer[i]).toBe(mark.outerDiameter);
      expect(inner[i]).toBe(mark.innerDiameter);
      const dark = spot.irradianceAt(0, 0) <= levelOfOne / energy && mark.area > 0;
      expect(inner[i]! > 0).toBe(dark);
    });
    expect(inner[1]).toBeGreaterThan(0);
  });

  it('energies of the chart hold today’s and every threshold, rising in equal ratios', () => {
    const energies = energiesAbout(20e-6, [0.5e-6, 1e-6], 81);
    expect(energies[0]).toBeLessThan(0.5e-6);
    expect(energies.at(-1)).toBeGreaterThan(20e-6);
    expectClose(energies[1]! / energies[0]!, energies[80]! / energies[79]!, { relative: 1e-9, absolute: 0 });
    // However far apart, four powers of ten are all that is drawn.
    const wide = energiesAbout(1, [1e-9], 5);
    expectClose(wide.at(-1)! / wide[0]!, 1e4, { relative: 1e-9, absolute: 0 });
  });
});
