import { addInterpolationRow, panelNodes } from './panelledFunction.ts';

/**
 * Interpolation at many places from samples at the nodes of equal panels: what {@link addInterpolationRow} does, with
 * the weights kept for many functions. The returned function writes `factor` times the values at `places` into `into`;
 * 0 beyond the panels.
 */
export function interpolationRows(
  width: number,
  panels: number,
  count: number,
  places: Float64Array,
): (values: Float64Array, factor: number, into: Float64Array) => void {
  const grid = { width, count, nodes: panelNodes(width, 1, count).nodes };
  const weights = new Float64Array(places.length * count);
  const starts = new Int32Array(places.length);
  places.forEach((place, i) => {
    const panel = Math.min(Math.floor(place / width), panels - 1);
    if (place > panels * width * (1 + 1e-12)) return;
    starts[i] = panel * count;
    const within = Math.min(width, Math.max(0, place - panel * width));
    addInterpolationRow(grid, within, 1, weights.subarray(i * count, (i + 1) * count));
  });
  return (values, factor, into) => {
    for (let i = 0; i < places.length; i++) {
      const start = starts[i]!;
      let sum = 0;
      for (let k = 0; k < count; k++) sum += weights[i * count + k]! * values[start + k]!;
      into[i] = factor * sum;
    }
  };
}
