import { describe, expect, it } from 'vitest';
import { figureCsv } from '../../notebooks/page/figures/figureCsv.ts';
import { ceilingsFigure, spotsFigure, stepsFigure } from '../../notebooks/scaleUpFigures.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';

const cold: Values = { 'scaleUp.heat': null, 'scaleUp.todayHeat': null };

/** Rows of the file of a figure. */
function rowsOf(figure: typeof stepsFigure, design: Values = {}, pins: Values = cold): string[][] {
  const outcomeOf = outcomesOf(design, pins);
  const values = Object.fromEntries(
    Object.entries(figure.from).map(([key, quantity]) => {
      const outcome = outcomeOf(quantity.id);
      if (!('value' in outcome)) throw new Error(outcome.problem.message);
      return [key, outcome.value];
    }),
  );
  return figureCsv(figure.view(values))
    .trimEnd()
    .split('\r\n')
    .map((line) => line.split(','));
}

describe('files of the charts of scaling up', () => {
  it('each step is a row with its name, rate and the area wanted', () => {
    const [head, ...rows] = rowsOf(stepsFigure);
    expect(head).toEqual(['step', 'area per hour with all steps up to this one (m²/h)', 'wanted (m²/h)']);
    expect(rows.map(([step]) => step)).toEqual([
      'as it is set',
      'today’s machine at its fastest',
      'the power of the larger laser',
      'its repetition rate',
      'the larger scanner',
      'the further spots',
    ]);
    expect(rows.map(([, , wanted]) => wanted)).toEqual(rows.map(() => '0.1'));
    // 9.98 mm × 9.98 mm in 429 scans of 40.01 ms and 0.3 s.
    expect(Number(rows.at(-1)![1])).toBeCloseTo((3600 * 9.98e-3 ** 2) / (429 * 0.04001 + 0.3), 9);
  });

  it('where heat slows today’s machine down, its step is called that', () => {
    const rows = rowsOf(stepsFigure, {}, {});
    expect(rows[2]![0]).toBe('held to the allowed temperature');
  });

  it('each limit is a row with its name', () => {
    const [head, first, ...rest] = rowsOf(ceilingsFigure);
    expect(head![0]).toBe('limit');
    expect(first![0]).toBe('all together');
    expect(rest.map(([limit]) => limit)).toEqual([
      'power',
      'repetition rate',
      'acceleration',
      'moves',
      'scanner speed',
    ]);
  });

  it('each number of spots is a row, and more than useful ones end at the number chosen', () => {
    const rows = rowsOf(spotsFigure, { 'scaleUp.spots': 10e3, 'scaleUp.maxPulseEnergy': 1 }).slice(1);
    expect(new Set(rows.map(([spots]) => spots)).size).toBe(rows.length);
    expect(rows.at(-1)![0]).toBe('10000');
    expect(rows.every((row) => row.length === 3 && row.every((cell) => cell !== ''))).toBe(true);
  });
});
