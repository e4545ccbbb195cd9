import { expect, it } from 'vitest';
import { countingLevel } from '../../lib/process/cuttingLaw.ts';
import { sampleCuttingLight } from '../../lib/process/cuttingLight.ts';
import { gaussianSpot } from '../../lib/process/gaussianSpot.ts';
import { cutSheet } from '../../lib/process/sheet.ts';
import { cheapestUnit } from '../../lib/process/sheetBest.ts';

const gaussian = gaussianSpot(10e-6);
const first = 2000;
const law = { depth: 20e-9, incubation: { first, exponent: 1, floor: 0 } };
const train = { pulseSpacing: 0.5e-6, pulsesPerBurst: 1, law };
const after = 3;

const lightAt = (unit: number) =>
  sampleCuttingLight({
    spotAtDepth: () => gaussian,
    planeStep: 1e-6,
    level: countingLevel(law) / unit,
    depth: 1e-6,
    direction: 0,
    mirrored: true,
    steps: { across: 48, along: 48 },
  });

it.each([5e-6, 15e-6])(
  'no energy on a grid ten times finer cuts a sheet of %s m with less (independent: every energy cut)',
  (thickness) => {
    const found = cheapestUnit({
      light: lightAt(300 * first),
      train,
      thickness,
      after,
      between: [2 * first, 300 * first],
    })!;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i <= 120; i++) {
      const unit = 2 * first * 150 ** (i / 120);
      const cut = cutSheet(lightAt(unit), { ...train, unit }, thickness, after);
      // Whole passes here: the broken number of the search lies up to one below.
      if (!('reached' in cut)) least = Math.min(least, (cut.allPasses - 1) * unit);
    }
    expect(found.cost).toBeGreaterThan(least);
    const own = cutSheet(lightAt(found.unit), { ...train, unit: found.unit }, thickness, after);
    expect('reached' in own).toBe(false);
    if ('reached' in own) return;
    expect(own.allPasses).toBe(Math.ceil(found.cost / found.unit));
    // Its whole passes against those of the best of the grid: one pass of some ten, and the fineness of 2 %.
    expect((own.allPasses - 1) * found.unit).toBeLessThan(1.02 * (least + found.unit));
  },
);

it('a sheet that no energy cuts has no best', () => {
  const cut = {
    light: lightAt(10 * first),
    train,
    thickness: 1e-3,
    after,
    between: [2 * first, 10 * first] as const,
  };
  expect(cheapestUnit(cut)).toBeUndefined();
});
