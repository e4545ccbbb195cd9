import { panelNodes } from '../numerics/panelledFunction.ts';
import { applyMatrix, blurRadius, blurReach, createBlurMatrix } from './coherence.ts';
import { fieldFromEdges } from './edgeField.ts';
import type { RoundFocus } from './roundProfile.ts';

/**
 * The irradiance of {@link file://./roundProfile.ts} at any radii, ascending and in w0·B/f, without a Bessel matrix:
 * 3 µs a radius however far out, where a matrix grows with the square of the reach. For M² > 1 blurred alike. To 1e-9.
 */
export function irradianceFromEdges(focus: RoundFocus, radii: Float64Array): Float64Array {
  const blur = blurRadius(focus.beamPropagationRatio);
  if (blur === 0) return coherentIrradiance(focus, radii);
  const last = focus.zones.at(-1)!.outer * focus.stepRatio;
  // 13 rad a panel of 16 nodes, as in the profile itself.
  const grid = { width: 3.2 / Math.min(last, 3.2), count: 16 };
  const margin = blurReach * blur;
  const panels = Math.ceil((radii.at(-1)! + margin) / grid.width);
  const { nodes } = panelNodes(grid.width, panels, grid.count);
  const first = grid.count * Math.floor(Math.max(0, radii[0]! - margin) / grid.width);
  const samples = new Float64Array(nodes.length);
  samples.set(coherentIrradiance(focus, nodes.subarray(first)), first);
  return applyMatrix(createBlurMatrix({ ...grid, nodes }, radii, blur), samples);
}

function coherentIrradiance({ zones, stepRatio, defocus }: RoundFocus, radii: Float64Array): Float64Array {
  const scaled = zones.map(({ outer, phase }) => ({ outer: outer * stepRatio, phase }));
  const { re, im } = fieldFromEdges(scaled, radii, defocus);
  return re.map((x, i) => x * x + im[i]! * im[i]!);
}
