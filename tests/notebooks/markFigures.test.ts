import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { type Outcome, valueOrThrow } from '../../lib/graph/outcome.ts';
import type { FigureSpec } from '../../notebooks/document.ts';
import { drawFigureStatic } from '../../notebooks/figurePicture.ts';
import { growthFigure, markFigure } from '../../notebooks/markFigures.ts';
import { outlinesOf, surfaceOf } from '../../notebooks/markShape.ts';
import type { From } from '../../notebooks/prose.ts';
import { craterFigure } from '../../notebooks/removalBlocks.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';

function valuesOf(from: From, outcomeOf: (id: string) => Outcome): Record<string, unknown> {
  return Object.fromEntries(Object.entries(from).map(([key, { id }]) => [key, valueOrThrow(outcomeOf(id))]));
}

/** Area of a band by the trapezium rule. */
function areaOf(x: Float64Array, y: Float64Array, y2: Float64Array): number {
  let sum = 0;
  for (let i = 1; i < x.length; i++) {
    const piece = ((x[i]! - x[i - 1]!) * (Math.abs(y[i]! - y2[i]!) + Math.abs(y[i - 1]! - y2[i - 1]!))) / 2;
    if (Number.isFinite(piece)) sum += piece;
  }
  return sum;
}

const designs: Readonly<Record<string, Values>> = {
  'far above the threshold, with rings around': {},
  'a ring with an unmarked centre': { 'laser.pulseEnergy': 0.58e-6 },
  'out of the focus, losses, pulses': {
    'workpiece.z': 0.2e-3,
    'losses.plateTransmission': 0.9,
    'threshold.pulses': 20,
    'threshold.incubationExponent': 0.9,
    'plate.designPhase': 0.9 * Math.PI,
  },
  'nothing marked': { 'laser.pulseEnergy': 0.05e-6 },
};

describe.each(Object.entries(designs))('%s', (_name, design) => {
  const outcomeOf = outcomesOf(design);
  const number = (id: string) => valueOrThrow(outcomeOf(id)) as number;

  it('the marks are drawn with their areas and diameters', () => {
    const [shaped, plain] = markFigure.view(valuesOf(markFigure.from, outcomeOf));
    for (const [spec, before] of [
      [shaped!, ''],
      [plain!, 'unshaped.'],
    ] as const) {
      const [outline, surface] = spec.series;
      const area = number(`${before}spot.markArea`) * 1e12;
      // Circles of 240 chords, half of them uneven: 1e-3 of the area of the whole disc.
      const disc = (Math.PI / 4) * (number(`${before}spot.markDiameter`) * 1e6) ** 2;
      expectClose(areaOf(surface!.x, surface!.y, surface!.y2!), area, { absolute: 1e-3 * disc, relative: 0 });
      const reach = outline!.x.reduce((most, x) => (x > most ? x : most), 0);
      expectClose(reach, (number(`${before}spot.markDiameter`) * 1e6) / 2, { relative: 1e-9, absolute: 0 });
      expect(spec.equalScale).toBe(true);
      expect(spec.summary.includes('unmarked')).toBe(number(`${before}spot.markInnerDiameter`) > 0);
      expect(spec.summary).toMatch(reach > 0 ? /wide/ : /^No mark\.$/);
    }
  });

  it.each([
    ['energy', 'diameter'],
    ['energy', 'area'],
    ['pulses', 'diameter'],
    ['pulses', 'area'],
  ])('against %s: the curve of %s of the workpiece passes through today’s mark', (against, shows) => {
    const outcomeOf = outcomesOf({ ...design, 'spot.growthAgainst': against, 'spot.growthShows': shows });
    const { series, x, marks, summary } = growthFigure.view(valuesOf(growthFigure.from, outcomeOf));
    const today = against === 'energy' ? number('laser.usedPulseEnergy') * 1e6 : number('threshold.pulses');
    expectClose(marks![0]!.x!, today, { relative: 1e-12, absolute: 0 });
    expect(today).toBeGreaterThanOrEqual(x.domain[0]);
    expect(today).toBeLessThan(x.domain[1]);
    const own = series[0]!;
    const after = own.x.findIndex((at) => at > today * (1 + 1e-12));
    const [low, high] = [own.y[after - 1]!, own.y[after]!];
    const size = shows === 'area' ? number('spot.markArea') * 1e12 : number('spot.markDiameter') * 1e6;
    if (size === 0) expect(low).toBeNaN();
    else {
      expect(high).toBeGreaterThanOrEqual(size * (1 - 1e-9));
      if (Number.isFinite(low)) expect(low).toBeLessThanOrEqual(size * (1 + 1e-9));
    }
    expect(summary).toMatch(size === 0 ? /there is none/ : shows === 'area' ? /the mark has/ : /wide/);
    const alone = against === 'pulses' && number('threshold.incubationExponent') === 1;
    expect(summary.includes('do not prepare')).toBe(alone);
  });

  it('the crater is as deep as it says, and level outside the mark', () => {
    const { series, y, summary } = craterFigure.view(valuesOf(craterFigure.from, outcomeOf));
    for (const [curve, before] of [
      [series[0]!, ''],
      [series[1]!, 'unshaped.'],
    ] as const) {
      const deepest = number(`${before}removal.deepest`) * 1e9;
      // Of 241 places none need be the deepest: 2e-3 of the depth of a round bottom.
      expectClose(-Math.min(...curve.y), deepest, { relative: 2e-3, absolute: 1e-12 });
      const reach = (number(`${before}spot.markDiameter`) / 2) * 1e6;
      curve.x.forEach((x, i) => {
        if (Math.abs(x) > reach * (1 + 1e-9)) expect(curve.y[i]).toBe(0);
      });
    }
    expect(y.domain[1]).toBe(0);
    expect(summary).not.toMatch(/NaN|undefined/);
  });

  it('charts can be drawn without a page, with words and numbers alone', () => {
    const specs: readonly FigureSpec[] = [
      ...markFigure.view(valuesOf(markFigure.from, outcomeOf)),
      growthFigure.view(valuesOf(growthFigure.from, outcomeOf)),
      craterFigure.view(valuesOf(craterFigure.from, outcomeOf)),
    ];
    for (const spec of specs) {
      const { document } = parseHTML('<!doctype html><html><body></body></html>');
      const svg = drawFigureStatic(spec, document as unknown as Document, 600);
      expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    }
  });
});

describe('the outline of a mark that is not round', () => {
  const rays = [0, 1, 2, 3].map((i) => ({
    angle: (Math.PI * i) / 2,
    marked: [{ from: i === 1 ? 2 : 1, to: 3 + i }],
  }));

  it('runs around its outer contour and its centre, and back to where it began', () => {
    const { x, y } = outlinesOf(rays, 1);
    expect([...x].map((value) => Math.round(value) + 0)).toEqual([3, 0, -5, 0, 3, NaN, 1, 0, -1, 0, 1, NaN]);
    expect([...y].map((value) => Math.round(value) + 0)).toEqual([0, 4, 0, -6, 0, NaN, 0, 2, 0, -1, 0, NaN]);
    expect(surfaceOf(rays, 1).x).toHaveLength(0);
  });

  it('is left out where it does not close', () => {
    const open = [...rays.slice(1), { angle: 0, marked: [] }];
    expect(outlinesOf(open, 1).x).toHaveLength(0);
  });
});
