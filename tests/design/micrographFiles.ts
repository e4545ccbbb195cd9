import fc from 'fast-check';
import { type DrawnRipples, drawRipples } from '../../data/measured/drawRipples.ts';
import type { CameraImage } from '../../lib/measured/cameraImage.ts';

/** Ripples of 10 pixels, wave vector at 1 rad towards y downwards, and fine ones of 4 pixels across them. */
export const drawnRipples: DrawnRipples = {
  width: 128,
  height: 128,
  period: 10,
  direction: 1,
  amplitude: 0.2,
  noise: 0.03,
  finePeriod: 4,
  fineAmplitude: 0.12,
  seed: 3,
};
const { finePeriod: _period, fineAmplitude: _amplitude, ...single } = drawnRipples;

/** A small micrograph whose name a counterexample shows instead of its pixels. */
export function micrographNamed(
  name: string,
  changes: Partial<DrawnRipples> = {},
  base = single,
): CameraImage {
  const image = { ...drawRipples({ ...base, ...changes }), name };
  return Object.defineProperty(image, fc.toStringMethod, { value: () => `the ${name} micrograph` });
}

/** Lines 80 pixels apart with nothing but a rough ground between them. */
const inLines = (_x: number, y: number) => (Math.abs((y % 80) - 40) < 22 ? 1 : 0);
const large = { width: 160, height: 160 };

/** Small micrographs: two that measure well, then one for each way in which one can be poor. */
export const micrographs: readonly CameraImage[] = [
  micrographNamed('fine', {}, drawnRipples),
  micrographNamed('even', { disorder: 0.05 }),
  micrographNamed('wandering', { ...large, disorder: 0.35, disorderLength: 40 }),
  micrographNamed('lines', {
    ...large,
    period: 12,
    direction: 1.64,
    disorder: 0.1,
    roughness: 0.05,
    strength: inLines,
  }),
  micrographNamed('noise', { amplitude: 0 }),
  micrographNamed('small', { width: 50, height: 60 }),
];
