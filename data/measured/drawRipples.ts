import type { CameraImage } from '../../lib/measured/cameraImage.ts';
import { createRandom, type Random } from '../../lib/numerics/random.ts';

/** A rippled surface as a microscope sees it; lengths in pixels, greys as a share of full scale. */
export interface DrawnRipples {
  readonly width: number;
  readonly height: number;
  readonly period: number;
  /** Of the wave vector, rad, from the picture's x towards its y, which points down. */
  readonly direction: number;
  /** Half the difference of ridge and valley. */
  readonly amplitude: number;
  /** Share of the second harmonic, which makes ridges narrower than valleys. */
  readonly harmonic?: number;
  /** Standard deviation in rad by which the local wave vector turns, and the length over which it does. */
  readonly disorder?: number;
  readonly disorderLength?: number;
  /** Fine ripples at right angles to the others: their period and amplitude. */
  readonly finePeriod?: number;
  readonly fineAmplitude?: number;
  /** Amplitude at (x, y) as a share of `amplitude`. */
  readonly strength?: (x: number, y: number) => number;
  /** Standard deviation of a rough ground without direction, and the length over which it changes. */
  readonly roughness?: number;
  readonly roughLength?: number;
  /** Change of the background over the picture along x and y. */
  readonly gradientX?: number;
  readonly gradientY?: number;
  readonly noise?: number;
  readonly fullScale?: number;
  readonly seed?: number;
}

/**
 * Waves that make up a smooth random surface: with a hundred, values are normal to a few per cent. Their lengths are the
 * quantiles of the distribution and their directions lie evenly, so that slopes scatter as wanted in every direction.
 */
const waves = 100;

/** Draws the ripples: a sine whose phase wanders smoothly, so that its gradient turns by `disorder` about the mean. */
export function drawRipples(ripples: DrawnRipples): CameraImage {
  const { width, height, period, direction, amplitude, fullScale = 255, seed = 1 } = ripples;
  const { harmonic = 0, disorder = 0, disorderLength = 8 * period, noise = 0 } = ripples;
  const { roughness = 0, roughLength = period / 5 } = ripples;
  const { finePeriod, fineAmplitude = 0, gradientX = 0, gradientY = 0, strength } = ripples;
  const random = createRandom(seed);
  const wave = (2 * Math.PI) / period;
  const [kx, ky] = [wave * Math.cos(direction), wave * Math.sin(direction)];
  // The slope of a normal surface with correlation exp(−r²/2l²) is its height over l; across the wave vector it turns it.
  const bend = smoothSurface(width, height, disorderLength, disorder * wave * disorderLength, random);
  const rough = smoothSurface(width, height, roughLength, roughness, random);
  const fine = finePeriod === undefined ? 0 : period / finePeriod;
  const samples = new Uint16Array(width * height);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const phase = kx * x + ky * y + bend[i]!;
      let value = Math.cos(phase) + harmonic * Math.cos(2 * phase);
      if (fine > 0) value += (fineAmplitude / amplitude) * Math.cos(fine * (kx * y - ky * x));
      const plane = 0.45 + gradientX * (x / width - 0.5) + gradientY * (y / height - 0.5);
      const grey = plane + amplitude * value * (strength?.(x, y) ?? 1) + rough[i]! + noise * random.normal();
      samples[i] = Math.min(fullScale, Math.max(0, Math.round(fullScale * grey)));
    }
  }
  return { name: 'drawn.png', width, height, samples, fullScale };
}

/** A normal random surface of standard deviation `scatter` and correlation exp(−r²/2l²), l = `length`; row by row. */
export function smoothSurface(
  width: number,
  height: number,
  length: number,
  scatter: number,
  random: Random,
): Float64Array {
  const surface = new Float64Array(width * height);
  if (scatter === 0) return surface;
  const first = random.between(0, 2 * Math.PI);
  for (let wave = 0; wave < waves; wave++) {
    const q = Math.sqrt(-2 * Math.log((wave + 0.5) / waves)) / length;
    // The golden angle.
    const angle = first + 2.39996323 * wave;
    const start = random.between(0, 2 * Math.PI);
    addWave(
      surface,
      width,
      scatter * Math.sqrt(2 / waves),
      [q * Math.cos(angle), q * Math.sin(angle)],
      start,
    );
  }
  return surface;
}

/** Adds amplitude·cos(qx x + qy y + start); along a row by turning, which costs no cosines. */
function addWave(
  surface: Float64Array,
  width: number,
  amplitude: number,
  [qx, qy]: readonly [number, number],
  start: number,
): void {
  const [turnRe, turnIm] = [Math.cos(qx), Math.sin(qx)];
  for (let i = 0, y = 0; i < surface.length; y++) {
    let re = amplitude * Math.cos(qy * y + start);
    let im = amplitude * Math.sin(qy * y + start);
    for (let x = 0; x < width; x++, i++) {
      surface[i]! += re;
      const next = re * turnRe - im * turnIm;
      im = re * turnIm + im * turnRe;
      re = next;
    }
  }
}
