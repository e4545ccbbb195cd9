import { describe, expect, it } from 'vitest';
import type { FamilyMap } from '../../lib/design/familyMap.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { thresholdOnMapSaid, thresholdSeries } from '../../notebooks/thresholdOnMap.ts';
import { mapFigure } from '../../notebooks/throughFocusFigures.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';

const specOf = (design: Values) => {
  const outcomeOf = outcomesOf(design);
  const values = Object.entries(mapFigure.from).map(([key, { id }]) => [key, valueOrThrow(outcomeOf(id))]);
  return mapFigure.view(Object.fromEntries(values));
};

/** Radii in µm above the axis at which a line of z in mm and radius crosses the plane z. */
function crossings({ x, y }: { readonly x: Float64Array; readonly y: Float64Array }, z: number): number[] {
  const found: number[] = [];
  for (let i = 1; i < x.length; i++) {
    const [from, to] = [x[i - 1]!, x[i]!];
    if ((from - z) * (to - z) < 0) found.push(y[i - 1]! + ((y[i]! - y[i - 1]!) * (z - from)) / (to - from));
  }
  return found.filter((radius) => radius >= 0).sort((a, b) => a - b);
}

describe('the threshold on the map through the focus', () => {
  it.each([
    ['low energy', { 'laser.pulseEnergy': 2e-6 }],
    ['with rings around', {}],
    ['asymmetric family', { 'plate.designPhase': 0.8 * Math.PI, 'laser.pulseEnergy': 4e-6 }],
  ] as const)('meets the edges of the mark in every plane: %s', (_name, design) => {
    const [line] = specOf(design).series;
    for (const z of [-0.3017e-3, 0.0013e-3, 0.2221e-3]) {
      const stretches = valueOrThrow(outcomesOf(design, { 'workpiece.z': z })('spot.markStretches')) as {
        marked: { from: number; to: number }[];
      }[];
      const edges = stretches[0]!.marked
        .flatMap(({ from, to }) => [from, to])
        .filter((radius) => radius > 0 && radius < 39e-6);
      const met = crossings(line!, z * 1e3).filter((radius) => radius < 39);
      expect(met).toHaveLength(edges.length);
      // The line is straight between places 0.16 µm and 5 µm of z apart: a tenth of a micrometre.
      for (const [i, edge] of edges.entries())
        expectClose(met[i]!, edge * 1e6, { absolute: 0.1, relative: 0 });
    }
  });

  it('is drawn on both sides of the axis', () => {
    const { y } = specOf({ 'laser.pulseEnergy': 2e-6 }).series[0]!;
    const half = y.length / 2;
    for (let i = 0; i < half; i++) expect(Object.is(y[i]!, -y[half + i]!) || Number.isNaN(y[i]!)).toBe(true);
  });

  it('is left out, and the map stays, where the design has no threshold', () => {
    const spec = specOf({ 'threshold.source': 'fitted' });
    expect(spec.series).toEqual([]);
    expect(spec.map!.columns).toBe(401);
    expect(spec.summary).not.toMatch(/threshold/);
  });

  it('stays the same object while the workpiece moves', () => {
    const map = valueOrThrow(outcomesOf()('focus.map')) as FamilyMap;
    const [first, again] = [thresholdSeries(map, 0.1), thresholdSeries(map, 0.1)];
    expect(again).toBe(first);
    expect(thresholdSeries(map, 0.2).x.length).not.toBe(first.x.length);
  });

  const said = (...heights: number[]) =>
    thresholdOnMapSaid(
      {
        extent: { low: -1e-3, high: 1e-3, radius: 1e-5 },
        columns: heights.length,
        rows: 2,
        values: new Float64Array(2 * heights.length),
        highest: Math.max(...heights),
        highestByPlane: Float64Array.from(heights),
      },
      0.5,
      2880,
    );

  it.each([
    [[0.1, 0.2, 0.1, 0, 0], ' Nowhere is the fluence above the threshold of 0.144\u202fJ/cm².'],
    [[0.6, 0.7, 0.8, 0.9, 1], ' Every plane shown has fluence above the threshold of 0.144\u202fJ/cm².'],
    [
      [0.1, 0.7, 0.8, 0.9, 0],
      ' Fluence above the threshold of 0.144\u202fJ/cm² is found from z = −0.5\u202fmm to 0.5\u202fmm.',
    ],
    [
      [0.6, 0.7, 0, 0.9, 0],
      ' Fluence above the threshold of 0.144\u202fJ/cm² is found from z = −1\u202fmm to 0.5\u202fmm, with gaps between.',
    ],
  ] as const)('says where something is marked: %j', (heights, text) => {
    expect(said(...heights)).toBe(text);
  });
});
