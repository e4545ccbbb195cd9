import { Problem } from '../problem.ts';
import { readCsvImage } from './csvImage.ts';
import { namingFile } from './namingFile.ts';
import { isPng, readPng } from './pngImage.ts';
import type { Raster } from './raster.ts';
import { isTiff, readTiff } from './tiffImage.ts';

/** A camera picture of a beam: one grey value a pixel, with the name of its file. */
export interface CameraImage extends Raster {
  readonly name: string;
}

/**
 * Decodes a camera picture. The kind is found from the first bytes, not from the file's ending: PNG and
 * TIFF (8 or 16 bits, TIFF also floating point), else a table of numbers (CSV). Colour is read only where
 * red, green and blue are equal in every pixel, alpha is ignored.
 * Throws Problem 'unreadable' for any file that is none of these or is damaged.
 */
export function decodeCameraImage(bytes: Uint8Array, name: string): CameraImage {
  if (bytes.length === 0) throw new Problem('unreadable', `"${name}" is empty. Choose another file.`);
  const raster = readRaster(bytes, name);
  checkFinite(raster, name);
  const { width, height, samples, fullScale } = raster;
  return { name, width, height, samples, fullScale };
}

function readRaster(bytes: Uint8Array, name: string): Raster {
  if (isPng(bytes)) return readPng(bytes, name);
  if (isTiff(bytes)) return readTiff(bytes, name);
  const introduction = `"${name}" is neither PNG nor TIFF, and as a table of grey values it cannot be read`;
  return namingFile(name, introduction, () => readCsvImage(decodeText(bytes, name), name));
}

/** The text of a CSV file: UTF-16 by its mark, else one byte a sign, which is enough for numbers. */
function decodeText(bytes: Uint8Array, name: string): string {
  const wide = bytes[0] === 0xff && bytes[1] === 0xfe;
  const start = wide ? 2 : bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  if (!wide && bytes.some((byte) => byte < 32 && byte !== 9 && byte !== 10 && byte !== 13))
    throw unknownKind(bytes, name);
  const step = wide ? 2 : 1;
  const parts: string[] = [];
  for (let from = start; from < bytes.length; from += 8192) {
    const codes: number[] = [];
    for (let i = from; i < Math.min(from + 8192, bytes.length); i += step) {
      codes.push(wide ? bytes[i]! | ((bytes[i + 1] ?? 0) << 8) : bytes[i]!);
    }
    parts.push(String.fromCharCode(...codes));
  }
  return parts.join('');
}

function unknownKind(bytes: Uint8Array, name: string): Problem {
  const jpeg = bytes[0] === 0xff && bytes[1] === 0xd8;
  const what = jpeg
    ? 'is a JPEG, whose compression changes the grey values'
    : `begins with ${[...bytes.slice(0, 4)].map((byte) => byte.toString(16).padStart(2, '0')).join(' ')}, which is no known image`;
  return new Problem('unreadable', `"${name}" ${what}. Save the image as PNG, TIFF or CSV.`, {
    allowed: 'PNG, TIFF or CSV',
  });
}

function checkFinite(raster: Raster, name: string): void {
  if (raster.samples instanceof Uint16Array) return;
  const at = raster.samples.findIndex((value) => !Number.isFinite(value));
  if (at < 0) return;
  const row = Math.floor(at / raster.width) + 1;
  const column = (at % raster.width) + 1;
  throw new Problem(
    'unreadable',
    `"${name}" holds no finite number in row ${row}, column ${column}. Save the image again without masked pixels.`,
    { row, column: String(column), value: String(raster.samples[at]) },
  );
}
