import { encode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { writeDesignFile } from '../../lib/design/designFile.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import type { CameraImage } from '../../lib/measured/cameraImage.ts';
import { readDesign } from '../../notebooks/keeping/readDesign.ts';
import { readMeasuredFile } from '../../notebooks/measuredFiles.ts';
import { expectClose } from '../close.ts';
import { type DrawnMark, drawMark, trueArea } from '../measured/drawMark.ts';
import { outcomesOf, read } from '../notebooks/designOutcomes.ts';
import { drawnMark } from './files.ts';

const id = 'markPicture.picture';
const initial = initialState(designGraph);
const pngOf = ({ width, height, samples }: CameraImage) =>
  encode({ width, height, data: Uint8Array.from(samples), depth: 8, channels: 1 });
const given = (bytes: Uint8Array, name: string, inputs: Patch = initial.inputs) =>
  readMeasuredFile(id, bytes, name, inputs);

const ring: DrawnMark = {
  ...drawnMark,
  halfX: 30,
  halfY: 26,
  hole: 12,
  width: 120,
  height: 110,
  x: 61.3,
  y: 54.8,
};
const pitch = { 'markPicture.scaleSource': 'typed', 'markPicture.pixelPitch': 0.25e-6 };
const inRing = { ...given(pngOf(drawMark(ring)), 'ring.png'), ...pitch };
const problemOf = (inputs: Patch) =>
  outcomesOf(inputs)('markPicture.outerDiameter') as { problem: { message: string; parts: object } };

describe('a mark in a picture, through the inputs', () => {
  // The blur of a pixel draws a contour of radius R in by 1/R pixels (tests/measured/markPicture.test.ts).
  it('has the areas, diameters, extents and centre that were drawn', () => {
    const value = read(inRing);
    const p = 0.25e-6;
    const disc = (area: number) => 2 * Math.sqrt(area / Math.PI) * p;
    const source = 'the ring as drawn';
    expectClose(value('markPicture.area'), trueArea(ring) * p ** 2, { relative: 2.5 / 144, source });
    expectClose(value('markPicture.outerArea'), trueArea({ ...ring, hole: 0 }) * p ** 2, {
      relative: 0.006,
      source,
    });
    expectClose(value('markPicture.outerDiameter'), disc(Math.PI * 30 * 26), { absolute: 0.2 * p, source });
    expectClose(value('markPicture.innerDiameter'), 24 * p, { absolute: 0.25 * p, source });
    expectClose(value('markPicture.innerArea'), Math.PI * (12 * p) ** 2, { relative: 0.03, source });
    expectClose(value('markPicture.extentX'), 60 * p, { absolute: 0.5 * p, source });
    expectClose(value('markPicture.extentY'), 52 * p, { absolute: 0.5 * p, source });
    expectClose(value('markPicture.centreX'), 61.3 * p, { absolute: 0.1 * p, source });
    expectClose(value('markPicture.centreY'), 54.8 * p, { absolute: 0.1 * p, source });
    const u = value('markPicture.outerDiameterUncertainty');
    // An edge through a pixel and three boxes of three pixels has the variance 1/12 + 2; a normal edge passes 0.35 and 0.65
    // at 0.385 standard deviations from its middle.
    expectClose(u, 2 * 0.385 * Math.sqrt(2 + 1 / 12) * p, {
      relative: 0.1,
      source: 'the blur before the contour',
    });
    expectClose(
      value('markPicture.areaUncertainty'),
      (Math.PI / 2) *
        (u * value('markPicture.outerDiameter') +
          value('markPicture.innerDiameterUncertainty') * value('markPicture.innerDiameter')),
      { relative: 0.01, source: 'first order in the two edges, which move apart' },
    );
  });

  it('takes its scale from a line along the bar', () => {
    const bar = {
      'markPicture.scaleSource': 'bar',
      'markPicture.barLength': 20e-6,
      'markPicture.barStartX': 10,
      'markPicture.barStartY': 100,
      'markPicture.barEndX': 58,
      'markPicture.barEndY': 64,
    };
    const value = read({ ...inRing, ...bar });
    expectClose(value('markPicture.usedPixelPitch'), 20e-6 / 60, { relative: 1e-12 });
    expectClose(
      value('markPicture.outerDiameter'),
      (read(inRing)('markPicture.outerDiameter') * (20 / 60)) / 0.25,
      {
        relative: 1e-9,
      },
    );
    const undrawn = { ...bar, 'markPicture.barEndX': 10, 'markPicture.barEndY': 100 };
    expect(problemOf({ ...inRing, ...undrawn }).problem).toMatchObject({
      kind: 'absent',
      message: expect.stringMatching(/^No line has been drawn along the scale bar yet/),
    });
    const none = { ...undrawn, 'markPicture.barEndX': 10.5 };
    expect(problemOf({ ...inRing, ...none }).problem).toMatchObject({
      message: expect.stringMatching(/^The line along the scale bar is shorter than a pixel/),
      parts: { input: 'markPicture.barEndX' },
    });
  });

  it('is looked for in the part chosen alone; the next picture is looked at whole', () => {
    const part = {
      'markPicture.regionSource': 'part',
      'markPicture.regionLeft': 20.4,
      'markPicture.regionTop': 15,
      'markPicture.regionWidth': 80,
      'markPicture.regionHeight': 80,
    };
    const value = read({ ...inRing, ...part });
    expect(outcomesOf({ ...inRing, ...part })('markPicture.region')).toMatchObject({
      value: { left: 20, top: 15, width: 80, height: 80 },
    });
    for (const name of ['outerDiameter', 'centreX', 'centreY'])
      expectClose(value(`markPicture.${name}`), read(inRing)(`markPicture.${name}`), { relative: 0.01 });
    expect(given(pngOf(drawMark(ring)), 'next.png', { ...initial.inputs, ...part })).toMatchObject({
      'markPicture.regionSource': 'whole',
    });
    const outside = problemOf({ ...inRing, ...part, 'markPicture.regionLeft': 60 }).problem;
    expect(outside).toMatchObject({
      message: expect.stringMatching(/does not lie in "ring\.png" of 120 × 110/),
      parts: { input: 'markPicture.regionSource' },
    });
  });

  it.each<[string, Partial<DrawnMark>, RegExp]>([
    ['no mark', { mark: 0.6 }, /^Nothing stands out/],
    ['a mark at the edge', { x: 20 }, /reaches the edge of the picture.*more surroundings/],
  ])('%s is a problem of the picture', (_name, change, says) => {
    const { problem } = problemOf(given(pngOf(drawMark({ ...ring, ...change })), 'poor.png'));
    expect(problem).toMatchObject({ message: expect.stringMatching(says), parts: { input: id } });
  });

  it('without a scale there is no size: none is assumed', () => {
    const outcome = outcomesOf(given(pngOf(drawMark(ring)), 'a.png'))('markPicture.outerDiameter');
    expect(outcome).toMatchObject({
      problem: { message: expect.stringMatching(/has not been said: type its pitch/) },
    });
  });

  it('a second mark and a faint one are told beside the number', () => {
    const one = drawMark(ring);
    const two = {
      ...one,
      width: 240,
      samples: Uint16Array.from(
        { length: 240 * 110 },
        (_, i) => one.samples[Math.floor(i / 240) * 120 + (i % 120)]!,
      ),
    };
    const noteOf = (image: CameraImage) =>
      outcomesOf({ ...pitch, ...given(pngOf(image), 'two.png') })('markPicture.outerDiameter') as {
        note?: string;
      };
    expect(noteOf(two).note).toMatch(/^1 further part stands out/);
    expect(noteOf(drawMark({ ...ring, mark: 0.5, noise: 0.07 })).note).toMatch(/times its noise only/);
  });

  it('is the same after the design was saved and opened again', () => {
    const { inputs } = applyPatch(designGraph, initial, { ...inRing, 'markPicture.regionLeft': 3 });
    const text = writeDesignFile(designGraph, { inputs });
    const again = readDesign(new TextEncoder().encode(text), 'again.json').inputs;
    expect(again).toEqual(inputs);
    expect(read(again)('markPicture.area')).toBe(read(inRing)('markPicture.area'));
  });

  it('waits for a picture', () => {
    expect(problemOf({})).toMatchObject({ problem: { kind: 'absent', parts: { input: id } } });
  });
});

describe('a damaged picture', () => {
  const good = pngOf(drawMark(ring));
  const text = (content: string) => new TextEncoder().encode(content);
  const before = applyPatch(designGraph, initial, given(good, 'before.png'));
  it.each<[string, Uint8Array, RegExp]>([
    ['empty', new Uint8Array(), /is empty/],
    ['cut off', good.slice(0, good.length >> 1), /^"bad\.png"/],
    ['a flipped byte', good.map((byte, i) => (i === good.length >> 1 ? byte ^ 0x55 : byte)), /^"bad\.png"/],
    ['a JPEG cut short', Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 0, 16), /is cut short/],
    ['a letter', text('Dear colleague,\nthe marks are fine.\n'), /neither a PNG, a TIFF nor a table/],
    ['a table with a hole', text('1,2,3\n4,,6\n7,8,9\n'), /^"bad\.png"/],
  ])('%s: says why, and the picture before stays', (_name, bytes, says) => {
    const read = () => given(bytes, 'bad.png', before.inputs);
    expect(read).toThrow(says);
    expect(read).toThrow(/The file given before, "before\.png", stays\.$/);
  });
});
