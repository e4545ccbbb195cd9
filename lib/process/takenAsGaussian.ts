import type { Spot } from '../optics/askedSpot.ts';
import { fitGaussianMarks } from './gaussianMarks.ts';
import { markOf } from './marks.ts';

/** What a fit of D² against ln E would make of a spot's marks without scatter. */
export interface TakenAsGaussian {
  /** Highest energy of the marks over the least that marks. */
  readonly upTo: number;
  /** Fitted over true threshold energy. */
  readonly energyFactor: number;
  /** Fitted over true peak fluence at the threshold. */
  readonly fluenceFactor: number;
  /** Fitted 1/e² radius, m. */
  readonly beamRadius: number;
}

/** Lowest energy of the marks over the least that marks, and the number of energies: eight are common practice. */
const from = 1.2;
const count = 8;

/**
 * Fits a Gaussian to the marks that a spot leaves at eight energies in equal ratios, from 1.2 to `upTo` times the least
 * that marks. `focusRadius` is the 1/e² radius w0, m, to whose peak irradiance that of the spot is relative. For a Gaussian
 * both factors are 1 and the radius is its own. Throws Problem 'impossible' where the marks do not grow with the energy.
 */
export function takenAsGaussian(spot: Spot, focusRadius: number, upTo: number): TakenAsGaussian {
  const marks = Array.from({ length: count }, (_, i) => {
    const energy = from * (upTo / from) ** (i / (count - 1));
    return { row: i + 1, energy, area: markOf(spot, spot.peak / energy).area, pulses: 1, z: 0 };
  });
  const { thresholdEnergy, beamRadius } = fitGaussianMarks(marks);
  // 2E/(πw²) of the fit over (2E/(πw0²))·peak of the spot, at a true threshold energy of 1.
  const fluenceFactor = (thresholdEnergy * focusRadius ** 2) / (beamRadius ** 2 * spot.peak);
  return { upTo, energyFactor: thresholdEnergy, fluenceFactor, beamRadius };
}
