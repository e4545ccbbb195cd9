import { describe, expect, it } from 'vitest';
import type { FittedLadder } from '../../lib/design/ladderFit.ts';
import type { LadderMarks } from '../../lib/design/ladderMarks.ts';
import { ladderFitFigure } from '../../notebooks/ladderFitFigure.ts';

const mark = (row: number, z: number, diameter: number, energy = 1e-6) => ({
  row,
  energy,
  pulses: 1,
  z,
  area: (Math.PI / 4) * diameter ** 2,
});
const marks: LadderMarks = {
  shaped: [mark(2, 1e-3, 20e-6), mark(3, 1.1e-3, 22e-6, 2e-6), mark(4, 1.2e-3, 0)],
  unshaped: [mark(5, 1.05e-3, 10e-6)],
};
const curve = (direction: 1 | -1) => ({
  direction,
  energy: 1e-6,
  readings: Float64Array.of(1e-3, 1.1e-3, 1.2e-3),
  diameters: Float64Array.of(19e-6, 21e-6, 0),
});
const panels = (shaped: readonly ReturnType<typeof curve>[], some = marks) => {
  const fit = {
    zero: { value: 1.07e-3 },
    curves: { shaped, unshaped: [curve(1)] },
    marks: some,
  } as unknown as FittedLadder;
  return ladderFitFigure.view({ fit });
};
const numbers = (column: Float64Array) => [...column].filter((value) => !Number.isNaN(value));

describe('measured marks along z with the prediction over them', () => {
  const [shaped, plain] = panels([curve(1)]);

  it('a chart a row, on the same axes, with the places where no mark was seen', () => {
    expect([shaped!.title, plain!.title]).toEqual([
      'Marks along z with the plate',
      'Marks along z without the plate',
    ]);
    expect(shaped!.x.domain).toEqual(plain!.x.domain);
    expect(shaped!.y.domain).toEqual([0, 30]);
    expect(shaped!.series.map(({ label }) => label)).toEqual(['measured', 'fitted', 'no mark seen']);
    expect(plain!.series.map(({ label }) => label)).toEqual(['measured', 'fitted']);
    expect(numbers(shaped!.series[0]!.y).map((d) => d.toFixed(3))).toEqual(['20.000', '22.000']);
    // Where nothing is predicted the curve has a gap.
    expect(Number.isNaN(shaped!.series[1]!.y[2]!)).toBe(true);
    expect(shaped!.marks![0]).toMatchObject({ x: 1.07, label: 'focus, 1.07\u202fmm' });
  });

  it('says for which energy the curve is', () => {
    expect(shaped!.summary).toBe(
      '2 of 3 places with the plate are marked; the curve is the fitted prediction at 1\u202fµJ, the middle of their energies, with the focus at 1.07\u202fmm.',
    );
    expect(plain!.summary).toBe(
      '1 of 1 places without the plate are marked; the curve is the fitted prediction at 1\u202fµJ, with the focus at 1.07\u202fmm.',
    );
  });

  it('has a curve for either direction where that is open, and no chart for a row that is not there', () => {
    const [both, ...others] = panels([curve(-1), curve(1)], { ...marks, unshaped: [] });
    expect(others).toEqual([]);
    expect(both!.series.map(({ label }) => label)).toEqual([
      'measured',
      'fitted, readings towards the lens',
      'fitted, readings away from the lens',
      'no mark seen',
    ]);
    expect(both!.summary).toContain('the curves are the fitted prediction');
  });
});
