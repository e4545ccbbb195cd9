import { describe, expect, it } from 'vitest';
import { drawRipples } from '../../data/measured/drawRipples.ts';
import { valueAt } from '../../lib/measured/halfSpectrum.ts';
import { takeRegion } from '../../lib/measured/markLevels.ts';
import { type TileSpectra, tileSize, tileSpectra } from '../../lib/measured/rippleSpectrum.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { expectClose } from '../close.ts';

function spectraOf(image: Parameters<typeof takeRegion>[0]): TileSpectra {
  const steps = tileSpectra(takeRegion(image), tileSize(image.width, image.height));
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

describe('tile spectra', () => {
  it('of each tile: the double sum, with the window and without the plane', () => {
    const [width, height] = [34, 32];
    const random = createRandom(12);
    const samples = Float64Array.from({ length: width * height }, () => random.normal());
    const tilted = samples.map((value, i) => 40 + value + 3 * (i % width) - 2 * Math.floor(i / width));
    const image = { name: 'a', width, height, fullScale: undefined };
    const spectra = spectraOf({ ...image, samples });
    const same = spectraOf({ ...image, samples: tilted });
    expect(spectra.size).toBe(16);
    expect(spectra.corners[0]).toEqual([0, 0]);
    expect(spectra.corners.at(-1)).toEqual([18, 16]);
    spectra.powers.forEach((power, t) => {
      power.forEach((value, i) => {
        expectClose(same.powers[t]![i]!, value, { absolute: 1e-5 });
      });
    });
    const [kx, ky] = [5, -3];
    spectra.powers.forEach((values, t) => {
      const [left, top] = spectra.corners[t]!;
      let [re, im] = [0, 0];
      for (let y = 0; y < 16; y++) {
        for (let x = 0; x < 16; x++) {
          const weight =
            (0.5 - 0.5 * Math.cos((Math.PI * x) / 8)) * (0.5 - 0.5 * Math.cos((Math.PI * y) / 8));
          const phase = (-2 * Math.PI * (kx * x + ky * y)) / 16;
          re += weight * samples[(top + y) * width + left + x]! * Math.cos(phase);
          im += weight * samples[(top + y) * width + left + x]! * Math.sin(phase);
        }
      }
      // A Hann window and with it a plane reach three steps of frequency at most only by their slopes: 1e-2 here.
      const expected = (re * re + im * im) / (16 ** 2 * 36);
      expectClose(valueAt({ size: 16, values }, kx, ky), expected, { absolute: 2e-4, source: 'double sum' });
      expect(valueAt({ size: 16, values }, -kx, -ky)).toBe(valueAt({ size: 16, values }, kx, ky));
    });
  });

  it('sum up to the variance', () => {
    const random = createRandom(13);
    const samples = Float64Array.from({ length: 256 * 256 }, () => 3 * random.normal());
    const { mean, size } = spectraOf({ name: 'a', width: 256, height: 256, fullScale: undefined, samples });
    let sum = 0;
    for (let i = 0; i < mean.length; i++) sum += (i < size || i >= mean.length - size ? 1 : 2) * mean[i]!;
    // 65536 values tell their variance to 0.6 %; the window of nine tiles weighs a third of them.
    expectClose(sum, 9, { relative: 0.02, source: 'variance as drawn' });
  });

  it('tiles: powers of two, at least two along each side, at most 512 pixels', () => {
    const sizes = [64, 100, 128, 200, 256, 600, 1024, 2048, 4096].map((side) => tileSize(side, side + 30));
    expect(sizes).toEqual([32, 64, 64, 128, 128, 256, 512, 512, 512]);
    const { corners, size } = spectraOf(
      drawRipples({ width: 500, height: 130, period: 9, direction: 1, amplitude: 0.2 }),
    );
    expect(size).toBe(64);
    const lefts = [...new Set(corners.map(([left]) => left))];
    lefts.slice(1).forEach((left, i) => {
      expect(left - lefts[i]!).toBeLessThanOrEqual(0.75 * size + 1);
    });
    expect(lefts.at(-1)).toBe(500 - size);
  });
});
