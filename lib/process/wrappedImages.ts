import { createFourierPlane } from '../numerics/fft2d.ts';
import type { MapBox, MapGrid, PulsePlaces } from './mapGrid.ts';
import type { QuickSpectrum } from './quickSpectrum.ts';

/** Cells along the box, boxes along the plane that stands for the open one, and the smoothing in cells. */
const cells = 128;
const boxes = 4;
const smoothing = 1.5;

/**
 * Takes off a periodic map what the tails of its images bring: at the distance of the images they change slowly, so it
 * is enough to know them smoothed over an eightieth of the box. Cells of pulses on a plane four boxes wide, where
 * images hardly meet, are transformed with the smoothed spot; the boxes beside the first one are the images.
 */
export function subtractImages(
  map: Float64Array,
  grid: MapGrid,
  pulses: PulsePlaces,
  box: MapBox,
  spectrum: QuickSpectrum,
  energy: number,
): void {
  const plane = createFourierPlane(cells * boxes);
  fillCells(plane.data, pulses, box);
  plane.transform();
  smoothSpot(plane.data, box, spectrum, energy);
  plane.inverseTransform();
  const images = imagesOf(plane.data);
  subtractBetween(map, grid, images, (grid.step * cells) / box.side);
}

/** Takes the cells' values, bilinear between their places, off the map; `scale` cells a grid step. */
function subtractBetween(map: Float64Array, grid: MapGrid, images: Float64Array, scale: number): void {
  const line = new Float64Array(cells);
  for (let row = 0, at = 0; row < grid.rows; row++) {
    const below = Math.floor(row * scale);
    const part = row * scale - below;
    for (let i = 0; i < cells; i++)
      line[i] = (1 - part) * images[below * cells + i]! + part * images[((below + 1) % cells) * cells + i]!;
    for (let column = 0; column < grid.columns; column++, at++) {
      const left = Math.floor(column * scale);
      const low = line[left]!;
      map[at]! -= low + (column * scale - left) * (line[(left + 1) % cells]! - low);
    }
  }
}

/** Pulses a cell, each shared between the four cells around it; (re, im) interleaved, negative places at the end. */
function fillCells(data: Float64Array, { x, y }: PulsePlaces, box: MapBox): void {
  const size = cells * boxes;
  const scale = cells / box.side;
  for (let p = 0; p < x.length; p++) {
    const placeX = (x[p]! - box.left) * scale;
    const placeY = (y[p]! - box.bottom) * scale;
    const [column, row] = [Math.floor(placeX), Math.floor(placeY)];
    const [partX, partY] = [placeX - column, placeY - row];
    const low = (row & (size - 1)) * size;
    const high = ((row + 1) & (size - 1)) * size;
    const [left, right] = [column & (size - 1), (column + 1) & (size - 1)];
    data[2 * (low + left)]! += (1 - partX) * (1 - partY);
    data[2 * (low + right)]! += partX * (1 - partY);
    data[2 * (high + left)]! += (1 - partX) * partY;
    data[2 * (high + right)]! += partX * partY;
  }
}

/** Times the spot's spectrum and a Gaussian's, over the area of a cell. */
function smoothSpot(data: Float64Array, box: MapBox, spectrum: QuickSpectrum, energy: number): void {
  const size = cells * boxes;
  const cell = box.side / cells;
  const step = (2 * Math.PI) / (boxes * box.side);
  const signed = (k: number) => (k < size / 2 ? k : k - size) * step;
  for (let row = 0, at = 0; row < size; row++) {
    for (let column = 0; column < size; column++, at += 2) {
      const [qx, qy] = [signed(column), signed(row)];
      const square = (qx * qx + qy * qy) * (smoothing * cell) ** 2;
      // e^{−18} = 1.5e-8
      const { re, im } = square > 36 ? { re: 0, im: 0 } : spectrum.at(qx, qy);
      const factor = (energy / (cell * cell)) * Math.exp(-square / 2);
      const [a, b] = [data[at]!, data[at + 1]!];
      data[at] = factor * (a * re - b * im);
      data[at + 1] = factor * (a * im + b * re);
    }
  }
}

/** Sum of the real part over all boxes but the first. */
function imagesOf(data: Float64Array): Float64Array {
  const size = cells * boxes;
  const images = new Float64Array(cells * cells);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      // Pulses left of the box's corner lie in the last box, as do their surroundings: it is an image there too.
      if (row < cells && column < cells) continue;
      images[(row % cells) * cells + (column % cells)]! += data[2 * (row * size + column)]!;
    }
  }
  return images;
}
