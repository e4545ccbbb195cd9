import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { type Outcome, valueOrThrow } from '../../lib/graph/outcome.ts';
import { valueAt } from '../../lib/numerics/panelledFunction.ts';
import type { RadialProfile } from '../../lib/optics/radialProfile.ts';
import { brightestPlace } from '../../notebooks/brightestPlace.ts';
import type { FigureSpec } from '../../notebooks/document.ts';
import { drawFigureStatic } from '../../notebooks/figurePicture.ts';
import { figureCsv } from '../../notebooks/page/figures/figureCsv.ts';
import type { From } from '../../notebooks/prose.ts';
import { stripFigure } from '../../notebooks/stripFigure.ts';
import { axisCurveFigure, mapFigure, spotPictureFigure } from '../../notebooks/throughFocusFigures.ts';
import { planesTable } from '../../notebooks/usablePlanesTable.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';

const designs: Readonly<Record<string, Values>> = {
  'half a wave': {},
  'M² = 1.2, 0.45 waves, plate near the lens': {
    'laser.beamPropagationRatio': 1.2,
    'plate.designPhase': 0.9 * Math.PI,
    'lens.plateDistance': 0.03,
    'workpiece.z': 60e-6,
  },
  'no stop, logarithmic': { 'plate.stop': 'open', 'focus.mapScale': 'logarithmic', 'workpiece.z': -1.2e-3 },
};

/** What a block's view sees for a design. */
function valuesOf(from: From, outcomeOf: (id: string) => Outcome): Record<string, unknown> {
  return Object.fromEntries(Object.entries(from).map(([key, { id }]) => [key, valueOrThrow(outcomeOf(id))]));
}

