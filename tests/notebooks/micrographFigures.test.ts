import { readFileSync } from 'node:fs';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { ripplesTruth } from '../../data/measured/drawMicrographs.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import type { FigureSpec } from '../../notebooks/document.ts';
import { drawFigureStatic } from '../../notebooks/figurePicture.ts';
import { readFileAsPatch } from '../../notebooks/measuredFiles.ts';
import { micrographPictures, regularityFigures } from '../../notebooks/micrographFigures.ts';
import { orientationFigure, spectrumFigures } from '../../notebooks/micrographSpectra.ts';
import type { From } from '../../notebooks/prose.ts';
import { periodWavelengthFigure } from '../../notebooks/rippleFigures.ts';
import { expectClose } from '../close.ts';
import { micrographs } from '../design/micrographFiles.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';
import { here } from './runCommand.ts';

const demo = (prefix: string, name: string): Values => ({
  ...readFileAsPatch(`${prefix}.picture`, new Uint8Array(readFileSync(here(`data/measured/${name}`))), name),
  [`${prefix}.scaleSource`]: 'typed',
  [`${prefix}.pixelPitch`]: ripplesTruth.pixelPitch,
});
const both = { ...demo('micrograph', 'even-ripples.png'), ...demo('otherMicrograph', 'uneven-ripples.png') };

function valuesOf(from: From, design: Values): Record<string, unknown> {
  const outcomeOf = outcomesOf(design);
  return Object.fromEntries(Object.entries(from).map(([key, { id }]) => [key, valueOrThrow(outcomeOf(id))]));
}
const panelsOf = (block: typeof micrographPictures, design: Values) =>
  block.view(valuesOf(block.from, design));
const specOf = (block: typeof orientationFigure, design: Values) => block.view(valuesOf(block.from, design));

/** Angle of a line of a picture, counter-clockwise, 0 to 180°: from its first point to its second. */
function angleOf({ series }: FigureSpec, label: string): number {
  const { x, y } = series.find((one) => one.label === label)!;
  const angle = (Math.atan2(y[0]! - y[1]!, x[1]! - x[0]!) * 180) / Math.PI;
  return (angle + 360) % 180;
}

describe('both pictures beside each other', () => {
  const [a, b] = panelsOf(micrographPictures, both) as [FigureSpec, FigureSpec];

  it('in µm without the caption, y downwards', () => {
    expect([a.title, b.title]).toEqual(['Micrograph A, as measured', 'Micrograph B, as measured']);
    const pixel = ripplesTruth.pixelPitch * 1e6;
    const near = { absolute: 1e-9, source: 'means over blocks of two pixels, middle to middle' };
    expectClose(a.x.domain[1], 479 * pixel, near);
    expectClose(a.y.domain[0], (420 - ripplesTruth.captionRows - 1) * pixel, near);
    expect(a.y.domain[0]).toBeGreaterThan(a.y.domain[1]);
    expect([a.x.unit, a.y.unit, a.map!.grey]).toEqual(['µm', 'µm', true]);
  });

  it('the wave vector is drawn as it lies in the picture, a ridge at right angles to it', () => {
    // 1.64 rad towards y downwards is 86.0° counter-clockwise.
    const true_ = 180 - (ripplesTruth.even.direction * 180) / Math.PI;
    for (const spec of [a, b]) {
      expectClose(angleOf(spec, 'wave vector'), true_, { absolute: 3, source: 'data/measured/README.md' });
      expectClose(angleOf(spec, 'along a ridge'), angleOf(spec, 'wave vector') + 90, { absolute: 1e-6 });
    }
    const turned = panelsOf(micrographPictures, { ...both, 'otherMicrograph.scanAngle': Math.PI / 3 })[1]!;
    expectClose(angleOf(turned, 'scan, as typed'), 60, { absolute: 1e-6 });
  });

  it('in pixels without a scale; without ripples no wave vector; the other picture alone; none at all', () => {
    const [noise] = panelsOf(micrographPictures, { 'micrograph.picture': micrographs[4] });
    expect(noise!.x.unit).toBe('px');
    expect(noise!.series.map(({ label }) => label)).toEqual(['scan, as typed']);
    expect(noise!.summary).toMatch(/^No ripples were found in it\./);
    const alone = panelsOf(micrographPictures, { 'otherMicrograph.picture': micrographs[0] });
    expect(alone.map(({ title }) => title)).toEqual(['Micrograph B, as measured']);
    expect(panelsOf(micrographPictures, {})).toEqual([]);
    expect(panelsOf(regularityFigures, {})).toEqual([]);
  });
});

