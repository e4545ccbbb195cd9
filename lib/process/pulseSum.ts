import type { Spot } from '../optics/askedSpot.ts';
import { countingDiameter } from './fieldChecks.ts';
import type { PulsePlaces } from './pulsePlaces.ts';

/** Places of a map, row by row from the lower edge, metres. */
export interface MapGrid {
  readonly left: number;
  readonly bottom: number;
  readonly step: number;
  readonly columns: number;
  readonly rows: number;
}

/** Spot diameters from the middle of a spot out to which it is summed: e^−18 of the peak of a Gaussian. */
export const summedReach = 1.5;
/** Steps of the table across a diameter: bilinear between them, 1e-4 of the peak for a Gaussian, 8e-4 for crossed steps. */
const tableSteps = 160;

/** The irradiance of a spot on a square grid, read in straight lines. */
function makeTable(spot: Spot) {
  const diameter = countingDiameter(spot);
  const half = summedReach * tableSteps;
  const step = diameter / tableSteps;
  const size = 2 * half + 1;
  const values = new Float64Array(size * size);
  for (let j = 0; j < size; j++)
    for (let i = 0; i < size; i++)
      values[j * size + i] = spot.irradianceAt((i - half) * step, (j - half) * step);
  return { values, half, step, size };
}

/** Relative irradiance of one pulse integrated over all that is summed of it, m². */
export function summedEnergy(spot: Spot): number {
  const { values, step } = tabulate(spot);
  return values.reduce((sum, value) => sum + value, 0) * step * step;
}

/** Tables by spot: a map asks for its energy too. */
const tables = new WeakMap<Spot, ReturnType<typeof makeTable>>();

function tabulate(spot: Spot) {
  const known = tables.get(spot) ?? makeTable(spot);
  tables.set(spot, known);
  return known;
}

/**
 * Sum of the irradiance of all pulses at the places of a map, relative as the spot's own: times its unit fluence it is the
 * accumulated fluence. Direct, pulse by pulse; what lies beyond {@link summedReach} of a pulse is left out.
 */
export function sumPulses(
  spot: Spot,
  { x, y }: PulsePlaces,
  { left, bottom, step, columns, rows }: MapGrid,
  report?: (part: number) => void,
): Float64Array {
  const sum = new Float64Array(columns * rows);
  const { values, half, step: fine, size } = tabulate(spot);
  const reach = half * fine;
  // Rounding may put a place at the very edge of the table outside it.
  const within = (at: number) => Math.max(0, Math.min(size - 1.000001, at));
  for (let pulse = 0; pulse < x.length; pulse++) {
    if (pulse % 256 === 0) report?.(pulse / x.length);
    const [px, py] = [x[pulse]! - left, y[pulse]! - bottom];
    const firstRow = Math.max(0, Math.ceil((py - reach) / step));
    const lastRow = Math.min(rows - 1, Math.floor((py + reach) / step));
    const first = Math.max(0, Math.ceil((px - reach) / step));
    const last = Math.min(columns - 1, Math.floor((px + reach) / step));
    for (let row = firstRow; row <= lastRow; row++) {
      const v = within((row * step - py) / fine + half);
      const j = Math.floor(v);
      const [up, base] = [v - j, j * size];
      for (let column = first; column <= last; column++) {
        const u = within((column * step - px) / fine + half);
        const i = Math.floor(u);
        const across = u - i;
        const at = base + i;
        const low = values[at]! + across * (values[at + 1]! - values[at]!);
        const high = values[at + size]! + across * (values[at + size + 1]! - values[at + size]!);
        sum[row * columns + column]! += low + up * (high - low);
      }
    }
  }
  return sum;
}
