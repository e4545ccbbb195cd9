import { ellipseForm, type Moments } from './beamState.ts';
import type { CameraImage } from './cameraImage.ts';

/**
 * Standard deviation of one pixel in counts, from the mean absolute difference of neighbours in a row
 * (σ = mean·√π/2 for a normal, little moved by single hot pixels), on the pixels beyond `reach` radii of the
 * beam, or on the farthest corners where none are.
 */
export function estimateNoise(image: CameraImage, moments: Moments, reach: number): number {
  const { width, height, samples } = image;
  const [a, b, c] = ellipseForm(moments);
  // A hundred thousand pairs give 0.3 %; more rows than that are skipped evenly.
  const stride = Math.max(1, Math.floor((width * height) / 2e5));
  let sum = 0;
  let count = 0;
  let all = 0;
  let allCount = 0;
  for (let row = 0; row < height; row += stride) {
    const y = row + 0.5 - moments.y;
    for (let column = 1; column < width; column++) {
      const x = column - moments.x;
      const step = Math.abs(samples[row * width + column]! - samples[row * width + column - 1]!);
      all += step;
      allCount++;
      if (a * x * x + b * x * y + c * y * y <= reach * reach) continue;
      sum += step;
      count++;
    }
  }
  const mean = count > 0 ? sum / count : all / Math.max(1, allCount);
  return (mean * Math.sqrt(Math.PI)) / 2;
}

/** Highest sample of the image. */
export function highestSample(image: CameraImage): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const value of image.samples) if (value > most) most = value;
  return most;
}
