import { largestOf } from '../numerics/largestOf.ts';
import { sumSquaredField } from '../numerics/sumKernel.ts';
import { layOutPlanes, planesPerPanel, setWeights } from './planeInterpolation.ts';
import type { RoundFocus } from './roundProfile.ts';
import { createThroughFocusSource, packRows, tileBessel, tileSource } from './throughFocusMap.ts';

/** |U|² at fixed radii for every ζ of a range: rows at a few planes a panel, from which any plane between follows. */
export interface FocusRows {
  /** The range of ζ. */
  readonly low: number;
  readonly high: number;
  /** Panels of ζ, each of {@link planesPerPanel} rows. */
  readonly panels: number;
  /** Radii a row. */
  readonly columns: number;
  /** Row by row, planes ascending. */
  readonly values: Float64Array;
}

/** What fixes the light at all planes. */
export type FocusShape = Omit<RoundFocus, 'defocus'>;

/**
 * |U|² of coherent light at radii v = 2πaρ/(λB) for low ≤ ζ ≤ high, low below high, to 1e-6 of the unshaped peak.
 * Source: Collins, J. Opt. Soc. Am. 60, 1168 (1970), for a Gaussian beam behind a round plate.
 */
export function focusRows(
  { zones, stepRatio }: Pick<FocusShape, 'zones' | 'stepRatio'>,
  radii: Float64Array,
  low: number,
  high: number,
): FocusRows {
  const furthest = Math.max(Math.abs(low), Math.abs(high));
  const source = createThroughFocusSource(zones, stepRatio, largestOf(radii), furthest);
  const count = source.nodes.length;
  const { panels, computed } = layOutPlanes(low, high - low, stepRatio * source.nodes[count - 1]!);
  const rows = sumSquaredField({
    count,
    source: tileSource(source, stepRatio, computed),
    bessel: tileBessel(source.nodes, radii),
  });
  const values = new Float64Array(computed.length * radii.length);
  packRows(rows, radii.length, values, computed.length);
  return { low, high, panels, columns: radii.length, values };
}

/** Every row times the transpose of `matrix` (wanted × columns, row by row), which may be mostly 0: a blur, or radii between. */
export function mapRows(rows: FocusRows, matrix: Float64Array): FocusRows {
  const from = rows.columns;
  const columns = matrix.length / from;
  const count = rows.values.length / from;
  const values = new Float64Array(count * columns);
  for (let target = 0; target < columns; target++) {
    const weights = matrix.subarray(target * from, (target + 1) * from);
    const [first, last] = filledPart(weights);
    for (let row = 0; row < count; row++) {
      const at = row * from;
      let sum = 0;
      for (let i = first; i < last; i++) sum += weights[i]! * rows.values[at + i]!;
      values[row * columns + target] = sum;
    }
  }
  return { ...rows, columns, values };
}

/** First index that is not 0 and the one behind the last. */
function filledPart(weights: Float64Array): [number, number] {
  let first = 0;
  let last = weights.length;
  while (first < last && weights[first] === 0) first++;
  while (last > first && weights[last - 1] === 0) last--;
  return [first, last];
}

/** The first `columns` values of the row at ζ, which lies in the range of the rows. */
export function rowAt(rows: FocusRows, defocus: number, columns = rows.columns): Float64Array {
  const place = ((defocus - rows.low) / (rows.high - rows.low)) * rows.panels;
  const panel = Math.min(rows.panels - 1, Math.max(0, Math.floor(place)));
  const weights = new Float64Array(planesPerPanel);
  setWeights(weights, 0, 2 * (place - panel) - 1);
  const result = new Float64Array(columns);
  for (let k = 0; k < planesPerPanel; k++) {
    const at = (panel * planesPerPanel + k) * rows.columns;
    const weight = weights[k]!;
    for (let i = 0; i < columns; i++) result[i]! += weight * rows.values[at + i]!;
  }
  return result;
}
