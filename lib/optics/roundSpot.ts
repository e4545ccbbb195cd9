import { Problem } from '../problem.ts';
import { irradianceFromEdges } from './edgeIrradiance.ts';
import { energyThroughStop } from './farTail.ts';
import { collinsB, defocusAt, focusRadius, type Light, planeOfDefocus, type RoundPlate } from './light.ts';
import type { RadialProfile } from './radialProfile.ts';
import {
  planRoundProfile,
  prepareRoundProfile,
  type RoundFocus,
  type RoundKernel,
  roundProfile,
} from './roundProfile.ts';
import { gaussianReach, type Zone } from './zones.ts';

/** |ζ| up to which spots are computed: 12 Rayleigh lengths, far beyond every usable plane. */
export const furthestDefocus = 12;

/** The plate of a round light, or a Problem for other plates. */
export function roundPlateOf(light: Light): RoundPlate {
  if (light.plate.kind !== 'round') throw new Problem('outside', 'This needs a plate of round zones.');
  return light.plate;
}

function requireZones(zones: readonly Zone[]): void {
  const edges = zones.map(({ outer }) => outer);
  if (edges.length > 0 && edges.every((edge, i) => edge > 0 && edge >= (edges[i - 1] ?? 0))) return;
  const value = edges.length === 0 ? 'none' : edges.map((edge) => `${edge} m`).join(', ');
  throw new Problem(
    'impossible',
    `A round plate needs zones with outer radii above 0, ascending; here they are ${value}.`,
    { input: 'plate.stepDiameter', value, allowed: 'above 0, ascending' },
  );
}

/** What shapes the light in every plane, in units of the step radius. */
export function roundShapeOf(light: Light): Omit<RoundFocus, 'defocus'> {
  const { zones } = roundPlateOf(light);
  requireZones(zones);
  // One zone without end is no measure of length; it ends where the beam does.
  const first = zones[0]!.outer;
  const radius = Number.isFinite(first) ? first : gaussianReach * light.beamRadius;
  return {
    zones: zones.map((zone) => ({ outer: zone.outer / radius, phase: zone.phase })),
    stepRatio: radius / light.beamRadius,
    beamPropagationRatio: light.beamPropagationRatio,
  };
}

/** The Problem of a workpiece `defocus` Rayleigh lengths from the focus, where `what` is computed up to `furthest` only. */
export function tooFar(light: Light, defocus: number, what: string, furthest = furthestDefocus): Problem {
  // A plain number however far: 76300, not 7.63e+4.
  const away = Number(Math.abs(defocus).toPrecision(3));
  return new Problem(
    'outside',
    `The workpiece is ${away} Rayleigh lengths from the focus; ${what} are computed up to ${furthest}. Move it nearer to the focus.`,
    {
      input: 'workpiece.z',
      mend: { value: planeOfDefocus(light, 0), words: 'Bring the workpiece to the focus' },
    },
  );
}

/** The focus at z in units of the step radius. Throws where z is too far from the focus for the model. */
export function roundFocusAt(light: Light, z: number, furthest = furthestDefocus): RoundFocus {
  const shape = roundShapeOf(light);
  const defocus = defocusAt(light, z);
  if (Math.abs(defocus) > furthest) throw tooFar(light, defocus, 'profiles', furthest);
  return { ...shape, defocus };
}

/** Metres per unit of ϱ in the plane z: w0·B/f. */
export function radiusScale(light: Light, z: number): number {
  return (focusRadius(light) * collinsB(light, z)) / light.focalLength;
}

/**
 * Irradiance against radius in metres in the plane z, relative to the axis of the unshaped, unclipped, M² = 1 beam in
 * its focus: (f/B)²|U|². Out to where the spot has fallen to a few per cent of its peak, or to `reach` metres.
 */
export function roundProfileAt(light: Light, z: number, reach?: number): RadialProfile {
  const focus = roundFocusAt(light, z);
  const scale = radiusScale(light, z);
  const plan = reach === undefined ? planRoundProfile(focus) : planRoundProfile(focus, reach / scale);
  return roundProfile(focus, prepareRoundProfile(focus, plan), inMetres(light, z));
}

/** The same with a kernel that is kept elsewhere. */
export function roundProfileFromKernel(light: Light, z: number, kernel: RoundKernel): RadialProfile {
  return roundProfile(roundFocusAt(light, z), kernel, inMetres(light, z));
}

/** The same irradiance at radii in metres, ascending and as far out as asked, without a kernel. */
export function roundIrradianceAt(light: Light, z: number, radii: Float64Array): Float64Array {
  const scale = radiusScale(light, z);
  const strength = strengthAt(light, z);
  const values = irradianceFromEdges(
    roundFocusAt(light, z),
    radii.map((radius) => radius / scale),
  );
  return values.map((value) => value * strength);
}

/** (f/B)². */
function strengthAt(light: Light, z: number): number {
  return (light.focalLength / collinsB(light, z)) ** 2;
}

function inMetres(light: Light, z: number): { readonly strength: number; readonly scale: number } {
  return { strength: strengthAt(light, z), scale: radiusScale(light, z) };
}

/** Part of the incident energy that the stop lets through. */
export function transmissionOf(light: Light): number {
  return energyThroughStop(roundPlateOf(light).zones.at(-1)!.outer / light.beamRadius);
}
