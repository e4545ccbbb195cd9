import decode from 'jpeg-js/lib/decoder.js';
import { checkSize, cutShort, damaged, type Raster, takeGrey } from './raster.ts';

/** True where the bytes begin as a JPEG file does. */
export function isJpeg(bytes: Uint8Array): boolean {
  return bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff;
}

/**
 * Reads a baseline or progressive JPEG of 8 bits as luminance. Its compression changes grey values, so that it serves
 * for forms (a micrograph) and not for irradiances. A turn noted by the camera is not followed. Throws Problem
 * 'unreadable' on anything else.
 */
export function readJpeg(bytes: Uint8Array, name: string): Raster {
  if (!hasEnd(bytes)) throw cutShort(name);
  const size = frameSize(bytes);
  if (!size) throw damaged(name, 'it has no frame that says how large it is');
  checkSize(name, size.width, size.height);
  const { width, height, data } = decodeOrThrow(bytes, name);
  return { width, height, samples: takeGrey(name, data, width * height, 3, 'luminance'), fullScale: 255 };
}

function decodeOrThrow(bytes: Uint8Array, name: string): ReturnType<typeof decode> {
  try {
    const limits = { maxResolutionInMP: 64, maxMemoryUsageInMB: 2048 };
    return decode(bytes, { useTArray: true, formatAsRGBA: false, tolerantDecoding: false, ...limits });
  } catch {
    // The decoder's own words are about its insides.
    throw damaged(name, 'its packed pixels are wrong, or it is of a rare kind of JPEG');
  }
}

/** True where the mark of the end stands in the last kilobyte: programs may write a few bytes behind it. */
function hasEnd(bytes: Uint8Array): boolean {
  for (let at = bytes.length - 2; at >= Math.max(2, bytes.length - 1024); at--)
    if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return true;
  return false;
}

/** Width and height from the frame header (ITU-T T.81, B.2.2), found by going from segment to segment. */
function frameSize(bytes: Uint8Array): { width: number; height: number } | undefined {
  const word = (at: number) => (bytes[at]! << 8) | bytes[at + 1]!;
  for (let at = 2; at + 9 < bytes.length && bytes[at] === 0xff; ) {
    const marker = bytes[at + 1]!;
    // Bytes of 0xff may fill up before a marker.
    if (marker === 0xff) {
      at++;
      continue;
    }
    // C4, C8 and CC lie among the frames and are none: tables.
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return { height: word(at + 5), width: word(at + 7) };
    at += 2 + word(at + 2);
  }
  return undefined;
}
