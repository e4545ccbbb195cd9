import { encode as encodePng } from 'fast-png';
import { encode as encodeJpeg } from 'jpeg-js';
import { describe, expect, it } from 'vitest';
import { decodeMicrograph } from '../../lib/measured/micrograph.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { Problem } from '../../lib/problem.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';

const [width, height] = [48, 40];
/** Slow waves, which a JPEG of high quality keeps. */
const wave = Uint8Array.from({ length: width * height }, (_, i) =>
  Math.round(128 + 90 * Math.sin((i % width) / 4) * Math.cos(i / width / 7)),
);
const rgba = (red: number, green: number, blue: number) =>
  Uint8Array.from([...wave].flatMap((value) => [red * value, green * value, blue * value, 255]));
const jpeg = (data: Uint8Array) => new Uint8Array(encodeJpeg({ width, height, data }, 95).data);
const grey = jpeg(rgba(1, 1, 1));

describe('decodeMicrograph', () => {
  it('a JPEG: the grey values but for its compression', () => {
    const image = decodeMicrograph(grey, 'ridges.jpg');
    expect([image.width, image.height, image.fullScale, image.name]).toEqual([48, 40, 255, 'ridges.jpg']);
    // Quality 95 keeps these waves to a few counts.
    image.samples.forEach((value, i) => {
      expectClose(value, wave[i]!, { absolute: 4 });
    });
  });

  it('colour is luminance, ITU-R BT.601, in JPEG and PNG', () => {
    const expected = (value: number) => 0.299 * value + 0.587 * 0.5 * value + 0.114 * 0.2 * value;
    const data = rgba(1, 0.5, 0.2);
    const png = encodePng({ width, height, data, channels: 4, depth: 8 });
    decodeMicrograph(png, 'a').samples.forEach((value, i) => {
      expectClose(value, expected(wave[i]!), { absolute: 1.2, source: 'BT.601, rounded colours' });
    });
    decodeMicrograph(jpeg(data), 'a').samples.forEach((value, i) => {
      expectClose(value, expected(wave[i]!), { absolute: 5, source: 'BT.601, compressed' });
    });
  });

  it('colour in a palette and in a TIFF', () => {
    const palette = [
      [255, 0, 0],
      [0, 255, 0],
      [10, 20, 30],
    ];
    const data = Uint8Array.from([0, 1, 2, 2, 1, 0]);
    const png = encodePng({ width: 3, height: 2, data, channels: 1, depth: 8, palette });
    const luminances = palette.map(([red, green, blue]) =>
      Math.round(0.299 * red! + 0.587 * green! + 0.114 * blue!),
    );
    const expected = [...data].map((colour) => luminances[colour]);
    expect([...decodeMicrograph(png, 'a').samples]).toEqual(expected);
    const colours = Uint8Array.from([...data].flatMap((colour) => palette[colour]!));
    expect([...decodeMicrograph(colourTiff(colours, 3, 2), 'a').samples]).toEqual(expected);
  });

  it.each<[string, Uint8Array, RegExp]>([
    ['nothing', new Uint8Array(0), /^"a\.jpg" is empty/],
    ['a GIF', new TextEncoder().encode('GIF89a......'), /neither a PNG, a TIFF nor a JPEG/],
    ['a JPEG cut short', grey.slice(0, grey.length - 40), /^"a\.jpg" is damaged.*cut short/],
    [
      'a JPEG of a monstrous size',
      patched(grey, sizeAt(grey), [0xff, 0xff, 0xff, 0xff]),
      /65535 × 65535 pixels.*64 mega/,
    ],
    ['a JPEG without a frame', Uint8Array.of(0xff, 0xd8, 0xff, 0xd9), /no frame/],
  ])('refuses %s', (_name, bytes, says) => {
    expect(() => decodeMicrograph(bytes, 'a.jpg')).toThrow(says);
    expect(() => decodeMicrograph(bytes, 'a.jpg')).toThrow(Problem);
  });

  it('damaged JPEGs: a Problem or a picture, nothing else', () => {
    const random = createRandom(17);
    for (let i = 0; i < cases(1000, 150); i++) {
      const broken = grey.slice(0, i % 3 === 0 ? Math.floor(grey.length * random.uniform()) : grey.length);
      for (let hits = 0; hits <= i % 4; hits++)
        broken[Math.floor(broken.length * random.uniform())] = Math.floor(256 * random.uniform());
      try {
        const image = decodeMicrograph(broken, 'broken.jpg');
        expect(image.samples.length).toBe(image.width * image.height);
      } catch (error) {
        if (!(error instanceof Problem)) throw error;
        expect(error.kind).toBe('unreadable');
        expect(error.message).toContain('"broken.jpg"');
      }
    }
  });
});

/** Where height and width stand: behind the mark of the baseline frame, its length and depth. */
function sizeAt(bytes: Uint8Array): number {
  return bytes.findIndex((byte, i) => byte === 0xff && bytes[i + 1] === 0xc0) + 5;
}

function patched(bytes: Uint8Array, at: number, values: readonly number[]): Uint8Array {
  const copy = bytes.slice();
  copy.set(values, at);
  return copy;
}

/** A TIFF of one strip of eight bits of red, green and blue (TIFF 6.0): header, strip, three depths, directory. */
function colourTiff(strip: Uint8Array, columns: number, rows: number): Uint8Array {
  const depths = 8 + strip.length;
  const tags = [
    [256, 1, columns],
    [257, 1, rows],
    [258, 3, depths],
    [259, 1, 1],
    [262, 1, 2],
    [273, 1, 8],
    [277, 1, 3],
    [278, 1, rows],
    [279, 1, strip.length],
  ] as const;
  const directory = depths + 12;
  const file = new DataView(new ArrayBuffer(directory + 6 + 12 * tags.length));
  file.setUint32(0, 0x49492a00);
  file.setUint32(4, directory, true);
  new Uint8Array(file.buffer).set(strip, 8);
  for (let i = 0; i < 3; i++) file.setUint32(depths + 4 * i, 8, true);
  file.setUint16(directory, tags.length, true);
  tags.forEach(([tag, count, value], i) => {
    const at = directory + 2 + 12 * i;
    file.setUint16(at, tag, true);
    file.setUint16(at + 2, 4, true);
    file.setUint32(at + 4, count, true);
    file.setUint32(at + 8, value, true);
  });
  return new Uint8Array(file.buffer);
}
