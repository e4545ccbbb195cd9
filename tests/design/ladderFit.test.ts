import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ladderDesigns, ladderTruth } from '../../data/measured/drawLadder.ts';
import type { FittedLadder } from '../../lib/design/ladderFit.ts';
import { readLadderFile } from '../../lib/design/spotFile.ts';
import { outcomesOf, read, type Values } from '../notebooks/designOutcomes.ts';

const fileOf = (name: string) =>
  readLadderFile(readFileSync(new URL(`../../data/measured/${name}`, import.meta.url), 'utf8'), name);
const fitOf = (design: Values) => (outcomesOf(design)('ladder.fit') as { value: FittedLadder }).value;
const own = { ...ladderDesigns.own, 'ladder.table': fileOf('rain-gauge-ladder.csv') };
const thin = { ...ladderDesigns.thin, 'ladder.table': fileOf('rain-gauge-thin-step-ladder.csv') };
const holds = ([low, high]: readonly [number, number], truth: number) => low < truth && truth < high;

describe('the invented ladders', () => {
  it.each([
    ['alike sides: the zero, and no direction', own, null],
    ['sides that differ: zero and direction', thin, ladderTruth.direction],
  ])(
    '%s',
    (_name, design, direction) => {
      const fit = fitOf(design);
      expect(fit.direction).toBe(direction);
      expect(holds(fit.zero.interval, ladderTruth.zero)).toBe(true);
      expect(holds(fit.thresholdFluence.interval, ladderTruth.threshold)).toBe(true);
      expect(fit.verdict).toBe('describes');
      // A hundredth of the Rayleigh length, 0.6 mm: what 36 marks of 2 % give.
      expect(fit.zero.uncertainty).toBeLessThan(10e-6);
      // One curve a row: told, or alike for both directions.
      expect([fit.curves.shaped.length, fit.curves.unshaped.length]).toEqual([1, 1]);
      const value = read(design);
      expect([value('ladder.zero'), value('ladder.zeroUncertainty'), value('ladder.direction')]).toEqual([
        fit.zero.value,
        fit.zero.uncertainty,
        direction ?? 0,
      ]);
    },
    60_000,
  );
});

describe('a ladder that leaves the direction open though it matters', () => {
  it('has a curve for either', () => {
    // The funnel's ladder taken for that of the thin step, whose sides differ: evidence 2.7, where 9 count as told.
    const fit = fitOf({ ...ladderDesigns.thin, 'ladder.table': fileOf('rain-gauge-ladder.csv') });
    expect(fit.direction).toBeNull();
    expect(fit.directionEvidence).toBeGreaterThan(0.5);
    expect(fit.curves.shaped.map(({ direction }) => direction).sort()).toEqual([-1, 1]);
    expect(fit.verdict).toBe('does not describe');
  }, 60_000);
});

describe('a ladder that says too little or too much', () => {
  const bare = (rows: string, more: Values = {}): Values => ({
    'ladder.table': readLadderFile(`z (mm);d (µm);plate;E (µJ)\n${rows}`, 'ladder.csv'),
    ...more,
  });
  const problemOf = (design: Values) => {
    const { problem } = outcomesOf(design)('ladder.zero') as {
      problem: { message: string; parts: { input?: string } };
    };
    expect(problem.parts.input).toBe('ladder.table');
    return problem.message;
  };

  it('waits for a table', () => {
    expect(problemOf({})).toMatch(/^No table of a measured ladder has been given yet/);
  });

  it('wants four marks', () => {
    expect(problemOf(bare('0;10;0;0.4\n0.1;9;0;0.4\n0.2;5;0;0.4\n0.3;0;0;0.4\n'))).toMatch(
      /3 marks|at 4|four/,
    );
  });

  it('is not searched over metres', () => {
    expect(problemOf(bare('0;10;0;0.4\n100;9;0;0.4\n200;5;0;0.4\n300;8;0;0.4\n'))).toMatch(
      /span 300\smm, more than 40 Rayleigh lengths of 131\sµm\. Check the unit of z/,
    );
  });

  it('names a row that cannot be read, and rows without a size', () => {
    expect(problemOf(bare('0;10;0;0.4\n0.1;wide;0;0.4\n'))).toMatch(
      /^"ladder\.csv": Row 3, column d \(µm\) holds "wide".* Then give the table again\.$/,
    );
    const planned = readLadderFile('x on coupon (mm);y on coupon (mm);z (mm);d (µm)\n0;0;0;\n', 'l.csv');
    expect(problemOf({ 'ladder.table': planned })).toMatch(/^None of the 1 rows of the table of the ladder/);
  });

  it('without energies it takes the planned ones, and says so where there are none', () => {
    const table = { 'ladder.table': readLadderFile('z (mm);d (µm)\n0;10\n0.1;9\n', 'ladder.csv') };
    const { value } = outcomesOf(table)('ladder.marks') as unknown as {
      value: { shaped: readonly { energy: number }[] };
    };
    expect(value.shaped[0]!.energy).toBe(read(table)('ladder.shaped.energy'));
    expect(problemOf({ ...table, 'threshold.source': 'fitted' })).toMatch(/gives no energies/);
  });
});
