import type { CameraImage } from './cameraImage.ts';

/** A small picture of a camera image: means over blocks of pixels, lowest row first as charts count. */
export interface ImagePreview {
  readonly columns: number;
  readonly rows: number;
  /** Pixels a block, along x and y. */
  readonly block: number;
  readonly values: Float64Array;
}

/** Means over square blocks so that neither side has more than `most` blocks; what does not fill a block at the right or lower edge is left out. */
export function previewImage(image: CameraImage, most = 160): ImagePreview {
  const block = Math.ceil(Math.max(image.width, image.height) / most);
  const columns = Math.max(1, Math.floor(image.width / block));
  const rows = Math.max(1, Math.floor(image.height / block));
  const values = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      values[(rows - 1 - row) * columns + column] = blockMean(image, column * block, row * block, block);
    }
  }
  return { columns, rows, block, values };
}

function blockMean(image: CameraImage, left: number, top: number, block: number): number {
  let sum = 0;
  for (let y = top; y < top + block; y++) {
    for (let x = left; x < left + block; x++) sum += image.samples[y * image.width + x]!;
  }
  return sum / (block * block);
}
