import { fieldOfModes, type Modes, modesOf } from '../numerics/fieldOfModes.ts';
import type { Progress } from '../numerics/progress.ts';
import { createSpreadKernel, type SpreadKernel } from '../numerics/spreadKernel.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { Problem } from '../problem.ts';
import type { MapBox, MapGrid, PulsePlaces } from './mapGrid.ts';
import { type QuickSpectrum, quickSpectrum } from './quickSpectrum.ts';
import { subtractImages } from './wrappedImages.ts';

/** The grid that pulses are spread over may be this many times finer than half the shortest period in the spot. */
const leastOversampling = 1.5;
/** Points a side of the largest grid: 134 MB. */
const mostPoints = 4096;

/**
 * Σ over all pulses of the spot's relative irradiance at the points of the grid; times the fluence of relative
 * irradiance 1 it is the accumulated fluence. Pulses may lie anywhere, also beside the grid. Error below 1e-4 of the
 * mean of a field of many pulses, tails included; a second for a million pulses over
 * 1 mm² at 1 µm, three for a spot of straight steps.
 *
 * The pulses are spread over a grid with a compact kernel and transformed (a non-uniform Fourier transform), times the
 * spot's spectrum, and transformed back; what reaches in from the periodic images is taken off again.
 */
export function pulseMap(spot: Spot, pulses: PulsePlaces, grid: MapGrid, report?: Progress): Float64Array {
  if (pulses.x.length === 0) return new Float64Array(grid.columns * grid.rows);
  const spectrum = quickSpectrum(spot);
  report?.(0.2);
  const box = boxAround(spot, pulses, grid);
  const most = Math.ceil((spectrum.end * box.side) / (2 * Math.PI));
  const size = powerAbove(2 * leastOversampling * most + 2);
  if (size > mostPoints) throw tooFine(spot, box.side);
  const kernel = createSpreadKernel(size / (2 * most));
  const modes = modesOf(spread(pulses, box, size, kernel), size, most);
  report?.(0.6);
  const energy = spot.effectiveArea * spot.peak;
  filter(modes, box, size, kernel, spectrum, energy);
  report?.(0.7);
  const points = Math.round(box.side / grid.step);
  const stride = Math.max(1, powerAbove(2 * most + 1) / points);
  const map = fieldOfModes(modes, { size: points * stride, stride, columns: grid.columns, rows: grid.rows });
  report?.(0.9);
  subtractImages(map, grid, pulses, box, spectrum, energy);
  report?.(1);
  return map;
}

/** The square whose side is grid steps by a power of two, around grid and pulses with room for tails beside them. */
function boxAround(spot: Spot, { x, y }: PulsePlaces, grid: MapGrid): MapBox {
  const extent = (places: Float64Array, from: number, count: number) => {
    let [low, high] = [from, from + (count - 1) * grid.step];
    for (let i = 0; i < places.length; i++) {
      if (places[i]! < low) low = places[i]!;
      if (places[i]! > high) high = places[i]!;
    }
    return high - low;
  };
  const longest = Math.max(extent(x, grid.left, grid.columns), extent(y, grid.bottom, grid.rows));
  // Arms from a periodic image end sharply, as the field does, so that their images must be further away.
  const part = spot.spectrumForm === 'straight' ? 0.25 : 0.7;
  const side = Math.max(longest / part, longest + 30 * Math.sqrt(spot.effectiveArea));
  return { left: grid.left, bottom: grid.bottom, side: grid.step * powerAbove(side / grid.step) };
}

function powerAbove(count: number): number {
  return 2 ** Math.ceil(Math.log2(count) - 1e-9);
}

/** Each pulse weighed onto the points around it of a grid of size × size over the box, which wraps round. */
function spread({ x, y }: PulsePlaces, box: MapBox, size: number, kernel: SpreadKernel): Float64Array {
  const values = new Float64Array(size * size);
  const scale = size / box.side;
  const { width } = kernel;
  const [alongX, alongY] = [new Float64Array(width), new Float64Array(width)];
  for (let p = 0; p < x.length; p++) {
    const column = kernel.weigh((x[p]! - box.left) * scale, alongX);
    const row = kernel.weigh((y[p]! - box.bottom) * scale, alongY);
    const inside = column >= 0 && column + width <= size;
    for (let j = 0; j < width; j++) {
      const start = ((row + j) & (size - 1)) * size;
      const weight = alongY[j]!;
      if (inside) for (let i = 0; i < width; i++) values[start + column + i]! += weight * alongX[i]!;
      else
        for (let i = 0; i < width; i++) values[start + ((column + i) & (size - 1))]! += weight * alongX[i]!;
    }
  }
  return values;
}

/** Modes of the spread pulses to modes of their light: the kernel taken out, the spot put in. */
function filter(
  { most, values }: Modes,
  { side }: MapBox,
  size: number,
  kernel: SpreadKernel,
  spectrum: QuickSpectrum,
  energy: number,
): void {
  const step = (2 * Math.PI) / side;
  const kernels = Float64Array.from({ length: most + 1 }, (_, k) =>
    kernel.transformAt((2 * Math.PI * k) / size),
  );
  for (let k = 0, i = 0; k <= most; k++) {
    for (let l = -most; l <= most; l++, i += 2) {
      const inside = Math.hypot(k, l) * step < spectrum.end;
      const { re, im } = inside ? spectrum.at(k * step, l * step) : { re: 0, im: 0 };
      const factor = energy / (side * side * kernels[k]! * kernels[Math.abs(l)]!);
      const [a, b] = [values[i]!, values[i + 1]!];
      values[i] = factor * (a * re - b * im);
      values[i + 1] = factor * (a * im + b * re);
    }
  }
}

function tooFine(spot: Spot, side: number): Problem {
  const times = Math.round(side / Math.sqrt(spot.effectiveArea));
  return new Problem(
    'outside',
    `Grid and pulses are too wide for a map: ${times} times the spot with the room for its tail. Map a smaller part of the field.`,
    { input: 'scan.fieldWidth' },
  );
}
