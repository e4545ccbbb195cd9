import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { type Outcome, valueOrThrow } from '../../lib/graph/outcome.ts';
import type { SpotMark } from '../../lib/process/spotMark.ts';
import { drawFigureStatic } from '../../notebooks/figurePicture.ts';
import { fitFigure, residualFigure } from '../../notebooks/fitBlocks.ts';
import type { From } from '../../notebooks/prose.ts';
import { expectClose } from '../close.ts';
import { outcomesOf } from './designOutcomes.ts';
import { cleaned, withOutlier } from './fitCases.ts';

function valuesOf(from: From, outcomeOf: (id: string) => Outcome): Record<string, unknown> {
  return Object.fromEntries(Object.entries(from).map(([key, { id }]) => [key, valueOrThrow(outcomeOf(id))]));
}

const finite = (column: Float64Array) => [...column].filter(Number.isFinite);

describe.each([
  ['the predicted profile', { 'threshold.fitModel': 'profile' }],
  ['a Gaussian', { 'threshold.fitModel': 'gaussian' }],
  ['profile and plane', { 'threshold.fitModel': 'profileAndPlane' }],
] as const)('marks fitted with %s', (_name, model) => {
  const outcomeOf = outcomesOf({ ...cleaned, ...model });
  const marks = valueOrThrow(outcomeOf('threshold.fittedMarks')) as readonly SpotMark[];

  it('stand as points at their energy and squared diameter, the places without one at 0', () => {
    const [measured, , empty] = fitFigure.view(valuesOf(fitFigure.from, outcomeOf)).series;
    const seen = marks.filter(({ area }) => area > 0);
    expect(finite(measured!.x)).toHaveLength(seen.length);
    finite(measured!.y).forEach((square, i) => {
      expectClose(square, (4 / Math.PI) * seen[i]!.area * 1e12, { relative: 1e-12, absolute: 0 });
    });
    expect(finite(empty!.y)).toEqual([0, 0]);
  });

  it('lie about a line that rises from the threshold energy', () => {
    const { series, x, marks: lines } = fitFigure.view(valuesOf(fitFigure.from, outcomeOf));
    const line = series[1]!;
    const heights = finite(line.y);
    expect([...heights].sort((a, b) => a - b)).toEqual(heights);
    if (model['threshold.fitModel'] !== 'profileAndPlane') {
      expect(lines![0]!.x).toBeGreaterThan(x.domain[0]);
      expect(lines![0]!.x).toBeLessThan(x.domain[1]);
    }
    if (model['threshold.fitModel'] === 'gaussian') {
      expect(heights[0]).toBe(0);
      expect(lines![0]!.x).toBe(line.x[0]);
      // A straight line over the logarithm of the energy (Liu, Opt. Lett. 7, 196 (1982)).
      const logs = finite(line.x).map(Math.log);
      const slope = heights.at(-1)! / (logs.at(-1)! - logs[0]!);
      heights.forEach((height, i) => {
        expectClose(height, slope * (logs[i]! - logs[0]!), { absolute: 1e-6 * heights.at(-1)!, relative: 0 });
      });
    }
  });

  it('are drawn without a page, with words and numbers alone', () => {
    for (const block of [fitFigure, residualFigure]) {
      const { document } = parseHTML('<!doctype html><html><body></body></html>');
      const spec = block.view(valuesOf(block.from, outcomeOf));
      const svg = drawFigureStatic(spec, document as unknown as Document, 600);
      expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    }
  });
});

describe('deviations', () => {
  it('name the row that lies far off, and none once it is left out', () => {
    const summary = (design: Readonly<Record<string, unknown>>) =>
      residualFigure.view(valuesOf(residualFigure.from, outcomesOf(design))).summary;
    expect(summary(withOutlier)).toMatch(/^The mark in row 18 lies more than three standard deviations/);
    expect(summary(cleaned)).toBe('No mark lies more than three standard deviations from the fit.');
  });
});
