import type { Spot } from '../optics/askedSpot.ts';
import { crossingsAlong, raysOf } from './spotRays.ts';

/** A spot's fluence by place, tabulated for many questions. */
export interface FluenceTable {
  /** Furthest place from the centre that is above the level asked for, m. */
  readonly reach: number;
  /** J/m² at (x, y), m; 0 beyond the reach. */
  at(x: number, y: number): number;
  /**
   * Fluences of all pulses of a lattice that reach (x, y), weakest first; of a lattice point at the origin and all others.
   * Good until the next call, which writes over them.
   */
  around(x: number, y: number, spacingX: number, spacingY: number): Float64Array;
}

/** Places of the table over r² for round spots: 1e-6 of the peak; along a side for others: 2e-4. */
const [radii, side] = [20_000, 601];

/** Fluence of a spot above `level` (J/m²); `unit` is what its irradiance is relative to, J/m². */
export function fluenceTable(spot: Spot, unit: number, level: number): FluenceTable {
  const rays = raysOf(spot);
  const relative = level / unit;
  const reach = rays.reduce(
    (most, ray) =>
      Math.max(
        most,
        crossingsAlong(spot, ray, relative).at(-1) ?? (ray.values.at(-1)! > relative ? ray.end : 0),
      ),
    0,
  );
  const at =
    reach === 0
      ? () => 0
      : rays.length === 1
        ? roundTable(spot, unit, reach)
        : squareTable(spot, unit, reach);
  let found = new Float64Array(1024);
  const around = (x: number, y: number, spacingX: number, spacingY: number) => {
    let count = 0;
    for (let l = Math.ceil((y - reach) / spacingY); l <= (y + reach) / spacingY; l++) {
      const dy = y - l * spacingY;
      const half = Math.sqrt(Math.max(0, reach * reach - dy * dy));
      for (let m = Math.ceil((x - half) / spacingX); m <= (x + half) / spacingX; m++) {
        const F = at(x - m * spacingX, dy);
        if (F === 0) continue;
        if (count === found.length) found = longer(found);
        found[count++] = F;
      }
    }
    return found.subarray(0, count).sort();
  };
  return { reach, at, around };
}

function longer(values: Float64Array<ArrayBuffer>): Float64Array<ArrayBuffer> {
  const twice = new Float64Array(2 * values.length);
  twice.set(values);
  return twice;
}

function roundTable(spot: Spot, unit: number, reach: number) {
  const step = (reach * reach) / radii;
  const values = Float64Array.from(
    { length: radii + 2 },
    (_, i) => unit * spot.irradianceAt(Math.sqrt(i * step), 0),
  );
  return (x: number, y: number) => {
    const place = (x * x + y * y) / step;
    if (place > radii) return 0;
    const i = Math.floor(place);
    return values[i]! + (place - i) * (values[i + 1]! - values[i]!);
  };
}

function squareTable(spot: Spot, unit: number, reach: number) {
  const step = (2 * reach) / (side - 1);
  const values = new Float64Array((side + 1) * (side + 1));
  for (let j = 0; j <= side; j++)
    for (let i = 0; i <= side; i++)
      values[j * (side + 1) + i] = unit * spot.irradianceAt(i * step - reach, j * step - reach);
  return (x: number, y: number) => {
    if (x * x + y * y > reach * reach) return 0;
    const [u, v] = [(x + reach) / step, (y + reach) / step];
    const [i, j] = [Math.floor(u), Math.floor(v)];
    const [lower, upper] = [j * (side + 1) + i, (j + 1) * (side + 1) + i];
    // Written out: this is asked millions of times.
    const below = values[lower]! + (u - i) * (values[lower + 1]! - values[lower]!);
    const above = values[upper]! + (u - i) * (values[upper + 1]! - values[upper]!);
    return below + (v - j) * (above - below);
  };
}
