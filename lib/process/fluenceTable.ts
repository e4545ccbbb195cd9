import type { Spot } from '../optics/askedSpot.ts';
import { crossingsAlong, raysOf } from './spotRays.ts';

/** A spot's fluence by place, tabulated for many questions. */
export interface FluenceTable {
  /** Furthest place from the centre that is above the level asked for, m. */
  readonly reach: number;
  /** J/m² at (x, y), m; 0 beyond the reach. */
  at(x: number, y: number): number;
  /** Fluences of all pulses of a lattice that reach (x, y), strongest first; of a lattice point at the origin and all others. */
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
  const around = (x: number, y: number, spacingX: number, spacingY: number) => {
    const found: number[] = [];
    for (let l = Math.ceil((y - reach) / spacingY); l <= (y + reach) / spacingY; l++) {
      const dy = y - l * spacingY;
      const half = Math.sqrt(Math.max(0, reach * reach - dy * dy));
      for (let m = Math.ceil((x - half) / spacingX); m <= (x + half) / spacingX; m++) {
        const F = at(x - m * spacingX, dy);
        if (F > 0) found.push(F);
      }
    }
    return Float64Array.from(found).sort().reverse();
  };
  return { reach, at, around };
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
    const corner = j * (side + 1) + i;
    const along = (from: number) => values[from]! + (u - i) * (values[from + 1]! - values[from]!);
    const [below, above] = [along(corner), along(corner + side + 1)];
    return below + (v - j) * (above - below);
  };
}
