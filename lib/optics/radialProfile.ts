import { type PanelledFunction, reachOf, valueAt } from '../numerics/panelledFunction.ts';
import { findRoot } from '../numerics/roots.ts';

/**
 * Irradiance of a round spot against radius. Radii in any one unit (w0·B/f in the optics, metres in the spot);
 * irradiance relative to whatever the caller normalised to.
 */
export type RadialProfile = PanelledFunction;

/** The highest point of a profile. */
export interface Peak {
  readonly irradiance: number;
  readonly radius: number;
}

/** Samples along the profile for finding crossings: axis, nodes and reach. */
function sampled(profile: RadialProfile): [number, number][] {
  const points: [number, number][] = [[0, valueAt(profile, 0)]];
  profile.nodes.forEach((r, i) => {
    points.push([r, profile.values[i]!]);
  });
  const reach = reachOf(profile);
  points.push([reach, valueAt(profile, reach)]);
  return points;
}

/** Global maximum, radius to 1e-7 of a panel (a maximum is flat), irradiance to 1e-13. */
export function peakOf(profile: RadialProfile): Peak {
  const points = sampled(profile);
  let best = 0;
  points.forEach(([, value], i) => {
    if (value > points[best]![1]) best = i;
  });
  if (best === 0) return { irradiance: points[0]![1], radius: 0 };
  const low = points[best - 1]![0];
  const high = points[Math.min(best + 1, points.length - 1)]![0];
  const radius = highestBetween((r) => valueAt(profile, r), low, high);
  const axis = points[0]![1];
  const irradiance = valueAt(profile, radius);
  return axis >= irradiance ? { irradiance: axis, radius: 0 } : { irradiance, radius };
}

/** Golden-section search for the one maximum in [low, high], to 1e-8 of the interval. */
function highestBetween(f: (x: number) => number, low: number, high: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let a = low;
  let b = high;
  let c = b - golden * (b - a);
  let d = a + golden * (b - a);
  let fc = f(c);
  let fd = f(d);
  while (b - a > 1e-8 * (high - low)) {
    if (fc > fd) {
      [b, d, fd] = [d, c, fc];
      c = b - golden * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + golden * (b - a);
      fd = f(d);
    }
  }
  return (a + b) / 2;
}

/** Radii where the profile crosses `level`, ascending, to 1e-13 of the reach. */
export function crossings(profile: RadialProfile, level: number): number[] {
  const points = sampled(profile);
  const found: number[] = [];
  for (let i = 1; i < points.length; i++) {
    const [r0, v0] = points[i - 1]!;
    const [r1, v1] = points[i]!;
    if (v0 > level !== v1 > level) {
      found.push(findRoot((r) => valueAt(profile, r) - level, r0, r1, 1e-13 * reachOf(profile)));
    }
  }
  return found;
}

/** Intervals of radius where the irradiance is above `level`, ascending. */
export function intervalsAbove(profile: RadialProfile, level: number): [number, number][] {
  const edges = crossings(profile, level);
  if (valueAt(profile, 0) > level) edges.unshift(0);
  if (edges.length % 2) edges.push(reachOf(profile));
  return Array.from({ length: edges.length / 2 }, (_, i) => [edges[2 * i]!, edges[2 * i + 1]!]);
}

/** Area of the whole plane where the irradiance is above `level`, in squared units of the radius. */
export function areaAbove(profile: RadialProfile, level: number): number {
  return intervalsAbove(profile, level).reduce((sum, [a, b]) => sum + Math.PI * (b * b - a * a), 0);
}
