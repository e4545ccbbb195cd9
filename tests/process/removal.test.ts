import { describe, expect, it, test } from 'vitest';
import type { Spot } from '../../lib/optics/askedSpot.ts';
import { focusRadius } from '../../lib/optics/light.ts';
import {
  flatTopBestRatio,
  flatTopBestVolumePerEnergy,
  gaussianBestRatio,
  gaussianBestVolumePerEnergy,
  gaussianMarkArea,
  gaussianMarkDiameter,
  gaussianVolume,
} from '../../lib/process/gaussianRemoval.ts';
import { markOf } from '../../lib/process/marks.ts';
import {
  bestRemoval,
  craterSection,
  crossoverOf,
  depthAt,
  energyAtPeak,
  flatTopBest,
  gaussianBest,
  removalLaw,
  volumeAtPeak,
} from '../../lib/process/removal.ts';
import { expectClose } from '../close.ts';
import { crossedStep, gaussianLight, roundStep, spotAtDefocus } from './spots.ts';
import { superGaussian } from './superGaussian.ts';

const width = focusRadius(gaussianLight);
const gaussian = spotAtDefocus(gaussianLight, 0);
const one = removalLaw({ depth: 20e-9, threshold: 1600 });
const two = removalLaw({ depth: 10e-9, threshold: 1400 }, { depth: 80e-9, threshold: 4600 });
const closedForm = { relative: 1e-6, source: 'closed form, physics.md §6' };

describe('depth against fluence', () => {
  it('is logarithmic above threshold and nothing below', () => {
    expectClose(depthAt(one, 1600 * Math.E), 20e-9, { relative: 1e-12 });
    for (const fluence of [0, 800, 1600]) expect(depthAt(one, fluence)).toBe(0);
  });

  it('changes over to the second branch where that is deeper, without a jump', () => {
    const crossover = crossoverOf(two);
    expectClose(10 * Math.log(crossover / 1400), 80 * Math.log(crossover / 4600), { relative: 1e-12 });
    expectClose(depthAt(two, 1.5 * crossover), 80e-9 * Math.log((1.5 * crossover) / 4600), {
      relative: 1e-12,
    });
    expectClose(depthAt(two, 0.9 * crossover), 10e-9 * Math.log((0.9 * crossover) / 1400), {
      relative: 1e-12,
    });
    // A second branch that rises less never counts.
    const flat = removalLaw({ depth: 10e-9, threshold: 1400 }, { depth: 5e-9, threshold: 2000 });
    expect(crossoverOf(flat)).toBe(Number.POSITIVE_INFINITY);
    expectClose(depthAt(flat, 1e5), 10e-9 * Math.log(1e5 / 1400), { relative: 1e-12 });
    expect(() => removalLaw({ depth: 1e-8, threshold: 2000 }, { depth: 1e-7, threshold: 1000 })).toThrow(
      /second branch of removal starts below the first/,
    );
  });
});

