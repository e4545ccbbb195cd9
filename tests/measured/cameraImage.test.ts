import { deflateSync } from 'node:zlib';
import { encode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { makeMeasured } from '../../data/measured/make.ts';
import { decodeCameraImage } from '../../lib/measured/cameraImage.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { Problem } from '../../lib/problem.ts';
import { cases } from '../cases.ts';

const text = (content: string) => new TextEncoder().encode(content);
const png = (data: Uint8Array | Uint16Array, channels: number, width = 3) =>
  encode({
    width,
    height: data.length / channels / width,
    data,
    channels,
    depth: data instanceof Uint16Array ? 16 : 8,
  });

/** A TIFF of one strip; `more` overrides tags. Layout: header, strip, directory (TIFF 6.0). */
function tiff(strip: Uint8Array, width: number, height: number, more: Record<number, number>): Uint8Array {
  const tags = Object.entries({
    256: width,
    257: height,
    258: 8,
    259: 1,
    262: 1,
    273: 8,
    277: 1,
    278: height,
    279: strip.length,
    ...more,
  });
  const directory = 8 + strip.length + (strip.length % 2);
  const file = new DataView(new ArrayBuffer(directory + 6 + 12 * tags.length));
  file.setUint32(0, 0x49492a00);
  file.setUint32(4, directory, true);
  strip.forEach((value, i) => {
    file.setUint8(8 + i, value);
  });
  file.setUint16(directory, tags.length, true);
  tags.forEach(([tag, value], i) => {
    const at = directory + 2 + 12 * i;
    file.setUint16(at, Number(tag), true);
    file.setUint16(at + 2, 4, true);
    file.setUint32(at + 4, 1, true);
    file.setUint32(at + 8, value, true);
  });
  return new Uint8Array(file.buffer);
}

const bytesOf = (values: Uint16Array | Float32Array) => new Uint8Array(values.buffer);
const words = Uint16Array.of(0, 1, 2, 1000, 2000, 4095);
const floats = Float32Array.of(0, -1, 2.5, 1e-3, 7, 8);
const grey = [0, 1, 2, 100, 200, 255];

describe('decodeCameraImage', () => {
  it.each([
    ['8-bit PNG', png(Uint8Array.from(grey), 1), grey, 255],
    ['16-bit PNG holding 12 bits', png(words, 1), [...words], 4095],
    [
      '16-bit PNG holding 10 bits',
      png(
        words.map((v) => v >> 2),
        1,
      ),
      [0, 0, 0, 250, 500, 1023],
      1023,
    ],
    [
      '16-bit PNG, 12 bits at the top',
      png(
        words.map((v) => v << 4),
        1,
      ),
      [...words].map((v) => v * 16),
      65520,
    ],
    [
      '16-bit PNG in full',
      png(Uint16Array.of(1, 2, 3, 40001, 5, 65535), 1),
      [1, 2, 3, 40001, 5, 65535],
      65535,
    ],
    ['PNG with alpha, ignored', png(Uint8Array.from(grey.flatMap((v) => [v, 17])), 2), grey, 255],
    ['grey stored as colour', png(Uint8Array.from(grey.flatMap((v) => [v, v, v])), 3), grey, 255],
    ['8-bit TIFF', tiff(Uint8Array.from(grey), 3, 2, {}), grey, 255],
    ['16-bit TIFF', tiff(bytesOf(words), 3, 2, { 258: 16 }), [...words], 4095],
    ['16-bit deflate TIFF', tiff(deflateSync(bytesOf(words)), 3, 2, { 258: 16, 259: 8 }), [...words], 4095],
    ['floating-point TIFF', tiff(bytesOf(floats), 3, 2, { 258: 32, 339: 3 }), [...floats], undefined],
    ['CSV', text('0,1,2\n100,200,255\n'), grey, undefined],
    ['CSV with decimal commas', text('0;-1;2,5\r\n0,5;7;8\r\n'), [0, -1, 2.5, 0.5, 7, 8], undefined],
    ['CSV with a separator at each end', text('\uFEFF0,1,2,\n100,200,255,\n'), grey, undefined],
    [
      'CSV in UTF-16',
      Uint8Array.from(Buffer.from('\uFEFF0\t1\t2\n100\t200\t255\n', 'utf16le')),
      grey,
      undefined,
    ],
  ] as const)('%s', (_name, bytes, values, fullScale) => {
    // The file's ending is no help on purpose.
    const image = decodeCameraImage(bytes, 'picture.dat');
    expect([image.width, image.height, image.name]).toEqual([3, 2, 'picture.dat']);
    expect([...image.samples]).toEqual([...values]);
    expect(image.fullScale).toBe(fullScale);
  });

  it.each([
    ['empty', new Uint8Array(0), /is empty/],
    ['colour PNG', png(Uint8Array.of(1, 2, 3, 4, 5, 6, 7, 8, 9), 3), /is a colour image/],
    ['JPEG', Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 0, 16), /neither a PNG, a TIFF nor.*: it is a JPEG/],
    ['BMP', Uint8Array.of(0x42, 0x4d, 0, 0), /: it is a BMP picture\./],
    ['other bytes', Uint8Array.of(0x42, 0x4e, 0, 0), /: it begins with 42 4e 00 00, which is no known image/],
    ['PDF', text('%PDF-1.4\n1 0 obj\n<< /Type /Catalog >>\n'), /neither a PNG, .*: it is a PDF\./],
    ['PDF with binary signs', Uint8Array.of(0x25, 0x50, 0x44, 0x46, 0x2d, 0x31, 10, 0, 1), /: it is a PDF\./],
    ['spreadsheet', Uint8Array.of(0x50, 0x4b, 3, 4, 20, 0, 6, 0), /: it is a ZIP file or a spreadsheet\./],
    [
      'caustic',
      text('z (mm);d (µm)\n1;300\n2;250\n'),
      /is no camera image but the table of a caustic.*laser's table of a caustic.*--caustic/,
    ],
    ['caustic without units', text('z,diameter\n1,300\n'), /is no camera image but the table of a caustic/],
    ['page of the web', text('<!doctype html>\n<p>1, 2, 3</p>'), /neither a PNG/],
    ['signed TIFF', tiff(bytesOf(words), 3, 2, { 258: 16, 339: 2 }), /sample format 2/],
    ['TIFF with a row missing', tiff(Uint8Array.from(grey), 3, 2, { 278: 1 }), /holds 1 of 2 rows/],
    ['TIFF of a monstrous size', tiff(Uint8Array.from(grey), 3e6, 2e6, {}), /64 megapixels/],
    [
      'TIFF with a missing value',
      tiff(bytesOf(Float32Array.of(0, Number.NaN, 2)), 3, 1, { 258: 32, 339: 3 }),
      /row 1, column 2/,
    ],
    ['CSV with a word', text('0,1,2\n100,dark,255\n'), /Row 2, column 2 holds "dark"/],
    ['CSV with a hole', text('0,1,2\n100,,255\n'), /Row 2, column 2 is empty/],
    [
      'CSV with a short row',
      text('0,1,2\n\n100,200\n'),
      /Row 3 has 2 columns where the first row has 3.*Row 3, column 3/,
    ],
    [
      'prose',
      text('This is a letter.\nIt holds 1 number, and goes on.'),
      /^"picture" is neither a PNG, a TIFF nor a table of numbers: it begins with "This is a letter\."\. Save/,
    ],
  ] as const)('refuses %s', (_name, bytes, message) => {
    expect(() => decodeCameraImage(bytes, 'picture')).toThrow(message);
    expect(() => decodeCameraImage(bytes, 'picture')).toThrow(Problem);
  });
});

