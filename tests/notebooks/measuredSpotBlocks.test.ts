import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { hasValue } from '../../lib/graph/outcome.ts';
import { inputCounts } from '../../notebooks/beamPathInputs.ts';
import type { Block, FigureBlock, FigureSpec } from '../../notebooks/document.ts';
import { measuredFiles } from '../../notebooks/measuredFiles.ts';
import { causticSeries, focusCausticBlocks, measuredSpotBlocks } from '../../notebooks/measuredSpotBlocks.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';
import { here } from './runCommand.ts';

const given = (id: string, name: string) =>
  measuredFiles[id]!.read(readFileSync(here(`data/measured/${name}`)), name);
const at = { 'workpiece.z': 55e-6, 'spot.measuredPixelPitch': 0.4e-6 };
const line = { ...given('spot.measuredProfile', 'lecture-table-profile.csv'), ...at };
const picture = { ...given('spot.measuredProfile', 'lecture-table-spot.png'), ...at };
const caustic = given('focus.measuredCaustic', 'lecture-table-focus.csv');

/** Outcome values of what the figure among the blocks reads. */
function valuesOf(blocks: readonly Block[], design: Values): { figure: FigureBlock; values: Values } {
  const figure = blocks.find((block): block is FigureBlock => block.kind === 'figure')!;
  const outcomeOf = outcomesOf(design);
  const values = Object.entries(figure.from).map(([key, { id }]) => {
    const outcome = outcomeOf(id);
    if (!hasValue(outcome)) throw new Error(outcome.problem.message);
    return [key, outcome.value];
  });
  return { figure, values: Object.fromEntries(values) };
}

function figureOf(blocks: readonly Block[], design: Values): FigureSpec {
  const { figure, values } = valuesOf(blocks, design);
  return figure.view(values);
}

const finite = (values: Float64Array) => [...values].filter((value) => !Number.isNaN(value));

describe('the figure of a measured spot', () => {
  it('lays the points of a line and their mean over the prediction, in µm and J/cm²', () => {
    const { series, x, y, summary } = figureOf(measuredSpotBlocks, line);
    const [predicted, mean, band, points] = series;
    expect(series.map(({ role }) => role)).toEqual(['second', 'main', 'band', 'third']);
    expect([x.unit, y.unit]).toEqual(['µm', 'J/cm²']);
    expect(finite(points!.x)).toHaveLength(61);
    const axis = (predicted!.x.length - 1) / 2;
    const peak = outcomesOf(at)('spot.peakFluence') as { value: number };
    expectClose(predicted!.y[axis]!, peak.value * 1e-4, { relative: 1e-4, source: 'spot.peakFluence' });
    // Noise of 1.5 % of the peak, two sides: five times as much, and 0.6 % for the scale.
    expectClose(mean!.y[axis]!, predicted!.y[axis]!, { relative: 0.06 });
    for (const [i, low] of band!.y.entries()) expect(low).toBeLessThanOrEqual(band!.y2![i]!);
    expect(Math.max(...predicted!.y)).toBeLessThan(y.domain[1]);
    expect(summary).toMatch(
      /^In the plane z = 0\.055\smm the measured spot is 18\.\d+\sµm wide, .* by 1\.\d\s%/,
    );
  });

  it('lays both lines of a picture over it, and draws no farther than the spot', () => {
    const { series, x } = figureOf(measuredSpotBlocks, picture);
    expect(series.map(({ label }) => label).slice(3)).toEqual([
      'along x of the picture',
      'along y of the picture',
    ]);
    expect(series[3]!.x).toHaveLength(320);
    expect(x.domain).toEqual([-30, 30]);
  });
});

describe('a measured caustic over a map', () => {
  const { values } = valuesOf(focusCausticBlocks, caustic);
  const overlay = (mirrored?: boolean) => causticSeries(values['points'] as never, mirrored);

  it('gives points of both axes, in mm and µm', () => {
    const [alongX, alongY] = overlay();
    expect(finite(alongX!.x)).toHaveLength(13);
    // The first row of the file: z = −0.40 mm, dx = 56.03 µm, dy = 53.58 µm.
    expectClose(alongX!.x[0]!, -0.4, { relative: 1e-12 });
    expectClose(alongX!.y[0]!, 56.03 / 2, { relative: 1e-12 });
    expectClose(alongY!.y[0]!, 53.58 / 2, { relative: 1e-12 });
  });

  it('mirrored, is drawn below the axis too', () => {
    for (const [i, { x, y }] of overlay(true).entries()) {
      const once = overlay()[i]!;
      expect(finite(y)).toEqual([...finite(once.y), ...finite(once.y).map((r) => -r)]);
      expect(finite(x)).toEqual([...finite(once.x), ...finite(once.x)]);
    }
  });

  it('of one column is one series', () => {
    const table = { name: 'one.csv', z: [0, 1e-4], diameter: [2e-5, 3e-5], diameterY: [] };
    const { values: one } = valuesOf(focusCausticBlocks, { 'focus.measuredCaustic': table });
    expect(causticSeries(one['points'] as never).map(({ label }) => label)).toEqual(['measured']);
  });

  it('has a figure of its own that holds every point', () => {
    const { series, x, y } = figureOf(focusCausticBlocks, caustic);
    expectClose(series[0]!.y[0]!, (56.03 + 53.58) / 4, { relative: 0.03, source: 'scatter of 1 %' });
    for (const each of series) {
      for (const z of finite(each.x)) expect(z > x.domain[0] && z < x.domain[1]).toBe(true);
      for (const r of finite(each.y)) expect(r > 0 && r < y.domain[1]).toBe(true);
    }
  });
});

describe('what is shown when', () => {
  it('the z of the profile counts only where it is typed', () => {
    const counts = (plane: string) =>
      inputCounts('spot.measuredProfileZ', { 'spot.measuredProfilePlane': plane });
    expect([counts('workpiece'), counts('typed')]).toEqual([false, true]);
  });

  it('ids of the blocks are unique', () => {
    const ids = [...measuredSpotBlocks, ...focusCausticBlocks].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
