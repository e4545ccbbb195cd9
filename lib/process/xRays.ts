/**
 * How far a peak irradiance on the workpiece lies from the lowest at which X-rays were published:
 * - `observed`: at or above it;
 * - `close`: below it by no more than a factor of two, less than a better focus or a hot spot may bring;
 * - `near`: within a factor of a hundred below it, where bursts, high mean power or a better focus may make up for it;
 * - `below`: further below. Never an all-clear.
 */
export type XRayNearness = 'observed' | 'close' | 'near' | 'below';

/** Cautious by this factor below what was published. */
export const xRayMargin = 100;

/** `ratio`: peak irradiance, in time and space, over the lowest published one. */
export function xRayNearness(ratio: number): XRayNearness {
  if (ratio >= 1) return 'observed';
  if (ratio >= 0.5) return 'close';
  return ratio >= 1 / xRayMargin ? 'near' : 'below';
}