describe.each(Object.entries(designs))('%s', (_name, design) => {
  const outcomeOf = outcomesOf(design);
  const specOf = (block: typeof mapFigure): FigureSpec => block.view(valuesOf(block.from, outcomeOf));
  const profileAt = (z: number) =>
    valueOrThrow(outcomesOf(design, { 'workpiece.z': z })('spot.profile')) as RadialProfile;
  const unit = (valueOrThrow(outcomeOf('focus.unshapedPeakFluence')) as number) * 1e-4;
  const z = valueOrThrow(outcomeOf('workpiece.z')) as number;

  it('the map is the profile in every plane', () => {
    const { map, x, y, moves, summary } = specOf(mapFigure);
    for (let column = 0; column < map!.columns; column += 50) {
      const place = (x.domain[0] + ((x.domain[1] - x.domain[0]) * column) / (map!.columns - 1)) / 1e3;
      const profile = profileAt(place);
      for (let row = 0; row < map!.rows; row += 64) {
        const radius = (y.domain[1] * row) / (map!.rows - 1) / 1e6;
        const expected = valueAt(profile, radius) * unit;
        // 1e-6 of the unshaped peak, the map's own error.
        const shown = map!.values[row * map!.columns + column]! * map!.perValue!;
        expectClose(shown, expected, { absolute: 1e-6 * unit });
      }
    }
    expect(moves!.at).toBeCloseTo(z * 1e3, 12);
    expect(/lies outside this chart/.test(summary)).toBe(z * 1e3 < x.domain[0] || z * 1e3 > x.domain[1]);
  });

  it('the curve on the axis is the axis of those profiles', () => {
    const { series } = specOf(axisCurveFigure);
    const [shaped] = series;
    for (let i = 0; i < shaped!.x.length; i += 80) {
      const expected = valueAt(profileAt(shaped!.x[i]! / 1e3), 0) * unit;
      expectClose(shaped!.y[i]!, expected, { absolute: 1e-6 * unit });
    }
  });

  it('profiles side by side are those in their planes, and the file names their places', () => {
    const spec = specOf(stripFigure);
    const [planes, radii, fluence] = spec.data!.map(({ values }) => values);
    for (let i = 0; i < fluence!.length; i += 37) {
      const expected = valueAt(profileAt(planes![i]! / 1e3), Math.abs(radii![i]!) / 1e6) * unit;
      expectClose(fluence![i]!, expected, { absolute: 1e-6 * unit });
    }
    const [head, first] = figureCsv(spec).split('\r\n');
    expect(head).toBe('z (mm),distance from the axis (µm),fluence per pulse (J/cm²)');
    expect(first!.split(',').map(Number)).toEqual(
      [planes![0], radii![0], fluence![0]].map((value) => Number(value!.toPrecision(12))),
    );
  });

  it('the picture of the spot is round and holds the profile', () => {
    const { map, x } = specOf(spotPictureFigure);
    const { columns, rows, values } = map!;
    const half = (columns - 1) / 2;
    const profile = profileAt(z);
    const peak = map!.range[1];
    for (const [row, column] of [
      [half, half],
      [half, columns - 1],
      [half + 20, half - 35],
      [10, 20],
    ] as const) {
      const radius = (x.domain[1] * Math.hypot(row - half, column - half)) / half / 1e6;
      const expected = Math.max(0, valueAt(profile, radius) * unit);
      // Between samples a quarter of a pixel apart the profile is drawn straight: far below one of 256 greys.
      expectClose(values[row * columns + column]!, expected, { absolute: 1e-3 * peak });
    }
    expect(rows).toBe(columns);
  });

  it('every chart can be drawn without a page, with words and numbers alone', () => {
    for (const block of [mapFigure, axisCurveFigure, stripFigure, spotPictureFigure]) {
      const { document } = parseHTML('<!doctype html><html><body></body></html>');
      const svg = drawFigureStatic(specOf(block), document as unknown as Document, 600);
      // The picture's bytes, in base64, may hold any letters.
      expect(svg.replace(/base64,[^"]*/g, '')).not.toMatch(/NaN|undefined|Infinity/);
    }
  });

  it('the list holds the planes found, and each row moves the workpiece there', () => {
    const { rows, summary, columns } = planesTable.view(valuesOf(planesTable.from, outcomeOf)) as ReturnType<
      typeof planesTable.view
    >;
    const planes = valueOrThrow(outcomeOf('focus.usablePlanes')) as {
      z: number;
      kind: string;
      depth: number;
    }[];
    expect(rows.map(({ patch }) => patch)).toEqual(planes.map((plane) => ({ 'workpiece.z': plane.z })));
    rows.forEach((row, i) => {
      expect(row.cells).toHaveLength(columns.length - 1);
      const { kind, depth } = planes[i]!;
      // A flat-top by definition that keeps no tolerance on its plateau is not sold as an even one.
      expect(row.cells[0]).toBe(kind === 'flat-top' && depth === 0 ? 'flat-top, uneven' : kind);
      expect(row.cells[4] === 'none').toBe(planes[i]!.depth === 0);
      expect(row.cells.join() + JSON.stringify(row.more)).not.toMatch(/NaN|undefined|Infinity/);
      const there = planesTable.view({ ...valuesOf(planesTable.from, outcomeOf), z: planes[i]!.z });
      expect(there.rows.map(({ chosen }) => chosen).indexOf(true)).toBe(i);
    });
    expect(summary).toMatch(/^\d+ planes were found\./);
    expect(/peaked spot, which has no plateau/.test(summary)).toBe(
      planes.some(({ kind }) => kind === 'peaked'),
    );
  });
});

describe('where the axis is brightest', () => {
  const answerFor = (design: Values) => {
    const outcomeOf = outcomesOf(design);
    return brightestPlace.options[brightestPlace.answer(valuesOf(brightestPlace.from, outcomeOf))];
  };

  it.each([
    ['with half a wave the sides are alike (physics: the family is symmetric)', {}, 1],
    ['without a step it is in the focus', { 'plate.designPhase': 1e-6 }, 0],
    ['with a fifth of a wave one side wins', { 'plate.designPhase': 0.4 * Math.PI }, 2],
  ] as const)('%s', (_name, design, option) => {
    expect(answerFor(design)).toBe(brightestPlace.options[option]);
  });
});
