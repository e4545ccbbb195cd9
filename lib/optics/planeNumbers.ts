import { collinsB, focusRadius, type Light, planeOfDefocus } from './light.ts';
import {
  clipNumbers,
  dipOf,
  edgeOf,
  kindOfProfile,
  type ProfileKind,
  ringNumbers,
} from './profileMetrics.ts';
import { areaAbove, peakOf, type RadialProfile } from './radialProfile.ts';

/** What a profile is, as its kind is told. */
export interface Judged {
  readonly kind: ProfileKind;
  /** 1 − I(0)/I_max. */
  readonly dip: number;
  /** A_0.9/A_0.5. */
  readonly areaRatio: number;
}

/** Kind of a profile with the numbers that make it. */
export function judgeProfile(profile: RadialProfile): Judged {
  const peak = peakOf(profile);
  const dip = dipOf(profile, peak);
  const half = areaAbove(profile, 0.5 * peak.irradiance);
  const areaRatio = areaAbove(profile, 0.9 * peak.irradiance) / half;
  return { kind: kindOfProfile(dip, areaRatio), dip, areaRatio };
}

/** The numbers of one plane of the family, in metres on the workpiece. */
export interface PlaneNumbers extends Judged {
  /** ζ, Rayleigh lengths from the focus. */
  readonly defocus: number;
  /** Metres from the focal plane of the lens. */
  readonly z: number;
  /** Highest irradiance against the axis of the unshaped, unclipped, M² = 1 beam in its focus. */
  readonly relativePeak: number;
  /** Diameter of a disc with the area above half the peak. */
  readonly width: number;
  /** From the outermost 0.9 crossing to the first 0.1 crossing beyond; left out where it does not fall that far. */
  readonly edgeWidth?: number;
  /** Diameter of the circle of highest irradiance; 0 where that is the axis. */
  readonly ringDiameter: number;
  /** Width at half maximum of the part of the profile around its highest point. */
  readonly ringWidth: number;
  /** Energy above half the peak, part of what passes the stop. */
  readonly energyInHalf: number;
}

/** Numbers of a profile |U|² against ϱ that belongs to the plane ζ; `transmission` is what the stop lets through. */
export function planeNumbers(
  light: Light,
  defocus: number,
  profile: RadialProfile,
  transmission: number,
): PlaneNumbers {
  const z = planeOfDefocus(light, defocus);
  const spread = collinsB(light, z) / light.focalLength;
  const scale = focusRadius(light) * spread;
  const peak = peakOf(profile);
  const half = clipNumbers(profile, peak, 0.5);
  const areaRatio = areaAbove(profile, 0.9 * peak.irradiance) / half.area;
  const dip = dipOf(profile, peak);
  const edge = edgeOf(profile, peak);
  return {
    kind: kindOfProfile(dip, areaRatio),
    dip,
    areaRatio,
    defocus,
    z,
    relativePeak: peak.irradiance / spread ** 2,
    width: 2 * scale * Math.sqrt(half.area / Math.PI),
    ...(edge && { edgeWidth: scale * edge.width }),
    ringDiameter: 2 * scale * peak.radius,
    ringWidth: scale * ringNumbers(profile, peak).width,
    // ∫|U|² d²ϱ = π/2 for all that meets the plate.
    energyInHalf: half.energy / ((Math.PI / 2) * transmission),
  };
}
