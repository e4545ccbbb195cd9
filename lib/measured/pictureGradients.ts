import type { PicturePart } from './markLevels.ts';

/** Receives the gradients of one row: places x0, x0 + step, … of row y in pixels of the part. */
export type GradientRow = (
  y: number,
  x0: number,
  step: number,
  gradientX: Float64Array,
  gradientY: Float64Array,
) => void;

/** The Gaussian is cut off here, in standard deviations: 3e-4 of its height. */
const reach = 4;
/** With more places than this, every second or third is taken: neighbours within the smoothing say nearly the same. */
const enough = 5e5;
const widestStep = 1.5;

/** Pixels at each edge of a part for which the smoothing finds no gradient. */
export function gradientMargin(smoothing: number): number {
  return Math.ceil(reach * smoothing);
}

/**
 * Gradients of a part smoothed by a Gaussian of standard deviation `smoothing` pixels, as convolutions with its
 * derivative along one axis and itself along the other; from the first row to the last, without the margins. Yields the
 * share that is done.
 */
export function* eachGradient(
  part: PicturePart,
  smoothing: number,
  visit: GradientRow,
): Generator<number, void> {
  const { width, height } = part;
  const margin = gradientMargin(smoothing);
  const wanted = Math.round(Math.sqrt((width * height) / enough));
  const step = Math.max(1, Math.min(Math.floor(widestStep * smoothing), wanted));
  const columns = Math.floor((width - 2 * margin - 1) / step) + 1;
  const { smooth, slope } = kernels(smoothing);
  // The rows that one row of gradients needs, kept in turn.
  const kept = 2 * margin + 1;
  const smoothed = Array.from({ length: kept }, () => new Float64Array(columns));
  const sloped = Array.from({ length: kept }, () => new Float64Array(columns));
  const [gradientX, gradientY] = [new Float64Array(columns), new Float64Array(columns)];
  for (let row = 0; row < height; row++) {
    alongRow(
      part.samples,
      row * width + margin,
      step,
      smooth,
      slope,
      smoothed[row % kept]!,
      sloped[row % kept]!,
    );
    const y = row - margin;
    if (y < margin || (y - margin) % step !== 0) continue;
    acrossRows(sloped, y, smooth, 1, gradientX);
    acrossRows(smoothed, y, slope, -1, gradientY);
    visit(y, margin, step, gradientX, gradientY);
    if (y % 128 === 0) yield row / height;
  }
}

/** A Gaussian of sum 1 and its negative derivative, from the middle outwards. */
function kernels(smoothing: number): { smooth: Float64Array; slope: Float64Array } {
  const margin = gradientMargin(smoothing);
  const smooth = Float64Array.from({ length: margin + 1 }, (_, i) => Math.exp(-0.5 * (i / smoothing) ** 2));
  const sum = smooth.reduce((total, value, i) => total + (i === 0 ? 1 : 2) * value, 0);
  const scaled = smooth.map((value) => value / sum);
  return { smooth: scaled, slope: scaled.map((value, i) => (value * i) / smoothing ** 2) };
}

/** One row smoothed, and its derivative along x; the first place is `start`. */
function alongRow(
  samples: Float64Array,
  start: number,
  step: number,
  smooth: Float64Array,
  slope: Float64Array,
  smoothed: Float64Array,
  sloped: Float64Array,
): void {
  const taps = smooth.length;
  for (let i = 0, at = start; i < smoothed.length; i++, at += step) {
    let sum = smooth[0]! * samples[at]!;
    let difference = 0;
    for (let j = 1; j < taps; j++) {
      const before = samples[at - j]!;
      const after = samples[at + j]!;
      sum += smooth[j]! * (after + before);
      difference += slope[j]! * (after - before);
    }
    smoothed[i] = sum;
    sloped[i] = difference;
  }
}

/** The same across the rows kept, for row `y`: even (sign 1) or odd (sign −1) kernel. */
function acrossRows(
  rows: readonly Float64Array[],
  y: number,
  kernel: Float64Array,
  sign: 1 | -1,
  result: Float64Array,
): void {
  const kept = rows.length;
  const middle = rows[y % kept]!;
  for (let i = 0; i < result.length; i++) result[i] = kernel[0]! * middle[i]!;
  for (let j = 1; j < kernel.length; j++) {
    const before = rows[(y - j + kept) % kept]!;
    const after = rows[(y + j) % kept]!;
    const weight = kernel[j]!;
    for (let i = 0; i < result.length; i++) result[i]! += weight * (after[i]! + sign * before[i]!);
  }
}
