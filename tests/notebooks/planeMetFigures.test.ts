import { describe, expect, it } from 'vitest';
import type { FigureBlock } from '../../notebooks/document.ts';
import { fieldPlanesFigure, profilesMetFigure } from '../../notebooks/planeMetFigures.ts';
import { readValues } from '../../notebooks/prose.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';

const um = 1e-6;

function specOf(block: FigureBlock, design: Values = {}) {
  const outcomeOf = outcomesOf(design);
  const read = readValues(block.from, ({ id }) => outcomeOf(id));
  if (!('values' in read)) throw new Error(read.problem.message);
  return block.view(read.values);
}

describe('the map of the planes met', () => {
  it('curvature alone: the outline is a circle of radius (F/2)√(depth/s)', () => {
    const { series, summary } = specOf(fieldPlanesFigure, { 'scan.fieldCurvature': 100 * um });
    const radius = 5 * Math.sqrt(40.914 / 100);
    const [x, y] = [series[0]!.x, series[0]!.y];
    expect(x.length).toBeGreaterThan(100);
    x.forEach((at, i) => {
      if (!Number.isNaN(at))
        expectClose(Math.hypot(at, y[i]!), radius, { relative: 2e-3, source: 'closed form' });
    });
    expect(summary).toMatch(
      /^Over the field the surface stands between z = .?200\sµm and 0\sµm, height error.*The line is where the worst of both/,
    );
  });

  it('is not drawn of one plane; with everything inside, and without a depth, no outline', () => {
    expect(() => specOf(fieldPlanesFigure)).toThrow(
      /in one plane over the whole field: there is nothing to map/,
    );
    const still = specOf(fieldPlanesFigure, { 'workpiece.tilt': 1e-3 });
    expect(still.series).toEqual([]);
    expectClose(still.map!.range[1], 5, { absolute: 1e-3, source: '10 mm · 1 mrad / 2' });
    expect(still.summary).toMatch(/All of it stays within/);
    const open = specOf(fieldPlanesFigure, { 'plate.stop': 'open', 'workpiece.tilt': 1e-3 });
    expect(open.series).toEqual([]);
    expect(open.summary).toMatch(/there is no depth of focus, and no outline\.$/);
    const lost = specOf(fieldPlanesFigure, { 'lens.thermalShift': 200 * um, 'workpiece.tilt': 1e-3 });
    expect(lost.summary).toMatch(/None of it stays within/);
  });
});

describe('the chart of the profiles met', () => {
  it('marks the planes met and the depth; 100 % where it is set', () => {
    const { series, marks, summary } = specOf(profilesMetFigure, { 'workpiece.tilt': 10e-3 });
    expect(marks!.map(({ label }) => label)).toEqual(['set', 'nearest met', 'furthest met']);
    const [band, peak] = series;
    expectClose(band!.x[0]!, -0.0409, { absolute: 1e-4, source: 'depth of 81.8 µm' });
    const { x, y } = peak!;
    const nearest = x.reduce((best, at, i) => (Math.abs(at) < Math.abs(x[best]!) ? i : best), 0);
    expectClose(y[nearest]!, 100, { absolute: 0.05 });
    expect(summary).toMatch(
      /^Among the planes met over the field, z = .?50\sµm to 50\sµm, the peak fluence is lowest/,
    );
  });

  it('one plane where nothing moves the surface', () => {
    expect(specOf(profilesMetFigure).summary).toMatch(
      /^Over the whole field the surface meets one plane, z = 0\sµm; the axis lies at most 5\.07\s% below the peak\./,
    );
  });
});
