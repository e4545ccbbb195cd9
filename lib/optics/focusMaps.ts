import { createFieldKernel, fieldFromKernel, layOutField } from './focalField.ts';
import { createAxisIrradiance } from './onAxis.ts';
import type { Zone } from './zones.ts';

/** Values over a grid of step ratio (columns) and a second coordinate (rows, from its lowest value). */
export interface RatioGrid {
  readonly columns: number;
  readonly rows: number;
  readonly values: Float64Array;
}

/** Equally spaced values from `low` to `high`, both included. */
export function spaced(low: number, high: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => low + ((high - low) * i) / (count - 1));
}

/**
 * What happens on the axis over step ratio κ and distance: relative irradiance, and its curvature (coefficient of ϱ²).
 * The beam is varied while plate, stop and lens stay, so distances are given in ζ·κ² = π a² z/(λ f B), which does not
 * contain the beam. Zones in units of the step radius; coherent light, flat wavefront. Closed form.
 */
export function axisMap(zones: readonly Zone[], ratios: Float64Array, distances: Float64Array) {
  const columns = ratios.length;
  const rows = distances.length;
  const irradiance = new Float64Array(columns * rows);
  const curvature = new Float64Array(columns * rows);
  for (let column = 0; column < columns; column++) {
    const ratio = ratios[column]!;
    const axis = createAxisIrradiance(zones.map(({ outer, phase }) => ({ outer: outer * ratio, phase })));
    for (let row = 0; row < rows; row++) {
      const here = axis(distances[row]! / (ratio * ratio));
      irradiance[row * columns + column] = here.value;
      curvature[row * columns + column] = here.slope;
    }
  }
  return { columns, rows, irradiance, curvature };
}

/**
 * Profile in the focus (ζ = 0) against step ratio at equal pulse energy: |U|²/κ² over κ (rows) and v = 2πaρ/(λB)
 * (columns), which does not contain the beam. Zones in units of the step radius; coherent light. One Bessel matrix
 * serves all rows.
 */
export function focusAgainstRatio(
  zones: readonly Zone[],
  ratios: Float64Array,
  radii: Float64Array,
): RatioGrid {
  const phases = zones.map((zone) => zone.phase);
  const smallest = ratios.reduce((a, b) => Math.min(a, b));
  const layout = layOutField(zones, 1 / smallest, radii.at(-1)!, 0);
  const kernel = createFieldKernel(layout, radii);
  const values = new Float64Array(ratios.length * radii.length);
  ratios.forEach((ratio, row) => {
    const { re, im } = fieldFromKernel(kernel, phases, ratio, 0);
    for (let i = 0; i < radii.length; i++) {
      values[row * radii.length + i] = (re[i]! ** 2 + im[i]! ** 2) / (ratio * ratio);
    }
  });
  return { columns: radii.length, rows: ratios.length, values };
}
