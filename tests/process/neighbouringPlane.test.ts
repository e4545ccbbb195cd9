import { describe, expect, it } from 'vitest';
import type { AreaTable } from '../../lib/process/areaTable.ts';
import { fitTabulated } from '../../lib/process/profileMarks.ts';
import { cases } from '../cases.ts';
import { normalShareBelow } from './normalShare.ts';
import { markFrom, shapedSpots, tableIn } from './spotsUnderTest.ts';
import { type SyntheticTable, syntheticMarks } from './syntheticMarks.ts';

const tables = cases(1000, 50);
const thresholdEnergy = 2e-6;

/**
 * What the areas of the plane `made`, without scatter, leave over when those of `taken` are fitted to them, in squared
 * standard deviations of the known scatter.
 */
function leftOver(taken: AreaTable, made: AreaTable, { marks, scatter }: SyntheticTable): number {
  const places = marks.flatMap(({ energy, area }) => {
    const u = Math.log(energy / thresholdEnergy);
    if (area === 0 || u <= 0) return [];
    const expected = made.areaAt(u);
    const variance =
      Math.PI * expected * scatter.reading ** 2 +
      4 * expected ** 2 * scatter.relative ** 2 +
      (made.slopeAt(u) * scatter.energy) ** 2;
    return [{ u, expected, variance }];
  });
  const left = (shift: number) =>
    places.reduce(
      (sum, { u, expected, variance }) => sum + (expected - taken.areaAt(u + shift)) ** 2 / variance,
      0,
    );
  const least = (middle: number, step: number, count: number) =>
    Array.from({ length: 2 * count + 1 }, (_, i) => middle + step * (i - count))
      .map((shift) => ({ shift, value: left(shift) }))
      .reduce((best, next) => (next.value < best.value ? next : best));
  return least(least(0, 0.03, 20).shift, 0.003, 10).value;
}

describe(`marks half a Rayleigh length off, ${tables} tables`, () => {
  // A test for this shift alone, the scatter known, that raises 5 % false alarms finds it with the chance that a normal
  // number lies above 1.645 − √(what is left over): no test finds more (Neyman and Pearson). The verdict does not know
  // the scatter, and has other faults to look for with the same false alarms.
  const bounds = [
    { name: 'round ring', atLeast: 0.5, atMost: 0.85 },
    { name: 'round with a stop', atLeast: 0.8, atMost: 0.96 },
    { name: 'crossed steps', atLeast: 0.82, atMost: 1 },
  ] as const;
  it.each(bounds)(
    '$name: how often it is told, and how often any test could',
    ({ name, atLeast, atMost }) => {
      const { light, plane } = shapedSpots.find((spot) => spot.name === name)!;
      const [taken, ...others] = [0, -0.5, 0.5].map((shift) => tableIn(light, plane + shift));
      const made = others[1]!;
      const markAt = markFrom((level) => made.areaAt(-Math.log(level)));
      const tried = Array.from({ length: tables }, (_, i) => {
        const table = syntheticMarks({ seed: 5000 + i, thresholdEnergy, markAt });
        const { verdict } = fitTabulated(table.marks, taken!, 1, { others });
        const best = normalShareBelow(Math.sqrt(leftOver(taken!, made, table)) - 1.645);
        return { told: verdict === 'does not describe' ? 1 : 0, best };
      });
      const mean = (of: (one: (typeof tried)[0]) => number) =>
        tried.reduce((sum, one) => sum + of(one), 0) / tables;
      const [told, best] = [mean((one) => one.told), mean((one) => one.best)];
      console.log(`${name}: told ${(100 * told).toFixed(1)} %, at best ${(100 * best).toFixed(1)} %`);
      const chance = 3 * Math.sqrt((atLeast * (1 - atLeast)) / tables);
      expect(told).toBeGreaterThanOrEqual(atLeast - chance);
      expect(told).toBeLessThanOrEqual(best + chance);
      expect(best).toBeLessThanOrEqual(atMost);
    },
    600_000,
  );
});
