import { Problem } from '../problem.ts';
import { type CameraImage, decodeCameraImage } from './cameraImage.ts';
import { isJpeg, readJpeg } from './jpegImage.ts';
import { isPng, readPng } from './pngImage.ts';
import type { Raster } from './raster.ts';
import { isTiff, readTiff } from './tiffImage.ts';

/**
 * Decodes a micrograph, the picture of a surface: PNG, TIFF or JPEG, told apart by the first bytes. Colour becomes
 * luminance, since only the form of what is seen counts. Throws Problem 'unreadable', with the file's name, for any
 * file that is none of these or is damaged.
 */
export function decodeMicrograph(bytes: Uint8Array, name: string): CameraImage {
  if (bytes.length === 0) throw new Problem('unreadable', `"${name}" is empty. Choose another file.`);
  const { width, height, samples, fullScale } = readRaster(bytes, name);
  const at = samples instanceof Uint16Array ? -1 : samples.findIndex((value) => !Number.isFinite(value));
  if (at < 0) return { name, width, height, samples, fullScale };
  throw new Problem(
    'unreadable',
    `"${name}" holds no finite number in row ${Math.floor(at / width) + 1}, column ${(at % width) + 1}. Save the picture again without masked pixels.`,
    { value: String(samples[at]) },
  );
}

function readRaster(bytes: Uint8Array, name: string): Raster {
  if (isPng(bytes)) return readPng(bytes, name, 'luminance');
  if (isTiff(bytes)) return readTiff(bytes, name, 'luminance');
  if (isJpeg(bytes)) return readJpeg(bytes, name);
  throw new Problem(
    'unreadable',
    `"${name}" is neither a PNG, a TIFF nor a JPEG picture. Save the micrograph in one of these kinds and choose that file.`,
    { allowed: 'PNG, TIFF or JPEG' },
  );
}

/**
 * Decodes a picture of a mark: as {@link decodeMicrograph}, or a table of grey values. Throws Problem 'unreadable', with the
 * file's name, for anything else.
 */
export function decodeMarkPicture(bytes: Uint8Array, name: string): CameraImage {
  const pictured = isPng(bytes) || isTiff(bytes) || isJpeg(bytes);
  return pictured ? decodeMicrograph(bytes, name) : decodeCameraImage(bytes, name);
}
