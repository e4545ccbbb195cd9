import { encode as encodeJpeg } from 'jpeg-js';
import { describe, expect, it } from 'vitest';
import { drawRipples } from '../../data/measured/drawRipples.ts';
import type { CameraImage } from '../../lib/measured/cameraImage.ts';
import { findWrittenRows, withoutRows } from '../../lib/measured/captionBar.ts';
import { decodeMicrograph } from '../../lib/measured/micrograph.ts';
import { measureRipples } from '../../lib/measured/ripplePicture.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { expectClose } from '../close.ts';
import { drawPlain, plainKinds } from './drawPlain.ts';

const rippled = drawRipples({
  width: 400,
  height: 360,
  period: 11,
  direction: 1.2,
  amplitude: 0.2,
  noise: 0.06,
});

/** Paints rows of one grey with a line of signs of another, a quarter of the width. */
function withBar(image: CameraImage, first: number, last: number, ground: number, ink: number): CameraImage {
  const random = createRandom(8);
  const samples = image.samples.slice();
  const letters = Array.from({ length: 100 }, () => random.uniform() < 0.35);
  for (let y = first; y <= last; y++) {
    for (let x = 0; x < image.width; x++) {
      const isText = Math.abs(y - (first + last) / 2) < 6 && letters[Math.floor(x / 4) % 100] && x % 4 < 3;
      samples[y * image.width + x] = isText ? ink : ground;
    }
  }
  return { ...image, samples };
}

/** Paints a scale bar of the highest grey on the picture itself, with signs beside it. */
function withScaleBar(image: CameraImage, row: number): CameraImage {
  const samples = image.samples.slice();
  for (let y = 0; y < 6; y++) samples.fill(255, (row + y) * image.width + 250, (row + y) * image.width + 350);
  for (let y = -4; y < 12; y++)
    for (let x = 180; x < 240; x += 8)
      samples.fill(255, (row + y) * image.width + x, (row + y) * image.width + x + 3);
  return { ...image, samples };
}

function throughJpeg({ width, height, samples }: CameraImage): CameraImage {
  const data = Uint8Array.from({ length: 4 * width * height }, (_, i) =>
    i % 4 === 3 ? 255 : samples[i >> 2]!,
  );
  return decodeMicrograph(new Uint8Array(encodeJpeg({ width, height, data }, 80).data), 'a.jpg');
}

describe('rows that the microscope wrote on', () => {
  it.each([
    ['white on black, below', 320, 359, 0, 255],
    ['black on white, below', 330, 359, 255, 0],
    ['white on grey, above', 0, 27, 60, 255],
  ] as const)('a caption, %s', (_name, first, last, ground, ink) => {
    const image = withBar(rippled, first, last, ground, ink);
    expect(findWrittenRows(image)).toEqual([{ first, last, kind: 'caption' }]);
    const [found] = findWrittenRows(throughJpeg(image));
    // Compression blurs the last row of a block of eight.
    expectClose(found!.first, first, { absolute: 2 });
    expectClose(found!.last, last, { absolute: 2 });
  });

  it('captions at both edges', () => {
    const image = withBar(withBar(rippled, 330, 359, 0, 255), 0, 19, 0, 255);
    expect(findWrittenRows(image).map(({ first, last }) => [first, last])).toEqual([
      [330, 359],
      [0, 19],
    ]);
  });

  it('a scale bar on the picture itself, with its text', () => {
    const [bar] = findWrittenRows(withScaleBar(rippled, 330));
    expect(bar?.kind).toBe('scale bar');
    expectClose(bar!.first, 326, { absolute: 4 });
    expectClose(bar!.last, 341, { absolute: 4 });
  });

  it('none on pictures without, rippled, plain or overexposed', () => {
    const over = drawRipples({
      width: 300,
      height: 300,
      period: 40,
      direction: 1.2,
      amplitude: 0.9,
      noise: 0.1,
    });
    const along = drawRipples({
      width: 300,
      height: 300,
      period: 60,
      direction: Math.PI / 2,
      amplitude: 0.9,
    });
    const plain = plainKinds.flatMap((kind) => [1, 2, 3].map((seed) => drawPlain(kind, 220, 200, seed)));
    for (const image of [rippled, over, along, ...plain])
      expect(findWrittenRows(image), image.name).toEqual([]);
  });

  it('are left out of what is measured, and it is said', () => {
    const image = withBar(rippled, 320, 359, 0, 255);
    const { main, region, written, notes } = measureRipples(image);
    expect(region).toEqual({ left: 0, top: 0, width: 400, height: 320 });
    expect(written).toHaveLength(1);
    expect(notes).toEqual(['Rows 320 to 359 hold a caption and are left out.']);
    expectClose(main!.period, 11, { relative: 0.003 });
    const chosen = measureRipples(image, { region: { left: 10, top: 20, width: 200, height: 200 } });
    expect([chosen.region.height, chosen.written, chosen.notes]).toEqual([200, [], []]);
    const across = measureRipples(image, { region: { left: 10, top: 220, width: 200, height: 120 } });
    expect(across.region).toEqual({ left: 10, top: 220, width: 200, height: 100 });
    expect(() => measureRipples(image, { region: { left: 0, top: 280, width: 100, height: 80 } })).toThrow(
      /without the rows of its caption is too small/,
    );
  });

  it('a region keeps the larger part beside them', () => {
    const region = { left: 0, top: 0, width: 10, height: 100 };
    const rows = (first: number, last: number) => [{ first, last, kind: 'caption' as const }];
    expect(withoutRows(region, rows(80, 90))).toMatchObject({ top: 0, height: 80 });
    expect(withoutRows(region, rows(10, 20))).toMatchObject({ top: 21, height: 79 });
    expect(withoutRows(region, rows(120, 130))).toEqual(region);
    expect(withoutRows(region, rows(0, 99))).toBeUndefined();
  });
});