describe('damaged files', () => {
  const made = makeMeasured();
  const random = createRandom(5);
  const small = {
    png: made['clipped-beam.png']!,
    deflate: tiff(deflateSync(bytesOf(words)), 3, 2, { 258: 16, 259: 8 }),
    plain: tiff(bytesOf(words), 3, 2, { 258: 16 }),
    csv: text('0,1,2\n100,200,255\n'),
  };

  it.each(Object.entries(small))('%s: a Problem or an image, nothing else', (_name, bytes) => {
    for (let i = 0; i < cases(2000, 200); i++) {
      const broken = bytes.slice(0, i % 3 === 0 ? Math.floor(bytes.length * random.uniform()) : bytes.length);
      for (let hits = 0; hits <= i % 4; hits++)
        broken[Math.floor(broken.length * random.uniform())] = Math.floor(256 * random.uniform());
      try {
        const image = decodeCameraImage(broken, 'broken');
        expect(image.samples.length).toBe(image.width * image.height);
        expect([...image.samples.slice(0, 100)].every(Number.isFinite)).toBe(true);
      } catch (error) {
        if (!(error instanceof Problem)) throw error;
        expect(error.kind).toBe('unreadable');
      }
    }
  });

  it.each(['clipped-beam.png', 'cold-plate-beam.tif'])(
    '%s cut short is called so, wherever the cut',
    (name) => {
      const bytes = made[name]!;
      for (const kept of [9, 33, 40, 100, 0.2, 0.5, 0.9, 0.9999]) {
        const cut = bytes.slice(0, kept < 1 ? kept * bytes.length : kept);
        expect(() => decodeCameraImage(cut, name), String(kept)).toThrow(
          `"${name}" is damaged or unusual: it is cut short, the file ends before the picture does. Save`,
        );
      }
    },
  );

  it('a PNG cut short or with one wrong byte in its pixels is refused', () => {
    const { png: bytes } = small;
    for (const share of [0.2, 0.5, 0.9, 0.999])
      expect(() => decodeCameraImage(bytes.slice(0, bytes.length * share), 'cut')).toThrow(Problem);
    const wrong = bytes.slice();
    wrong[40_000] = wrong[40_000]! ^ 1;
    expect(() => decodeCameraImage(wrong, 'wrong')).toThrow(/damaged/);
  });
});
