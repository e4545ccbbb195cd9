import type { OpticalConstants } from '../materials/opticalConstants.ts';

/**
 * Part of the light that a flat surface of index n + ik absorbs at normal incidence from an ambient of index
 * `ambientIndex`, 0…1: 1 − |((n+ik) − n_a)/((n+ik) + n_a)|² = 4 n n_a/((n+n_a)² + k²), Fresnel's equations. All that is
 * not reflected is taken as absorbed, as in metals and in thick layers.
 */
export function normalAbsorptance({ n, k }: OpticalConstants, ambientIndex: number): number {
  return (4 * n * ambientIndex) / ((n + ambientIndex) ** 2 + k * k);
}
