import { Problem } from '../problem.ts';
import { beginsAsCaustic } from './causticTable.ts';
import { looksLikeNumbers, readCsvImage } from './csvImage.ts';
import { readDelimitedTable } from './delimitedTable.ts';
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
  const known = kindOf(bytes);
  if (known !== undefined) throw noImage(name, known);
  const table = readDelimitedTable(decodeText(bytes, name), `"${name}"`);
  if (beginsAsCaustic(table)) throw causticInstead(name);
  const first = table.rows[0]!.join(' ').slice(0, 40);
  if (!looksLikeNumbers(table)) throw noImage(name, `begins with "${first}"`);
  const introduction = `"${name}" is neither PNG nor TIFF, and as a table of grey values it cannot be read`;
  return namingFile(name, introduction, () => readCsvImage(table, name));
}

/** Files that a person may take for a picture or a table, by their first bytes. */
const kinds: readonly (readonly [start: string, says: string])[] = [
  ['\xff\xd8', 'is a JPEG, whose compression changes the grey values'],
  ['%PDF', 'is a PDF'],
  ['BM', 'is a BMP picture'],
  ['GIF8', 'is a GIF, which holds 8 bits at most'],
  ['PK\x03\x04', 'is a ZIP file or a spreadsheet'],
];

function kindOf(bytes: Uint8Array): string | undefined {
  // A text may begin with the same letters.
  const text = !bytes.slice(0, 512).some((byte) => byte < 9);
  return kinds.find(
    ([start]) =>
      (start === '%PDF' || !text) && [...start].every((sign, i) => bytes[i] === sign.charCodeAt(0)),
  )?.[1];
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
  const start = [...bytes.slice(0, 4)].map((byte) => byte.toString(16).padStart(2, '0')).join(' ');
  return noImage(name, `begins with ${start}, which is no known image`);
}

/** `what` is a clause about the file, such as "is a PDF". */
function noImage(name: string, what: string): Problem {
  return new Problem(
    'unreadable',
    `"${name}" is neither a PNG, a TIFF nor a table of numbers: it ${what}. Save the camera's picture as PNG, TIFF or CSV and choose that file.`,
    { allowed: 'PNG, TIFF or CSV' },
  );
}

function causticInstead(name: string): Problem {
  return new Problem(
    'unreadable',
    `"${name}" is no camera image but the table of a caustic, with places and diameters. Give it as the laser's table of a caustic (on the command line with --caustic).`,
    { allowed: 'PNG, TIFF or CSV' },
  );
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
