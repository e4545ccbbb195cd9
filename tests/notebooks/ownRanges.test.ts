import { describe, expect, it } from 'vitest';
import type { FigureSpec } from '../../notebooks/document.ts';
import { endsProblem, withRanges } from '../../notebooks/ownRanges.ts';
import { plainNumber } from '../graph/plainQuantities.ts';

const axis = { label: 'x', unit: 'µm', domain: [-10, 10] as const };
const spec: FigureSpec = {
  title: 'A chart',
  x: axis,
  y: { label: 'y', unit: 'J', domain: [0, 4] },
  secondX: { label: 'other', factor: 2 },
  series: [],
  marks: [
    { kind: 'vertical', x: 5, label: 'five', role: 'today' },
    { kind: 'horizontal', y: 3, label: 'three', role: 'reference' },
    { kind: 'point', x: 1, y: 1, label: 'one', role: 'reference' },
  ],
  moves: { input: plainNumber('test.x'), at: 5, perUnit: 1 },
  summary: 'So.',
};
const labels = ({ marks }: FigureSpec) => marks?.map(({ label }) => label);

describe('a figure with other ends of its axes', () => {
  it('is the same one where none are given, or none that can be drawn', () => {
    expect(withRanges(spec, undefined, undefined)).toBe(spec);
    for (const ends of [
      [1, 1],
      [Number.NaN, 2],
      [0, Number.POSITIVE_INFINITY],
    ] as const) {
      expect(withRanges(spec, ends, undefined)).toBe(spec);
      expect(endsProblem(ends)).toMatch(/\.$/);
    }
    expect(endsProblem([1, 2])).toBeUndefined();
  });

  it('keeps the other axis, the second scale and the words', () => {
    const { x, y, secondX, title, summary } = withRanges(spec, [-2, 8], undefined);
    expect([x.domain, x.label, y]).toEqual([[-2, 8], 'x', spec.y]);
    expect({ secondX, title, summary }).toEqual({
      secondX: spec.secondX,
      title: spec.title,
      summary: spec.summary,
    });
    expect(withRanges(spec, [8, -2], undefined).x.domain).toEqual([-2, 8]);
  });

  it('leaves out marks beyond the ends, and the place to move with them', () => {
    expect(labels(withRanges(spec, [-2, 8], [0, 2]))).toEqual(['five', 'one']);
    expect(labels(withRanges(spec, [2, 3], undefined))).toEqual(['three']);
    expect(withRanges(spec, [-2, 8], undefined).moves).toBe(spec.moves);
    expect(withRanges(spec, [-2, 4], undefined).moves).toBeUndefined();
  });

  it('a logarithmic axis has no ends at or below 0', () => {
    const log = { ...spec, y: { ...spec.y, domain: [0.1, 4] as const, logarithmic: true } };
    expect(withRanges(log, undefined, [0, 5])).toBe(log);
    expect(withRanges(log, undefined, [0.01, 5]).y.domain).toEqual([0.01, 5]);
  });

  it('places in an order are drawn in, not out', () => {
    const ordinal = { ...spec, x: { ...axis, domain: [1, 5] as const, ordinal: true } };
    expect(withRanges(ordinal, [-1e9, 3], undefined).x.domain).toEqual([1, 3]);
    expect(withRanges(ordinal, [7, 9], undefined)).toBe(ordinal);
  });
});

describe('the part of a map between other ends', () => {
  /** The value of a cell is its middle's place: x + 100 y. */
  const count = 20;
  const middle = (i: number, [a, b]: readonly [number, number]) => a + ((i + 0.5) / count) * (b - a);
  const mapped = (mirrored: boolean): FigureSpec => {
    const y = { ...spec.y, domain: mirrored ? ([-4, 4] as const) : ([0, 4] as const) };
    const values = Float64Array.from({ length: count * count }, (_, i) => {
      const row = Math.floor(i / count);
      // The first row of a mirrored map lies in the middle and is drawn once: 2 · 20 − 1 rows in all.
      const up = mirrored ? (row / (2 * count - 1)) * 8 : middle(row, [0, 4]);
      return middle(i % count, [-10, 10]) + 100 * up;
    });
    const map = { columns: count, rows: count, values, range: [0, 500], label: 'm', unit: '1' } as const;
    return { ...spec, y, map: { ...map, ...(mirrored && { mirrored }) } };
  };

  it('holds the cells that lie there, and never more than there is', () => {
    const { x, y, map, summary } = withRanges(mapped(false), [0, 99], [1, 3]);
    // The summary speaks of the whole map, so that the part has to be named.
    expect(summary).toMatch(/^So\. Drawn is 0 to 10\sµm across and 1 to 3\s\S+ up\.$/);
    expect([x.domain, y.domain]).toEqual([
      [0, 10],
      [1, 3],
    ]);
    map!.values.forEach((value, i) => {
      const [atX, atY] = [middle(i % count, [0, 10]), middle(Math.floor(i / count), [1, 3])];
      // Half a cell of the map is 0.5 along x and 0.1 along y.
      expect(Math.abs(value - (atX + 100 * atY))).toBeLessThanOrEqual(0.5 + 10 + 1e-9);
    });
  });

  it('of a mirrored map holds both sides', () => {
    const { map } = withRanges(mapped(true), undefined, [-1, 3]);
    expect(map!.mirrored).toBeUndefined();
    expect(map!.rows).toBe(2 * count - 1);
    map!.values.forEach((value, i) => {
      const row = Math.floor(i / count);
      const up = -1 + ((row + 0.5) / (2 * count - 1)) * 4;
      const step = 8 / (2 * count - 1);
      expect(Math.abs(value - middle(i % count, [-10, 10]) - 100 * Math.abs(up))).toBeLessThanOrEqual(
        100 * step * 0.501,
      );
    });
  });
});
