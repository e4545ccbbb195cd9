import { describe, expect, it } from 'vitest';
import type { ChoicesSpec } from '../../notebooks/choicesSpec.ts';
import type { FigureSpec } from '../../notebooks/document.ts';
import { depthByLayerFigure, floorFigure, turnsTable } from '../../notebooks/engravingFigures.ts';
import { type From, readValues } from '../../notebooks/prose.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, read, type Values } from './designOutcomes.ts';

/** Layers of about a micrometre. */
const fine: Values = { 'laser.pulseEnergy': 2e-6, 'scan.speed': 0.25, 'engraving.wantedDepth': 15e-6 };

function viewed<T>(
  block: { from: From; view(values: Readonly<Record<string, unknown>>): T },
  design: Values,
): T {
  const outcomeOf = outcomesOf(design);
  const found = readValues(block.from, ({ id }) => outcomeOf(id));
  if (!('values' in found)) throw new Error(found.problem.message);
  return block.view(found.values);
}

describe('depth against layers', () => {
  it('runs from 0 past the layers set to the depth wanted', () => {
    const { series, marks, summary }: FigureSpec = viewed(depthByLayerFigure, fine);
    const [shaped, plain] = series;
    const value = read(fine);
    expect(shaped!.x[0]).toBe(0);
    expect(shaped!.y[0]).toBe(0);
    expectClose(shaped!.y[10]!, 1e6 * value('engraving.depth'), {
      relative: 1e-12,
      source: 'after 10 layers',
    });
    expect(shaped!.y.at(-1)!).toBeGreaterThanOrEqual(15);
    expect(shaped!.y.at(-2)!).toBeLessThan(15);
    expectClose(plain!.y[10]!, 1e6 * value('unshaped.engraving.depth'), { relative: 1e-12 });
    expect(plain!.x.at(-1)!).toBeLessThanOrEqual(shaped!.x.at(-1)!);
    expect(marks!.map(({ label }) => label)).toEqual(['set', 'wanted']);
    expect(summary).toMatch(/Set are 10 layers, and 15\sµm wanted\.$/);
  });

  it('ends where the plate alone comes no further', () => {
    const none = viewed(depthByLayerFigure, { 'laser.pulseEnergy': 0.1e-6 });
    expect(none.series[0]!.y.every((depth) => depth === 0)).toBe(true);
  });
});

describe('the picture of the floor', () => {
  it('spans what there is from highest to lowest, about the mean', () => {
    const { map, x, y, summary } = viewed(floorFigure, fine);
    const value = read(fine);
    expect(map!.columns * map!.rows).toBe(map!.values.length);
    expectClose(map!.range[1] - map!.range[0], 1e6 * value('engraving.highestToLowest'), { relative: 1e-9 });
    expect(x.domain).toEqual(y.domain);
    expect(summary).toMatch(
      /^A patch [\d.]+\sµm wide after 10 layers, a quarter of the field from its middle/,
    );
  });

  it('is not there where nothing is engraved, with the reason', () => {
    expect(() => viewed(floorFigure, { 'laser.pulseEnergy': 0.1e-6 })).toThrow(/^Nothing is engraved: /);
  });
});

describe('turns to choose from', () => {
  it('promise what the design then shows', () => {
    const { rows }: ChoicesSpec = viewed(turnsTable, fine);
    expect(rows.filter(({ chosen }) => chosen).map(({ name }) => name)).toEqual(['0°']);
    for (const { patch, cells } of rows) {
      const [number, unit] = cells[0]!.split(/\s/);
      const shown = Number(number) * (unit === 'nm' ? 1e-9 : 1e-6);
      // Three digits are shown.
      expectClose(read({ ...fine, ...patch })('engraving.roughness'), shown, { relative: 6e-3 });
    }
  });

  it('hold the one that is set, and say when directions come back', () => {
    const { rows } = viewed(turnsTable, { ...fine, 'scan.hatchAngle': (70 * Math.PI) / 180 });
    expect(rows.map(({ name }) => name)).toEqual(['0°', '45°', '60°', '67°', '70°', '90°']);
    const after = rows.map(({ about }) => Number(/after (\d+) layers/.exec(about)?.[1] ?? 1));
    expect(after).toEqual([1, 4, 3, 180, 18, 2]);
  });
});