describe('the map of local regularity', () => {
  const [even, uneven] = panelsOf(regularityFigures, both) as [FigureSpec, FigureSpec];

  it('shows the uneven overlap of lines 6 µm apart, and an even field without it', () => {
    const { columns, rows, values } = uneven.map!;
    const meanAt = (fromTop: number) => {
      const row = rows - 1 - fromTop;
      return values.subarray(row * columns, (row + 1) * columns).reduce((sum, one) => sum + one / columns, 0);
    };
    // Lines at 3, 9, 15 and 21 µm from the top; cells of 1.85 µm begin there.
    const cell = 1.85;
    const at = (place: number) => meanAt(Math.floor(place / cell));
    for (const line of [3, 9, 15]) expect(at(line), `line at ${line}`).toBeGreaterThan(0.5);
    for (const gap of [6, 12]) expect(at(gap), `gap at ${gap}`).toBeLessThan(0.25);
    expect(uneven.summary).toMatch(
      /^From 0\.02 to 0\.82 in cells 1\.85 µm wide: .* 60 of 121 lie below 0\.5\. Smoothed over 2 px\.$/,
    );
    expect(even.summary).toMatch(/0 of 120 lie below 0\.5\. Smoothed over 2 px\.$/);
    expect(uneven.map!.range).toEqual([0, 1]);
  });
});

describe('a blank picture', () => {
  const samples = new Uint16Array(160 * 160).fill(128);
  const picture = { name: 'blank.png', width: 160, height: 160, samples, fullScale: 255 };

  it('has figures of numbers all the same, and nothing is said to point anywhere', () => {
    const inputs = { 'micrograph.picture': picture };
    const { map, summary } = panelsOf(spectrumFigures, inputs)[0]!;
    expect(Math.max(...map!.values.map((value) => value * map!.perValue!))).toBeLessThan(1e-4);
    expect(summary).toMatch(/^Nothing in it counts as ripples\./);
    expect(specOf(orientationFigure, inputs).summary).toMatch(/^In micrograph A no direction stands out\./);
    expect(panelsOf(regularityFigures, inputs)[0]!.series).toEqual([]);
  });
});

describe('lines along the ridges', () => {
  it('run at right angles to the wave vector of the even field, within the scatter of its cells', () => {
    const [even] = panelsOf(regularityFigures, both) as [FigureSpec];
    const { x, y } = even.series[0]!;
    const angles = Array.from({ length: x.length / 3 }, (_, i) =>
      Math.atan2(y[3 * i + 1]! - y[3 * i]!, x[3 * i + 1]! - x[3 * i]!),
    );
    expect(angles.length).toBeGreaterThan(50);
    // Wave vector at 1.64 rad from x towards y, which wanders by 0.12 rad (data/measured/README.md): ridges lie at 0.07 rad.
    const doubled = (of: (angle: number) => number) => angles.reduce((sum, angle) => sum + of(2 * angle), 0);
    const mean = 0.5 * Math.atan2(doubled(Math.sin), doubled(Math.cos));
    expectClose(mean, 1.64 - Math.PI / 2, {
      absolute: 0.12 / Math.sqrt(angles.length / 4) + 0.01,
      relative: 0,
    });
  });

  it('are left out where a cell has no direction', () => {
    const [, uneven] = panelsOf(regularityFigures, both) as [FigureSpec, FigureSpec];
    // Nine by nine cells lie inside the edge; the gaps between the scan lines have none.
    expect(uneven.series[0]!.x.length / 3).toBeLessThan(81);
  });
});

