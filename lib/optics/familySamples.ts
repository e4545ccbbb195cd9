import { panelNodes } from '../numerics/panelledFunction.ts';
import { blurRadius, blurReach, createBlurMatrix } from './coherence.ts';
import { type FocusRows, type FocusShape, focusRows, mapRows, rowAt } from './focusRows.ts';
import type { RadialProfile } from './radialProfile.ts';

/** Samples from which the profile in every plane of a range follows; plain data. Lengths in ϱ = ρ/(w0·B/f). */
export interface FamilySamples extends FocusShape {
  readonly rows: FocusRows;
  /** Panel width of the radii. */
  readonly width: number;
  /** Nodes a panel. */
  readonly count: number;
  /** Radii of the columns, and the weights for ∫ … dϱ. */
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

const nodesPerPanel = 12;
/** |U|² holds 4·min(R/w, 2.7) radians a ϱ (e^{−2·2.7²} = 5e-7 lies beyond); 12 nodes carry 7 rad to 1e-7. */
const phasePerPanel = 7;
const widestCounted = 2.7;

/** Outer edge of the plate in 1/e² beam radii. */
function edgeOf({ zones, stepRatio }: FocusShape): number {
  return zones.at(-1)!.outer * stepRatio;
}

/**
 * Radius out to which a plane is sampled: the diffraction spot, its blur, and the cone of light as far out as it holds
 * three thousandths of its axis (1.7 w). Down to a tenth of the peak, as the edge width asks; the far tail is not needed.
 */
function familyReach(shape: FocusShape, defocus: number): number {
  const last = edgeOf(shape);
  const blur = blurRadius(shape.beamPropagationRatio);
  return 5.5 / Math.min(1, last) + 1.8 * blur + Math.abs(defocus) * Math.min(last, 1.7);
}

/**
 * Samples for all profiles with low ≤ ζ ≤ high, low below high, blurred where M² > 1 (Gaussian Schell model), out to
 * `reach`, by itself as far as the profiles need; to 1e-6 of the unshaped peak.
 */
export function sampleFamily(
  shape: FocusShape,
  low: number,
  high: number,
  reach = familyReach(shape, Math.max(Math.abs(low), Math.abs(high))),
): FamilySamples {
  const blur = blurRadius(shape.beamPropagationRatio);
  const fine = phasePerPanel / (4 * Math.min(edgeOf(shape), widestCounted));
  const coherent = panelNodes(fine, Math.max(1, Math.ceil((reach + blurReach * blur) / fine)), nodesPerPanel);
  const inSteps = coherent.nodes.map((radius) => 2 * shape.stepRatio * radius);
  const rows = focusRows(shape, inSteps, low, high);
  if (blur === 0) return { ...shape, rows, width: fine, count: nodesPerPanel, ...coherent };
  // The blur leaves e^{−k²b²/8} of a wave of k radians a ϱ: 3e-7 at 11/b.
  const width = Math.max(fine, (phasePerPanel * blur) / 11);
  const blurred = panelNodes(width, Math.max(1, Math.ceil(reach / width)), nodesPerPanel);
  const grid = { width: fine, count: nodesPerPanel, nodes: coherent.nodes };
  const matrix = createBlurMatrix(grid, blurred.nodes, blur);
  return { ...shape, rows: mapRows(rows, matrix), width, count: nodesPerPanel, ...blurred };
}

/** |U|² against ϱ in the plane ζ, which lies in the range sampled; no further out than `reach` asks or was sampled. */
export function profileFromSamples(
  samples: FamilySamples,
  defocus: number,
  reach = familyReach(samples, defocus),
): RadialProfile {
  const { rows, width, count, nodes, weights } = samples;
  const panels = Math.max(1, Math.ceil(reach / width));
  const columns = Math.min(nodes.length, panels * count);
  return {
    width,
    count,
    nodes: nodes.subarray(0, columns),
    weights: weights.subarray(0, columns),
    values: rowAt(rows, defocus, columns),
  };
}
