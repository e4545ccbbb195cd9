import type { CameraImage } from './cameraImage.ts';

/** Means of square cells of pixels; lengths in pixels from the image's upper left corner. */
export interface BeamGrid {
  /** Side of a cell in pixels, at least 1. */
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  /** Mean of each cell in counts, row by row, length columns·rows. */
  readonly means: Float64Array;
  /** Place of the upper left corner of the first cell. */
  readonly left: number;
  readonly top: number;
}

/** What a first look finds: enough to lay a grid, not a measurement. */
export interface FirstLook {
  readonly x: number;
  readonly y: number;
  /** Radius that a Gaussian of the same area above half its peak would have (1/e²), in pixels. */
  readonly radius: number;
  /** Peak above the border's median, in counts, and the scatter of one cell of the border. */
  readonly peak: number;
  readonly scatter: number;
  /** The same for a single pixel, as far as neighbours are independent. */
  readonly pixelScatter: number;
  /** Median of the border, in counts. */
  readonly level: number;
  /** Pixels above half the peak. */
  readonly halfArea: number;
}

/** Most cells along a side: 512² cells keep one pass at about a millisecond. */
const mostCells = 512;

/** Averages cells of `cell` × `cell` pixels, at most 512 a side around (x, y); left-over edge pixels are dropped. */
export function layGrid(image: CameraImage, cell: number, x: number, y: number): BeamGrid {
  const [left, columns] = layAxis(image.width, cell, x);
  const [top, rows] = layAxis(image.height, cell, y);
  const means = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let inner = 0; inner < cell; inner++) {
      let at = (top + row * cell + inner) * image.width + left;
      for (let column = 0, k = row * columns; column < columns; column++, k++) {
        let sum = 0;
        for (let i = 0; i < cell; i++) sum += image.samples[at++]!;
        means[k] = means[k]! + sum;
      }
    }
  }
  const area = cell * cell;
  for (let k = 0; k < means.length; k++) means[k] = means[k]! / area;
  return { cell, columns, rows, means, left, top };
}

function layAxis(length: number, cell: number, centre: number): [number, number] {
  const whole = Math.floor(length / cell);
  if (whole <= mostCells) return [Math.floor((length - whole * cell) / 2), whole];
  const span = mostCells * cell;
  const from = Math.min(Math.max(Math.round(centre - span / 2), 0), length - span);
  return [from, mostCells];
}

/**
 * Centre and size of the beam from the area above half its peak, on cells of 3 × 3 pixels (single pixels
 * where the image is under 48 pixels wide or high) so that noise and single hot pixels do not count as peak.
 */
export function lookFirst(image: CameraImage): FirstLook {
  const cell = Math.min(image.width, image.height) < 48 ? 1 : 3;
  const grid = layCoarse(image, cell);
  const { level, scatter } = describeBorder(grid);
  let peak = Number.NEGATIVE_INFINITY;
  for (const mean of grid.means) if (mean > peak) peak = mean;
  const half = (peak + level) / 2;
  let count = 0;
  let x = 0;
  let y = 0;
  for (let row = 0, k = 0; row < grid.rows; row++) {
    for (let column = 0; column < grid.columns; column++, k++) {
      if (grid.means[k]! <= half) continue;
      count++;
      x += column + 0.5;
      y += row + 0.5;
    }
  }
  const halfArea = count * grid.cell ** 2;
  const radius = Math.sqrt((2 * halfArea) / (Math.PI * Math.LN2));
  const place = { x: grid.left + (x / count) * grid.cell, y: grid.top + (y / count) * grid.cell };
  return {
    ...place,
    radius,
    peak: peak - level,
    scatter,
    pixelScatter: scatter * grid.cell,
    level,
    halfArea,
  };
}

/** The whole frame in cells, without the limit on their number. */
function layCoarse(image: CameraImage, cell: number): BeamGrid {
  const side = Math.max(image.width, image.height);
  const enough = cell * Math.ceil(side / (cell * mostCells));
  return layGrid(image, enough, 0, 0);
}

/** Median of the border cells and their scatter (1.4826 times the median deviation, a normal's sigma). */
function describeBorder(grid: BeamGrid): { level: number; scatter: number } {
  const { columns, rows, means } = grid;
  const border: number[] = [];
  for (let column = 0; column < columns; column++)
    border.push(means[column]!, means[(rows - 1) * columns + column]!);
  for (let row = 1; row < rows - 1; row++)
    border.push(means[row * columns]!, means[(row + 1) * columns - 1]!);
  const level = median(border);
  return { level, scatter: 1.4826 * median(border.map((value) => Math.abs(value - level))) };
}

function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[sorted.length >> 1]!;
}
