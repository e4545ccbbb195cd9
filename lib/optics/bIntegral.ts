import { requireAbove } from './beamChecks.ts';

/**
 * B-integral in rad over a plate or window thin enough that the irradiance stays: (2π/λ) n2 I L.
 * `irradiance`: peak on the axis in W/m² (see `peakIrradiance`); `thickness` L in m; `wavelength` in m, vacuum;
 * `nonlinearIndex` n2 in m²/W (fused silica 2.7e-20: D. Milam, Appl. Opt. 37, 546 (1998)).
 */
export function bIntegral(
  irradiance: number,
  thickness: number,
  wavelength: number,
  nonlinearIndex: number,
): number {
  requireAbove('wavelength', wavelength, 'm');
  return (2 * Math.PI * nonlinearIndex * irradiance * thickness) / wavelength;
}
