import { decode } from 'fast-png';
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

/** True where the bytes begin as a PNG file does. */
export function isPng(bytes: Uint8Array): boolean {
  return [0x89, 0x50, 0x4e, 0x47].every((byte, i) => bytes[i] === byte);
}

/**
 * Reads an 8- or 16-bit PNG, checksums included: grey, or colour where it becomes luminance. Throws Problem
 * 'unreadable' on anything else.
 */
export function readPng(bytes: Uint8Array, name: string, colour: ColourUse = 'refuse'): Raster {
  if (bytes.length < 33) throw cutShort(name);
  // Width and height stand at bytes 16 to 23; checked before memory is taken for them.
  const header = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  checkSize(name, header.getUint32(16), header.getUint32(20));
  const image = decodeOrThrow(bytes, name);
  if (image.palette && colour === 'refuse') throw coloured(name);
  if (image.depth < 8) throw damaged(name, `it holds ${image.depth} bits a pixel where 8 or 16 are needed`);
  const { width, height } = image;
  const { data, channels } = image.palette
    ? { data: unfold(image.data, image.palette), channels: 3 }
    : { data: image.data, channels: image.channels };
  const samples = takeGrey(name, data, width * height, channels, colour);
  return { width, height, samples, fullScale: image.depth === 8 ? 255 : detectFullScale(samples) };
}

/** The colours that the numbers of a palette stand for. */
function unfold(numbers: ArrayLike<number>, palette: readonly (readonly number[])[]): Uint8Array {
  const colours = new Uint8Array(3 * numbers.length);
  for (let i = 0; i < numbers.length; i++) colours.set(palette[numbers[i]!]?.slice(0, 3) ?? [], 3 * i);
  return colours;
}

function decodeOrThrow(bytes: Uint8Array, name: string): ReturnType<typeof decode> {
  try {
    return decode(bytes, { checkCrc: true });
  } catch {
    // The decoder's own words are about its insides.
    throw hasEnd(bytes) ? damaged(name, 'its checksums or packed pixels are wrong') : cutShort(name);
  }
}

/** True where the mark of the last chunk, IEND, stands in the file. */
function hasEnd(bytes: Uint8Array): boolean {
  const mark = [0x49, 0x45, 0x4e, 0x44];
  for (let at = bytes.length - 8; at >= 33; at--)
    if (mark.every((byte, i) => bytes[at + i] === byte)) return true;
  return false;
}
