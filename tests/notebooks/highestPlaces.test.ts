import { describe, expect, it } from 'vitest';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import type { ChoicesSpec } from '../../notebooks/choicesSpec.ts';
import type { FigureSpec } from '../../notebooks/document.ts';
import { highestPlaces } from '../../notebooks/highestPlaces.ts';
import type { From } from '../../notebooks/prose.ts';
import { stripFigure } from '../../notebooks/stripFigure.ts';
import { planesTable } from '../../notebooks/usablePlanesTable.ts';
import { outcomesOf } from './designOutcomes.ts';

const extent = { low: -1e-3, high: 1e-3 };
const curve = (height: (z: number) => number) =>
  Float64Array.from({ length: 401 }, (_, i) => height(-1 + i / 200));
const bump = (z: number, at: number, width = 0.1) => Math.exp(-(((z - at) / width) ** 2));
const said = (height: (z: number) => number) => highestPlaces(curve(height), extent).replace(/\s/g, ' ');

describe('where a curve is highest', () => {
  it.each<[string, (z: number) => number, string]>([
    ['one peak', (z) => bump(z, 0.3), '0.3 mm'],
    ['two as high', (z) => bump(z, -0.4) + bump(z, 0.4), '−0.4 mm and 0.4 mm'],
    ['a second within the tie', (z) => 0.997 * bump(z, -0.4) + bump(z, 0.4), '−0.4 mm and 0.4 mm'],
    ['a second below it', (z) => 0.99 * bump(z, -0.4) + bump(z, 0.4), '0.4 mm'],
    // Ripples of a fifth of a per cent along a plateau: not a place each.
    ['a plateau with ripples', (z) => bump(z, 0, 2) * (1 + 0.002 * Math.cos(12 * Math.PI * z)), '0 mm'],
    ['three as high', (z) => bump(z, -0.5) + 1.001 * bump(z, 0) + bump(z, 0.5), '−0.5 mm and 0 mm'],
    ['highest at an end', (z) => z + 2, '1 mm'],
    ['level', () => 1, '−1 mm'],
  ])('%s', (_, height, places) => expect(said(height)).toBe(places));
});

describe('in a design of M² = 4, with one plateau in the focus', () => {
  const outcomeOf = outcomesOf({ 'laser.beamPropagationRatio': 4 });
  const view = (block: { readonly from: From; view(values: Record<string, unknown>): unknown }) =>
    block.view(
      Object.fromEntries(
        Object.entries(block.from).map(([key, { id }]) => [key, valueOrThrow(outcomeOf(id))]),
      ),
    );

  it('figures name one place, and the list has the focus at 0 mm', () => {
    const strip = view(stripFigure) as FigureSpec;
    expect(strip.summary).toMatch(/per pulse, lies at z = 0\smm\.$/);
    const list = view(planesTable) as ChoicesSpec;
    expect(list.rows.map(({ name }) => name)).toEqual(['0\u202fmm']);
    expect(Object.values(list.rows[0]!.patch).map((z) => Math.abs(z as number))).toEqual([0]);
  });
});
