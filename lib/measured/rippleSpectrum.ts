import { createFourierPlane } from '../numerics/fft2d.ts';
import type { PicturePart } from './markLevels.ts';

/** Power spectra of overlapping square tiles of a picture. */
export interface TileSpectra {
  /** Pixels along a tile's side, a power of two; a step of frequency is 1/size of a period a pixel. */
  readonly size: number;
  /** Upper left corners of the tiles in pixels of the part. */
  readonly corners: readonly (readonly [left: number, top: number])[];
  /**
   * Of each tile, power in squared counts: size/2 + 1 rows of frequencies along x from 0, by size columns of frequencies
   * along y, 0 first and negative ones in the upper half. The other half follows from P(−k) = P(k).
   */
  readonly powers: readonly Float32Array[];
  /** The mean over the tiles, laid out alike. */
  readonly mean: Float64Array;
}

/** Larger tiles resolve no more of ripples that wander, and leave fewer tiles to compare. */
export const largestTile = 512;

/** The largest power of two of at most half the shorter side; two thirds of it in small pictures. */
export function tileSize(width: number, height: number): number {
  const side = Math.min(width, height);
  const largest = 2 ** Math.floor(Math.log2(side / 2));
  return largest < 128 && 1.5 * 2 * largest <= side ? 2 * largest : Math.min(largestTile, largest);
}

/**
 * Places of tiles along one side, the first and the last at its ends: at most half a tile apart, and three quarters
 * where there are many.
 */
function places(side: number, size: number): number[] {
  const most = side > 3 * size ? 0.75 * size : size / 2;
  const steps = Math.ceil((side - size) / most);
  if (steps === 0) return [0];
  return Array.from({ length: steps + 1 }, (_, i) => Math.round(((side - size) * i) / steps));
}

/**
 * Spectra of overlapping tiles with a Hann window, each less the plane that fits it best (P. Welch, IEEE Trans.
 * Audio Electroacoust. 15, 70 (1967), in two dimensions). Two tiles are transformed at once, as real and imaginary
 * part. `size` is their side, a power of two of at most the part's. Yields after each pair the share that is done.
 */
export function* tileSpectra(part: PicturePart, size: number): Generator<number, TileSpectra> {
  const corners = places(part.height, size).flatMap((top) =>
    places(part.width, size).map((left) => [left, top] as const),
  );
  const plane = createFourierPlane(size);
  const taper = Float64Array.from({ length: size }, (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / size));
  const powers: Float32Array[] = [];
  const mean = new Float64Array(size * (size / 2 + 1));
  for (let i = 0; i < corners.length; i += 2) {
    const pair = corners.slice(i, i + 2);
    fillTiles(plane.data, part, pair, taper);
    powers.push(...splitPowers(plane.transposedTransform(), size, mean).slice(0, pair.length));
    yield powers.length / corners.length;
  }
  for (let i = 0; i < mean.length; i++) mean[i]! /= corners.length;
  return { size, corners, powers, mean };
}

/** Writes a windowed tile into the real parts and a second one, where there is one, into the imaginary parts. */
function fillTiles(
  data: Float64Array,
  { samples, width }: PicturePart,
  pair: readonly (readonly [left: number, top: number])[],
  taper: Float64Array,
): void {
  const size = taper.length;
  data.fill(0);
  pair.forEach(([left, top], which) => {
    const start = top * width + left;
    const { level, slopeX, slopeY } = windowedPlane(samples, width, start, taper);
    for (let y = 0; y < size; y++) {
      const from = start + y * width;
      const row = level + slopeY * (y - size / 2) - slopeX * (size / 2);
      const weight = taper[y]!;
      for (let x = 0, j = 2 * size * y + which; x < size; x++, j += 2)
        data[j] = weight * taper[x]! * (samples[from + x]! - row - slopeX * x);
    }
  });
}

/**
 * The plane through a tile by least squares with the window as weight, about the tile's middle, where its three parts
 * are independent. Every second pixel along each side is enough, and as even about the middle.
 */
function windowedPlane(samples: Float64Array, width: number, start: number, taper: Float64Array) {
  const size = taper.length;
  let sum = 0;
  let sumX = 0;
  let sumY = 0;
  let second = 0;
  for (let y = 0; y < size; y += 2) {
    let row = 0;
    let rowX = 0;
    for (let x = 0, i = start + y * width; x < size; x += 2, i += 2) {
      const value = taper[x]! * samples[i]!;
      row += value;
      rowX += value * (x - size / 2);
    }
    sum += taper[y]! * row;
    sumX += taper[y]! * rowX;
    sumY += taper[y]! * row * (y - size / 2);
    second += taper[y]! * (y - size / 2) * (y - size / 2);
  }
  // A Hann window of n points sums up to n/2, every second one to n/4.
  const total = size / 4;
  return { level: sum / total ** 2, slopeX: sumX / (total * second), slopeY: sumY / (total * second) };
}

/**
 * Powers of the two real tiles in one complex transform: the even and the odd part under k → −k with conjugation. Both are
 * added to `sum`.
 */
function splitPowers(data: Float64Array, size: number, sum: Float64Array): [Float32Array, Float32Array] {
  const first = new Float32Array(size * (size / 2 + 1));
  const second = new Float32Array(first.length);
  // Σ window² = 3 size/8 along each side; so that the powers of all frequencies sum up to the variance.
  const scale = 1 / (4 * size ** 2 * (0.375 * size) ** 2);
  for (let row = 0, i = 0; row <= size / 2; row++) {
    const mirrored = ((size - row) % size) * size;
    for (let column = 0; column < size; column++, i++) {
      const mirror = 2 * (mirrored + ((size - column) & (size - 1)));
      const re = data[2 * i]!;
      const im = data[2 * i + 1]!;
      const mirrorRe = data[mirror]!;
      const mirrorIm = data[mirror + 1]!;
      const one = scale * ((re + mirrorRe) * (re + mirrorRe) + (im - mirrorIm) * (im - mirrorIm));
      const other = scale * ((re - mirrorRe) * (re - mirrorRe) + (im + mirrorIm) * (im + mirrorIm));
      first[i] = one;
      second[i] = other;
      sum[i]! += one + other;
    }
  }
  return [first, second];
}
