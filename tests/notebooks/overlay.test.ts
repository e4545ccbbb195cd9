import { describe, expect, it } from 'vitest';
import type { AxisSpec, FigureSpec, SeriesRole, SeriesSpec } from '../../notebooks/document.ts';
import { mostOverlays, notDrawnSaid, overlaid, overlayWorkSaid } from '../../notebooks/overlay.ts';
import { figureCsv } from '../../notebooks/page/figures/figureCsv.ts';
import { plainPalettes, strokeOf } from '../../notebooks/page/figures/palette.ts';

const axis = (label: string, unit: string, from: number, to: number): AxisSpec => ({
  label,
  unit,
  domain: [from, to],
});
const curve = (label: string, role: SeriesRole, ...y: number[]): SeriesSpec => ({
  label,
  role,
  x: Float64Array.from(y, (_, i) => i),
  y: Float64Array.from(y),
});
const chart = (series: readonly SeriesSpec[], more: Partial<FigureSpec> = {}): FigureSpec => ({
  title: 'Fluence',
  x: axis('place', 'µm', 0, 2),
  y: axis('fluence', 'J/cm²', 0, 5),
  series,
  summary: 'It is high.',
  ...more,
});
const today = chart([curve('with', 'main', 1, 2, 3), curve('without', 'reference', 4, 4, 4)]);
const other = chart([curve('with', 'main', 2, 3, 9), curve('without', 'reference', 5, 5, 5)]);

describe('a chart with kept designs over it', () => {
  it('gets their main curves under their names, and says so', () => {
    const { series, summary } = overlaid(today, [{ name: 'Wide', spec: other }]);
    expect(series.slice(0, 2)).toEqual(today.series);
    expect(series.slice(2)).toEqual([{ ...other.series[0], label: 'Wide', role: 'kept' }]);
    expect(summary).toBe('It is high. In thin dashes also drawn: ‘Wide’.');
  });

  it('takes a curve that is called as today’s main one, whatever its role, and no band', () => {
    const band = { ...curve('spread', 'main', 1, 1, 1), y2: Float64Array.of(2, 2, 2) };
    const spec = chart([
      band,
      curve('with', 'second', 7, 7, 7),
      curve('more', 'main', 8, 8, 8),
      curve('third', 'third', 1, 1, 1),
    ]);
    const labels = overlaid(today, [{ name: 'Wide', spec }]).series.map(({ label }) => label);
    expect(labels).toEqual(['with', 'without', 'Wide, with', 'Wide, more']);
  });

  it('has axes wide enough for both, in today’s units', () => {
    const wide = chart([{ ...curve('with', 'main', 30, 40), x: Float64Array.of(-0.001, 0.004) }], {
      x: axis('place', 'mm', -0.001, 0.004),
      y: axis('fluence', 'mJ/cm²', 20, 9000),
    });
    const { x, y, series } = overlaid(today, [{ name: 'Wide', spec: wide }]);
    expect(x).toEqual(axis('place', 'µm', -1, 4));
    expect(y).toEqual(axis('fluence', 'J/cm²', 0, 9));
    expect([...series[2]!.x]).toEqual([-1, 4]);
    expect([...series[2]!.y]).toEqual([0.03, 0.04]);
    const down = chart(today.series, { y: axis('fluence', 'J/cm²', 5, 0) });
    expect(overlaid(down, [{ name: 'Wide', spec: wide }]).y.domain).toEqual([9, 0]);
  });

  it('says which cannot be drawn on it, and which have the same curve', () => {
    const elsewhere = chart(other.series, { y: axis('depth', 'µm', 0, 1) });
    const energy = chart(other.series, { y: axis('fluence', 'J', 0, 1) });
    const logarithmic = chart(other.series, { x: { ...today.x, logarithmic: true } });
    const empty = chart([curve('without', 'reference', 4, 4, 4)]);
    const kept = [elsewhere, energy, logarithmic, empty].map((spec, i) => ({ name: `${i}`, spec }));
    expect(overlaid(today, kept).summary).toBe(
      'It is high. ‘0’, ‘1’, ‘2’ and ‘3’ cannot be drawn on these axes.',
    );
    expect(overlaid(today, kept).series).toEqual(today.series);
    const same = chart([curve('with', 'main', 1, 2, 3)]);
    const both = overlaid(today, [
      { name: 'A', spec: same },
      { name: 'B', spec: other },
    ]);
    expect(both.summary).toBe('It is high. In thin dashes also drawn: ‘B’. ‘A’ lies on today’s curve.');
  });

  it('stays as it is where it is a map, has no curve, or none is kept; and shows four at most', () => {
    const map = { ...today, map: {} as never };
    expect(overlaid(map, [{ name: 'A', spec: other }])).toBe(map);
    const bare = chart([]);
    expect(overlaid(bare, [{ name: 'A', spec: other }])).toBe(bare);
    expect(overlaid(today, [])).toBe(today);
    const many = Array.from({ length: 6 }, (_, i) => ({ name: `K${i}`, spec: other }));
    expect(overlaid(today, many).series).toHaveLength(2 + mostOverlays);
  });

  it('writes them into its file, beside columns of its own too', () => {
    const lines = figureCsv(overlaid(today, [{ name: 'Wide', spec: other }])).split('\r\n');
    expect(lines[0]).toBe('place (µm),with (J/cm²),without (J/cm²),Wide (J/cm²)');
    expect(lines[3]).toBe('2,3,4,9');
    const data = [{ name: 'rows', unit: '1', values: Float64Array.of(7) }];
    const own = figureCsv(overlaid({ ...today, data }, [{ name: 'Wide', spec: other }])).split('\r\n');
    expect(own[0]).toBe('rows,"place, Wide (µm)","fluence, Wide (J/cm²)"');
    expect(own[1]).toBe('7,0,2');
  });

  it('draws each with dashes of its own, never whole as today’s', () => {
    const dashes = [0, 1, 2, 3].map((earlier) => strokeOf('kept', earlier, plainPalettes.light).dashes);
    expect(new Set(dashes).size).toBe(4);
    expect(dashes).not.toContain(undefined);
  });

  it('says in words what is missing and how far work is', () => {
    expect(notDrawnSaid('A', 'The step is too wide.')).toBe('‘A’ is not drawn: The step is too wide.');
    expect(overlayWorkSaid('A', undefined)).toBe('Working out ‘A’ for this chart …');
    expect(overlayWorkSaid('A', 0.256)).toBe('Working out ‘A’ for this chart: 26\u202f% done.');
  });
});
