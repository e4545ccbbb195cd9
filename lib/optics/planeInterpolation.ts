import type { RowSums } from '../numerics/sumKernel.ts';

/** Bandwidth of |U|² in ζ counts nodes out to this many beam radii: e^{−2·2.7²} = 5e-7 lies beyond. */
const widestCounted = 2.7;
/** 12 Chebyshev planes carry a phase of 5 rad to 2·J12(2.5) = 6e-8. */
export const planesPerPanel = 12;
const phasePerPanel = 5;

/** Planes from which |U|² is interpolated; each plane wanted is a sum over the planes of its panel. */
export interface PlaneRule extends RowSums {
  readonly computed: Float64Array;
}

/**
 * |U|² holds no faster oscillation in ζ than the spread of x² over the plate, so that a few planes a panel fix all
 * between; `widest` is the outer edge of the plate in 1/e² beam radii.
 * Undefined where that takes as many planes as are wanted.
 */
export function planPlanes(planes: Float64Array, widest: number): PlaneRule | undefined {
  const low = planes.reduce((a, b) => Math.min(a, b));
  const span = planes.reduce((a, b) => Math.max(a, b)) - low;
  const { panels, width, computed } = layOutPlanes(low, span, widest);
  if (computed.length >= planes.length) return undefined;
  const starts = new Int32Array(planes.length);
  const weights = new Float64Array(planes.length * planesPerPanel);
  planes.forEach((plane, row) => {
    const panel = Math.min(panels - 1, Math.floor((plane - low) / width));
    starts[row] = panel * planesPerPanel;
    setWeights(weights, row * planesPerPanel, (2 * (plane - low)) / width - 2 * panel - 1);
  });
  return { computed, terms: planesPerPanel, starts, weights };
}

/** Panels of planes: every ζ of the range is a sum over the planes of its panel. */
export interface PlanePanels {
  readonly panels: number;
  /** Width of a panel in ζ. */
  readonly width: number;
  /** {@link planesPerPanel} planes a panel, ascending. */
  readonly computed: Float64Array;
}

/** The planes that fix |U|² for low ≤ ζ ≤ low + span; `widest` is the outer edge of the plate in 1/e² beam radii. */
export function layOutPlanes(low: number, span: number, widest: number): PlanePanels {
  const panels = Math.max(1, Math.ceil((span * Math.min(widest, widestCounted) ** 2) / phasePerPanel));
  const width = span / panels;
  const computed = new Float64Array(panels * planesPerPanel);
  computed.forEach((_, i) => {
    const panel = Math.floor(i / planesPerPanel);
    computed[i] = low + width * (panel + (1 + nodes[i % planesPerPanel]!) / 2);
  });
  return { panels, width, computed };
}

/** Chebyshev points of [−1, 1], and their barycentric weights (Berrut & Trefethen, SIAM Rev. 46, 501 (2004), memory). */
const nodes = Float64Array.from(
  { length: planesPerPanel },
  (_, k) => -Math.cos((Math.PI * (k + 0.5)) / planesPerPanel),
);
const shares = nodes.map((node, k) => (k % 2 ? -1 : 1) * Math.sqrt(1 - node * node));

/** Writes the weights of the panel's planes at t, −1 ≤ t ≤ 1. */
export function setWeights(weights: Float64Array, at: number, t: number): void {
  let sum = 0;
  for (let k = 0; k < planesPerPanel; k++) {
    // Half a rounding unit away from a node the quotient stays finite and exact.
    const share = shares[k]! / (t - nodes[k]! || 1e-300);
    weights[at + k] = share;
    sum += share;
  }
  for (let k = 0; k < planesPerPanel; k++) weights[at + k]! /= sum;
}
