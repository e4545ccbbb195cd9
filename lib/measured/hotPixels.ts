import type { FirstLook } from './beamGrid.ts';
import type { CameraImage } from './cameraImage.ts';

/**
 * The image with single hot pixels replaced by the mean of their neighbours, and how many there were. A pixel
 * is hot where it stands ten noise widths and more than twice as high above the border's level as each of
 * its eight neighbours: the centre of a Gaussian does so only below 1.7 pixels of 1/e² radius
 * (e^(−2/w²) < ½). Pixels of the image's edge stay as they are. Without hot pixels the image itself returns.
 */
export function removeHotPixels(image: CameraImage, look: FirstLook): { image: CameraImage; count: number } {
  const { width, height, samples } = image;
  const threshold = look.level + 10 * Math.max(look.pixelScatter, 1e-3 * look.peak);
  const hot: number[] = [];
  for (let row = 1; row < height - 1; row++) {
    for (let at = row * width + 1; at < (row + 1) * width - 1; at++) {
      const limit = (samples[at]! + look.level) / 2;
      if (samples[at]! <= threshold || samples[at + 1]! >= limit || samples[at - 1]! >= limit) continue;
      if (neighbours(samples, at, width).every((value) => value < limit)) hot.push(at);
    }
  }
  if (hot.length === 0) return { image, count: 0 };
  const cleaned = samples.slice();
  for (const at of hot)
    cleaned[at] = neighbours(samples, at, width).reduce((sum, value) => sum + value, 0) / 8;
  return { image: { ...image, samples: cleaned }, count: hot.length };
}

function neighbours(samples: ArrayLike<number>, at: number, width: number): number[] {
  return [-width - 1, -width, -width + 1, -1, 1, width - 1, width, width + 1].map(
    (shift) => samples[at + shift]!,
  );
}
