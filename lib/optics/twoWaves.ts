import { createFieldKernel, fieldFromKernel, layOutField } from './focalField.ts';
import { twoZones } from './matching.ts';

/** Focal amplitudes against the radius of the whole beam and of its middle alone, both as if there were no step. */
export interface TwoWaves {
  readonly whole: Float64Array;
  readonly centre: Float64Array;
}

/**
 * U_all and U_centre in the focus (ζ = 0) at radii ϱ, in units of the unshaped focus radius; both are real there.
 * Relative to the whole unclipped beam on the axis, to 1e-12. What a step of phase φ leaves is
 * U_all − (1 − e^{iφ}) U_centre.
 * Source: Collins, J. Opt. Soc. Am. 60, 1168 (1970), for a Gaussian beam behind a round plate.
 */
export function twoWavesInFocus(
  stepRatio: number,
  radii: Float64Array,
  stopPerStep: number | undefined,
): TwoWaves {
  const zones = twoZones(stepRatio, 0, stopPerStep);
  const furthest = 2 * radii.at(-1)!;
  const twice = radii.map((radius) => 2 * radius);
  const fieldOf = (count: number) => {
    const part = zones.slice(0, count);
    const kernel = createFieldKernel(layOutField(part, 1, furthest, 0), twice);
    const phases = part.map(() => 0);
    return fieldFromKernel(kernel, phases, 1, 0).re;
  };
  return { whole: fieldOf(2), centre: fieldOf(1) };
}
