import { besselI0Scaled } from '../numerics/bessel.ts';
import { panelledRule } from '../numerics/gaussLegendre.ts';
import { addInterpolationRow, type PanelledFunction } from '../numerics/panelledFunction.ts';

/**
 * 1/e² radius, in units of w0·B/f, of the Gaussian that the coherent irradiance is convolved with for a beam of
 * propagation ratio M²: √(M⁴−1). Gaussian Schell-model beam, same M² in both axes, flat or curved wavefront.
 * Source: E. Collett & E. Wolf, Opt. Lett. 2, 27 (1978); A. Starikov & E. Wolf, JOSA 72, 923 (1982) (memory).
 */
export function blurRadius(beamPropagationRatio: number): number {
  return Math.sqrt(Math.max(0, beamPropagationRatio ** 2 - 1));
}

/** Beyond 3.4 blur radii the Gaussian is below e^{−23} = 9e-11. */
export const blurReach = 3.4;

/**
 * Matrix that turns samples of a coherent radial profile into the blurred profile at `targets`:
 * targets × samples, row by row. I_M(ρ) = ∫ (4/b²) ρ' e^{−2(ρ²+ρ'²)/b²} I0(4ρρ'/b²) I(ρ') dρ'.
 * The samples must reach {@link blurReach}·b beyond the largest target. To 1e-9.
 */
export function createBlurMatrix(
  grid: Pick<PanelledFunction, 'width' | 'count' | 'nodes'>,
  targets: Float64Array,
  blur: number,
): Float64Array {
  const columns = grid.nodes.length;
  const matrix = new Float64Array(targets.length * columns);
  targets.forEach((rho, t) => {
    const row = matrix.subarray(t * columns, (t + 1) * columns);
    if (blur === 0) addInterpolationRow(grid, rho, 1, row);
    else addBlurRow(grid, rho, blur, row);
  });
  return matrix;
}

function addBlurRow(
  grid: Pick<PanelledFunction, 'width' | 'count' | 'nodes'>,
  rho: number,
  blur: number,
  row: Float64Array,
): void {
  const low = Math.max(0, rho - blurReach * blur);
  const high = rho + blurReach * blur;
  // Over a panel of one blur radius or one grid panel, 16 nodes resolve both Gaussian and profile to 1e-11.
  const panels = Math.ceil((high - low) / Math.min(blur * 1.2, grid.width));
  const edges = Array.from({ length: panels + 1 }, (_, i) => low + ((high - low) * i) / panels);
  const rule = panelledRule(edges, 16);
  rule.nodes.forEach((other, i) => {
    const gauss = Math.exp((-2 * (rho - other) ** 2) / (blur * blur));
    const kernel = ((4 * other) / (blur * blur)) * gauss * besselI0Scaled((4 * rho * other) / (blur * blur));
    addInterpolationRow(grid, other, rule.weights[i]! * kernel, row);
  });
}

/** matrix × samples. */
export function applyMatrix(matrix: Float64Array, samples: Float64Array): Float64Array {
  const columns = samples.length;
  const result = new Float64Array(matrix.length / columns);
  for (let t = 0; t < result.length; t++) {
    let sum = 0;
    for (let k = 0; k < columns; k++) sum += matrix[t * columns + k]! * samples[k]!;
    result[t] = sum;
  }
  return result;
}
