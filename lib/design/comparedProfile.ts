import { type FoldedProfile, foldTable, mirror } from '../measured/foldedProfile.ts';
import { highestSample, rmsDifference, sampledAreaAbove, sampledEnergy } from '../measured/sampledProfile.ts';
import { measureSpotPicture } from '../measured/spotPicture.ts';
import type { Light } from '../optics/light.ts';
import { dipOf } from '../optics/profileMetrics.ts';
import { areaAbove, peakOf } from '../optics/radialProfile.ts';
import { radiusScale, roundIrradianceAt, roundProfileAt } from '../optics/roundSpot.ts';
import { Problem } from '../problem.ts';
import type { MeasuredProfile } from './profileFile.ts';

/** How a measured profile gets its fluence; `scaleOf` says what each means. */
export type ProfileScaling = 'energy' | 'peak' | 'measured';

/**
 * A profile of the spot about its middle, in the unit of its file. `pitch` is that of a picture's pixels on the workpiece,
 * in metres. Throws Problem 'outside' where the profile has no middle.
 */
export function foldProfile(
  { axis, position, fluence, counts, image }: MeasuredProfile,
  pitch: number,
): FoldedProfile {
  if (image !== null) return measureSpotPicture(image, pitch);
  const absolute = fluence.length > 0;
  const value = [...(absolute ? fluence : counts)];
  return foldTable({ axis: axis === 'radius' ? axis : 'line', position: [...position], value, absolute });
}

/** Diameter of a disc with the area above half the peak, in metres; Problem 'outside' where the profile ends above it. */
export function foldedWidth(shape: FoldedProfile): number {
  const half = highestSample(shape) / 2;
  if (shape.value.at(-1)! < half) return 2 * Math.sqrt(sampledAreaAbove(shape, half) / Math.PI);
  throw new Problem(
    'outside',
    'The measured profile does not fall to half its peak, so that its width is not known. Measure further out, and take off the background.',
    { allowed: 'below half the peak at its end' },
  );
}

/** What is predicted where a profile was measured: relative irradiance, its sum in m², width in metres, dip as a part. */
export interface ProfilePrediction {
  /** At the radii of the measured profile. */
  readonly irradiance: Float64Array;
  /** Sum of it over the area that they reach to. */
  readonly energy: number;
  readonly peak: number;
  readonly width: number;
  readonly dip: number;
}

/** The prediction at `z` (metres) for the radii of a measured profile. */
export function predictFor(light: Light, z: number, { radius }: FoldedProfile): ProfilePrediction {
  const profile = roundProfileAt(light, z);
  const peak = peakOf(profile);
  const irradiance = predictedAt(light, z, radius);
  return {
    irradiance,
    energy: sampledEnergy({ radius, value: irradiance }),
    peak: peak.irradiance,
    width: 2 * Math.sqrt(areaAbove(profile, peak.irradiance / 2) / Math.PI),
    dip: dipOf(profile, peak),
  };
}

/** Radii, in w0·B/f, beyond which the predicted light counts as none: the tail there is below 1e-6 of the peak. */
const predictedReach = 200;

function predictedAt(light: Light, z: number, radii: Float64Array): Float64Array {
  const limit = predictedReach * radiusScale(light, z);
  const end = radii.findIndex((radius) => radius > limit);
  const computed = roundIrradianceAt(light, z, end < 0 ? radii : radii.subarray(0, end));
  const all = new Float64Array(radii.length);
  all.set(computed);
  return all;
}

/**
 * What one unit of the file is in J/m²: the energy within the radii measured is made equal to that predicted there, or the
 * peak to the predicted one, or the file's own fluence counts. `F0` is the fluence (J/m²) of irradiance 1. Throws a
 * Problem without an input where a profile has none of these.
 */
export function scaleOf(
  scaling: ProfileScaling,
  shape: FoldedProfile,
  predicted: ProfilePrediction,
  F0: number,
  absolute: boolean,
): number {
  if (scaling === 'peak') return (F0 * predicted.peak) / highestSample(shape);
  if (scaling === 'energy') {
    const energy = sampledEnergy(shape);
    if (energy > 0) return (F0 * predicted.energy) / energy;
    throw new Problem(
      'outside',
      'The measured profile adds up to no energy: more of it lies below 0 than above. Take off the right background, or choose equal peak.',
    );
  }
  if (absolute) return 1;
  throw new Problem(
    'impossible',
    'The measured profile gives no fluence with its unit, so it cannot be shown as measured. Choose equal energy or equal peak.',
    { allowed: 'energy, peak' },
  );
}

/** Columns from one side of the spot to the other: metres and J/m². */
export interface OverlaidProfile {
  readonly x: Float64Array;
  readonly measured: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly predicted: Float64Array;
}

/** A measured profile, `scale` J/m² a unit, its spread to either side of it, and the prediction, across the spot. */
export function overlay(
  shape: FoldedProfile,
  { irradiance }: ProfilePrediction,
  F0: number,
  scale: number,
): OverlaidProfile {
  const { radius, value, spread } = shape;
  const column = (at: (i: number) => number) =>
    mirror(
      radius.map((_, i) => at(i)),
      1,
    );
  return {
    x: mirror(radius, -1),
    measured: column((i) => scale * value[i]!),
    low: column((i) => scale * (value[i]! - spread[i]!)),
    high: column((i) => scale * (value[i]! + spread[i]!)),
    predicted: column((i) => F0 * irradiance[i]!),
  };
}

/** Root-mean-square difference of both over the area where either is above half its own peak; `peak` (J/m²) counts as 1. */
export function deviationOf({ x, measured, predicted }: OverlaidProfile, peak: number): number {
  const axis = (x.length - 1) / 2;
  const [radius, one, other] = [x, measured, predicted].map((column) => column.subarray(axis));
  return rmsDifference(radius!, one!, other!) / peak;
}
