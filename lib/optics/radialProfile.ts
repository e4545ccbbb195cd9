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

/** Radius and irradiance. */
type Point = [number, number];

/** Samples along the profile for finding crossings: axis, nodes and reach. */
function sampled(profile: RadialProfile): Point[] {
  const points: Point[] = [[0, valueAt(profile, 0)]];
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

/**
 * True where three samples on one side of `level` turn towards it and their parabola comes more than half the way
 * there: the profile may then cross the level twice between two samples.
 */
function mayTurnAcross(a: Point, b: Point, c: Point, level: number): boolean {
  const left = b[1] - a[1];
  const right = c[1] - b[1];
  const away = b[1] - level;
  if (left * right >= 0 || away * right < 0 || (a[1] - level) * away < 0 || (c[1] - level) * away < 0)
    return false;
  const [near, far] = [b[0] - a[0], c[0] - b[0]];
  const bend = (right / far - left / near) / (far + near);
  const slope = ((left / near) * far + (right / far) * near) / (far + near);
  return slope * slope >= 2 * Math.abs(bend * away);
}

/** The samples, and the turning points between them that may lie across `level`. */
function sampledAcross(profile: RadialProfile, level: number): Point[] {
  const points = sampled(profile);
  const all: Point[] = [points[0]!];
  for (let i = 1; i < points.length; i++) {
    const [before, here, next] = [points[i - 1]!, points[i]!, points[i + 1]];
    all.push(here);
    if (!next || !mayTurnAcross(before, here, next, level)) continue;
    const sign = here[1] > level ? -1 : 1;
    const radius = highestBetween((r) => sign * valueAt(profile, r), before[0], next[0]);
    const turn: Point = [radius, valueAt(profile, radius)];
    if (radius < here[0]) all.splice(-1, 0, turn);
    else all.push(turn);
  }
  return all;
}

/** Radii where the profile crosses `level`, ascending, to 1e-13 of the reach. */
export function crossings(profile: RadialProfile, level: number): number[] {
  const points = sampledAcross(profile, level);
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
