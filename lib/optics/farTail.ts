import { errorFunction } from '../numerics/complexErrorFunction.ts';
import type { PlateAxis } from './separableIrradiance.ts';
import type { Zone } from './zones.ts';

/**
 * Part of the incident energy that lands outside radius ϱ (in w0·B/f), far from the axis, where each hard edge x of
 * the plate sends a tail ~ρ⁻³: (2/π) Σ |Δt|² x e^{−2x²} ϱ/(ϱ²−ζ²x²). Zones in units of w, the last edge is the stop.
 * Good for ϱ well above |ζ|·R/w: errors of a few 1e-3 at ϱ = 8 in the focus, 1e-2 at |ζ| = 5.
 * Coherent light; a blur (M² > 1) leaves the tail as it is, to first order.
 */
export function energyOutside(zones: readonly Zone[], radius: number, defocus: number): number {
  let sum = 0;
  zones.forEach((zone, j) => {
    const next = zones[j + 1];
    const jump = next ? 4 * Math.sin((zone.phase - next.phase) / 2) ** 2 : 1;
    const x = zone.outer;
    if (x === Number.POSITIVE_INFINITY) return;
    sum += (jump * x * Math.exp(-2 * x * x) * radius) / (radius * radius - (defocus * x) ** 2);
  });
  return (2 / Math.PI) * sum;
}

/**
 * Part of the energy behind the stop that lands beyond ±ξ (in w0·B/f) along one direction of straight steps, far out,
 * where each pair of edges ±x sends a tail ~ξ⁻²: √(2/π) Σ |Δt|² e^{−2x²} ξ/(π(ξ²−ζ²x²)) of the incident energy.
 */
export function energyOutsideStraight(
  { halfWidth, stop, phase, defocus }: Omit<PlateAxis, 'beamPropagationRatio'>,
  distance: number,
): number {
  const pair = (jump: number, x: number) =>
    (jump * Math.exp(-2 * x * x) * distance) / (distance * distance - (defocus * x) ** 2);
  const step = stop === null || halfWidth < stop ? pair(4 * Math.sin(phase / 2) ** 2, halfWidth) : 0;
  const edge = stop === null ? 0 : pair(1, stop);
  const passing = stop === null ? 1 : errorFunction(Math.SQRT2 * stop);
  return (Math.sqrt(2 / Math.PI) * (step + edge)) / (Math.PI * passing);
}

/** Part of the incident energy that passes a round stop, 1 − e^{−2X²}, X = R/w. */
export function energyThroughStop(stopRatio: number): number {
  return -Math.expm1(-2 * stopRatio * stopRatio);
}
