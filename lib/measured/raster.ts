import { Problem } from '../problem.ts';

/** Grey values of an image as read from a file. */
export interface Raster {
  /** Pixels in a row. */
  readonly width: number;
  /** Rows. */
  readonly height: number;
  /** Grey values in counts, row by row from the upper left, length width·height; all finite. */
  readonly samples: Uint16Array | Float64Array;
  /** The highest count the camera can give, or undefined where the file does not tell (CSV, floating point). */
  readonly fullScale: number | undefined;
}

/** 64 megapixels: above every laser camera, and 512 MB as Float64Array, which a page still holds. */
const mostPixels = 64e6;

/** Throws a Problem unless width and height are whole, at least 1 and together at most 64 megapixels. */
export function checkSize(name: string, width: number, height: number): void {
  const whole = Number.isInteger(width) && Number.isInteger(height) && width > 0 && height > 0;
  if (whole && width * height <= mostPixels) return;
  throw new Problem(
    'unreadable',
    `"${name}" says it is ${width} × ${height} pixels: at least 1 × 1 and at most 64 megapixels can be read. Crop the image or save it again.`,
    { value: `${width} × ${height}`, allowed: '1 × 1 to 64 megapixels' },
  );
}

/**
 * What colour becomes. A beam refuses it: a luminance would hide a saturated channel, and false colours carry no
 * irradiance at all. In a micrograph, where only the form counts, it is weighed as in ITU-R BT.601, as JPEG does.
 */
export type ColourUse = 'refuse' | 'luminance';

/**
 * One grey value a pixel from interleaved `channels` of `data` (1 grey, 2 grey and alpha, 3 RGB, 4 RGBA).
 * Alpha is ignored. Where colour is refused, it is still taken if red = green = blue in every pixel; anything else
 * throws a Problem. Luminances are rounded to whole counts.
 */
export function takeGrey(
  name: string,
  data: ArrayLike<number>,
  pixels: number,
  channels: number,
  colour: ColourUse = 'refuse',
): Uint16Array {
  if (data.length < pixels * channels) throw damaged(name, 'the pixel data end too early');
  const grey = new Uint16Array(pixels);
  if (channels > 2 && colour === 'luminance') {
    for (let i = 0, j = 0; i < pixels; i++, j += channels)
      grey[i] = 0.299 * data[j]! + 0.587 * data[j + 1]! + 0.114 * data[j + 2]! + 0.5;
    return grey;
  }
  for (let i = 0, j = 0; i < pixels; i++, j += channels) {
    const value = data[j]!;
    if (channels > 2 && (value !== data[j + 1] || value !== data[j + 2])) throw coloured(name);
    grey[i] = value;
  }
  return grey;
}

/** The Problem of a colour image. */
export function coloured(name: string): Problem {
  return new Problem(
    'unreadable',
    `"${name}" is a colour image. A beam is measured from grey values: save the camera's raw monochrome picture as PNG, TIFF or CSV, not a false-colour view.`,
    { allowed: 'one grey value a pixel' },
  );
}

/** The Problem of a file that claims a format and breaks it; `reason` is a clause without full stop. */
export function damaged(name: string, reason: string): Problem {
  return new Problem(
    'unreadable',
    `"${name}" is damaged or unusual: ${reason}. Save the image again from the camera's program.`,
    { value: reason },
  );
}

/** The Problem of a file that ends early, as after a copy that was broken off. */
export function cutShort(name: string): Problem {
  return damaged(name, 'it is cut short, the file ends before the picture does');
}

/**
 * Full scale of 16-bit samples: cameras store 10, 12 or 14 bits either at the bottom of the word or at
 * its top (then every value is a multiple of 64, 16 or 4). Takes the smallest that holds the maximum.
 */
export function detectFullScale(samples: Uint16Array): number {
  let most = 0;
  let bits = 0;
  for (const value of samples) {
    if (value > most) most = value;
    bits |= value;
  }
  for (const shift of [6, 4, 2])
    if (most > 4095 && (bits & ((1 << shift) - 1)) === 0) return 65536 - (1 << shift);
  return [1023, 4095, 16383].find((full) => most <= full) ?? 65535;
}
