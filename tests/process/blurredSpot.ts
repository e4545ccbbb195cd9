import { areaAboveLevel, prepareLevels } from '../../lib/numerics/levelArea.ts';
import type { Spot } from '../../lib/optics/askedSpot.ts';
import { focusRadius, type Light } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';

const count = 240;
const step = 0.12e-6;

/**
 * The spot of an elliptical beam of any M² near the focus, from samples of that of M² = 1: each axis convolved with the
 * Gaussian of √(M⁴−1) focus radii of its own (as lib/optics/coherence.ts says for a round beam). Asked at multiples of
 * 0.12 µm only; areas and peak are those of the samples.
 */
export function blurredSpot(light: Light, z: number): Spot {
  const sharp = spotAt({ ...light, beamPropagationRatio: 1 }, z);
  const blur = Math.sqrt(light.beamPropagationRatio ** 2 - 1) * focusRadius(light);
  const reach = Math.ceil((1.7 * 2 * blur) / step);
  const side = count + reach;
  const samples = Float64Array.from({ length: side * side }, (_, i) =>
    sharp.irradianceAt((i % side) * step, Math.floor(i / side) * step),
  );
  // With an aspect above 1 the beam is narrower along x at the plate, and its focus wider.
  const root = Math.sqrt(light.beamAspect);
  const rows = convolved(samples, side, reach, kernelOf(blur * root, reach), 1, side);
  const values = convolved(rows, side, reach, kernelOf(blur / root, reach), side, 1);
  const inside = Float64Array.from(
    { length: count * count },
    (_, i) => values[Math.floor(i / count) * side + (i % count)]!,
  );
  const levels = prepareLevels({ columns: count, rows: count, stepX: step, stepY: step, values: inside });
  const peak = inside.reduce((most, value) => Math.max(most, value), 0);
  return {
    irradianceAt: (x, y) => inside[Math.round(y / step) * count + Math.round(x / step)] ?? 0,
    areaAbove: (level) => 4 * areaAboveLevel(levels, level),
    peak,
    effectiveArea: Number.NaN,
    transmission: Number.NaN,
    spectrum: (qx, qy) => {
      const { re, im } = sharp.spectrum(qx, qy);
      const size = Math.exp((-((qx * root) ** 2 + (qy / root) ** 2) * blur * blur) / 8);
      return { re: re * size, im: im * size };
    },
    spectrumForm: sharp.spectrumForm,
    spectrumEnd: (direction) => sharp.spectrumEnd(direction),
  };
}

/** Weights from the middle outward, adding up to 1 over both sides; a Gaussian of 1/e² radius `radius`. */
function kernelOf(radius: number, reach: number): number[] {
  if (radius === 0) return [1];
  const weights = Array.from({ length: reach + 1 }, (_, i) => Math.exp(-2 * ((i * step) / radius) ** 2));
  const sum = weights.reduce((total, weight, i) => total + (i === 0 ? weight : 2 * weight), 0);
  return weights.map((weight) => weight / sum);
}

/** Along one direction, `stride` samples apart; what lies beyond the axes is the mirrored image. */
function convolved(
  samples: Float64Array,
  side: number,
  reach: number,
  kernel: readonly number[],
  stride: number,
  across: number,
): Float64Array {
  const result = new Float64Array(samples.length);
  for (let line = 0; line < side; line++) {
    for (let i = 0; i < side - reach; i++) {
      let sum = 0;
      kernel.forEach((weight, k) => {
        const [before, after] = [Math.abs(i - k), i + k];
        const value = samples[line * across + after * stride]!;
        sum += weight * (k === 0 ? value : value + samples[line * across + before * stride]!);
      });
      result[line * across + i * stride] = sum;
    }
  }
  return result;
}
