import { blur2 } from 'd3';
import { Problem } from '../problem.ts';
import { fitBackground } from './beamBackground.ts';
import type { CameraImage } from './cameraImage.ts';
import { nothingStandsOut } from './markProblems.ts';

/** A part of a picture in pixels, from its upper left corner. */
export interface PictureRegion {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Grey values of a part of a picture. */
export interface PicturePart extends PictureRegion {
  readonly samples: Float64Array;
}

/** A picture in shares of the way from its background (0) to its mark (1). */
export interface MarkLevels {
  readonly values: Float64Array;
  readonly dark: boolean;
  /** Difference of mark and background over the noise of the background. */
  readonly contrast: number;
}

/** Smaller regions have no frame that could be the background. */
const leastSide = 8;
/** A mark that stands out by less than this many times the noise of the background is not told from it. */
const leastContrast = 5;

/** Cuts a region out of a picture; throws Problem 'impossible' where it does not lie in it. */
export function takeRegion(image: CameraImage, region?: PictureRegion): PicturePart {
  const whole = { left: 0, top: 0, width: image.width, height: image.height };
  const { left, top, width, height } = region ?? whole;
  const inside = left >= 0 && top >= 0 && left + width <= image.width && top + height <= image.height;
  const large =
    [left, top, width, height].every(Number.isInteger) && width >= leastSide && height >= leastSide;
  if (!inside || !large) {
    throw new Problem(
      'impossible',
      `The region of ${width} × ${height} pixels at ${left}, ${top} does not lie in "${image.name}" of ${image.width} × ${image.height}, or is smaller than ${leastSide} × ${leastSide}. Choose another region.`,
      { value: `${width} × ${height}`, allowed: `within ${image.width} × ${image.height}` },
    );
  }
  const samples = new Float64Array(width * height);
  for (let row = 0; row < height; row++) {
    const start = (top + row) * image.width + left;
    samples.set(image.samples.subarray(start, start + width), row * width);
  }
  return { left, top, width, height, samples };
}

/**
 * Finds the greys of background and mark: a plane through the frame of the region, a sixteenth of its side wide, and the
 * median of what stands out from it, told apart from the rest by Otsu’s split (IEEE Trans. Syst. Man Cybern. 9, 62 (1979)).
 */
export function markLevels(part: PicturePart, name: string): MarkLevels {
  const { width, height } = part;
  const smooth = blur2({ data: Float64Array.from(part.samples), width, height }, 1).data as Float64Array;
  const frame = Math.max(2, Math.round(Math.min(width, height) / 16));
  const isFrame = (i: number) => {
    const [x, y] = [i % width, Math.floor(i / width)];
    return Math.min(x, y, width - 1 - x, height - 1 - y) < frame;
  };
  // A mark that reaches into the frame must not tilt the background: it lies far from the frame's median.
  const middle = median(smooth.filter((_, i) => isFrame(i)));
  const spread =
    1.4826 * median(smooth.filter((_, i) => isFrame(i)).map((value) => Math.abs(value - middle)));
  const isFree = (i: number) => isFrame(i) && Math.abs(smooth[i]! - middle) <= 4 * spread;
  const far = Float64Array.from(smooth, (_, i) => (isFree(i) ? 4 : 0));
  const grid = { means: smooth, columns: width, rows: height, cell: 1, left: 0, top: 0 };
  const { plane } = fitBackground(grid, far, 1);
  const away = smooth.map((value, i) => {
    const [x, y] = [(i % width) + 0.5 - plane.x, Math.floor(i / width) + 0.5 - plane.y];
    return value - plane.level - plane.slopeX * x - plane.slopeY * y;
  });
  const split = otsuSplit(away.map(Math.abs));
  const apart = away.filter((value) => Math.abs(value) > split);
  const dark = apart.reduce((sum, value) => sum + value, 0) < 0;
  const sign = dark ? -1 : 1;
  const mark = median(apart.map((value) => sign * value).filter((value) => value > 0));
  const scatter = 1.4826 * median(away.filter((_, i) => far[i]! > 0).map(Math.abs));
  const contrast = scatter > 0 ? mark / scatter : Number.POSITIVE_INFINITY;
  if (!(mark > 0) || contrast < leastContrast) throw nothingStandsOut(name);
  return { values: away.map((value) => (sign * value) / mark), dark, contrast };
}

function median(values: Float64Array): number {
  return values.length === 0 ? 0 : values.sort()[values.length >> 1]!;
}

/** The value that parts the others into two groups with the least spread inside them; 256 steps. */
function otsuSplit(values: Float64Array): number {
  const steps = 256;
  const top = values.reduce((most, value) => Math.max(most, value), 0);
  if (top === 0) return 0;
  const counts = new Float64Array(steps);
  for (const value of values) counts[Math.min(steps - 1, Math.floor((steps * value) / top))]! += 1;
  const total = counts.reduce((sum, count, i) => sum + count * i, 0);
  let [best, split, below, sum] = [-1, 0, 0, 0];
  counts.forEach((count, i) => {
    below += count;
    sum += count * i;
    const above = values.length - below;
    if (below === 0 || above === 0) return;
    const between = below * above * (sum / below - (total - sum) / above) ** 2;
    if (between > best) [best, split] = [between, i + 1];
  });
  return (split * top) / steps;
}
