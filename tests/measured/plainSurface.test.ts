import { encode as encodeJpeg } from 'jpeg-js';
import { describe, expect, it } from 'vitest';
import { drawRipples } from '../../data/measured/drawRipples.ts';
import type { CameraImage } from '../../lib/measured/cameraImage.ts';
import { decodeMicrograph } from '../../lib/measured/micrograph.ts';
import { measureRipples } from '../../lib/measured/ripplePicture.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { drawPlain, plainKinds } from './drawPlain.ts';

const sides = [128, 200, 256, 384, 512];

/** The picture after a JPEG of a quality. */
function compressed({ width, height, samples }: CameraImage, quality: number): CameraImage {
  const data = Uint8Array.from({ length: 4 * width * height }, (_, i) =>
    i % 4 === 3 ? 255 : samples[i >> 2]!,
  );
  return decodeMicrograph(new Uint8Array(encodeJpeg({ width, height, data }, quality).data), 'a.jpg');
}

const says =
  /alike along all|no spacing that repeats|half of the region or less|rounding|repeats too few times/;

describe('surfaces without ripples', () => {
  it('of fifty seeded pictures at most one gets a period, each other says why none', () => {
    const found = Array.from({ length: 50 }, (_, i) => {
      const kind = plainKinds[i % plainKinds.length]!;
      const side = sides[Math.floor(i / plainKinds.length) % sides.length]!;
      const { main, without, orientation } = measureRipples(drawPlain(kind, side, side, 500 + i));
      if (!main) expect(without?.text, kind).toMatch(says);
      expect(orientation.histogram.every(Number.isFinite)).toBe(true);
      return { kind, side, period: main?.period };
    }).filter(({ period }) => period !== undefined);
    console.log(`of 50 pictures without ripples ${found.length} get a period`);
    expect(found.length, JSON.stringify(found)).toBeLessThanOrEqual(1);
  });

  it.each([
    ['counts', Uint16Array.from({ length: 9e4 }, () => 100)],
    ['nothing', new Float64Array(9e4)],
    ['floating point', new Float64Array(9e4).fill(0.3)],
    [
      'a slope in floating point',
      Float64Array.from({ length: 9e4 }, (_, i) => Math.fround(0.3 + (i % 300) / 1e4)),
    ],
  ] as const)('one grey, %s: blank', (_name, samples) => {
    const found = measureRipples({ name: 'a', width: 300, height: 300, samples, fullScale: undefined });
    expect(found.without?.kind).toBe('blank');
    expect(found.orientation.regularity.values.every(Number.isFinite)).toBe(true);
  });

  it('floating point: the same answer as in counts', () => {
    const image = drawRipples({
      width: 256,
      height: 256,
      period: 11,
      direction: 2,
      amplitude: 0.2,
      noise: 0.1,
    });
    const share = { ...image, samples: Float64Array.from(image.samples, (value) => value / 255) };
    const [counts, shares] = [measureRipples(image).main!, measureRipples(share).main!];
    for (const key of ['period', 'direction', 'periodUncertainty', 'tileShare'] as const)
      expectClose(shares[key], counts[key], { relative: 1e-5 });
  });

  it.each([
    ['blank', 'blank'],
    ['noise', 'no-direction'],
    ['grain', 'no-direction'],
    ['blur', 'no-direction'],
  ] as const)('%s: %s', (kind, why) => {
    const { without, notes } = measureRipples(drawPlain(kind, 256, 256, 3));
    expect(without?.kind).toBe(why);
    expect(notes).toEqual([]);
  });

  it('scratches and drawn wire have a direction and no spacing', () => {
    const kinds = Array.from({ length: 8 }, (_, i) => {
      const kind = i % 2 === 0 ? 'parallel scratches' : 'drawn wire';
      return measureRipples(drawPlain(kind, 384, 384, 40 + i)).without?.kind;
    });
    expect(kinds).not.toContain(undefined);
    expect(kinds.filter((kind) => kind === 'no-spacing').length).toBeGreaterThanOrEqual(4);
  });

  it('compressed: the blocks of a JPEG are no ripples', () => {
    const count = cases(200, 20);
    const found = Array.from({ length: count }, (_, i) => {
      const kind = plainKinds[i % plainKinds.length]!;
      const { main, notes } = measureRipples(
        compressed(drawPlain(kind, 256, 256, 900 + i), 40 + (i % 5) * 10),
      );
      return main && `${kind}: ${main.period} ${notes.join(' ')}`;
    }).filter((one) => one !== undefined);
    console.log(`of ${count} compressed pictures without ripples ${found.length} get a period`);
    expect(found.length, found.join('; ')).toBeLessThanOrEqual(count / 50);
  });

  it.each([30, 36, 42])('ripples of %i pixels in 256 are too few, and it is said', (period) => {
    const image = drawRipples({
      width: 256,
      height: 256,
      period,
      direction: 0.4,
      amplitude: 0.2,
      noise: 0.05,
      harmonic: 0.3,
    });
    const { main, without } = measureRipples(image);
    expect(main).toBeUndefined();
    expect(without?.text).toMatch(/too few times in 256 × 256 pixels.*10 ridges.*lower magnification/);
  });

  it('ripples in a third of the picture alone are not counted, and it is said', () => {
    const strength = (x: number) => (x < 150 ? 1 : 0);
    const image = drawRipples({
      width: 512,
      height: 512,
      period: 9,
      direction: 0.4,
      amplitude: 0.2,
      noise: 0.05,
      strength,
    });
    expect(measureRipples(image).without?.text).toMatch(/half of the region or less/);
    const { main } = measureRipples(image, { region: { left: 0, top: 0, width: 150, height: 512 } });
    expect(main?.period).toBeCloseTo(9, 1);
  });
});
