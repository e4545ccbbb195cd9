import { describe, expect, it } from 'vitest';
import { createRandom } from '../../lib/numerics/random.ts';
import { type ScaledWork, scaledField, scaledTimes, spotsOfEnergy } from '../../lib/process/scaleUp.ts';
import { ceilings, missingTo, mostSpots, spotsFor, withSpots } from '../../lib/process/scaleUpLimits.ts';
import { groupedScans, usefulSpots } from '../../lib/process/spotScans.ts';
import { expectClose } from '../close.ts';
import { moving, on, recipe, work } from './scaledWork.ts';

const byHand = { relative: 1e-9, source: 'worked by hand' };

describe('each limit alone', () => {
  it('power ηP p Δy/E, repetition rate N p Δy f, speed N Δy v, turning 250 · 2L/v, moves', () => {
    const rates = Object.fromEntries(ceilings(work).map(({ kind, rate }) => [kind, rate]));
    expectClose(rates['power']!, 2e-4, byHand);
    expectClose(rates['repetition rate']!, 4e-4, byHand);
    expectClose(rates['scanner speed']!, 8e-4, byHand);
    expectClose(rates['acceleration']!, 1e-4 / (250 * ((2 * 10e-3) / Math.sqrt(250))), byHand);
    expectClose(rates['stitching']!, 98.01e-6 / 0.3, byHand);
    expect(rates['heat']).toBeUndefined();
  });

  it('four passes take a quarter of each but of the moves', () => {
    const once = ceilings(work);
    const often = ceilings(recipe({ hatch: { ...work.recipe.hatch, passes: 4 } }));
    for (const { kind, rate } of once) {
      const other = often.find((one) => one.kind === kind)!.rate;
      expectClose(other, kind === 'stitching' ? rate : rate / 4, byHand);
    }
  });

  it('moves that take no time are no limit', () => {
    expect(ceilings(moving(0)).some(({ kind }) => kind === 'stitching')).toBe(false);
  });

  it('the whole is never above the lowest of them', () => {
    const random = createRandom(8301);
    const between = (low: number, high: number) => low * (high / low) ** random.uniform();
    for (let n = 0; n < 300; n++) {
      const drawn: ScaledWork = {
        ...recipe({
          pulseSpacing: between(1e-7, 1e-4),
          energy: between(1e-7, 1e-4),
          motion: {
            directions: random.uniform() < 0.5 ? 'both' : 'one',
            turnRound: random.uniform() < 0.5 ? 'outside' : 'inside',
            delay: random.uniform() < 0.5 ? 0 : between(1e-6, 1e-3),
          },
        }),
        machine: {
          maxPower: between(1, 1000),
          maxRepetitionRate: between(1e4, 1e7),
          maxSpeed: between(0.1, 100),
          acceleration: between(100, 1e6),
          spots: Math.ceil(between(1, 200)),
          distance: between(1e-6, 1e-3),
          efficiency: between(0.3, 1),
        },
        stitching: { moveTime: random.uniform() < 0.3 ? 0 : between(1e-3, 10), overlap: between(1e-6, 1e-3) },
      };
      const { rate } = scaledField(drawn);
      expect(rate).toBeGreaterThan(0);
      expect(rate).toBeLessThanOrEqual(ceilings(drawn)[0]!.rate * (1 + 1e-9));
    }
  });
});

describe('a target that cannot be met', () => {
  it('1 m²/h = 277.8 mm²/s: power alone misses a factor of 1.39; all together 2.41', () => {
    const { rate } = scaledField(work);
    const missing = missingTo(1 / 3600, rate, ceilings(work));
    expectClose(missing.factor, 1 / 3600 / (98.01e-6 / 0.85), byHand);
    expect(missing.short.map(({ kind }) => kind)).toEqual(['power']);
    expectClose(missing.short[0]!.factor, 1 / 3600 / 2e-4, byHand);
  });

  it('1.2 m²/h: turning and moves as well, each with its factor', () => {
    const target = 1.2 / 3600;
    const { short } = missingTo(target, scaledField(work).rate, ceilings(work));
    expect(short.map(({ kind }) => kind)).toEqual(['power', 'acceleration', 'stitching']);
    expectClose(short[2]!.factor, (target * 0.3) / 98.01e-6, byHand);
  });

  it('a target that is met misses nothing', () => {
    const { factor, short } = missingTo(0.1 / 3600, scaledField(work).rate, ceilings(work));
    expect(factor).toBeLessThan(1);
    expect(short).toEqual([]);
  });
});

