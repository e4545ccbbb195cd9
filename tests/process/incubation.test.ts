import { describe, expect, it } from 'vitest';
import { createRandom } from '../../lib/numerics/random.ts';
import { fitIncubation, thresholdAt } from '../../lib/process/incubation.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';

const counts = [1, 3, 10, 30, 100, 300, 1000];

describe('threshold against pulses', () => {
  it('one pulse, endless pulses, and never below the floor', () => {
    const law = { first: 2000, exponent: 0.8, floor: 700 };
    expect(thresholdAt(law, 1)).toBe(2000);
    expectClose(thresholdAt({ ...law, floor: 0 }, 100), 2000 * 100 ** -0.2, {
      relative: 1e-14,
      source: 'Jee 1988',
    });
    expectClose(thresholdAt(law, 1e30), 700, { relative: 1e-5 });
    const random = createRandom(71);
    for (let i = 0; i < 500; i++) {
      const first = random.between(100, 1e4);
      const floor = random.between(0, first);
      const pulses = 10 ** random.between(0, 9);
      expect(thresholdAt({ first, floor, exponent: random.between(0.3, 1) }, pulses)).toBeGreaterThanOrEqual(
        floor,
      );
    }
  });

  it('refuses what cannot be', () => {
    expect(() => thresholdAt({ first: 1, exponent: 0.9, floor: 0 }, 0.5)).toThrow(/at least one/);
    expect(() => thresholdAt({ first: 1, exponent: 0.9, floor: 2 }, 5)).toThrow(/between 0 and/);
    expect(() => fitIncubation([{ pulses: 1, fluence: 1 }])).toThrow(/at least 3/);
    expect(() => fitIncubation([1, 2, 3].map((pulses) => ({ pulses, fluence: 0 })))).toThrow(/cannot be/);
  });

  it('the power law is the form of DanWood', () => {
    // y = b1·x^b2, so S = b2 + 1; unweighted.
    const set = reference('nist-strd').nonlinear.find(({ name }: { name: string }) => name === 'DanWood');
    const points = set.x.map((pulses: number, i: number) => ({ pulses, fluence: set.y[i], uncertainty: 1 }));
    const { power } = fitIncubation(points);
    const source = 'NIST StRD DanWood';
    expectClose(power.first, set.certified[0], { relative: 1e-8, source });
    expectClose(power.exponent - 1, set.certified[1], { relative: 1e-8, source });
    expectClose(power.uncertainties.first, set.certified_sd[0], { relative: 1e-6, source });
    expectClose(power.uncertainties.exponent, set.certified_sd[1], { relative: 1e-6, source });
  });

  it('exact thresholds with a floor give it back', () => {
    const law = { first: 2200, exponent: 0.75, floor: 900 };
    const fit = fitIncubation(counts.map((pulses) => ({ pulses, fluence: thresholdAt(law, pulses) })));
    expect(fit.better).toBe('floored');
    expectClose(fit.floored!.floor, 900, { relative: 1e-7 });
    expectClose(fit.floored!.exponent, 0.75, { relative: 1e-7 });
    expectClose(fit.floored!.first, 2200, { relative: 1e-7 });
  });

  it('a floor is seldom found where there is none, and mostly where there is one', () => {
    const share = (floor: number, exponent: number) => {
      const random = createRandom(99);
      let found = 0;
      for (let i = 0; i < 200; i++) {
        const points = counts.map((pulses) => {
          const fluence =
            thresholdAt({ first: 2000, exponent, floor }, pulses) * (1 + 0.03 * random.normal());
          return { pulses, fluence, uncertainty: 0.03 * fluence };
        });
        if (fitIncubation(points, { absolute: true }).better === 'floored') found++;
      }
      return found / 200;
    };
    const [none, one] = [share(0, 0.85), share(800, 0.6)];
    console.log(`floor found: ${none} without, ${one} with`);
    expect(none).toBeLessThanOrEqual(0.07);
    expect(one).toBeGreaterThan(0.9);
  });
});
