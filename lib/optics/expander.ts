import {
  type BeamParameter,
  beamCurvature,
  beamFromWaist,
  beamRadius,
  chainMatrices,
  freeSpace,
  propagateBeam,
  thinLens,
  waistRadius,
} from './abcd.ts';
import { requireAbove } from './beamChecks.ts';

/** The beam that comes from the laser; z grows along the light, from the laser's reference plane. */
export interface RawBeam {
  /** 1/e² diameter in the waist, m. */
  readonly waistDiameter: number;
  /** z of the waist in m; negative when it lies before the reference plane. */
  readonly waistPosition: number;
  /** M² ≥ 1. */
  readonly beamPropagationRatio: number;
  /** In vacuum, m. */
  readonly wavelength: number;
}

/** Two thin lenses in the order of the light; lengths in m. */
export interface LensPair {
  /** Negative for a diverging lens. */
  readonly firstFocalLength: number;
  readonly secondFocalLength: number;
  /** From the first lens to the second. */
  readonly separation: number;
  /** From the reference plane to the first lens. */
  readonly distanceToFirst: number;
  /** From the second lens to the plate. */
  readonly distanceToPlate: number;
}

/** What two lenses make of a beam. */
export interface ExpandedBeam {
  /** 1/e² diameter at the plate, m. */
  readonly diameter: number;
  /** 1/R of the wavefront at the plate in 1/m, diverging positive. */
  readonly curvature: number;
  /** R in m, diverging positive, Infinity for a flat wavefront. */
  readonly wavefrontRadius: number;
  /** 1/e² diameter of the waist behind the second lens, m (it may be virtual). */
  readonly waistDiameter: number;
  /** From the plate to that waist in m, positive behind the plate. */
  readonly waistPosition: number;
  /** 1/e² diameter of the focus between the lenses, m; undefined where the beam has none there. */
  readonly internalFocusDiameter: number | undefined;
  /** From the first lens to that focus, m. */
  readonly internalFocusPosition: number | undefined;
  /** Keplerian: two collecting lenses and a focus inside for a collimated beam; Galilean: one lens diverges. */
  readonly type: 'Keplerian' | 'Galilean' | 'diverging';
  /** Separation − (f1 + f2) in m: 0 is afocal, a collimated ray leaves collimated. */
  readonly afocalError: number;
}

/**
 * Beam at the plate behind an expander of two thin lenses, by ray matrices on the complex beam parameter of the real
 * beam (zR = πw0²/(M²λ)). Aberrations and clipping by the lenses are left out. Throws `impossible` for a focal length
 * of 0, a waist, wavelength or separation not above 0, or M² below 1.
 */
export function expandBeam(raw: RawBeam, lenses: LensPair): ExpandedBeam {
  const { beamPropagationRatio: ratio, wavelength } = raw;
  const { firstFocalLength: f1, secondFocalLength: f2, separation } = lenses;
  requireAbove('distance between the lenses', separation, 'm');
  const distance = lenses.distanceToFirst - raw.waistPosition;
  const incoming = beamFromWaist(raw.waistDiameter / 2, distance, ratio, wavelength);
  const between = propagateBeam(incoming, thinLens(f1));
  const behind = chainMatrices(freeSpace(separation), thinLens(f2), freeSpace(lenses.distanceToPlate));
  const plate = propagateBeam(between, behind);
  const curvature = beamCurvature(plate);
  return {
    diameter: 2 * beamRadius(plate, ratio, wavelength),
    curvature,
    wavefrontRadius: curvature === 0 ? Number.POSITIVE_INFINITY : 1 / curvature,
    waistDiameter: 2 * waistRadius(plate, ratio, wavelength),
    waistPosition: 0 - plate.re,
    ...internalFocus(between, separation, ratio, wavelength),
    type: f1 > 0 && f2 > 0 ? 'Keplerian' : f1 < 0 && f2 < 0 ? 'diverging' : 'Galilean',
    afocalError: separation - (f1 + f2),
  };
}

/** The waist behind the first lens, where it lies before the second. */
function internalFocus(
  between: BeamParameter,
  separation: number,
  ratio: number,
  wavelength: number,
): Pick<ExpandedBeam, 'internalFocusDiameter' | 'internalFocusPosition'> {
  const position = -between.re;
  const inside = position > 0 && position < separation;
  return {
    internalFocusDiameter: inside ? 2 * waistRadius(between, ratio, wavelength) : undefined,
    internalFocusPosition: inside ? position : undefined,
  };
}

/**
 * Magnification that brings a raw beam to a step ratio: m = (a/κ)/w_raw. `stepRadius` a and `rawRadius` (1/e²) in the
 * same unit, `stepRatio` κ = a/w; all above 0.
 */
export function requiredMagnification(stepRadius: number, stepRatio: number, rawRadius: number): number {
  requireAbove('step radius', stepRadius, 'm');
  requireAbove('step ratio', stepRatio, '');
  requireAbove('raw beam radius', rawRadius, 'm');
  return stepRadius / stepRatio / rawRadius;
}
