import { highestBetween } from '../numerics/highestBetween.ts';
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
function sampled(profile: RadialProfile): { radii: Float64Array; values: Float64Array } {
  const count = profile.nodes.length;
  const reach = reachOf(profile);
  const radii = new Float64Array(count + 2);
  const values = new Float64Array(count + 2);
  radii.set(profile.nodes, 1);
  values.set(profile.values, 1);
  values[0] = valueAt(profile, 0);
  radii[count + 1] = reach;
  values[count + 1] = valueAt(profile, reach);
  return { radii, values };
}

/** Global maximum, radius to 1e-7 of a panel (a maximum is flat), irradiance to 1e-13. */
export function peakOf(profile: RadialProfile): Peak {
  const { radii, values } = sampled(profile);
  let best = 0;
  for (let i = 1; i < values.length; i++) if (values[i]! > values[best]!) best = i;
  const axis = values[0]!;
  if (best === 0) return { irradiance: axis, radius: 0 };
  const low = radii[best - 1]!;
  const high = radii[Math.min(best + 1, radii.length - 1)]!;
  const radius = highestBetween((r) => valueAt(profile, r), low, high);
  const irradiance = valueAt(profile, radius);
  return axis >= irradiance ? { irradiance: axis, radius: 0 } : { irradiance, radius };
}

/**
 * True where the samples around the i-th lie on one side of `level`, turn towards it, and their parabola comes more than
 * half the way there: the profile may then cross the level twice between two samples.
 */
function mayTurnAcross(radii: Float64Array, values: Float64Array, i: number, level: number): boolean {
  const left = values[i]! - values[i - 1]!;
  const right = values[i + 1]! - values[i]!;
  const away = values[i]! - level;
  if (left * right >= 0 || away * right < 0) return false;
  if ((values[i - 1]! - level) * away < 0 || (values[i + 1]! - level) * away < 0) return false;
  const near = radii[i]! - radii[i - 1]!;
  const far = radii[i + 1]! - radii[i]!;
  const bend = (right / far - left / near) / (far + near);
  const slope = ((left / near) * far + (right / far) * near) / (far + near);
  return slope * slope >= 2 * Math.abs(bend * away);
}

/** Radii where the profile crosses `level`, ascending, to 1e-13 of the reach. */
export function crossings(profile: RadialProfile, level: number): number[] {
  const { radii, values } = sampled(profile);
  const found: number[] = [];
  let [before, above] = [0, values[0]! > level];
  const visit = (radius: number, value: number): void => {
    if (value > level !== above)
      found.push(findRoot((r) => valueAt(profile, r) - level, before, radius, 1e-13 * radii.at(-1)!));
    before = radius;
    above = value > level;
  };
  for (let i = 1; i < radii.length; i++) {
    const radius = radii[i]!;
    let turn = radius;
    if (i + 1 < radii.length && mayTurnAcross(radii, values, i, level)) {
      const sign = values[i]! > level ? -1 : 1;
      turn = highestBetween((r) => sign * valueAt(profile, r), radii[i - 1]!, radii[i + 1]!);
    }
    if (turn < radius) visit(turn, valueAt(profile, turn));
    visit(radius, values[i]!);
    if (turn > radius) visit(turn, valueAt(profile, turn));
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
