import type { Complex } from '../numerics/complex.ts';

/**
 * The light on the workpiece as process code asks it; the plate's shape stays behind. Metres; irradiance relative to
 * the axis of the unshaped, unclipped, M² = 1 beam in its focus, (f/B)²|U|², which times 2E/(πw0²) is the fluence of
 * a pulse of energy E before the stop, w0 the 1/e² radius of that focus.
 */
export interface Spot {
  /** Relative irradiance at (x, y), to 1e-8. 0 beyond the computed reach, where the spot has died away. */
  irradianceAt(x: number, y: number): number;
  /**
   * Area in m² where the relative irradiance is above `level`, within the computed reach. Centred round spots: exact to
   * 1e-8. Others are sampled on a grid: to 1e-4 of the area itself or of that above half the peak,
   * the greater one (a Gaussian in the focus).
   */
  areaAbove(level: number): number;
  /** Highest relative irradiance, to 1e-8. */
  readonly peak: number;
  /** Energy through the stop over peak fluence, m²: πw²/2 for a Gaussian of 1/e² radius w. */
  readonly effectiveArea: number;
  /** Part of the incident energy that passes the stop. */
  readonly transmission: number;
  /**
   * Normalised spectrum M = ∫I e^{−i(qx·x + qy·y)} dx dy / ∫I of the relative irradiance I at the spatial frequency (qx, qy)
   * in rad/m: 1 at 0, real where the spot is the same about its centre. Over the whole plane, with all of the tail;
   * from the field on the plate, to 1e-12. 0.2 to 1 ms a frequency on round zones, microseconds on straight steps.
   */
  spectrum(qx: number, qy: number): Complex;
  /**
   * `round`: the spectrum depends on |q| alone. `straight`: edges are straight, tails go out in arms; microseconds a
   * frequency. `integrated`: neither, up to 1 ms a frequency. All but `straight` are tabulated by whoever asks often.
   */
  readonly spectrumForm: 'round' | 'straight' | 'integrated';
  /**
   * |q| in rad/m along `direction` (rad from x) from which the spectrum is 0: exactly behind a stop, below 1e-15 without.
   */
  spectrumEnd(direction: number): number;
}
