import { type Light, planeOfDefocus } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { lightBehind } from '../optics/lightBehind.ts';

const beamRadius = 5e-3;

/** A light without a step and without a stop: a Gaussian of 1/e² radius w0 in the focus. */
export const gaussianLight = lightBehind([
  { outer: 1, phase: 0 },
  { outer: Number.POSITIVE_INFINITY, phase: 0 },
]);

/** Half-wave step of κ behind a round stop of R/w; 0 for no stop. */
export function roundStep(ratio: number, stop = 0, phase = Math.PI): Light {
  return lightBehind([
    { outer: ratio, phase },
    { outer: stop === 0 ? Number.POSITIVE_INFINITY : stop, phase: 0 },
  ]);
}

/** Crossed half-wave steps of a/w behind a square stop; 0 for no stop. */
export function crossedStep(ratio: number, stop = 0): Light {
  const half = ratio * beamRadius;
  return {
    ...gaussianLight,
    plate: { kind: 'crossed', halfWidthX: half, halfWidthY: half, phase: Math.PI, stop: stop * beamRadius },
  };
}

/** The spot of a light at ζ. */
export function spotAtDefocus(light: Light, defocus: number) {
  return spotAt(light, planeOfDefocus(light, defocus));
}
