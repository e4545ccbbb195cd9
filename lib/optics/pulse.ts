import { requireAbove } from './beamChecks.ts';

/** Peak power × FWHM duration / energy of a Gaussian pulse: 2√(ln 2/π) = 0.9394. */
const gaussianPulseFactor = 2 * Math.sqrt(Math.LN2 / Math.PI);

/** Peak power in W of a Gaussian pulse: 0.9394 E/τ, `energy` in J, `duration` as FWHM in s (above 0). */
export function peakPower(energy: number, duration: number): number {
  requireAbove('pulse duration', duration, 's');
  return (gaussianPulseFactor * energy) / duration;
}

/**
 * Irradiance in W/m² on the axis of a Gaussian beam: 2P/(πw²), `power` in W (peak power for a pulse), `radius` w the
 * 1/e² radius in m (above 0).
 */
export function peakIrradiance(power: number, radius: number): number {
  requireAbove('beam radius', radius, 'm');
  return (2 * power) / (Math.PI * radius * radius);
}
