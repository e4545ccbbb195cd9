import { encode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { decodeCameraImage } from '../../lib/measured/cameraImage.ts';
import { measureMark } from '../../lib/measured/markPicture.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { type DrawnMark, drawMark, trueArea } from './drawMark.ts';

const pitch = { pixelPitch: 0.25e-6 };
const disc: DrawnMark = {
  width: 120,
  height: 110,
  x: 61.3,
  y: 54.8,
  halfX: 30,
  halfY: 30,
  background: 0.6,
  mark: 0.2,
  fullScale: 255,
};

/**
 * The blur (three boxes of three pixels, variance 2) draws the contour of a disc of radius R in by 1/R pixels, and that of a
 * hole out by as much; coverage is drawn to 1/64 of a pixel.
 */
const blurred = (area: number, smallest: number) => ({
  relative: 2.5 / smallest ** 2 + 0.002,
  source: `an area of ${area}`,
});

describe('a mark in a picture', () => {
  it.each<[string, Partial<DrawnMark>]>([
    ['dark, eight bits', {}],
    ['bright, sixteen bits', { background: 0.3, mark: 0.8, fullScale: 65535 }],
    ['an ellipse', { halfX: 36, halfY: 22, angle: 0.6 }],
    ['hollow', { hole: 14 }],
    ['with noise under uneven light', { noise: 0.03, gradientX: 0.2, gradientY: -0.1 }],
    ['small', { halfX: 8, halfY: 8 }],
  ])('%s: its area is found', (_name, change) => {
    const drawn = { ...disc, ...change };
    const mark = measureMark(drawMark(drawn), pitch);
    const area = trueArea(drawn) * pitch.pixelPitch ** 2;
    const smallest = Math.min(drawn.halfX, drawn.halfY, drawn.hole ?? Number.POSITIVE_INFINITY);
    expectClose(mark.area, area, blurred(area, smallest));
    expect(mark.dark).toBe(drawn.mark < drawn.background);
    expect(mark.areaUncertainty).toBeLessThan(0.15 * area);
    expectClose(mark.innerDiameter, 2 * (drawn.hole ?? 0) * pitch.pixelPitch, {
      absolute: 0.2 * pitch.pixelPitch,
    });
    if (!drawn.angle)
      expectClose(mark.diameters[0], 2 * drawn.halfX * pitch.pixelPitch, {
        absolute: 0.5 * pitch.pixelPitch,
      });
    expect(mark.notes).toEqual([]);
  });

  it('is the same through a PNG file, and its contour lies on the edge that was drawn', () => {
    const image = drawMark({ ...disc, hole: 12 });
    const { width, height } = image;
    const bytes = encode({ width, height, data: Uint8Array.from(image.samples), depth: 8, channels: 1 });
    const { area, contours } = measureMark(decodeCameraImage(bytes, 'a.png'), pitch);
    expect(area).toBe(measureMark(image, pitch).area);
    for (const [line, radius] of [
      [contours.outer, 30],
      [contours.holes[0]!, 12],
    ] as const)
      for (const [x, y] of line) expectClose(Math.hypot(x - disc.x, y - disc.y), radius, { absolute: 0.25 });
  });

  it('is told from its neighbours by the region', () => {
    const one = drawMark(disc);
    const pair = {
      ...one,
      width: 240,
      samples: Uint16Array.from(
        { length: 240 * 110 },
        (_, i) => one.samples[Math.floor(i / 240) * 120 + (i % 120)]!,
      ),
    };
    const both = measureMark(pair, pitch);
    expect(both.notes).toEqual([expect.stringMatching(/^1 further part stands out/)]);
    const right = measureMark(pair, { ...pitch, region: { left: 120, top: 0, width: 120, height: 110 } });
    expectClose(right.area, measureMark(one, pitch).area, { relative: 1e-12 });
    expect(right.notes).toEqual([]);
    expect(Math.min(...right.contours.outer.map(([x]) => x))).toBeGreaterThan(120);
  });

  it('seeded pictures: no bias beyond the blur, and the uncertainty of the level holds', () => {
    const random = createRandom(91);
    const count = cases(200, 20);
    const errors = Array.from({ length: count }, (_, i) => {
      const halfX = random.between(15, 32);
      const drawn = {
        ...disc,
        halfX,
        halfY: halfX * random.between(0.7, 1),
        angle: random.between(0, 3),
        x: 60 + random.uniform(),
        y: 55 + random.uniform(),
        noise: random.between(0, 0.05),
        seed: i,
      };
      const { area, areaUncertainty } = measureMark(drawMark(drawn), { pixelPitch: 1 });
      expect(Math.abs(area - trueArea(drawn))).toBeLessThan(areaUncertainty + 0.01 * area);
      return area / trueArea(drawn) - 1;
    });
    const mean = errors.reduce((sum, error) => sum + error, 0) / count;
    console.log(`areas of marks in pictures: mean error ${(100 * mean).toFixed(2)} %`);
    expect(Math.abs(mean)).toBeLessThan(0.01);
  });
});

describe('a picture that cannot be measured, or hardly', () => {
  it.each<[string, Partial<DrawnMark>, RegExp]>([
    ['nothing', { mark: 0.6 }, /^Nothing stands out/],
    ['noise alone', { mark: 0.6, noise: 0.05 }, /^Nothing stands out/],
    ['a mark at the edge', { x: 20 }, /reaches the edge of the picture.*more surroundings/],
  ])('%s', (_name, change, says) => {
    expect(() => measureMark(drawMark({ ...disc, ...change }), pitch)).toThrow(says);
  });

  it.each([
    [{ region: { left: 100, top: 0, width: 40, height: 40 } }, /does not lie in "drawn\.png" of 120 × 110/],
    [{ region: { left: 0, top: 0, width: 4, height: 40 } }, /smaller than 8 × 8/],
    [
      { region: { left: 40, top: 0, width: 80, height: 110 } },
      /reaches the edge of the region.*larger region/,
    ],
    [{ region: { left: 45, top: 40, width: 30, height: 30 } }, /no mark is there, or it fills the frame/],
    [{ level: 0.95 }, /follows noise/],
  ])('%j', (more, says) => {
    expect(() => measureMark(drawMark(disc), { ...pitch, ...more })).toThrow(says);
  });

  it('few pixels and little contrast are said', () => {
    expect(measureMark(drawMark({ ...disc, halfX: 4, halfY: 4 }), pitch).notes[0]).toMatch(
      /pixels across: take the picture/,
    );
    const faint = measureMark(drawMark({ ...disc, mark: 0.5, noise: 0.07 }), pitch);
    expect(faint.notes.join(' ')).toMatch(/times its noise only/);
  });
});
