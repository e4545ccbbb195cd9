import { highestNear } from '../numerics/highestPoint.ts';
import { areaAboveLevel, prepareLevels, type SampledGrid } from '../numerics/levelArea.ts';
import type { Spot } from './askedSpot.ts';
import { defocusAt, focusRadius, type Light } from './light.ts';
import { furthestDefocus, tooFar } from './roundSpot.ts';
import type { SpotSpectrum } from './spotSpectrum.ts';

/**
 * Step of the grid in w0·B/f, for stops of w and more. On a Gaussian of radius 1 areas are then within 6e-5 for levels of
 * 0.02 to 0.7 of the peak, 3e-4 at 0.9 (4e-4 and 2e-3 for twice the step).
 */
export const gridStep = 0.03;

/** A spot that is not round, in metres. */
export interface SampledSpot extends SpotSpectrum {
  irradianceAt(x: number, y: number): number;
  /** Samples with the position of the first; called once, when first needed. */
  sample(): { readonly grid: SampledGrid; readonly x: number; readonly y: number };
  /** How often the sampled part appears in the whole: 4 for one quadrant. */
  readonly copies: number;
  readonly transmission: number;
}

/** Answers the questions of a {@link Spot} from samples; they are taken when the first question needs them. */
export function gridSpot(light: Light, sampled: SampledSpot): Spot {
  const samples = once(() => sampled.sample());
  const levels = once(() => prepareLevels(samples().grid));
  const peak = once(() => {
    const { grid, x, y } = samples();
    const at = grid.values.reduce((best, value, i) => (value > grid.values[best]! ? i : best), 0);
    const [row, column] = [Math.floor(at / grid.columns), at % grid.columns];
    return highestNear(sampled.irradianceAt, x + column * grid.stepX, y + row * grid.stepY, grid.stepX).value;
  });
  return {
    irradianceAt: sampled.irradianceAt,
    // The prepared samples rise above a sharp maximum, by 1e-4 of it.
    areaAbove: (level) => (level >= peak() ? 0 : sampled.copies * areaAboveLevel(levels(), level)),
    get peak() {
      return peak();
    },
    get effectiveArea() {
      return effectiveAreaOf(light, sampled.transmission, peak());
    },
    transmission: sampled.transmission,
    spectrum: sampled.spectrum,
    spectrumForm: sampled.spectrumForm,
    spectrumEnd: sampled.spectrumEnd,
  };
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** T·(πw0²/2)/peak: ∫ of the relative irradiance over the plane is T·πw0²/2 whatever z and M² (Parseval). */
export function effectiveAreaOf(light: Light, transmission: number, peak: number): number {
  return (transmission * Math.PI * focusRadius(light) ** 2) / 2 / peak;
}

/** ζ at z, or a Problem where |ζ| is above {@link furthestDefocus}. */
export function usableDefocus(light: Light, z: number): number {
  const defocus = defocusAt(light, z);
  if (Math.abs(defocus) <= furthestDefocus) return defocus;
  throw tooFar(light, defocus, 'spots');
}
