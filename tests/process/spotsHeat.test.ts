import { describe, expect, it } from 'vitest';
import { type HeatInput, pulseRise } from '../../lib/process/heatPulse.ts';
import { heatedField, hottestRise } from '../../lib/process/heatRate.ts';
import type { Machine, Recipe } from '../../lib/process/scaleUp.ts';
import {
  ownRiseAt,
  ownRises,
  type SpotHeat,
  spotsHeatRate,
  spotsRise,
} from '../../lib/process/scaleUpHeat.ts';
import { lineTimes } from '../../lib/process/scanTime.ts';
import { expectClose } from '../close.ts';

/** 96 lines 10 µm apart, 1 mm long, pulses every 5 µm: 200 a line, 19 200 in all, with some of each spot beside another. */
const recipe: Recipe = {
  hatch: {
    width: 1e-3,
    height: 0.96e-3,
    lineSpacing: 10e-6,
    passes: 1,
    angle: 0,
    interlacing: 1,
    directions: 'both',
  },
  motion: { directions: 'both', turnRound: 'outside', delay: 0 },
  pulseSpacing: 5e-6,
  energy: 20e-6,
  burst: 1,
};
const machine: Machine = {
  maxPower: 100,
  maxRepetitionRate: 2e6,
  maxSpeed: 20,
  acceleration: 50e3,
  spots: 1,
  distance: 0.2e-3,
  efficiency: 0.8,
};
const steel: HeatInput = {
  energy: 2e-6,
  radius: 15e-6,
  diffusivity: 3.75e-6,
  heatCapacity: 4e6,
  thickness: 1e-3,
};
const copper: HeatInput = { ...steel, diffusivity: 1.16e-4, heatCapacity: 3.45e6, thickness: 3e-3 };
const settings = (passes: number) => ({
  hatch: { ...recipe.hatch, passes },
  pulseSpacing: recipe.pulseSpacing,
  motion: { ...recipe.motion, acceleration: machine.acceleration, maxSpeed: machine.maxSpeed, speed: 0 },
});

interface Row {
  readonly heat: HeatInput;
  readonly spots: number;
  /** From spot to spot, in lines. */
  readonly strip: number;
  readonly rate: number;
  readonly passes: number;
}

/**
 * Highest rise just before a pulse among several places of the last group: every pulse of every spot, one by one. Spot k
 * writes the strip of lines from k · strip on, all spots together, and then they go on to the next lines.
 */
function direct({ heat, spots, strip, rate, passes }: Row): number {
  const { hatch, pulseSpacing: p } = recipe;
  const count = Math.round(hatch.width / p);
  const lines = Math.round(hatch.height / hatch.lineSpacing);
  const groups = lines / (strip * spots);
  const scanTime = lineTimes(hatch.width, { ...settings(1).motion, speed: p * rate }).total;
  const scans = groups * strip;
  let highest = 0;
  const middle = Math.floor((spots - 1) / 2);
  for (const spot of new Set([middle, spots - 1]))
    for (const j of new Set([strip - 1, Math.floor(strip / 2)]))
      for (const pulse of [10, Math.round(count / 4), count / 2, count - 1])
        for (const behind of [0, p, 0.7 * heat.radius]) {
          const turn = (groups - 1) * strip + j;
          const now = ((passes - 1) * scans + turn) * scanTime + pulse / rate;
          const y = ((groups - 1) * strip * spots + spot * strip + j) * hatch.lineSpacing;
          let sum = 0;
          for (let scan = 0; scan <= (passes - 1) * scans + turn; scan++) {
            const [group, k] = [Math.floor((scan % scans) / strip), (scan % scans) % strip];
            const back = ((passes - 1) * scans + turn - scan) % 2 === 1;
            for (let one = 0; one < spots; one++) {
              const across = (group * strip * spots + one * strip + k) * hatch.lineSpacing - y;
              for (let i = 0; i < count; i++) {
                const time = scan * scanTime + i / rate;
                if (time > now - 0.5 / rate) break;
                const x = (back ? count - 1 - i : i) * p - (pulse * p - behind);
                sum += pulseRise(heat, x * x + across * across, now - time);
              }
            }
          }
          highest = Math.max(highest, sum);
        }
  return highest;
}

