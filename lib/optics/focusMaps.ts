import { createFieldKernel, fieldFromKernel, layOutField } from './focalField.ts';
import { createAxisField } from './onAxis.ts';
import type { Zone } from './zones.ts';

/**
 * The maps here vary the beam while plate, stop and lens stay. A phase enters only as a factor of each zone, and a zone
 * is a disc less the disc inside it: the fields of the discs are kept, and a new phase costs a sum over them.
 */
export interface DiscFields {
  readonly columns: number;
  readonly rows: number;
  /** One a disc, from the innermost. */
  readonly fields: readonly Float64Array[];
}

/** Values over a grid of step ratio and a second coordinate, row by row. */
export interface RatioGrid {
  readonly columns: number;
  readonly rows: number;
  readonly values: Float64Array;
}

/** Equally spaced values from `low` to `high`, both included. */
export function spaced(low: number, high: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => low + ((high - low) * i) / (count - 1));
}

/** Factor of each disc in the field: e^{iφ} of its own zone less that of the zone around it. */
function discFactors(phases: readonly number[]): { re: number; im: number }[] {
  return phases.map((phase, j) => {
    const next = phases[j + 1];
    return {
      re: Math.cos(phase) - (next === undefined ? 0 : Math.cos(next)),
      im: Math.sin(phase) - (next === undefined ? 0 : Math.sin(next)),
    };
  });
}

/**
 * Fields about the axis of discs with `edges` in units of the step radius, over step ratio κ (columns) and distance
 * (rows): re, im of U0, then of U2. Distances are given in ζ·κ², which does not contain the beam
 * ({@link file://./distanceScale.ts}).
 * Coherent light. Closed form.
 */
export function axisDiscs(
  edges: readonly number[],
  ratios: Float64Array,
  distances: Float64Array,
): DiscFields {
  const [columns, rows] = [ratios.length, distances.length];
  const fields = edges.map((edge) => {
    const values = new Float64Array(4 * columns * rows);
    ratios.forEach((ratio, column) => {
      const fieldAt = createAxisField([{ outer: edge * ratio, phase: 0 }]);
      distances.forEach((distance, row) => {
        values.set(fieldAt(distance / (ratio * ratio)).subarray(0, 4), 4 * (row * columns + column));
      });
    });
    return values;
  });
  return { columns, rows, fields };
}

/**
 * Relative irradiance on the axis, and its curvature (coefficient of ϱ²), over the grid of {@link axisDiscs}. `strengths`
 * are (f/B)² of the rows; 1 where left out, as for a plate one focal length before the lens.
 */
export function axisMap(
  { columns, rows, fields }: DiscFields,
  phases: readonly number[],
  strengths: Float64Array = new Float64Array(rows).fill(1),
) {
  const factors = discFactors(phases);
  const irradiance = new Float64Array(columns * rows);
  const curvature = new Float64Array(columns * rows);
  for (let i = 0; i < columns * rows; i++) {
    let [re0, im0, re2, im2] = [0, 0, 0, 0];
    for (let j = 0; j < fields.length; j++) {
      const { re, im } = factors[j]!;
      const u = fields[j]!;
      re0 += re * u[4 * i]! - im * u[4 * i + 1]!;
      im0 += re * u[4 * i + 1]! + im * u[4 * i]!;
      re2 += re * u[4 * i + 2]! - im * u[4 * i + 3]!;
      im2 += re * u[4 * i + 3]! + im * u[4 * i + 2]!;
    }
    const strength = strengths[Math.floor(i / columns)]!;
    irradiance[i] = strength * (re0 * re0 + im0 * im0);
    curvature[i] = -2 * strength * (re0 * re2 + im0 * im2);
  }
  return { columns, rows, irradiance, curvature };
}

/**
 * Fields in the focus (ζ = 0), which are real, of discs with `edges` in units of the step radius, over
 * v = 2πaρ/(λB) (columns), which does not contain the beam, and step ratio κ (rows).
 */
export function focusDiscs(edges: readonly number[], ratios: Float64Array, radii: Float64Array): DiscFields {
  const smallest = ratios.reduce((a, b) => Math.min(a, b));
  const fields = edges.map((edge) => {
    const disc: Zone[] = [{ outer: edge, phase: 0 }];
    const kernel = createFieldKernel(layOutField(disc, 1 / smallest, radii.at(-1)!, 0), radii);
    const values = new Float64Array(ratios.length * radii.length);
    ratios.forEach((ratio, row) => {
      values.set(fieldFromKernel(kernel, [0], ratio, 0).re, row * radii.length);
    });
    return values;
  });
  return { columns: radii.length, rows: ratios.length, fields };
}

/** Profile in the focus against step ratio at equal pulse energy, |U|²/κ², over the grid of {@link focusDiscs}. */
export function focusAgainstRatio(
  discs: DiscFields,
  phases: readonly number[],
  ratios: Float64Array,
): RatioGrid {
  const { columns, rows, fields } = discs;
  const factors = discFactors(phases);
  const values = new Float64Array(columns * rows);
  for (let i = 0; i < columns * rows; i++) {
    let [re, im] = [0, 0];
    for (let j = 0; j < fields.length; j++) {
      re += factors[j]!.re * fields[j]![i]!;
      im += factors[j]!.im * fields[j]![i]!;
    }
    values[i] = (re * re + im * im) / ratios[Math.floor(i / columns)]! ** 2;
  }
  return { columns, rows, values };
}
