import { describe, expect, it } from 'vitest';
import type { FigureBlock } from '../../notebooks/document.ts';
import { edgeFigure, edgeMapFigure, pathFigure } from '../../notebooks/pathFigures.ts';
import { readValues } from '../../notebooks/prose.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';

function specOf(block: FigureBlock, design: Values = {}) {
  const outcomeOf = outcomesOf(design);
  const read = readValues(block.from, ({ id }) => outcomeOf(id));
  if (!('values' in read)) throw new Error(read.problem.message);
  return block.view(read.values);
}
const numbers = (values: Float64Array) => [...values].filter((value) => !Number.isNaN(value));

/** Pulses 10 µm apart on lines 12 µm apart. */
const coarse = { 'scan.speed': 2, 'laser.repetitionRate': 200e3, 'scan.lineSpacing': 12e-6 };

describe('the path at a corner', () => {
  it('few pulses are drawn one by one, on their lines, half a spacing from the edge', () => {
    const { series, marks, summary } = specOf(pathFigure, coarse);
    const pulses = series.find(({ label }) => label.startsWith('pulses'))!;
    // 834 lines of 12 µm are 8 µm more than the field: the first lies 2 µm above its lower edge.
    expectClose(Math.min(...numbers(pulses.y)), 2, { absolute: 1e-6, source: 'by hand' });
    expectClose(Math.min(...numbers(pulses.x)), 5, { absolute: 1e-6, source: 'half of 10 µm' });
    expect(marks!.slice(1).map(({ label }) => label)).toEqual(['1', '2', '3', '4', '5', '6', '7', '8']);
    expect(summary).toMatch(
      /^The lines are 12\sµm apart, the spot is [\d.]+\sµm wide\. .* needs 200\sµm to turn round, more than is drawn\.$/,
    );
  });

  it('many are not, and the overscan is drawn to scale', () => {
    const { series, summary } = specOf(pathFigure, { 'scan.speed': 0.4, 'laser.repetitionRate': 800e3 });
    expect(series.map(({ label }) => label)).toEqual([
      'lines of the first pass',
      'between lines, laser off',
      'spot',
    ]);
    // v²/2a = 8 µm.
    expectClose(Math.min(...numbers(series[1]!.x)), -8, { relative: 1e-9, source: 'v²/(2a)' });
    expect(summary).toMatch(/too many to be drawn\. The numbers.* needs 8\sµm to turn round\.$/);
  });

  it('interlaced, all one way, turned in the second pass', () => {
    const { series, marks, summary, x } = specOf(pathFigure, {
      'scan.interlacing': 2,
      'scan.directions': 'one',
      'scan.passes': 2,
      'scan.hatchAngle': Math.PI / 2,
    });
    expect(marks!.slice(1, 4).map(({ label }) => label)).toEqual(['1', '835', '2']);
    const second = series.find(({ label }) => label === 'lines of the second pass')!;
    const xs = numbers(second.x);
    // At right angles: both ends of a line at one x, 6 µm apart, 2 µm from the edge as 1667 lines overfill it by 2 µm.
    expectClose(xs[0]!, xs[1]!, { relative: 1e-9 });
    expectClose(Math.abs(xs[2]! - xs[1]!), 6, { relative: 1e-9 });
    expectClose(Math.min(...xs), 2, { absolute: 1e-6, source: 'by hand' });
    const ways = series.find(({ role }) => role === 'second')!;
    expect(summary).toMatch(/The way back to the next beginning is drawn half-way between the lines\.$/);
    expectClose(Math.max(...numbers(ways.x)), x.domain[1], {
      relative: 1e-9,
      source: 'from the right edge of the drawing',
    });
  });

  it('the turn at the edge is a step along it', () => {
    const { series, summary } = specOf(pathFigure, { 'scan.turnRound': 'inside' });
    const step = series.find(({ label }) => label.startsWith('step'))!;
    for (const x of numbers(step.x)) expectClose(x, 0, { absolute: 1e-9 });
    expect(summary).toMatch(/with the laser on\.$/);
  });
});

describe('the edges', () => {
  it('half the mean at the edge; the map is that of the numbers', () => {
    const { summary, series } = specOf(edgeFigure);
    expect(summary).toMatch(
      /At the edge itself 50\s% of the mean where the first lines end and 50\s% beside them; nowhere more than the mean\.$/,
    );
    // The tails of the pulses that are missing beyond the edge, 4 diameters away.
    expectClose(series[0]!.y.at(-1)!, 100, { absolute: 1, source: 'energy in the tail' });
    const map = specOf(edgeMapFigure);
    expect(map.map!.columns * map.map!.rows).toBe(map.map!.values.length);
    expect(map.summary).toMatch(/highest place shown has (9[89]|100)(\.\d)?\s% of the mean/);
  });

  it('long turns at the edge are drawn in millimetres', () => {
    expect(
      specOf(edgeFigure, {
        'scan.turnRound': 'inside',
        'scan.speed': 10,
        'scan.maxSpeed': 10,
        'scan.fieldWidth': 50e-3,
      }).x.unit,
    ).toBe('mm');
  });
});
