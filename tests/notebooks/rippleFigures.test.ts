import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { hasValue, type Outcome, valueOrThrow } from '../../lib/graph/outcome.ts';
import { constantsAt } from '../../lib/materials/opticalConstants.ts';
import type { Light } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { surfaceWave } from '../../lib/process/surfaceWave.ts';
import type { FigureBlock, FigureSpec } from '../../notebooks/document.ts';
import { drawFigureStatic } from '../../notebooks/figurePicture.ts';
import type { From } from '../../notebooks/prose.ts';
import { directionFigure } from '../../notebooks/rippleDirectionFigure.ts';
import { periodIncidenceFigure, periodWavelengthFigure } from '../../notebooks/rippleFigures.ts';
import { seriesFigure } from '../../notebooks/rippleSeriesBlocks.ts';
import { insideFigure, planeGainFigure } from '../../notebooks/rippleWindowFigures.ts';
import { slantedCutFigure } from '../../notebooks/slantedCutFigure.ts';
import { expectClose } from '../close.ts';
import { rippleTables } from '../design/files.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';

const degree = Math.PI / 180;

function valuesOf(from: From, outcomeOf: (id: string) => Outcome): Record<string, unknown> {
  return Object.fromEntries(Object.entries(from).map(([key, { id }]) => [key, valueOrThrow(outcomeOf(id))]));
}

const specOf = (block: FigureBlock, design: Values): FigureSpec =>
  block.view(valuesOf(block.from, outcomesOf(design)));

/** Value of a curve at x by straight lines, between two places that are there. */
function valueAt({ x, y }: { x: Float64Array; y: Float64Array }, at: number): number {
  const i = x.findIndex((value, k) => k > 0 && value >= at && x[k - 1]! <= at);
  return y[i - 1]! + ((at - x[i - 1]!) / (x[i]! - x[i - 1]!)) * (y[i]! - y[i - 1]!);
}

const designs: Readonly<Record<string, Values>> = {
  'as at first': {},
  'tilted, turned, in water': {
    'workpiece.incidence': 35 * degree,
    'workpiece.incidenceDirection': 20 * degree,
    'laser.polarisationAngle': 50 * degree,
    'workpiece.ambientIndex': 1.33,
  },
  'silicon, circular, with a series': {
    'workpiece.material': 'silicon',
    'laser.polarisation': 'circular',
    'ripples.series': rippleTables[0],
  },
  'copper, radial, green': {
    'workpiece.material': 'copper',
    'laser.polarisation': 'radial',
    'laser.wavelength': 515e-9,
  },
  'azimuthal, typed, a series against fluence': {
    'laser.polarisation': 'azimuthal',
    'ripples.constantsSource': 'typed',
    'ripples.series': rippleTables[1],
    'workpiece.z': 60e-6,
  },
};

const blocks = [
  periodWavelengthFigure,
  periodIncidenceFigure,
  directionFigure,
  slantedCutFigure,
  insideFigure,
  planeGainFigure,
  seriesFigure,
];

describe.each(Object.entries(designs))('%s', (_name, design) => {
  it('every chart can be drawn without a page, with words and numbers alone', () => {
    const { document } = parseHTML('<!doctype html><html><body></body></html>');
    const outcomeOf = outcomesOf(design);
    for (const block of blocks) {
      const there = (block.needs ?? []).every(({ id }) => hasValue(outcomeOf(id)));
      if (!there) continue;
      const spec = specOf(block, design);
      expect(spec.summary).not.toMatch(/NaN|undefined|—/);
      const svg = drawFigureStatic(spec, document as unknown as Document, 600);
      expect(svg, spec.title).not.toMatch(/NaN|undefined|Infinity/);
    }
  });
});

describe('period against the wavelength', () => {
  it('passes through today’s period, which is marked', () => {
    const { series, marks } = specOf(periodWavelengthFigure, {});
    const own = series.find(({ role }) => role === 'main')!;
    // The tables of n and k bend between the places that are drawn, 5 nm apart: 0.5 nm.
    expectClose(valueAt(own, 1030), 1026.2, { absolute: 0.5, relative: 0 });
    expectClose(marks!.at(-1)!.y!, 1026.2, { absolute: 0.05, relative: 0 });
  });

  it('shades what lies between the samples of titanium, and nothing where there is one sample', () => {
    const { series } = specOf(periodWavelengthFigure, { 'workpiece.material': 'titanium' });
    const spread = series.find(({ label }) => label === 'between the samples')!;
    const at = spread.x.findIndex((x) => x >= 800);
    const light = spread.x[at]!;
    const periods = ['titaniumJohnson', 'titaniumMash', 'titaniumPalm']
      .map((id) => surfaceWave(constantsAt(id, light * 1e-9), 1))
      .filter(({ bound }) => bound)
      .map(({ index }) => light / index);
    expect(periods.length).toBeGreaterThan(1);
    // As above: bends between places that are drawn.
    const bend = { absolute: 0.5, relative: 0 };
    expectClose(spread.y[at]!, Math.min(...periods), bend);
    expectClose(spread.y2![at]!, Math.max(...periods), bend);
    const alone = specOf(periodWavelengthFigure, { 'workpiece.material': 'gold' });
    expect(alone.series.map(({ label }) => label)).not.toContain('between the samples');
  });

  it('draws what no wave is bound to in grey', () => {
    const { series, summary } = specOf(periodWavelengthFigure, { 'workpiece.material': 'silicon' });
    const drawn = (role: string, from: number) =>
      series.some((curve) => curve.role === role && curve.x.some((at) => at > from));
    // Silicon holds a bound wave in the ultraviolet alone.
    expect(drawn('main', 400)).toBe(false);
    expect(drawn('second', 400)).toBe(false);
    expect(drawn('reference', 1000)).toBe(true);
    expect(summary).toContain('no wave is bound');
  });

  it('names every published point', () => {
    const { marks, summary } = specOf(periodWavelengthFigure, {});
    const labels = marks!.map(({ label }) => label).join('; ');
    expect(labels).toMatch(/^stainless steel; silicon; silicon in water; today/);
    expect(summary).toContain('Points with the name of a material are published periods.');
  });
});

