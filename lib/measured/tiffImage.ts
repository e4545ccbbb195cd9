import { decode, type TiffIfd } from 'tiff';
import { Problem } from '../problem.ts';
import {
  type ColourUse,
  checkSize,
  coloured,
  cutShort,
  damaged,
  detectFullScale,
  type Raster,
  takeGrey,
} from './raster.ts';

/** True where the bytes begin as a TIFF file of either byte order does. */
export function isTiff(bytes: Uint8Array): boolean {
  const order = bytes[0] === 0x49 ? [0x49, 0x49, 42, 0] : [0x4d, 0x4d, 0, 42];
  return order.every((byte, i) => bytes[i] === byte);
}

/**
 * Reads the first page of a TIFF of 8 or 16 bits or 32- or 64-bit floating point, plain, LZW or deflate: grey, or
 * 8 or 16 bits of red, green and blue where colour becomes luminance. Throws Problem 'unreadable' on anything else.
 */
export function readTiff(bytes: Uint8Array, name: string, colour: ColourUse = 'refuse'): Raster {
  try {
    // The layout alone first: sizes are checked before memory is taken for them.
    const layout = firstPage(bytes, true);
    checkLayout(layout, name, colour);
    return toRaster(firstPage(bytes, false), name, colour);
  } catch (error) {
    if (error instanceof Problem) throw error;
    // An address beyond the end of the file.
    if (error instanceof RangeError) throw cutShort(name);
    throw damaged(name, error instanceof Error ? error.message.replace(/\.$/, '') : 'it cannot be unpacked');
  }
}

function firstPage(bytes: Uint8Array, ignoreImageData: boolean): TiffIfd {
  const [page] = decode(bytes, { pages: [0], ignoreImageData });
  if (!page) throw new Error('it holds no page');
  return page;
}

function checkLayout(page: TiffIfd, name: string, colour: ColourUse): void {
  checkSize(name, page.width, page.height);
  const whole = page.bitsPerSample === 8 || page.bitsPerSample === 16;
  const float = page.sampleFormat === 3 && (page.bitsPerSample === 32 || page.bitsPerSample === 64);
  if (page.type > 2) throw colour === 'refuse' ? coloured(name) : mixed(name);
  if (!float && !(whole && page.sampleFormat === 1)) {
    throw damaged(
      name,
      `${page.bitsPerSample} bits of sample format ${page.sampleFormat} are not read, only 8 and 16 bits unsigned and floating point`,
    );
  }
  if (page.samplesPerPixel > 1 && (float || page.tiled || page.planarConfiguration === 2))
    throw colour === 'refuse' ? coloured(name) : mixed(name);
  if (page.type === 0 && float) throw damaged(name, 'inverted floating-point grey has no defined zero');
  if (!page.tiled) checkStrips(page, name);
}

/** A micrograph whose colours are stored in a way that is not read. */
function mixed(name: string): Problem {
  return damaged(
    name,
    'its colours stand in a palette, in planes of their own, in tiles or as printing inks',
  );
}

/** A missing strip would be read as zeros without a word. */
function checkStrips(page: TiffIfd, name: string): void {
  const rows = (page.stripOffsets?.length ?? 0) * page.rowsPerStrip;
  if (!(rows >= page.height)) throw damaged(name, `it holds ${rows} of ${page.height} rows`);
}

function toRaster(page: TiffIfd, name: string, colour: ColourUse): Raster {
  const { width, height, samplesPerPixel } = page;
  if (page.data.length < width * height * samplesPerPixel)
    throw damaged(name, 'the pixel data end too early');
  if (page.sampleFormat === 3) {
    return { width, height, samples: Float64Array.from(page.data), fullScale: undefined };
  }
  const samples = takeGrey(name, page.data, width * height, samplesPerPixel, colour);
  return { width, height, samples, fullScale: page.bitsPerSample === 8 ? 255 : detectFullScale(samples) };
}
