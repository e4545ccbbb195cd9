import { highestBetween } from '../numerics/highestBetween.ts';
import { valueAt } from '../numerics/panelledFunction.ts';
import { discOf } from './depthOfFocus.ts';
import { intervalsAbove, type Peak, peakOf, type RadialProfile } from './radialProfile.ts';

/**
 * The highest ring outside the part of the profile that holds the peak, where one reaches above half of it: its radius in
 * the unit of the profile, to 1e-8 of its width, and its height over the peak's. Undefined where there is none.
 */
export function ringAround(
  profile: RadialProfile,
  peak: Peak = peakOf(profile),
): { readonly radius: number; readonly height: number } | undefined {
  const rings = intervalsAbove(profile, 0.5 * peak.irradiance)
    .filter(([from]) => from > peak.radius)
    .map(([from, to]) => {
      const radius = highestInside(profile, from, to);
      return { radius, height: valueAt(profile, radius) / peak.irradiance };
    });
  return rings.length === 0 ? undefined : rings.reduce((a, b) => (b.height > a.height ? b : a));
}

function highestInside(profile: RadialProfile, from: number, to: number): number {
  const inside = [from, ...profile.nodes.filter((radius) => from < radius && radius < to), to];
  const heights = inside.map((radius) => valueAt(profile, radius));
  const best = heights.indexOf(Math.max(...heights));
  const [low, high] = [inside[Math.max(0, best - 1)]!, inside[Math.min(inside.length - 1, best + 1)]!];
  return highestBetween((radius) => valueAt(profile, radius), low, high);
}

/** Radii looked at on a plateau: a trough, level at its bottom, is found to a thousandth of its depth. */
const radii = 121;

/**
 * How far the lowest place inside the outermost crest of the plateau lies below the peak, as a part of it: the dip where
 * that is the axis, more where a trough runs around it. The plateau is the disc out to where the profile last crosses 95 %
 * of its peak; undefined where it has none.
 */
export function deepestOf(profile: RadialProfile, peak: Peak = peakOf(profile)): number | undefined {
  const disc = discOf(profile);
  if (disc === undefined) return undefined;
  const heights = Array.from({ length: radii + 1 }, (_, i) => valueAt(profile, (disc * i) / radii));
  let crest = radii;
  while (crest > 0 && heights[crest - 1]! >= heights[crest]!) crest -= 1;
  return Math.max(0, 1 - Math.min(...heights.slice(0, crest + 1)) / peak.irradiance);
}