describe('the power spectrum', () => {
  it('is highest at the wave vector and its twin, counter-clockwise, in periods a µm', () => {
    const inputs = { 'micrograph.picture': micrographs[0], 'micrograph.scaleSource': 'typed' };
    const { map, marks, x, summary } = panelsOf(spectrumFigures, inputs)[0]!;
    const { columns, values, perValue } = map!;
    const top = values.indexOf(Math.max(...values));
    const at = (place: number) => x.domain[0] + (place / (columns - 1)) * (x.domain[1] - x.domain[0]);
    const [kx, ky] = [at(top % columns), at(Math.floor(top / columns))];
    // Pixels of 50 nm: ten make half a µm. The tiles of 64 pixels resolve 0.31 periods a µm.
    const turn = Math.sign(ky) * 2;
    expectClose(kx, turn * Math.cos(Math.PI - 1), { absolute: 0.32, source: 'as drawn' });
    expectClose(ky, turn * Math.sin(Math.PI - 1), { absolute: 0.32, source: 'as drawn' });
    expect(Math.max(...values) * perValue!).toBeCloseTo(1, 12);
    const [main, second] = marks!;
    expect([main!.label, second!.label]).toEqual(['ripples, 499.9\u202fnm', 'second period, 200\u202fnm']);
    expectClose(main!.x!, 2 * Math.cos(Math.PI - 1), { relative: 0.003, source: 'as drawn' });
    expectClose(main!.y!, 2 * Math.sin(Math.PI - 1), { relative: 0.003, source: 'as drawn' });
    expect(x.unit).toBe('1/µm');
    expect(summary).toMatch(/^At the wave vector the power is 4700 times that of other directions/);
  });

  it('without ripples, and without a scale', () => {
    const { marks, x, summary } = panelsOf(spectrumFigures, { 'micrograph.picture': micrographs[4] })[0]!;
    expect(marks).toEqual([]);
    expect(x.unit).toBe('1/px');
    expect(x.domain[1]).toBeLessThan(0.5);
    expect(summary).toMatch(/^Nothing in it counts as ripples\./);
  });
});

describe('the local orientation', () => {
  const spec = specOf(orientationFigure, both);

  it('adds up to the whole, highest where the wave vector lies, counter-clockwise', () => {
    for (const { x, y } of spec.series) {
      expectClose(
        y.reduce((sum, share) => sum + share, 0),
        100,
        { relative: 1e-9, source: 'definition' },
      );
      expectClose(x[y.indexOf(Math.max(...y))]!, 86, { absolute: 5, source: 'data/measured/README.md' });
    }
    expect(spec.series.map(({ label }) => label)).toEqual(['micrograph A', 'micrograph B']);
    expect(spec.summary).toMatch(
      /A is oriented most at 86\.6°, with a half-width of 12\.9°\..* Smoothed over 2\spx\.$/,
    );
  });

  it('is not mirrored: fine ripples of 32.7° lie there', () => {
    const { x, y } = specOf(orientationFigure, { 'micrograph.picture': micrographs[0] }).series[0]!;
    const share = (degrees: number) => y[x.findIndex((at) => Math.abs(at - degrees) <= 0.5)]!;
    expect(share(122.7)).toBeGreaterThan(5);
    expect(share(180 - 122.7)).toBeLessThan(1);
  });

  it('of one picture, and of one without ripples', () => {
    const one = specOf(orientationFigure, { 'micrograph.picture': micrographs[4] });
    expect(one.series).toHaveLength(1);
    expect(one.summary).not.toMatch(/NaN|undefined/);
  });
});

describe('the measured period over the predicted band', () => {
  it('is a point at the wavelength of the design, where the scale is known', () => {
    const { marks = [], summary } = specOf(periodWavelengthFigure, both);
    const points = marks.filter(({ label }) => label.startsWith('micrograph'));
    expect(points.map(({ label }) => label)).toEqual([
      'micrograph A, 928.5\u202fnm',
      'micrograph B, 919.5\u202fnm',
    ]);
    expectClose(points[0]!.x!, 1030, { relative: 1e-9 });
    expectClose(points[0]!.y!, 928.5, { absolute: 0.05 });
    expect(summary).toMatch(/Measured: micrograph A, 928\.5\snm; micrograph B, 919\.5\snm\.$/);
    const unscaled = specOf(periodWavelengthFigure, { ...both, 'micrograph.scaleSource': 'unknown' });
    expect(unscaled.marks!.filter(({ label }) => label.startsWith('micrograph'))).toHaveLength(1);
    expect(specOf(periodWavelengthFigure, {}).summary).not.toMatch(/Measured/);
  });
});

it('every figure is drawn with its title, without anything that is no number', () => {
  const document = parseHTML('<!doctype html><html><body></body></html>').document as unknown as Document;
  const specs = [
    ...panelsOf(micrographPictures, both),
    ...panelsOf(regularityFigures, both),
    ...panelsOf(spectrumFigures, both),
    specOf(orientationFigure, both),
  ];
  for (const spec of specs) {
    const svg = drawFigureStatic(spec, document, 600);
    expect(svg).toContain(spec.title);
    // The picture inside is base64, in which any letters may follow one another.
    expect(svg.replace(/base64,[^"]*/g, '')).not.toMatch(/NaN|undefined|Infinity/);
  }
});