/** What the process says. */
function found({ heat, spots, strip, rate, passes }: Row) {
  const own = ownRises(heat, settings(passes), { limit: 1e9, highest: rate });
  const all: SpotHeat = { input: heat, own, limit: 1e9, distance: strip * recipe.hatch.lineSpacing };
  const work = { recipe: { ...recipe, hatch: { ...recipe.hatch, passes } }, machine: { ...machine, spots } };
  return spotsRise(work, all, rate);
}

describe('the rise with several spots against every pulse of every spot', () => {
  it.each<[string, Row]>([
    ['steel, one spot', { heat: steel, spots: 1, strip: 24, rate: 100e3, passes: 1 }],
    ['steel, four spots in one group', { heat: steel, spots: 4, strip: 24, rate: 100e3, passes: 1 }],
    ['steel, four spots in four groups', { heat: steel, spots: 4, strip: 6, rate: 100e3, passes: 1 }],
    ['steel, twelve spots', { heat: steel, spots: 12, strip: 8, rate: 100e3, passes: 1 }],
    ['steel, twenty-four spots close together', { heat: steel, spots: 24, strip: 2, rate: 100e3, passes: 1 }],
    ['steel, twelve spots at 10 kHz', { heat: steel, spots: 12, strip: 8, rate: 10e3, passes: 1 }],
    ['steel, twelve spots at 1 MHz', { heat: steel, spots: 12, strip: 8, rate: 1e6, passes: 1 }],
    ['copper, four spots', { heat: copper, spots: 4, strip: 24, rate: 1e6, passes: 1 }],
    ['copper, twelve spots', { heat: copper, spots: 12, strip: 8, rate: 1e6, passes: 1 }],
    ['steel, four spots, three passes', { heat: steel, spots: 4, strip: 24, rate: 100e3, passes: 3 }],
  ])('%s', (name, row) => {
    const { own, beside, before, sum } = found(row);
    const expected = direct(row);
    console.log(
      `${name}: ${own.toPrecision(4)} + ${beside.toPrecision(3)} + ${before.toPrecision(3)} = ${sum.toPrecision(4)} K, one by one ${expected.toPrecision(4)} K: ${(sum / expected).toFixed(3)}`,
    );
    expect(sum / expected).toBeGreaterThan(0.98);
    expect(sum / expected).toBeLessThan(1.08);
  });
});

describe('the rate at which the surface comes to its limit', () => {
  const own = ownRises(steel, settings(1), { limit: 100, highest: 1e6 });
  const heat: SpotHeat = { input: steel, own, limit: 100, distance: 80e-6 };
  const work = (spots: number) => ({ recipe, machine: { ...machine, spots } });

  it('is that of one spot alone with one, and falls with their number; the rise there is the limit', () => {
    const rates = [1, 2, 4, 12, 1000].map((spots) => spotsHeatRate(work(spots), heat)!);
    expect(rates[0]).toBe(own.rates[0]);
    expectClose(hottestRise(steel, heatedField(settings(1), rates[0]!)).rise, 100, {
      relative: 1e-7,
      source: 'put back',
    });
    rates.slice(1).forEach((rate, i) => {
      expect(rate).toBeLessThan(rates[i]!);
      expectClose(spotsRise(work([2, 4, 12, 1000][i]!), heat, rate).sum, 100, { relative: 1e-8 });
    });
  });

  it('is not there where the highest rate does not reach it; spots may reach it where one does not', () => {
    const cool = ownRises(steel, settings(1), { limit: 150, highest: 100e3 });
    expect(cool.reached).toBe(false);
    const there = { ...heat, own: cool, limit: 150 };
    expect(spotsHeatRate(work(1), there)).toBeUndefined();
    expect(spotsHeatRate(work(12), there)).toBeLessThan(100e3);
  });

  it('rises between the rates of the table', () => {
    for (const rate of [0.7e5, 33e3, 7.1e3]) {
      const exact = hottestRise(steel, heatedField(settings(1), rate)).rise;
      expectClose(ownRiseAt(own, rate), exact, { relative: 5e-3, source: 'worked out at that rate' });
    }
  });
});
