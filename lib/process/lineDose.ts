import { highestOf } from '../numerics/highestBetween.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { Problem } from '../problem.ts';

/**
 * Accumulated fluence across parallel lines in a wide field over its mean, pulses dense along each line:
 * 1 + 2 Σ Re(M_k e^{2πiky/pitch}), M_k = harmonics the spot's spectrum at k/pitch across the lines, y from a line.
 */
export interface LineDose {
  /** Line spacing, m. */
  readonly pitch: number;
  /** M_k for k = 1, 2, …; none where no frequency of the lines is in the spot: then nothing is modulated. */
  readonly harmonics: { readonly re: Float64Array; readonly im: Float64Array };
  /** Highest and lowest accumulated fluence over the mean. */
  readonly max: number;
  readonly min: number;
  /** (max − min)/(max + min). */
  readonly modulation: number;
  /** Standard deviation over mean, √(2Σ|M_k|²). */
  readonly rms: number;
}

/** After so many harmonics of nothing none follows: far from the focus the spectrum is over long before its end. */
const silentInTurn = 6;

/**
 * The dose of lines `pitch` metres apart that run at `direction` (rad from x). Exact up to the spot's spectrum, 1e-11;
 * one frequency of the spectrum a harmonic, `pitch·spectrumEnd/2π` of them. Throws for a spacing that is not above 0.
 */
export function lineDose(
  spot: Pick<Spot, 'spectrum' | 'spectrumEnd'>,
  pitch: number,
  direction = 0,
): LineDose {
  requireSpacing(pitch, 'line spacing', 'scan.lineSpacing');
  const across = direction + Math.PI / 2;
  const [cos, sin] = [Math.cos(across), Math.sin(across)];
  const step = (2 * Math.PI) / pitch;
  const count = Math.ceil(spot.spectrumEnd(across) / step - 1e-12) - 1;
  const [re, im]: [number[], number[]] = [[], []];
  for (let k = 1, silent = 0; k <= count && silent < silentInTurn; k++) {
    const value = spot.spectrum(k * step * cos, k * step * sin);
    re.push(value.re);
    im.push(value.im);
    silent = Math.hypot(value.re, value.im) < 1e-13 ? silent + 1 : 0;
  }
  const harmonics = { re: Float64Array.from(re), im: Float64Array.from(im) };
  return { pitch, harmonics, ...extremesOf(pitch, harmonics), rms: rmsOf(harmonics) };
}

/** Accumulated fluence over its mean at the distance `y` from a line, m. */
export function doseAcross({ pitch, harmonics }: Pick<LineDose, 'pitch' | 'harmonics'>, y: number): number {
  let sum = 1;
  for (let i = 0; i < harmonics.re.length; i++) {
    const angle = (2 * Math.PI * (i + 1) * y) / pitch;
    sum += 2 * (harmonics.re[i]! * Math.cos(angle) - harmonics.im[i]! * Math.sin(angle));
  }
  return sum;
}

function rmsOf({ re, im }: LineDose['harmonics']): number {
  return Math.sqrt(2 * re.reduce((sum, value, i) => sum + value * value + im[i]! * im[i]!, 0));
}

function extremesOf(pitch: number, harmonics: LineDose['harmonics']) {
  if (harmonics.re.length === 0) return { max: 1, min: 1, modulation: 0 };
  const at = (y: number) => doseAcross({ pitch, harmonics }, y);
  // Eight tries a period of the highest harmonic bracket every extreme.
  const tries = [8 * (harmonics.re.length + 1)];
  const max = at(highestOf(at, 0, pitch, tries));
  const min = at(highestOf((y) => -at(y), 0, pitch, tries));
  return { max, min, modulation: (max - min) / (max + min) };
}

/** Throws where a spacing is not above 0. */
export function requireSpacing(spacing: number, what: string, input: string): void {
  if (spacing > 0 && Number.isFinite(spacing)) return;
  throw new Problem('impossible', `The ${what} is ${spacing} m; it must be above 0. Enter a distance.`, {
    input,
    value: `${spacing} m`,
    allowed: 'above 0',
  });
}