describe('a Gaussian follows its closed forms', () => {
  test.each([1.1, 2, Math.E ** 2, 60])('peak %f thresholds: area, diameter, volume', (ratio) => {
    const mark = markOf(gaussian, gaussian.peak / ratio);
    expectClose(mark.area, gaussianMarkArea(width, ratio), closedForm);
    expectClose(mark.outerDiameter, gaussianMarkDiameter(width, ratio), closedForm);
    expectClose(volumeAtPeak(gaussian, one, 1600 * ratio), gaussianVolume(width, 20e-9, ratio), closedForm);
  });

  it('most volume per energy at e² thresholds: 2δ/(e²F_th), in any plane', () => {
    for (const defocus of [0, 0.8]) {
      const best = bestRemoval(spotAtDefocus(gaussianLight, defocus), one);
      expectClose(best.volumePerEnergy, gaussianBestVolumePerEnergy(20e-9, 1600), closedForm);
      expectClose(best.volumePerEnergy, (2 * 20e-9) / (Math.E ** 2 * 1600), closedForm);
    }
    expectClose(bestRemoval(gaussian, one).peak / 1600, gaussianBestRatio, closedForm);
  });

  it('an ideal flat-top is best at e thresholds and removes e/2 as much', () => {
    const share = flatTopBestVolumePerEnergy(20e-9, 1600) / gaussianBestVolumePerEnergy(20e-9, 1600);
    expectClose(share, Math.E / 2, closedForm);
    expect(flatTopBestRatio).toBe(Math.E);
  });

  test.each([
    [1, 1],
    [3, 0.8929795115692493],
    [10, 0.9513507698668732],
  ])('between the two: exp(−2(r/a)^2p) with p = %f is best at exp(1 + 1/p) thresholds', (p, gamma) => {
    const best = bestRemoval(superGaussian(10e-6, p, gamma), one);
    const [depth, area] = [1 + 1 / p, Math.PI * 10e-6 ** 2];
    const volume = (20e-9 * area * (depth / 2) ** (1 / p) * depth * p) / (p + 1);
    const energy = 1600 * Math.exp(depth) * area * 2 ** (-1 / p) * gamma;
    expectClose(best.volumePerEnergy, volume / energy, closedForm);
    expectClose(best.peak / 1600, Math.exp(depth), closedForm);
  });

  it('nothing below threshold, and no further than a thousand of it', () => {
    expect(volumeAtPeak(gaussian, one, 1600)).toBe(0);
    expect(volumeAtPeak(gaussian, one, 100)).toBe(0);
    expect(() => volumeAtPeak(gaussian, one, 1600 * 1001)).toThrow(/1000 times/);
  });
});

describe('two branches', () => {
  it('the best of a Gaussian is as good as the best of many peaks tried', () => {
    const best = bestRemoval(gaussian, two);
    const tried = Array.from({ length: 600 }, (_, i) => 1400 * Math.exp(i / 100));
    const perEnergy = tried.map((peak) => volumeAtPeak(gaussian, two, peak) / energyAtPeak(gaussian, peak));
    expectClose(best.volumePerEnergy, Math.max(...perEnergy), { relative: 1e-4, source: 'steps of 1 %' });
    expect(Math.max(...perEnergy)).toBeLessThanOrEqual(best.volumePerEnergy * (1 + 1e-9));
    expectClose(gaussianBest(two), best.volumePerEnergy, { relative: 1e-7, source: 'closed spot' });
    // The thermal branch alone would be best at e² of its threshold, with 2δ/(e²F_th).
    expect(best.volumePerEnergy).toBeGreaterThan(gaussianBestVolumePerEnergy(80e-9, 4600));
    expectClose(flatTopBest(two), flatTopBestVolumePerEnergy(80e-9, 4600), { relative: 1e-12 });
  });

  it('the volume is that of the two lines summed over the plane', () => {
    const [radius, peak] = [width, 30000];
    const steps = 20000;
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      const x = (2.5 * radius * (i + 0.5)) / steps;
      sum += 2 * Math.PI * x * depthAt(two, peak * Math.exp((-2 * x * x) / (radius * radius)));
    }
    const expected = (sum * 2.5 * radius) / steps;
    expectClose(volumeAtPeak(gaussian, two, peak), expected, { relative: 1e-6, source: 'midpoint sum' });
  });
});

describe('what a half-wave step gains in removed volume', () => {
  const gain = (spot: Spot) =>
    bestRemoval(spot, one).volumePerEnergy / gaussianBestVolumePerEnergy(20e-9, 1600);
  const source = 'physics.md §6, computed';
  test.each([
    ['κ = 1, focus', 1, 0, 0, 0.997],
    ['κ = 1, ζ = 0.363', 1, 0, 0.3630835645960674, 0.989],
    ['κ = 1.4, focus', 1.4, 0, 0, 1.066],
  ])('%s', (_, ratio, stop, defocus, expected) => {
    expectClose(gain(spotAtDefocus(roundStep(ratio, stop), defocus)), expected, { absolute: 1e-3, source });
  });

  it('at most 1.066 without a stop, in the focus of κ about 1.4', () => {
    const gains = [1.2, 1.3, 1.35, 1.4, 1.45, 1.5, 1.6].map((ratio) =>
      gain(spotAtDefocus(roundStep(ratio), 0)),
    );
    console.log('gain by κ:', gains.map((value) => value.toFixed(4)).join(' '));
    expectClose(Math.max(...gains), 1.066, { absolute: 1e-3, source });
  });

  test.each([0, 0.2, 0.42310043582874746])('0.91 to 0.94 with a stop of 1.4 w, ζ = %f', (defocus) => {
    const found = gain(spotAtDefocus(roundStep(1, 1.4), defocus));
    console.log(`stop 1.4, ζ ${defocus}: ${found.toFixed(4)}`);
    expect(found).toBeGreaterThan(0.905);
    expect(found).toBeLessThan(0.945);
  });
});

