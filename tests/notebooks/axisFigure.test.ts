import { describe, expect, it } from 'vitest';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { valueAt } from '../../lib/numerics/panelledFunction.ts';
import type { RadialProfile } from '../../lib/optics/radialProfile.ts';
import type { FigureBlock, FigureSpec } from '../../notebooks/document.ts';
import { axisFigure, ratioFigure } from '../../notebooks/matchingFigures.ts';
import { layOut } from '../../notebooks/page/figures/layout.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';

/** A long lens and a small step, where plate distance and wavefront show. */
const small = {
  'laser.beamDiameter': 2e-3,
  'expander.magnification': 1.1,
  'plate.stepDiameter': 2.2e-3,
  'plate.apertureDiameter': 3.3e-3,
  'plate.designPhase': 0.9 * Math.PI,
  'lens.focalLength': 1,
  'workpiece.z': 30e-3,
};
const lenses = { ...small, 'expander.kind': 'lenses', 'expander.firstFocalLength': -50e-3 };

const designs: Readonly<Record<string, Values>> = {
  'one focal length before the lens': small,
  'd/f = 0.4': { ...small, 'lens.plateDistance': 0.4 },
  'd/f = 1.8': { ...small, 'lens.plateDistance': 1.8 },
  'diverging wavefront, d/f = 1': { ...lenses, 'expander.separation': 49e-3 },
  'diverging wavefront, d/f = 1.8': { ...lenses, 'expander.separation': 49e-3, 'lens.plateDistance': 1.8 },
  'converging wavefront, d/f = 0.4': { ...lenses, 'expander.separation': 52e-3, 'lens.plateDistance': 0.4 },
};

describe('maps over the step ratio', () => {
  for (const [name, start] of Object.entries(designs)) {
    // A step ratio of 1.05 is the middle column of both maps.
    const step = 1.05 * valueOrThrow<number>(outcomesOf(start)('plate.beamDiameter') as never);
    const design = { ...start, 'plate.stepDiameter': step, 'plate.apertureDiameter': 1.5 * step };
    const outcomeOf = outcomesOf(design);
    const at = <T>(z: number, id: string) =>
      valueOrThrow<T>(outcomesOf(design, { 'workpiece.z': z })(id) as never);
    const value = <T>(id: string) => valueOrThrow<T>(outcomeOf(id) as never);
    const specOf = (block: FigureBlock): FigureSpec =>
      block.view(Object.fromEntries(Object.entries(block.from).map(([key, { id }]) => [key, value(id)])));
    const ratio = value<number>('match.stepRatio');

    /** Coordinate of a column or row of a map. */
    const placeOf = ([low, high]: readonly [number, number], i: number, count: number) =>
      low + ((high - low) * i) / (count - 1);

    it(`${name}: the axis at today's ratio is that of the profile, for every z`, () => {
      const { map, x, y } = specOf(axisFigure);
      const column = (map!.columns - 1) / 2;
      expectClose(placeOf(x.domain, column, map!.columns), ratio, { absolute: 1e-12 });
      let met = 0;
      for (let row = 0; row < map!.rows; row += 10) {
        const z = placeOf(y.domain, row, map!.rows) / 1e3;
        const axis = valueAt(at<RadialProfile>(z, 'spot.profile'), 0);
        const source = 'Bessel matrix, to 1e-9 of the unshaped peak';
        expectClose(map!.values[row * map!.columns + column]!, axis, { absolute: 1e-8, source });
        met += 1;
      }
      expect(met).toBe(13);
    });

    it(`${name}: the line without curvature passes through today's planes`, () => {
      const { series, y } = specOf(axisFigure);
      const [low, high] = y.domain;
      const planes = value<number[]>('focus.zeroCurvaturePlanes').filter(
        (z) => z * 1e3 > low + 0.05 * (high - low) && z * 1e3 < high - 0.05 * (high - low),
      );
      expect(planes.length).toBeGreaterThan(0);
      const { x: xs, y: ys } = series[0]!;
      const met: number[] = [];
      xs.forEach((x, i) => {
        const next = xs[i + 1];
        if (next !== undefined && next !== x && (x - ratio) * (next - ratio) <= 0) {
          met.push(ys[i]! + ((ratio - x) / (next - x)) * (ys[i + 1]! - ys[i]!));
        }
      });
      // One row of the map is 1/120 of its height.
      for (const z of planes) {
        const nearest = Math.min(...met.map((place) => Math.abs(place - z * 1e3)));
        expect(nearest, `z = ${z}`).toBeLessThan((high - low) / 240);
      }
    });

    it(`${name}: the second scale reads ζ of today's beam`, () => {
      const spec = specOf(axisFigure);
      const { secondY } = layOut(spec, 720, 'tall');
      expect(secondY!.ticks.at.length).toBeGreaterThan(2);
      secondY!.ticks.at.forEach((place, i) => {
        const written = Number(secondY!.ticks.texts[i]!.replace('−', '-'));
        expectClose(written, at<number>(place / 1e3, 'focus.defocus'), { absolute: 1e-9 });
      });
    });

    it(`${name}: the profile in the focus is today's there`, () => {
      const spec = specOf(ratioFigure);
      const { unit, bend, shift } = value<{ unit: number; bend: number; shift: number }>('explain.distances');
      const z = (unit * shift) / (1 - bend * shift);
      expect(at<number>(z, 'focus.defocus')).toBeCloseTo(0, 9);
      const profile = at<RadialProfile>(z, 'spot.profile');
      const unitFluence = value<number>('focus.unshapedPeakFluence') * 1e-4;
      const { columns, rows, values } = spec.map!;
      for (let column = 0; column < columns; column += 5) {
        const radius = placeOf(spec.x.domain, column, columns);
        const fluence = valueAt(profile, radius / 1e6) * unitFluence;
        const shown = values[((rows - 1) / 2) * columns + column]!;
        expectClose(shown, fluence, { absolute: 1e-8 * unitFluence, source: 'Bessel matrix' });
      }
    });
  }

  const summary = (design: Values) => {
    const outcomeOf = outcomesOf(design);
    const values = Object.entries(axisFigure.from).map(([key, { id }]) => [key, valueOrThrow(outcomeOf(id))]);
    return axisFigure.view(Object.fromEntries(values)).summary;
  };

  it('say that the workpiece is not in the picture, where it is not', () => {
    const said = / The workpiece lies outside the picture\.$/;
    expect(summary({})).not.toMatch(said);
    expect(summary({ 'workpiece.z': 1e-3 })).toMatch(said);
    expect(summary({ 'workpiece.z': -1e-3 })).toMatch(said);
  });

  it('say which wavefront and distance they are for', () => {
    expect(summary({})).toContain('M² = 1, flat wavefront, plate 100\u202fmm before the lens.');
    expect(summary(designs['d/f = 1.8']!)).toContain('plate 1800\u202fmm before the lens.');
    expect(summary(designs['diverging wavefront, d/f = 1']!)).toMatch(
      /wavefront diverging with a radius of [\d.]+\sm at/,
    );
    expect(summary(designs['converging wavefront, d/f = 0.4']!)).toMatch(
      /wavefront converging with a radius of/,
    );
  });
});
