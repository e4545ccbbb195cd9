import { valueAt } from '../../lib/numerics/panelledFunction.ts';
import type { Light } from '../../lib/optics/light.ts';
import {
  planRoundProfile,
  planText,
  prepareRoundProfile,
  type RoundKernel,
} from '../../lib/optics/roundProfile.ts';
import { radiusScale, roundFocusAt, roundProfileFromKernel } from '../../lib/optics/roundSpot.ts';

/**
 * Irradiance through the focus, M² included: a row a plane `zs`, a column a radius `rhos` (both in metres; signs of radii do
 * not count), relative to the axis of the unshaped, unclipped, M² = 1 beam in its focus. Each plane is computed on its own,
 * to 1e-9, with kernels kept from plane to plane. Throws a Problem for planes too far from the focus.
 */
export function familyMap(light: Light, zs: Float64Array, rhos: Float64Array): Float64Array {
  const reach = rhos.reduce((most, rho) => Math.max(most, Math.abs(rho)), 0);
  const kernels = new Map<string, RoundKernel>();
  const values = new Float64Array(zs.length * rhos.length);
  zs.forEach((z, row) => {
    const focus = roundFocusAt(light, z);
    const plan = planRoundProfile(focus, reach / radiusScale(light, z));
    const key = planText(plan);
    const kernel = kernels.get(key) ?? prepareRoundProfile(focus, plan);
    kernels.set(key, kernel);
    const profile = roundProfileFromKernel(light, z, kernel);
    rhos.forEach((rho, column) => {
      values[row * rhos.length + column] = Math.max(0, valueAt(profile, Math.abs(rho)));
    });
  });
  return values;
}
