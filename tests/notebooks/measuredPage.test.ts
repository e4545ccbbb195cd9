import { describe, expect, it } from 'vitest';
import { expanderKind } from '../../lib/design/expander.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
import { inputCounts } from '../../notebooks/beamPathInputs.ts';
import { conditionHolds } from '../../notebooks/condition.ts';
import type { FigureBlock, FigureSpec } from '../../notebooks/document.ts';
import { causticBlocks } from '../../notebooks/measuredCaustic.ts';
import { expectClose } from '../close.ts';
import {
  drawCaustic,
  narrowBeam,
  rayleighLengthOf,
  type SyntheticCaustic,
} from '../measured/syntheticCaustic.ts';
import { outcomesOf } from './designOutcomes.ts';

const beam: SyntheticCaustic = { ...narrowBeam, scatter: 0.001 };
const figure = causticBlocks.find((block): block is FigureBlock => block.kind === 'figure')!;

/** The figure of a caustic drawn from the beam above, changed. */
function figureOf(changes: Partial<SyntheticCaustic> = {}): FigureSpec {
  const outcomeOf = outcomesOf({ 'laser.causticTable': drawCaustic({ ...beam, ...changes }) });
  const values = Object.entries(figure.from).map(([key, { id }]) => {
    const outcome = outcomeOf(id);
    if (!hasValue(outcome)) throw new Error(outcome.problem.message);
    return [key, outcome.value];
  });
  return figure.view(Object.fromEntries(values));
}

describe('the figure of a caustic', () => {
  it('shows every point, the hyperbola through them and the waist, in millimetres and micrometres', () => {
    const { series, marks = [], x, y } = figureOf();
    const [fitted, measured] = series;
    const table = drawCaustic(beam);
    const points = [...measured!.x].flatMap((z, i) =>
      Number.isNaN(z) ? [] : [[z / 1e3, measured!.y[i]! / 1e3]],
    );
    expect(y.unit).toBe('mm');
    table.z.forEach((z, i) => {
      expectClose(points[i]![0]!, z, { relative: 1e-12 });
      expectClose(points[i]![1]!, table.diameter[i]!, { relative: 1e-12 });
    });
    const rayleigh = rayleighLengthOf(beam);
    fitted!.x.forEach((z, i) => {
      const expected = beam.waistDiameter * Math.hypot(1, (z / 1e3 - beam.waistPosition) / rayleigh);
      // 0.1 % of scatter over twelve points leaves the curve good to some 0.1 %.
      expectClose(fitted!.y[i]! / 1e3, expected, { relative: 0.003, source: 'the drawn caustic' });
    });
    const places = marks.map((mark) => mark.x! / 1e3);
    [-1, 0, 1].forEach((n, i) => {
      expectClose(places[i]!, beam.waistPosition + n * rayleigh, { absolute: 0.005 * rayleigh });
    });
    for (const [z, d] of points) {
      expect(z! * 1e3).toBeGreaterThan(x.domain[0]);
      expect(z! * 1e3).toBeLessThan(x.domain[1]);
      expect(d! * 1e3).toBeLessThan(y.domain[1]);
    }
  });

  it('draws narrow beams in micrometres', () => {
    const { y, series } = figureOf({ waistDiameter: 50e-6 });
    expect(y.unit).toBe('µm');
    expectClose(Math.min(...series[0]!.y), 50, { relative: 0.01 });
  });

  it('reaches to a waist beside the points, and says where it is too far for that', () => {
    const near = figureOf({ places: [0.4, 0.6, 0.8, 1, 1.5, 2, 2.5, 3] });
    expect(near.x.domain[0]).toBeLessThan(beam.waistPosition * 1e3);
    expect(near.summary).not.toMatch(/outside the picture/);
    const far = figureOf({ places: [4, 4.2, 4.4, 4.6, 4.8, 5, 5.2, 5.4], scatter: 0 });
    expect(far.x.domain[0]).toBeGreaterThan(beam.waistPosition * 1e3);
    expect(far.summary).toMatch(/The waist lies outside the picture\.$/);
  });
});

describe('what is shown when', () => {
  const shown = (inputs: Readonly<Record<string, unknown>>) =>
    causticBlocks.every(({ when }) => when !== undefined && conditionHolds(when, inputs));

  it('the caustic shows while the design takes anything from it', () => {
    const start = {
      'laser.ratioSource': 'typed',
      'laser.beamSource': 'typed',
      'expander.waistSource': 'measured',
      'expander.kind': 'magnification',
    };
    expect(shown(start)).toBe(false);
    expect(shown({ ...start, 'laser.beamSource': 'measured' })).toBe(false);
    expect(shown({ ...start, 'laser.ratioSource': 'measured' })).toBe(true);
    expect(shown({ ...start, 'laser.beamSource': 'caustic' })).toBe(true);
    expect(shown({ ...start, 'expander.kind': 'lenses' })).toBe(true);
    expect(shown({ ...start, 'expander.kind': 'lenses', 'expander.waistSource': 'typed' })).toBe(false);
  });

  it('an input shows while all the choices that it hangs on say so', () => {
    const counts = (kind: string, waist: string) => {
      const inputs = { [expanderKind.id]: kind, 'expander.waistSource': waist };
      return ['waistSource', 'waistDistance', 'causticOrigin'].filter((name) =>
        inputCounts(`expander.${name}`, inputs),
      );
    };
    expect(counts('magnification', 'typed')).toEqual([]);
    expect(counts('magnification', 'measured')).toEqual([]);
    expect(counts('lenses', 'typed')).toEqual(['waistSource', 'waistDistance']);
    expect(counts('lenses', 'measured')).toEqual(['waistSource', 'causticOrigin']);
    expect(inputCounts('laser.beamPropagationRatio', { 'laser.ratioSource': 'typed' })).toBe(true);
    expect(inputCounts('laser.beamPropagationRatio', { 'laser.ratioSource': 'measured' })).toBe(false);
    expect(inputCounts('laser.causticTable', {})).toBe(true);
  });
});
