/**
 * How far a peak irradiance on the workpiece lies from the lowest at which X-rays were published:
 * - `observed`: at or above it;
 * - `near`: within a factor of a hundred below it, where bursts, high mean power or a better focus may make up for it;
 * - `below`: further below. Never an all-clear.
 */
export type XRayNearness = 'observed' | 'near' | 'below';

/** Cautious by this factor below what was published. */
export const xRayMargin = 100;

/** `ratio`: peak irradiance, in time and space, over the lowest published one. */
export function xRayNearness(ratio: number): XRayNearness {
  if (ratio >= 1) return 'observed';
  return ratio >= 1 / xRayMargin ? 'near' : 'below';
}
