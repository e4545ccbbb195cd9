import { integrateOver, valueAt } from '../numerics/panelledFunction.ts';
import {
  areaAbove,
  crossings,
  intervalsAbove,
  type Peak,
  peakOf,
  type RadialProfile,
} from './radialProfile.ts';

/** Numbers of a profile above a clip level η·peak (ISO 13694 style; definitions from memory, edition 2018 meant). */
export interface ClipNumbers {
  /** Clip η, fraction of the peak. */
  readonly clip: number;
  /** Area of the whole plane above the clip. */
  readonly area: number;
  /** Mean irradiance over that area. */
  readonly mean: number;
  /** ∫ irradiance dA over that area; divide by the energy meant (incident or transmitted). */
  readonly energy: number;
  /** Flatness F = mean / peak. */
  readonly flatness: number;
  /** Beam uniformity U = rms deviation / mean; 0 is even. Does not tell a flat-top from a Gaussian. */
  readonly uniformity: number;
}

/** Clip numbers; `clip` in (0, 1). */
export function clipNumbers(profile: RadialProfile, peak: Peak, clip: number): ClipNumbers {
  const level = clip * peak.irradiance;
  let area = 0;
  let energy = 0;
  let square = 0;
  for (const [from, to] of intervalsAbove(profile, level)) {
    area += Math.PI * (to * to - from * from);
    energy += integrateOver(profile, from, to, (h, r) => 2 * Math.PI * r * h);
    square += integrateOver(profile, from, to, (h, r) => 2 * Math.PI * r * h * h);
  }
  const mean = energy / area;
  const variance = Math.max(0, square / area - mean * mean);
  return {
    clip,
    area,
    mean,
    energy,
    flatness: mean / peak.irradiance,
    uniformity: Math.sqrt(variance) / mean,
  };
}

/** Dip on the axis, 1 − I(0)/I_max: 0 for a profile highest on the axis, 1 for a dark centre. */
export function dipOf(profile: RadialProfile, peak: Peak = peakOf(profile)): number {
  return Math.max(0, 1 - valueAt(profile, 0) / peak.irradiance);
}

/** The outer edge of a profile. */
export interface Edge {
  /** Outermost radius at 0.9 of the peak. */
  readonly inner: number;
  /** First radius beyond it at 0.1 of the peak. */
  readonly outer: number;
  /** outer − inner. */
  readonly width: number;
}

/** 10–90 % edge: from the outermost 0.9 crossing to the first 0.1 crossing beyond. Undefined if the profile does not reach down to it. */
export function edgeOf(profile: RadialProfile, peak: Peak = peakOf(profile)): Edge | undefined {
  const inner = crossings(profile, 0.9 * peak.irradiance).at(-1);
  if (inner === undefined) return undefined;
  const outer = crossings(profile, 0.1 * peak.irradiance).find((r) => r > inner);
  return outer === undefined ? undefined : { inner, outer, width: outer - inner };
}

/** Edge steepness s = (A_0.1 − A_0.9)/A_0.1, whole-plane areas: 0.954 for a Gaussian, 0 for a disc. */
export function edgeSteepness(profile: RadialProfile, peak: Peak = peakOf(profile)): number {
  const foot = areaAbove(profile, 0.1 * peak.irradiance);
  return (foot - areaAbove(profile, 0.9 * peak.irradiance)) / foot;
}

/** What a ring is: where its crest lies, how wide the crest is at half maximum, and the energy in it. */
export interface RingNumbers {
  /** Radius of the crest. */
  readonly radius: number;
  /** Width of the crest between its half-maximum radii; inner radius 0 where the dip is above half. */
  readonly width: number;
  /** ∫ irradiance dA between the half-maximum radii. */
  readonly energy: number;
}

/** Ring numbers of the crest that holds the global maximum. */
export function ringNumbers(profile: RadialProfile, peak: Peak = peakOf(profile)): RingNumbers {
  const crest = intervalsAbove(profile, 0.5 * peak.irradiance).find(
    ([from, to]) => from <= peak.radius && peak.radius <= to,
  );
  const [from, to] = crest!;
  return {
    radius: peak.radius,
    width: to - from,
    energy: integrateOver(profile, from, to, (h, r) => 2 * Math.PI * r * h),
  };
}

/** Kinds of profile: flat-top (dip < 5 %, A_0.9/A_0.5 > 0.30), shallow ring (5–10 %), ring (> 10 %), peaked (the rest). */
export type ProfileKind = 'flat-top' | 'shallow ring' | 'ring' | 'peaked';

/** Kind of a profile from its dip and the ratio of areas above 0.9 and 0.5 of the peak (Gaussian 0.152, disc 1). */
export function kindOfProfile(dip: number, areaRatio: number): ProfileKind {
  if (dip > 0.1) return 'ring';
  if (dip >= 0.05) return 'shallow ring';
  return areaRatio > 0.3 ? 'flat-top' : 'peaked';
}
