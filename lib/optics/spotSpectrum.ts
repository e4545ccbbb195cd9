import { type Complex, multiply } from '../numerics/complex.ts';
import type { Spot } from './askedSpot.ts';
import { blurRadius } from './coherence.ts';
import { defocusAt, type Light, type RoundPlate } from './light.ts';
import { type Overlap, overlapOfRound, type PlateBeam } from './plateOverlap.ts';
import { radiusScale } from './roundSpot.ts';

/** What a {@link Spot} says about its spatial frequencies. */
export type SpotSpectrum = Pick<Spot, 'spectrum' | 'spectrumForm' | 'spectrumEnd'>;

/** Shift in beam radii from which the overlap of two fields of a Gaussian beam is below e^{−s²/2} = 2e-17. */
export const endOfOverlap = 8.8;

/** A beam on the plate in units of w, with the point (qx, qy) in w0·B/f about which its spot lies. */
export type PlacedBeam = PlateBeam & { readonly qx: number; readonly qy: number };

const centred: PlacedBeam = { x0: 0, y0: 0, ax: 1, ay: 1, qx: 0, qy: 0 };

/** The spectrum of a round beam on the centre of round zones in the plane z, from the plate's field. */
export function centredSpectrum(
  light: Light,
  plate: RoundPlate,
  z: number,
  transmission: number,
): SpotSpectrum {
  return spectrumOfRound(light, plate, z, centred, transmission);
}

/**
 * The spectrum of a beam on round zones: its field's overlap with itself at q/2, over that at 0 (π/2 of the part
 * `transmission` that passes the stop), blurred where M² > 1.
 */
export function spectrumOfRound(
  light: Light,
  plate: RoundPlate,
  z: number,
  beam: PlacedBeam,
  transmission: number,
): SpotSpectrum {
  const zones = plate.zones.map(({ outer, phase }) => ({ outer: outer / light.beamRadius, phase }));
  const scale = radiusScale(light, z);
  const overlap = overlapOfRound(zones, defocusAt(light, z), beam);
  const whole = (transmission * Math.PI) / 2;
  const blur = blurRadius(light.beamPropagationRatio);
  // The blur's e^{−q²b²/8} and the overlap's e^{−q²/8w²}, w the beam's wider radius.
  const narrowing = Math.hypot(blur, 1 / Math.max(beam.ax, beam.ay));
  const end = Math.min(4 * zones.at(-1)!.outer, (2 * endOfOverlap) / narrowing);
  return {
    spectrum: (qx, qy) => {
      const [x, y] = [qx * scale, qy * scale];
      const size = blurFactor(x, blur) * blurFactor(y, blur);
      const turn = -(x * beam.qx + y * beam.qy);
      const turned = { re: size * Math.cos(turn), im: size * Math.sin(turn) };
      return multiply(turned, shareAt(overlap, x, y, whole));
    },
    spectrumForm: beam === centred ? 'round' : 'integrated',
    spectrumEnd: () => end / scale,
  };
}

/** What a Gaussian blur of 1/e² radius `blur` leaves of the frequency q along one axis. */
export function blurFactor(q: number, blur: number): number {
  return Math.exp((-q * q * blur * blur) / 8);
}

function shareAt(overlap: Overlap, qx: number, qy: number, whole: number): Complex {
  if (qx === 0 && qy === 0) return { re: 1, im: 0 };
  const { re, im } = overlap(qx / 2, qy / 2);
  return { re: re / whole, im: im / whole };
}