describe('the number of spots', () => {
  it('500 µJ serve 500 · 0.8/20 = 20 spots, 24 µJ one, 15 µJ none; 10 mm hold 50 spots 200 µm apart', () => {
    expect(spotsOfEnergy(500e-6, 20e-6, 0.8)).toBe(20);
    expect(spotsOfEnergy(24e-6, 20e-6, 0.8)).toBe(1);
    expect(spotsOfEnergy(15e-6, 20e-6, 0.8)).toBe(0);
    expect(mostSpots(work.recipe, work.machine, 500e-6, 200e-6)).toEqual({ energy: 20, height: 50, all: 20 });
  });

  it('numbers at which a scan is saved: 1000 lines by hand near both ends', () => {
    const useful = usefulSpots(work.recipe.hatch, 10e-6, 5000);
    expect(useful.slice(0, 4)).toEqual([1, 2, 3, 4]);
    expect(useful.slice(-3)).toEqual([334, 500, 1000]);
  });

  it('1667 lines, spots 33 lines apart: 20 take 2 · 33 + 33 scans, 44 take 66, and only 50 take 50', () => {
    expect(groupedScans(1667, 20, 33)).toBe(99);
    expect(groupedScans(1667, 44, 33)).toBe(33 + 33);
    // 50 · 33 = 1650 lines in 33 scans, and 17 lines more; 51 · 33 are more than the field has.
    expect(groupedScans(1667, 50, 33)).toBe(50);
    const hatch = { ...work.recipe.hatch, lineSpacing: 6e-6 };
    expect(usefulSpots(hatch, 200e-6, 60).slice(-4)).toEqual([25, 26, 50, 51]);
  });

  it('numbers at which a scan is saved are those found by trying each', () => {
    const random = createRandom(8303);
    for (let n = 0; n < 200; n++) {
      const lines = Math.ceil(2000 * random.uniform());
      const stride = Math.ceil(60 * random.uniform());
      const most = Math.ceil(300 * random.uniform());
      const hatch = { ...work.recipe.hatch, height: lines * 1e-5, lineSpacing: 1e-5 };
      const tried = Array.from({ length: most }, (_, i) => i + 1).filter(
        (spots) => spots === 1 || groupedScans(lines, spots, stride) < groupedScans(lines, spots - 1, stride),
      );
      expect(usefulSpots(hatch, stride * 1e-5, most)).toEqual(tried);
    }
  });

  it('two passes at right angles on a field of 10 mm × 20 mm count lines of both', () => {
    // 4 spots 300 lines apart: 1000 lines are 300 scans, one group of 1200 not full; 2000 are 300 and 300 more.
    const turned = recipe({
      hatch: { ...work.recipe.hatch, width: 20e-3, passes: 2, angle: Math.PI / 2 },
    });
    const apart = { ...turned, machine: { ...on({ acceleration: 1e300 }).machine, distance: 3e-3 } };
    // At 1 m/s lines of 20 mm and of 10 mm.
    expectClose(scaledTimes(apart, 1).total, 300 * 20e-3 + 600 * 10e-3, byHand);
  });

  it('the least that meets the target is that found by trying each', () => {
    // 20 kW, so that power does not stop it: 1.8 m²/h of 98.01 mm² leave 0.196 s a field, with moves of 0.1 s.
    const strong: ScaledWork = { ...on({ maxPower: 20e3 }), stitching: { moveTime: 0.1, overlap: 0.1e-3 } };
    for (const target of [0.2, 0.5, 1, 1.8, 2.5, 3.5].map((perHour) => perHour / 3600)) {
      const found = spotsFor(strong, target, 1000);
      let least = 1;
      while (least <= 1000 && scaledField(withSpots(strong, least)).rate < target) least++;
      expect(found.met).toBe(least <= 1000);
      if (found.met) expect(found.spots).toBe(least);
    }
  });

  it('a second spot may make it slower: the splitter takes more than the turns give', () => {
    // At 10 W one spot runs 2.5 m/s: 1000 · (4 + 0.1) ms; two run 1 m/s: 500 · (10 + 0.04) ms.
    const weak = on({ maxPower: 10 });
    const [one, two] = [1, 2].map((spots) => scaledField(withSpots(weak, spots)));
    expectClose(one!.fieldTime, 4.1, byHand);
    expectClose(two!.fieldTime, 5.02, byHand);
    expect(spotsFor(weak, 1, 20)).toMatchObject({ met: false, spots: 1 });
  });
});