describe('lines from the centre agree with the sum over the plane', () => {
  test.each([
    ['round ring', roundStep(0.9, 1.4), 0, 2e-5],
    ['open, far plane', roundStep(1), 5.5667, 2e-5],
    ['crossed', crossedStep(1.0877, 1.5), 0, 5e-4],
  ] as const)('%s', (_, light, defocus, relative) => {
    const spot = spotAtDefocus(light, defocus);
    for (const law of [one, two]) {
      for (const ratio of [2, 8, 25]) {
        const peak = ratio * law[0]!.threshold;
        const alongLines = volumeAtPeak(spot, law, peak);
        expectClose(
          alongLines,
          summed(spot, (share) => depthAt(law, share * peak)),
          { relative, source: 'direct sum' },
        );
      }
    }
  });
});

/** ∫ g(irradiance/peak) dA: the midpoint rule over a square that holds all above a thirtieth of the peak. */
function summed(spot: Spot, g: (share: number) => number): number {
  const reach = reachAbove(spot, spot.peak / 30);
  const count = 1200;
  const step = reach / count;
  let sum = 0;
  for (let row = 0; row < count; row++)
    for (let column = 0; column < count; column++)
      sum += g(spot.irradianceAt((column + 0.5) * step, (row + 0.5) * step) / spot.peak);
  // One quadrant of four alike.
  return 4 * sum * step * step;
}

function reachAbove(spot: Spot, level: number): number {
  const step = Math.sqrt(spot.effectiveArea) / 40;
  let last = 0;
  for (let i = 0; i < 1500; i++) {
    for (const angle of [0, Math.PI / 8, Math.PI / 4]) {
      if (spot.irradianceAt(i * step * Math.cos(angle), i * step * Math.sin(angle)) > level) last = i;
    }
  }
  return (last + 3) * step;
}

it('the best peak of crossed steps is the best of many tried, and gains nothing over a Gaussian', () => {
  const spot = spotAtDefocus(crossedStep(1.0877, 1.5), 0);
  const best = bestRemoval(spot, one);
  const perEnergy = (peak: number) => volumeAtPeak(spot, one, peak) / energyAtPeak(spot, peak);
  const tried = Array.from({ length: 61 }, (_, i) => best.peak * Math.exp((i - 30) / 20));
  for (const peak of tried) expect(perEnergy(peak)).toBeLessThanOrEqual(best.volumePerEnergy * (1 + 1e-9));
  const gain = best.volumePerEnergy / gaussianBestVolumePerEnergy(20e-9, 1600);
  console.log(`crossed steps: gain in volume ${gain.toFixed(3)}`);
  expect(gain).toBeLessThan(1);
  expect(gain).toBeGreaterThan(0.9);
});

describe('a crater of many pulses', () => {
  const x = Float64Array.from({ length: 81 }, (_, i) => (i - 40) * 0.05 * width);

  it('of a Gaussian is a parabola, N pulses deep', () => {
    const { depth } = craterSection(gaussian, one, 16000, 50, x);
    x.forEach((place, i) => {
      const expected = 50 * 20e-9 * Math.max(0, Math.log(10) - 2 * (place / width) ** 2);
      expectClose(depth[i]!, expected, { absolute: 1e-13, source: 'closed form' });
    });
  });

  it('of crossed steps is as wide as its mark, and symmetric', () => {
    const spot = spotAtDefocus(crossedStep(1.0877, 1.5), 0);
    const unit = (4 * 1600) / spot.peak;
    const { depth } = craterSection(spot, one, unit, 1, x);
    x.forEach((place, i) => {
      expect(depth[i]! > 0).toBe(spot.irradianceAt(place, 0) * unit > 1600);
      expectClose(depth[i]!, depth[depth.length - 1 - i]!, { absolute: 1e-15 });
    });
  });
});
