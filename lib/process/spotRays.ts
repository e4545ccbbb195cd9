import { highestBetween } from '../numerics/highestBetween.ts';
import { findRoot } from '../numerics/roots.ts';
import type { Spot } from '../optics/askedSpot.ts';

/** A straight line outward from the centre, cut where the irradiance turns. */
export interface Ray {
  /** From the x axis, rad. */
  readonly angle: number;
  /** Radii of the turning points, from 0 to `end`, metres: the irradiance rises or falls all the way between two. */
  readonly radii: readonly number[];
  /** Relative irradiance there. */
  readonly values: readonly number[];
  /** Where the computed light ends. */
  readonly end: number;
  /** Half a w0: a length over which the irradiance is smooth. */
  readonly panel: number;
}

/**
 * Lines around a spot that is not round. What closes around the centre of crossed steps then has its area to 1e-10; where
 * parts lie beside it and lines touch them, to 1e-2 (measured against 1536 lines).
 */
const directions = 96;
/** Samples a w0: the finest fringes of a spot are half a w0 wide. */
const perFocusRadius = 16;
/** No spot is sampled further out than this many w0: more than {@link file://../optics/roundProfile.ts} reaches. */
const furthest = 80;

const kept = new WeakMap<Spot, readonly Ray[]>();

/** Lines from the centre with their turning points: one for a round spot. Kept with the spot. */
export function raysOf(spot: Spot): readonly Ray[] {
  const known = kept.get(spot);
  if (known) return known;
  // ∫ of the irradiance over the plane is T·πw0²/2 (see Spot.effectiveArea).
  const width = Math.sqrt((2 * spot.effectiveArea * spot.peak) / (Math.PI * spot.transmission));
  const step = width / perFocusRadius;
  const count = isRound(spot, width) ? 1 : directions;
  const rays = Array.from({ length: count }, (_, i) => turningPoints(spot, (2 * Math.PI * i) / count, step));
  kept.set(spot, rays);
  return rays;
}

/** True where the irradiance on four circles does not depend on the direction. */
function isRound(spot: Spot, width: number): boolean {
  return [0.3, 0.7, 1.2, 1.9].every((share) => {
    const radius = share * width;
    const along = (angle: number) => alongRay(spot, angle)(radius);
    const first = along(0);
    return [0.4, 1.1, 2.5, 4].every((angle) => Math.abs(along(angle) - first) <= 1e-9 * spot.peak);
  });
}

function alongRay(spot: Spot, angle: number): (radius: number) => number {
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  return (radius) => spot.irradianceAt(radius * cosine, radius * sine);
}

function turningPoints(spot: Spot, angle: number, step: number): Ray {
  const f = alongRay(spot, angle);
  const samples = [f(0)];
  // Beyond the computed reach the irradiance is 0.
  for (let i = 1; i <= furthest * perFocusRadius; i++) {
    const value = f(i * step);
    if (value === 0) break;
    samples.push(value);
  }
  const radii = [0];
  const values = [samples[0]!];
  for (let i = 1; i + 1 < samples.length; i++) {
    const sign = turn(samples[i - 1]!, samples[i]!, samples[i + 1]!);
    if (sign === 0) continue;
    const radius = highestBetween((r) => sign * f(r), (i - 1) * step, (i + 1) * step);
    radii.push(radius);
    values.push(f(radius));
  }
  const end = (samples.length - 1) * step;
  radii.push(end);
  values.push(samples.at(-1)!);
  return { angle, radii, values, end, panel: (step * perFocusRadius) / 2 };
}

/** 1 at a maximum, −1 at a minimum of three samples, 0 elsewhere. */
function turn(before: number, here: number, after: number): number {
  if (here > before && here >= after) return 1;
  return here < before && here <= after ? -1 : 0;
}

/** Radii along a ray at which the irradiance crosses `level`, ascending, metres to 1e-12 of the spot. */
export function crossingsAlong(spot: Spot, ray: Ray, level: number): number[] {
  const f = alongRay(spot, ray.angle);
  const found: number[] = [];
  for (let i = 1; i < ray.radii.length; i++) {
    const [from, to] = [ray.radii[i - 1]!, ray.radii[i]!];
    if (ray.values[i - 1]! > level !== ray.values[i]! > level)
      found.push(findRoot((r) => f(r) - level, from, to, 1e-12 * ray.end));
  }
  return found;
}
