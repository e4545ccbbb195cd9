import { readFileSync } from 'node:fs';
import { encode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { ripplesTruth } from '../../data/measured/drawMicrographs.ts';
import { type DrawnRipples, drawRipples } from '../../data/measured/drawRipples.ts';
import { designGraph } from '../../lib/design/design.ts';
import { writeDesignFile } from '../../lib/design/designFile.ts';
import { firstMicrograph } from '../../lib/design/micrographs.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import type { CameraImage } from '../../lib/measured/cameraImage.ts';
import { measureRipples } from '../../lib/measured/ripplePicture.ts';
import { readDesign } from '../../notebooks/keeping/readDesign.ts';
import { readMeasuredFile } from '../../notebooks/measuredFiles.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, read } from '../notebooks/designOutcomes.ts';
import { here } from '../notebooks/runCommand.ts';
import { drawnRipples, micrographs } from './micrographFiles.ts';

const degree = Math.PI / 180;
const initial = initialState(designGraph);
const pngOf = ({ width, height, samples }: CameraImage) =>
  encode({ width, height, data: Uint8Array.from(samples), depth: 8, channels: 1 });
const given = (bytes: Uint8Array, name: string, inputs: Patch = initial.inputs, prefix = 'micrograph') =>
  readMeasuredFile(`${prefix}.picture`, bytes, name, inputs);
const scaled = (prefix: string, pitch: number) => ({
  [`${prefix}.scaleSource`]: 'typed',
  [`${prefix}.pixelPitch`]: pitch,
});
const demo = (name: string, prefix = 'micrograph') => ({
  ...given(new Uint8Array(readFileSync(here(`data/measured/${name}`))), name, initial.inputs, prefix),
  ...scaled(prefix, ripplesTruth.pixelPitch),
});
const drawn = (changes: Partial<DrawnRipples>, pitch = 80e-9) => ({
  ...given(pngOf(drawRipples({ ...drawnRipples, ...changes })), 'drawn.png'),
  ...scaled('micrograph', pitch),
});
const problemOf = (id: string, inputs: Patch) => outcomesOf(inputs)(id) as { problem: object };

describe('ripples of a micrograph, through the inputs', () => {
  it.each([0.2, 1, 2.2, 3])('period and direction are as drawn, %f rad towards y downwards', (direction) => {
    const value = read(drawn({ direction }));
    expectClose(value('micrograph.period'), 800e-9, { relative: 0.003, source: 'as drawn' });
    expectClose(value('micrograph.periodPixels'), 10, { relative: 0.003, source: 'as drawn' });
    expectClose(value('micrograph.direction'), Math.PI - direction, {
      absolute: 0.3 * degree,
      source: 'as drawn',
    });
    expectClose(value('micrograph.secondPeriod'), 320e-9, { relative: 0.003, source: 'as drawn' });
    const second = (2 * Math.PI - direction - Math.PI / 2) % Math.PI;
    expectClose(value('micrograph.secondDirection'), second, { absolute: 0.3 * degree, source: 'as drawn' });
    expect(value('micrograph.periodUncertainty')).toBeLessThan(0.003 * 800e-9);
    expectClose(value('micrograph.periodPixelsUncertainty') * 80e-9, value('micrograph.periodUncertainty'), {
      relative: 1e-12,
      source: 'the pitch',
    });
  });

  it('the ridges lie at right angles to the wave vector, against the scan as typed', () => {
    const value = read({ ...drawn({}), 'micrograph.scanAngle': 10 * degree });
    const ridges = (Math.PI - 1 + Math.PI / 2 - 10 * degree) % Math.PI;
    expectClose(value('micrograph.ridgesToScan'), ridges, { absolute: 0.3 * degree, source: 'as drawn' });
  });

  it('the even field: 920 nm at 94.0° clockwise, its caption left out, its scale bar drawn along', () => {
    const inputs = demo('even-ripples.png');
    const value = read(inputs);
    const { period, direction } = ripplesTruth.even;
    // The measured uncertainties are what the disorder leaves open.
    expectClose(value('micrograph.period'), period, {
      absolute: 2 * value('micrograph.periodUncertainty'),
      source: 'data/measured/README.md',
    });
    expectClose(value('micrograph.direction'), Math.PI - direction, {
      absolute: 2 * value('micrograph.directionUncertainty'),
      source: 'data/measured/README.md',
    });
    expect(value('micrograph.found')).toMatchObject({ region: { left: 0, top: 0, width: 480, height: 384 } });
    const bar = {
      ...inputs,
      'micrograph.scaleSource': 'bar',
      'micrograph.barEndX': 20 + ripplesTruth.scaleBar / ripplesTruth.pixelPitch,
      'micrograph.barLength': ripplesTruth.scaleBar,
    };
    expectClose(read(bar)('micrograph.period'), value('micrograph.period'), {
      relative: 1e-12,
      source: 'a bar as long as drawn',
    });
  });

  it('the uneven field shows its lines in the map of local regularity, the even one none', () => {
    const weak = (name: string) => {
      const { values, columns } = (
        read(demo(name))('micrograph.found') as unknown as ReturnType<typeof measureRipples>
      ).orientation.regularity;
      const rows = Array.from({ length: values.length / columns }, (_, row) =>
        values.slice(row * columns, (row + 1) * columns).reduce((sum, one) => sum + one / columns, 0),
      );
      return { share: values.filter((one) => one < 0.5).length / values.length, rows };
    };
    const uneven = weak('uneven-ripples.png');
    expect(uneven.share).toBeGreaterThan(0.3);
    expect(Math.max(...uneven.rows) - Math.min(...uneven.rows)).toBeGreaterThan(0.4);
    expect(weak('even-ripples.png').share).toBe(0);
  });

  it('a second micrograph is measured by itself, with the same smoothing', () => {
    const both = { ...drawn({}), ...demo('even-ripples.png', 'otherMicrograph'), 'micrograph.smoothing': 3 };
    const value = read(both);
    expectClose(value('otherMicrograph.period'), 920e-9, {
      absolute: 2 * value('otherMicrograph.periodUncertainty'),
      source: 'data/measured/README.md',
    });
    for (const prefix of ['micrograph', 'otherMicrograph'])
      expect(value(`${prefix}.found`)).toMatchObject({ orientation: { smoothing: 3 } });
    expect(value('micrograph.halfWidth')).toBe(
      read({ ...drawn({}), 'micrograph.smoothing': 3 })('micrograph.halfWidth'),
    );
  });

  it('without a scale there is a period in pixels and none in metres', () => {
    const inputs = { ...drawn({}), 'micrograph.scaleSource': 'unknown' };
    expect(read(inputs)('micrograph.periodPixels')).toBeGreaterThan(9.9);
    expect(problemOf('micrograph.period', inputs).problem).toMatchObject({
      message: expect.stringMatching(/has not been said: type its pitch/),
      parts: { input: 'micrograph.scaleSource' },
    });
  });

  it('is measured in the part chosen alone; the next picture is measured whole', () => {
    const part = {
      'micrograph.regionSource': 'part',
      'micrograph.regionLeft': 20.4,
      'micrograph.regionTop': 15,
      'micrograph.regionWidth': 80,
      'micrograph.regionHeight': 80,
    };
    // Five periods or more in each tile of a part as small as this.
    const value = read({ ...drawn({ period: 6, fineAmplitude: 0 }), ...part });
    expect(value('micrograph.found')).toMatchObject({ region: { left: 20, top: 15, width: 80, height: 80 } });
    expectClose(value('micrograph.periodPixels'), 6, { relative: 0.003, source: 'as drawn' });
    expect(given(pngOf(drawRipples(drawnRipples)), 'next.png', { ...initial.inputs, ...part })).toMatchObject(
      { 'micrograph.regionSource': 'whole' },
    );
    const outside = { ...drawn({}), ...part, 'micrograph.regionLeft': 100 };
    expect(problemOf('micrograph.period', outside).problem).toMatchObject({
      message: expect.stringMatching(/does not lie in "drawn\.png" of 128 × 128/),
      parts: { input: 'micrograph.regionSource' },
    });
  });

  it.each<[string, Patch, RegExp, string]>([
    ['noise', { 'micrograph.picture': micrographs[4] }, /no direction stands out/, 'micrograph.picture'],
    [
      'a picture too small',
      { 'micrograph.picture': micrographs[5] },
      /is too small for ripples/,
      'micrograph.picture',
    ],
    [
      'too much smoothing',
      { ...drawn({}), 'micrograph.smoothing': 12 },
      /take 0\.5 to 8 pixels/,
      'micrograph.smoothing',
    ],
    ['no picture', {}, /^No micrograph A has been given yet/, 'micrograph.picture'],
  ])('%s: no period, and why', (_name, inputs, says, input) => {
    expect(problemOf('micrograph.periodPixels', inputs).problem).toMatchObject({
      message: expect.stringMatching(says),
      parts: { input },
    });
  });

  it('one kind of ripples has no second period', () => {
    const inputs = { ...scaled('micrograph', 1e-7), 'micrograph.picture': micrographs[1] };
    expect(problemOf('micrograph.secondPeriod', inputs).problem).toMatchObject({
      message: expect.stringMatching(/^No second period/),
    });
  });

  it('reports the part that is done, growing to the end', () => {
    const shares: number[] = [];
    const compute = firstMicrograph.found.compute as (
      values: object,
      report: (share: number) => void,
    ) => ReturnType<typeof measureRipples>;
    const region = { left: 0, top: 0, width: 128, height: 128 };
    const values = { picture: micrographs[0], region, source: 'whole', smoothing: 2 };
    const found = compute(values, (share) => shares.push(share));
    expect(found).toEqual(measureRipples(micrographs[0]!));
    expect(shares.length).toBeGreaterThan(2);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBeLessThanOrEqual(1);
  });

  it('is the same after the design was saved and opened again', () => {
    const { inputs } = applyPatch(designGraph, initial, drawn({}));
    const text = writeDesignFile(designGraph, { inputs });
    const again = readDesign(new TextEncoder().encode(text), 'again.json').inputs;
    expect(again).toEqual(inputs);
    expect(read(again)('micrograph.period')).toBe(read(inputs)('micrograph.period'));
  });
});

describe('a damaged micrograph', () => {
  const good = pngOf(drawRipples(drawnRipples));
  const before = applyPatch(designGraph, initial, given(good, 'before.png'));
  it.each<[string, Uint8Array, RegExp]>([
    ['empty', new Uint8Array(), /is empty/],
    ['cut off', good.slice(0, good.length >> 1), /^"bad\.png"/],
    ['a flipped byte', good.map((byte, i) => (i === good.length >> 1 ? byte ^ 0x55 : byte)), /^"bad\.png"/],
    ['a JPEG cut short', Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 0, 16), /is cut short/],
    ['a table', new TextEncoder().encode('1,2,3\n4,5,6\n'), /neither a PNG, a TIFF nor a JPEG/],
  ])('%s: says why, and the picture before stays', (_name, bytes, says) => {
    const read = () => given(bytes, 'bad.png', before.inputs);
    expect(read).toThrow(says);
    expect(read).toThrow(/The file given before, "before\.png", stays\.$/);
  });
});
