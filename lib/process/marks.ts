import type { Spot } from '../optics/askedSpot.ts';
import { Problem } from '../problem.ts';
import { crossingsAlong, type Ray, raysOf } from './spotRays.ts';
import { sumAbove } from './sumAbove.ts';

/** What a pulse leaves where the fluence is above threshold. Metres; all 0 where no place is above it. */
export interface Mark {
  /** Area marked, m²: rings and side lobes counted, unmarked centre and gaps not. */
  readonly area: number;
  /** Diameter of a disc with the area inside the outermost contour, unmarked parts included. */
  readonly outerDiameter: number;
  /** Diameter of a disc with the area of the unmarked centre; 0 where the centre is marked. */
  readonly innerDiameter: number;
  /** True where the mark goes on beyond the light that was computed: it is larger than said. */
  readonly cut: boolean;
}

/** Nothing marked. */
export const noMark: Mark = { area: 0, outerDiameter: 0, innerDiameter: 0, cut: false };

/**
 * The mark of a spot where the relative irradiance is above `level`, threshold fluence over 2E'/(πw0²). Contours are
 * followed outward from the centre in straight lines, one for a round spot; lines that meet no mark, as between four
 * separate spots, do not count. The centre is unmarked exactly where `irradianceAt(0, 0)` is not above `level`.
 */
export function markOf(spot: Spot, level: number): Mark {
  if (!(level > 0)) throw levelProblem(level);
  if (level >= spot.peak) return noMark;
  const area = spot.areaAbove(level);
  if (area === 0) return noMark;
  const rays = raysOf(spot);
  const crossed = rays.map((ray) => crossingsAlong(spot, ray, level));
  // What goes on beyond the computed light is marked as far as that is known.
  const outermost = rays.flatMap(({ values, end }, i) =>
    values.at(-1)! > level ? [end] : crossed[i]!.slice(-1),
  );
  const met = crossed.filter((radii) => radii.length > 0);
  const unmarked = spot.irradianceAt(0, 0) <= level;
  return {
    area,
    outerDiameter: meanDiameter(outermost),
    innerDiameter: unmarked ? meanDiameter(met.map((radii) => radii[0]!)) : 0,
    cut: rays.some(({ values }) => values.at(-1)! > level),
  };
}

/** Diameter of a disc with the mean of πr²; 0 for no radii. */
function meanDiameter(radii: readonly number[]): number {
  if (radii.length === 0) return 0;
  return 2 * Math.sqrt(radii.reduce((sum, radius) => sum + radius * radius, 0) / radii.length);
}

/** One stretch of a mark along a line from the centre, metres. */
export interface MarkedStretch {
  readonly from: number;
  readonly to: number;
}

/** The marked stretches along each line from the centre, for drawing; `angle` in rad from the x axis. */
export function stretchesOf(
  spot: Spot,
  level: number,
): readonly { readonly angle: number; readonly marked: readonly MarkedStretch[] }[] {
  if (!(level > 0)) throw levelProblem(level);
  const centre = spot.irradianceAt(0, 0) > level;
  return raysOf(spot).map((ray: Ray) => {
    const edges = [...(centre ? [0] : []), ...crossingsAlong(spot, ray, level)];
    if (edges.length % 2) edges.push(ray.end);
    const count = edges.length / 2;
    const marked = Array.from({ length: count }, (_, i) => ({ from: edges[2 * i]!, to: edges[2 * i + 1]! }));
    return { angle: ray.angle, marked };
  });
}

function levelProblem(level: number): Problem {
  return new Problem(
    'impossible',
    `A mark needs a threshold above 0 and a pulse energy above 0; here their ratio is ${level}.`,
    { input: 'threshold.typedFluence', value: String(level), allowed: 'above 0' },
  );
}

/** Mean relative irradiance over the part of a spot above `level`; undefined where nothing is above it. */
export function meanAbove(spot: Spot, level: number): number | undefined {
  if (!(level > 0)) throw levelProblem(level);
  if (level >= spot.peak) return undefined;
  const area = sumAbove(spot, level, () => 1);
  return area === 0 ? undefined : sumAbove(spot, level, (irradiance) => irradiance) / area;
}
