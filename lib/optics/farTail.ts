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
    sum += (jump * x * Math.exp(-2 * x * x) * radius) / (radius * radius - (defocus * x) ** 2);
  });
  return (2 / Math.PI) * sum;
}

/** Part of the incident energy that passes a round stop, 1 − e^{−2X²}, X = R/w. */
export function energyThroughStop(stopRatio: number): number {
  return -Math.expm1(-2 * stopRatio * stopRatio);
}
