import type { Spot } from '../optics/askedSpot.ts';
import { type Light, planeOfDefocus, rayleighLength } from '../optics/light.ts';
import { spotAt } from '../optics/spot.ts';
import { withPhaseScaled } from '../optics/variants.ts';
import { Problem } from '../problem.ts';
import { type CuttingLight, type CuttingSampling, sampleCuttingLight } from '../process/cuttingLight.ts';

/** Planes per Rayleigh length; the cubic between them is then right to 1e-5. */
const planesPerRayleighLength = 20;
/** Rayleigh lengths below the surface that are looked at for the length of chords. */
const lookedAt = 3;

/** What lasts as long as a light does: its planes are the same for any number of passes. */
const kept = new WeakMap<Light, Map<string, CuttingLight>>();
/** Surfaces and levels of one light that are kept; the oldest goes. */
const mostKept = 6;

/**
 * The light for a groove whose fresh surface lies at `z` (m from the focus), above the relative irradiance `level`; the
 * line runs along x. Kept for the same light object, since the planes take most of the time. Throws where there is no
 * spot on the surface.
 */
export function grooveLight(
  light: Light,
  z: number,
  level: number,
  steps?: CuttingSampling['steps'],
): CuttingLight {
  const known = kept.get(light) ?? new Map<string, CuttingLight>();
  kept.set(light, known);
  const name = `${z} ${level} ${steps?.across}`;
  const before = known.get(name);
  if (before) return before;
  // Throws where there is no spot on the fresh surface.
  if (spotIfThere(light, z) === undefined) spotAt(light, z);
  const made = sampleCuttingLight({
    spotAtDepth: (depth) => spotIfThere(light, z + depth),
    planeStep: rayleighLength(light) / planesPerRayleighLength,
    level,
    depth: lookedAt * rayleighLength(light),
    direction: 0,
    mirrored: light.plate.kind === 'round' && light.beamAspect === 1 && isCentred(light),
    ...(steps ? { steps } : {}),
  });
  if (known.size >= mostKept) known.delete(known.keys().next().value!);
  known.set(name, made);
  return made;
}

function isCentred({ decentreX, decentreY }: Light): boolean {
  return decentreX === 0 && decentreY === 0;
}

/** z of the focus of the light, wavefront included. */
export function focusOf(light: Light): number {
  return planeOfDefocus(light, 0);
}

/** Spots of one light by z, since each takes milliseconds with M² above 1; the oldest goes. */
const spots = new WeakMap<Light, Map<number, Spot | undefined>>();
const mostSpots = 400;

function spotIfThere(light: Light, z: number): Spot | undefined {
  const known = spots.get(light) ?? new Map<number, Spot | undefined>();
  spots.set(light, known);
  if (!known.has(z)) {
    if (known.size >= mostSpots) known.delete(known.keys().next().value!);
    known.set(z, makeSpot(light, z));
  }
  return known.get(z);
}

function makeSpot(light: Light, z: number): Spot | undefined {
  try {
    return spotAt(light, z);
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
}

const plain = new WeakMap<Light, Light>();

/** The light with the plate taken out and the stop left in; one object for one light. */
export function plainOf(light: Light): Light {
  const known = plain.get(light) ?? withPhaseScaled(light, 0);
  plain.set(light, known);
  return known;
}