describe('period against the angle of incidence', () => {
  it('holds the three values at 30° that were worked out elsewhere', () => {
    const { series } = specOf(periodIncidenceFigure, {});
    // Physics §7: 685.0 and 2044.9 (p), 1183.5 (s); 30° is one of the places drawn.
    [685.0, 2044.9, 1183.5].forEach((period, i) => {
      expectClose(valueAt(series[i]!, 30), period, { absolute: 0.05, relative: 0 });
    });
  });
});

describe('the ridges on the workpiece', () => {
  it.each([0, 30, 90, -60])('lie a period apart and at right angles to a polarisation at %d°', (angle) => {
    const design = { 'laser.polarisationAngle': angle * degree };
    const { series, equalScale } = specOf(directionFigure, design);
    expect(equalScale).toBe(true);
    const { x, y } = series[0]!;
    const [along, across] = [Math.cos(angle * degree), Math.sin(angle * degree)];
    const places = Array.from(x, (at, i) => at * along + y[i]! * across);
    // Both ends of a ridge are as far along the field, the next ridge a period further.
    expectClose(places[0]!, places[1]!, { absolute: 1e-9, relative: 0 });
    expectClose(Math.abs(places[3]! - places[0]!), 1.0262, { relative: 1e-4 });
  });
});

describe('the cut along a tilted workpiece', () => {
  it('is the spot of the plane that lies at each place', () => {
    const [theta, z] = [55 * degree, 50e-6];
    const design = { 'workpiece.incidence': theta, 'workpiece.z': z };
    const { place, slanted, level } = valueOrThrow(outcomesOf(design)('ripples.slantedCut')) as {
      readonly [key in 'place' | 'slanted' | 'level']: Float64Array;
    };
    const light = valueOrThrow(outcomesOf(design)('focus.light')) as Light;
    const middle = (place.length - 1) / 2;
    for (const i of [middle, middle - 20, middle + 33]) {
      const [s, lower] = [place[i]!, Math.cos(theta)];
      const at = (plane: number) => lower * spotAt(light, plane).irradianceAt(s * lower, 0);
      // The map is good to 1e-6 of the unshaped peak (familyMap).
      expectClose(slanted[i]!, at(z + s * Math.sin(theta)), { absolute: 2e-6, relative: 0 });
      expectClose(level[i]!, at(z), { absolute: 2e-6, relative: 0 });
    }
    expect(Math.abs(slanted[middle + 20]! - level[middle + 20]!)).toBeGreaterThan(1e-4);
  });

  it('is left out where the workpiece is not tilted', () => {
    expect(hasValue(outcomesOf({})(slantedCutFigure.needs![0]!.id))).toBe(false);
  });
});

describe('the window charts', () => {
  it('hold the part of the field at the width of today, with the peak at the upper bound', () => {
    const peak = valueOrThrow(outcomesOf({})('spot.peakFluence')) as number;
    // A hair below the bound: rounding must not push the peak over it.
    const design = { 'laser.pulseEnergy': (20e-6 * 2600 * (1 - 1e-9)) / peak };
    const inside = valueOrThrow(outcomesOf(design)('ripples.areaInWindow')) as number;
    const { series, marks } = specOf(insideFigure, design);
    expect(marks![0]!.x).toBe(1.3);
    // Each is good to 1e-3 (partsInWindow), with tables of other reach.
    expectClose(valueAt(series[0]!, 1.3) / 100, inside, { absolute: 2e-3, relative: 0 });
  });

  it('have the gains of window.json, of equal beam and step without a stop', () => {
    const design = { 'plate.stop': 'open' };
    const { series } = specOf(planeGainFigure, design);
    const source = 'tests/reference/window.json and physics, F2/F1 = 1.3';
    expectClose(valueAt(series[0]!, 0), 1.9673749975726695, { relative: 1e-6, source });
    // Straight lines between planes 0.025 apart: 2.32 at 0.363, to a hundredth.
    expectClose(valueAt(series[0]!, 0.363), 2.32, { absolute: 0.01, relative: 0, source });
  });
});

describe('a series of one’s own', () => {
  it('is drawn point by point over the band', () => {
    const { series, x, summary } = specOf(seriesFigure, { 'ripples.series': rippleTables[0] });
    expect(x.logarithmic).toBe(true);
    const points = series[2]!.y.filter((value) => !Number.isNaN(value));
    expect([...points].map(Math.round)).toEqual([960, 930, 880]);
    expectClose(series[0]!.y[0]!, 721, { relative: 1e-9 });
    expect(summary).toContain('3 periods of pulses.csv, 3 of them inside');
  });
});
