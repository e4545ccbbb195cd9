import { describe, expect, it } from 'vitest';
import { tabulateAreas } from '../../lib/process/areaTable.ts';
import { fitGaussianMarks } from '../../lib/process/gaussianMarks.ts';
import { fitProfileMarks } from '../../lib/process/profileMarks.ts';
import { expectClose } from '../close.ts';
import { areaAboveIn, markFrom, roundLight, shapedSpots } from './spotsUnderTest.ts';
import { syntheticMarks } from './syntheticMarks.ts';

const thresholdEnergy = 2e-6;

describe('tabulated areas', () => {
  it('a Gaussian: proportional to ln(peak/level), above and below', () => {
    const table = tabulateAreas((level) => Math.log(1 / level));
    for (const u of [1e-3, 0.02, 0.7, 2, 4.5]) {
      // Monotone cubics of u in √u are off by an eighth of the first step squared at most, 1.4e-5.
      expectClose(table.areaAt(u), u, { absolute: 1.4e-5, source: 'closed form' });
      expectClose(table.slopeAt(u), 1, { absolute: 1.4e-3, source: 'closed form' });
    }
    expectClose(table.areaAt(6), 6, { relative: 1e-3, source: 'last slope' });
    expectClose(table.areaAt(-0.1), -0.1, { relative: 1.4e-3, source: 'tangent' });
  });

  it.each(shapedSpots)('$name: near to exact areas', ({ name, light, plane }) => {
    const areaAbove = areaAboveIn(light, plane);
    const table = tabulateAreas(areaAbove);
    const offs = Array.from({ length: 80 }, (_, i) => 0.03 + 0.03 * i).map((u) => {
      const exact = areaAbove(Math.exp(-u));
      return Math.abs(table.areaAt(u) / exact - 1);
    });
    const sorted = [...offs].sort((a, b) => a - b);
    console.log(`${name}: median ${sorted[40]!.toExponential(1)}, worst ${sorted[79]!.toExponential(1)}`);
    // Averages over 2 % of energy; only where a dip closes do they differ by more than a per cent.
    expect(sorted[40]).toBeLessThan(5e-4);
    expect(sorted[70]).toBeLessThan(1e-2);
  });
});

describe('areas against energy with a predicted profile', () => {
  it.each(shapedSpots)('exact marks give back the threshold: $name', ({ light, plane }) => {
    const areaAbove = areaAboveIn(light, plane);
    const recipe = { seed: 4, thresholdEnergy, relative: 0, reading: 0, energyScatter: 0, from: 1.5 };
    const { marks } = syntheticMarks({ ...recipe, markAt: markFrom(areaAbove) });
    const fit = fitProfileMarks(marks, areaAbove, 3e9);
    // The table's average over 2 % of energy is the method's error.
    expectClose(fit.thresholdEnergy, thresholdEnergy, { relative: 3e-3 });
    expectClose(fit.thresholdFluence, 3e9 * fit.thresholdEnergy, { relative: 1e-12 });
  });

  it('a Gaussian fit of a flat-top’s spots is wrong by far more than it says', () => {
    const { light, plane } = shapedSpots[0]!;
    const areaAbove = areaAboveIn(light, plane);
    const { marks } = syntheticMarks({ seed: 8, thresholdEnergy, markAt: markFrom(areaAbove) });
    const profile = fitProfileMarks(marks, areaAbove, 1);
    const gaussian = fitGaussianMarks(marks);
    const off = Math.abs(gaussian.thresholdEnergy / thresholdEnergy - 1);
    console.log(
      `Gaussian: ${gaussian.thresholdEnergy} for ${thresholdEnergy}, says ± ${gaussian.uncertainties.thresholdEnergy}`,
    );
    expect(off * thresholdEnergy).toBeGreaterThan(2 * gaussian.uncertainties.thresholdEnergy);
    expect(gaussian.verdict).toBe('does not describe');
    expect(profile.verdict).toBe('describes');
    expect(Math.abs(profile.thresholdEnergy / thresholdEnergy - 1)).toBeLessThan(0.05);
  });

  it('one known uncertainty a mark: χ² of 1, and refused where one is missing', () => {
    const areaAbove = areaAboveIn(roundLight(1, 1.4), 0);
    const made = syntheticMarks({
      seed: 6,
      thresholdEnergy,
      markAt: markFrom(areaAbove),
      relative: 0.03,
      reading: 0,
      energyScatter: 0,
      from: 1.2,
    });
    const marks = made.marks.map((mark) => ({ ...mark, areaUncertainty: 0.06 * mark.area }));
    const fit = fitProfileMarks(marks, areaAbove, 1, { absolute: true });
    expect(fit.reducedChiSquare).toBeGreaterThan(0.4);
    expect(fit.reducedChiSquare).toBeLessThan(1.8);
    expect(fit.scatter).toBeNull();
    const { areaUncertainty: _, ...bare } = marks[3]!;
    expect(() => fitProfileMarks([...marks, bare], areaAbove, 1, { absolute: true })).toThrow(
      /Row 5 has no uncertainty/,
    );
    expect(() => fitProfileMarks(marks.slice(0, 2), areaAbove, 1)).toThrow(/at least 3/);
  });
});
