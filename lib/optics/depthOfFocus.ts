import { integrateOver, valueAt } from '../numerics/panelledFunction.ts';
import { findRoot } from '../numerics/roots.ts';
import { searchedEnds } from './family.ts';
import { type FamilySamples, profileFromSamples, sampleFamily } from './familySamples.ts';
import type { FocusShape } from './focusRows.ts';
import { collinsB, type Light, planeOfDefocus } from './light.ts';
import { crossings, peakOf, type RadialProfile } from './radialProfile.ts';
import { furthestDefocus, roundShapeOf } from './roundSpot.ts';

/** How deep a plane is, in ζ. */
export interface DepthOfFocus {
  /** Radius of the disc in ϱ of the plane itself. */
  readonly disc: number;
  /** Largest |H/H̄ − 1| over the disc in the plane itself. */
  readonly deviation: number;
  /** Ends in ζ; both are the plane's own ζ where the tolerance is exceeded there already. */
  readonly from: number;
  readonly to: number;
  /** True where it goes on beyond the planes looked at. */
  readonly cut: boolean;
}

/** Profile |U|² against ϱ in a plane, out to `reach`. */
type ProfileAt = (defocus: number, reach: number) => RadialProfile;

/** How finely the disc and the planes are looked at. */
export interface DepthSteps {
  /** Radii of the disc, the axis not counted. */
  readonly radii: number;
  /** Step in ζ of the walk away from the plane. */
  readonly step: number;
}

/** Radius of the disc: where the profile last crosses 0.95 of its peak; undefined where it does not fall so far. */
export function discOf(profile: RadialProfile): number | undefined {
  return crossings(profile, 0.95 * peakOf(profile).irradiance).at(-1);
}

/**
 * Unevenness of a plateau: largest |H/H̄ − 1| over the disc, H̄ its mean, at 121 radii; undefined
 * where the profile has no disc. Agrees to 1e-3 with the deviation of {@link depthAround}, and costs next to nothing.
 */
export function plateauDeviation(profile: RadialProfile): number | undefined {
  const disc = discOf(profile);
  if (disc === undefined) return undefined;
  const mean = integrateOver(profile, 0, disc, (h, r) => 2 * r * h) / (disc * disc);
  let worst = 0;
  for (let i = 0; i <= fineRadii; i++)
    worst = Math.max(worst, Math.abs(valueAt(profile, (disc * i) / fineRadii) / mean - 1));
  return worst;
}

/** B/f in the plane ζ. */
function spreadAt(light: Light, defocus: number): number {
  return collinsB(light, planeOfDefocus(light, defocus)) / light.focalLength;
}

/**
 * Depth of focus of the plane ζ: the stretch of planes around it in which the fluence stays within `tolerance` of H̄
 * everywhere in the disc, |H(ρ, z)/H̄ − 1| ≤ tolerance. H̄ is the mean over the disc in the plane itself; the disc
 * (radius `disc` in ϱ of that plane) keeps its size in metres. Looked for in [low, high]. Ends to 1e-6 for a disc as
 * finely looked at as `steps` says. Definition of this project.
 */
export function depthAround(
  light: Light,
  profileAt: ProfileAt,
  defocus: number,
  disc: number,
  tolerance: number,
  [low, high]: readonly [number, number],
  { radii, step }: DepthSteps,
): DepthOfFocus {
  const own = profileAt(defocus, disc);
  const mean = integrateOver(own, 0, disc, (h, r) => 2 * r * h) / (disc * disc);
  const spread = spreadAt(light, defocus);
  const deviationAt = (other: number): number => {
    const shrink = spread / spreadAt(light, other);
    const profile = profileAt(other, disc * shrink);
    let worst = 0;
    for (let i = 0; i <= radii; i++) {
      const h = valueAt(profile, (disc * shrink * i) / radii);
      worst = Math.max(worst, Math.abs((h * shrink * shrink) / mean - 1));
    }
    return worst;
  };
  const deviation = deviationAt(defocus);
  if (deviation > tolerance) return { disc, deviation, from: defocus, to: defocus, cut: false };
  const excess = (other: number) => deviationAt(other) - tolerance;
  const from = firstAbove(excess, defocus, low, step);
  const to = firstAbove(excess, defocus, high, step);
  return { disc, deviation, from: from ?? low, to: to ?? high, cut: from === undefined || to === undefined };
}

/** Where `excess` first rises above 0 on the way from `start` to `end`; undefined where it never does. */
function firstAbove(
  excess: (x: number) => number,
  start: number,
  end: number,
  step: number,
): number | undefined {
  const count = Math.ceil(Math.abs(end - start) / step);
  let before = start;
  for (let i = 1; i <= count; i++) {
    const next = start + ((end - start) * i) / count;
    if (excess(next) > 0) return findRoot(excess, before, next, 1e-7);
    before = next;
  }
  return undefined;
}

/** A fiftieth of the shortest period of |U|² in ζ, 2π/min(R/w, 2.7)². */
function walkStep({ zones, stepRatio }: FocusShape): number {
  return 0.125 / Math.min(zones.at(-1)!.outer * stepRatio, 2.7) ** 2;
}

/** 121 radii: the bends of a plateau within a disc of half a wave are met to 1e-4 of its height. */
export const fineRadii = 120;

/** Depth of a plane of a search; its disc is read off the profile there. Undefined where the profile has no disc. */
export function depthFromSamples(
  light: Light,
  samples: FamilySamples,
  defocus: number,
  tolerance: number,
  radii = fineRadii,
): DepthOfFocus | undefined {
  const disc = discOf(profileFromSamples(samples, defocus));
  if (disc === undefined) return undefined;
  const { low, high } = samples.rows;
  const profileAt: ProfileAt = (other, reach) => profileFromSamples(samples, other, reach);
  return depthAround(light, profileAt, defocus, disc, tolerance, [low, high], {
    radii,
    step: walkStep(samples),
  });
}

/**
 * Depth of one plane, by samples of the disc alone, a few steps at a time; a few milliseconds. `disc` in ϱ. Looked
 * for as far as spots are computed.
 */
export function depthOfPlane(light: Light, defocus: number, disc: number, tolerance: number): DepthOfFocus {
  const shape = roundShapeOf(light);
  const [low, high] = searchedEnds(light, furthestDefocus);
  const step = walkStep(shape);
  const windows = new Map<number, FamilySamples>();
  const profileAt: ProfileAt = (other, reach) => {
    const index = Math.round((other - defocus) / (40 * step));
    let samples = windows.get(index);
    // Off the focal plane of the lens the disc changes its size in ϱ: a tenth more serves many planes.
    if (!samples || samples.nodes.at(-1)! < reach) {
      const middle = defocus + 40 * step * index;
      const ends = [Math.max(low, middle - 20 * step), Math.min(high, middle + 20 * step)] as const;
      samples = sampleFamily(shape, ends[0], ends[1], 1.1 * reach);
      windows.set(index, samples);
    }
    return profileFromSamples(samples, other, reach);
  };
  return depthAround(light, profileAt, defocus, disc, tolerance, [low, high], { radii: fineRadii, step });
}
