import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { type Outcome, valueOrThrow } from '../../lib/graph/outcome.ts';
import { handbookMaterials } from '../../lib/process/handbook.ts';
import type { FigureBlock, FigureSpec } from '../../notebooks/document.ts';
import { drawFigureStatic } from '../../notebooks/figurePicture.ts';
import { handbookTable } from '../../notebooks/handbookTable.ts';
import type { From } from '../../notebooks/prose.ts';
import { incubationFigure, thresholdProfileFigure } from '../../notebooks/thresholdFigures.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';

function valuesOf(from: From, outcomeOf: (id: string) => Outcome): Record<string, unknown> {
  return Object.fromEntries(Object.entries(from).map(([key, { id }]) => [key, valueOrThrow(outcomeOf(id))]));
}

const specOf = (block: FigureBlock, design: Values): FigureSpec =>
  block.view(valuesOf(block.from, outcomesOf(design)));

const designs: Readonly<Record<string, Values>> = {
  'lecture table': {},
  'linear, losses, typed threshold without uncertainty': {
    'threshold.fluenceScale': 'linear',
    'losses.plateTransmission': 0.9,
    'threshold.source': 'typed',
    'threshold.typedFluence': 3e4,
  },
  'a thousand pulses with a floor, nothing marked with the plate': {
    'laser.pulseEnergy': 0.2e-6,
    'threshold.pulses': 1000,
    'threshold.incubationExponent': 0.8,
    'threshold.floor': 600,
    'workpiece.z': 0.6e-3,
  },
};

describe.each(Object.entries(designs))('%s', (_name, design) => {
  const number = (id: string) => valueOrThrow(outcomesOf(design)(id)) as number;

  it('curves lie above the line exactly within the mark', () => {
    const { series, marks } = specOf(thresholdProfileFigure, design);
    const level = marks![0]!.y!;
    expectClose(level, number('threshold.fluenceAtN') * 1e-4, { relative: 1e-12, absolute: 0 });
    for (const [curve, before] of [
      [series[0]!, ''],
      [series[1]!, 'unshaped.'],
    ] as const) {
      const outer = (number(`${before}spot.markDiameter`) / 2) * 1e6;
      const step = curve.x[1]! - curve.x[0]!;
      const marked = [...curve.x].filter((_, i) => curve.y[i]! > level).map(Math.abs);
      const edge = marked.reduce((most, x) => Math.max(most, x), 0);
      // To the distance of two points of the chart.
      expectClose(edge, outer, { absolute: outer === 0 ? 1e-12 : step, relative: 0 });
    }
  });

  it('the plate takes its losses with it', () => {
    const { series } = specOf(thresholdProfileFigure, design);
    const top = Math.max(...series[1]!.y);
    // Drawn at 401 points, the top of a round curve lies between two: 1e-3.
    expectClose(top, number('unshaped.spot.peakFluence') * 1e-4, { relative: 1e-3, absolute: 0 });
  });

  it('the threshold never goes below its floor, however many pulses', () => {
    const { series } = specOf(incubationFigure, design);
    const floor = number('threshold.floor') * 1e-4;
    expect(Math.min(...series[0]!.y)).toBeGreaterThanOrEqual(floor);
    const today = series[0]!.x.indexOf(number('threshold.pulses'));
    expectClose(series[0]!.y[today]!, number('threshold.fluenceAtN') * 1e-4, {
      relative: 1e-12,
      absolute: 0,
    });
  });

  it('every chart can be drawn without a page, with words and numbers alone', () => {
    for (const block of [thresholdProfileFigure, incubationFigure]) {
      const { document } = parseHTML('<!doctype html><html><body></body></html>');
      const svg = drawFigureStatic(specOf(block, design), document as unknown as Document, 600);
      expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    }
  });
});

describe('published thresholds', () => {
  it.each(handbookMaterials.map(({ id, rows }) => [id, rows] as const))(
    'of %s, each to be taken over',
    (id, rows) => {
      const spec = handbookTable.view({ material: id, source: 'typed', typed: rows[0]!.fluence });
      expect(spec.rows).toHaveLength(rows.length);
      spec.rows.forEach((row, i) => {
        expect(row.cells).toHaveLength(spec.columns.length - 1);
        expect(row.patch['threshold.typedFluence']).toBe(rows[i]!.fluence);
        expect(row.chosen).toBe(rows[i]!.fluence === rows[0]!.fluence);
        expect(row.cells.join() + JSON.stringify(row.more)).not.toMatch(/NaN|undefined|Infinity/);
      });
    },
  );

  it('of a material that the handbook lacks: none, and no fault', () => {
    expect(handbookTable.view({ material: 'other', source: 'typed', typed: 2000 }).rows).toEqual([]);
  });
});
