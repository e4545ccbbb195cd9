import type { Spot } from '../optics/askedSpot.ts';
import { requireSpacing } from './lineDose.ts';

/** Pulses on a grid: `along` apart on lines `across` apart, not staggered, lines at `direction` (rad from x); metres. */
export interface PulseGrid {
  readonly along: number;
  readonly across: number;
  readonly direction: number;
}

/**
 * Accumulated fluence of a wide grid of pulses over its mean, Σ M(k,l) e^{2πi(ku/along + lv/across)}, by half of its
 * harmonics: the other half are their conjugates.
 */
export interface GridDose {
  readonly grid: PulseGrid;
  /** Frequencies along u and v in rad/m, and the spectrum there; that at 0 is left out. */
  readonly qu: Float64Array;
  readonly qv: Float64Array;
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Standard deviation over mean. */
  readonly rms: number;
}

/** The dose of a grid of pulses; as many frequencies of the spectrum as lie in it, `π·end²·along·across/8π²`. */
export function gridDose(spot: Pick<Spot, 'spectrum' | 'spectrumEnd'>, grid: PulseGrid): GridDose {
  requireSpacing(grid.along, 'pulse spacing', 'scan.speed');
  requireSpacing(grid.across, 'line spacing', 'scan.lineSpacing');
  const [cos, sin] = [Math.cos(grid.direction), Math.sin(grid.direction)];
  const frequencies = frequenciesInside(spot, grid).map(([u, v]) => {
    const { re, im } = spot.spectrum(u * cos - v * sin, u * sin + v * cos);
    return [u, v, re, im] as const;
  });
  const column = (i: number) => Float64Array.from(frequencies, (row) => row[i]!);
  const [re, im] = [column(2), column(3)];
  const rms = Math.sqrt(2 * re.reduce((sum, value, i) => sum + value * value + im[i]! * im[i]!, 0));
  return { grid, qu: column(0), qv: column(1), re, im, rms };
}

/** Harmonics of the grid inside the spectrum, one of each pair ±. */
function frequenciesInside(
  spot: Pick<Spot, 'spectrumEnd'>,
  { along, across, direction }: PulseGrid,
): [number, number][] {
  const [stepU, stepV] = [(2 * Math.PI) / along, (2 * Math.PI) / across];
  // The spectrum of straight steps reaches furthest on a diagonal; no direction reaches beyond both of its ends.
  const furthest = Math.hypot(spot.spectrumEnd(0), spot.spectrumEnd(Math.PI / 2));
  const [mostU, mostV] = [Math.floor(furthest / stepU), Math.floor(furthest / stepV)];
  const found: [number, number][] = [];
  for (let k = 0; k <= mostU; k++) {
    for (let l = k === 0 ? 1 : -mostV; l <= mostV; l++) {
      const [u, v] = [k * stepU, l * stepV];
      if (Math.hypot(u, v) < spot.spectrumEnd(direction + Math.atan2(v, u))) found.push([u, v]);
    }
  }
  return found;
}

/** Accumulated fluence over its mean at the distances u along and v across the lines from a pulse, m. */
export function doseOnGrid({ qu, qv, re, im }: GridDose, u: number, v: number): number {
  let sum = 1;
  for (let i = 0; i < re.length; i++) {
    const angle = qu[i]! * u + qv[i]! * v;
    sum += 2 * (re[i]! * Math.cos(angle) - im[i]! * Math.sin(angle));
  }
  return sum;
}
