import type { QuickSpectrum } from './quickSpectrum.ts';

/** A spot's energy against the place in one direction, summed over the other; 1 in all. */
export interface CrossedSpot {
  /** Out to which places it is tabulated, m. */
  readonly reach: number;
  /** Energy per length at a place, 1/m; 0 beyond the reach. */
  density(u: number): number;
  /** Energy at places below u, 0 to 1. */
  part(u: number): number;
}

/** Diameters to either side that are tabulated, and steps of the table to a diameter. */
const [reached, fine] = [8, 32];
/** Frequencies to a period of the furthest place. */
const perPeriod = 10;

/**
 * The energy of a spot of that counting diameter along `direction`, rad from x, from its spectrum: all of the tail counts,
 * which hard edges send far. Beyond eight diameters it is taken to fall with the square of the distance, as hard edges
 * make it. To 5e-4.
 */
export function crossedSpot({ end, at }: QuickSpectrum, diameter: number, direction: number): CrossedSpot {
  const [c, s] = [Math.cos(direction), Math.sin(direction)];
  const reach = reached * diameter;
  const count = Math.max(300, Math.ceil((perPeriod * reach * end) / (2 * Math.PI)));
  const step = end / count;
  const middle = reached * fine;
  const [density, part] = [new Float64Array(2 * middle + 1), new Float64Array(2 * middle + 1).fill(0.5)];
  for (let k = 0; k < count; k++) {
    const q = (k + 0.5) * step;
    const { re, im } = at(q * c, q * s);
    const [weight, below] = [step / Math.PI, step / (Math.PI * q)];
    for (let i = 0; i <= middle; i++) {
      const angle = (q * i * diameter) / fine;
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      density[middle + i]! += weight * (re * cos - im * sin);
      part[middle + i]! += below * (re * sin + im * cos);
      if (i === 0) continue;
      density[middle - i]! += weight * (re * cos + im * sin);
      part[middle - i]! += below * (im * cos - re * sin);
    }
  }
  const read = (values: Float64Array, u: number) => {
    const place = (u / diameter) * fine + middle;
    const i = Math.min(2 * middle - 1, Math.max(0, Math.floor(place)));
    return values[i]! + (place - i) * (values[i + 1]! - values[i]!);
  };
  const [low, high] = [part[0]!, 1 - part[2 * middle]!];
  return {
    reach,
    density: (u) => (Math.abs(u) > reach ? 0 : read(density, u)),
    part: (u) => (u > reach ? 1 - (high * reach) / u : u < -reach ? (low * reach) / -u : read(part, u)),
  };
}
