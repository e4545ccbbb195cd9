import { panelledRule } from './gaussLegendre.ts';

/**
 * The even function e^{β(√(1−(2x/width)²) − 1)} on |x| < width/2, in steps of a grid: points are spread with it over the
 * grid before a Fourier transform, whose values are divided by the kernel's own transform.
 * Source: A. H. Barnett, J. Magland & L. af Klinteberg, SIAM J. Sci. Comput. 41, C479 (2019) (memory).
 */
export interface SpreadKernel {
  /** Grid points that one point is spread over, along each axis. */
  readonly width: number;
  /** Writes the weights of the `width` grid points around `place` (in steps) and returns the index of the first. */
  weigh(place: number, weights: Float64Array): number;
  /** ∫ kernel·cos(turn·x) dx, `turn` in rad a step, below π. */
  transformAt(turn: number): number;
}

const width = 6;
const samplesPerStep = 512;

/**
 * The kernel over six points, for frequencies up to π/`oversampling` rad a step; oversampling 1.5 or more. What is
 * spread and transformed is then within 2e-5 of the sum of the weights at 1.5, 5e-6 at 2.
 */
export function createSpreadKernel(oversampling: number): SpreadKernel {
  const steepness = 0.97 * Math.PI * width * (1 - 1 / (2 * oversampling));
  const kernelAt = (x: number) => {
    const square = 1 - ((2 * x) / width) ** 2;
    return square <= 0 ? 0 : Math.exp(steepness * (Math.sqrt(square) - 1));
  };
  // One column of weights for each of 512 places between two grid points, and one more to interpolate to.
  const table = new Float64Array((samplesPerStep + 1) * width);
  table.forEach((_, i) => {
    table[i] = kernelAt(Math.floor(i / width) / samplesPerStep + width / 2 - 1 - (i % width));
  });
  const { nodes, weights } = panelledRule([0, width / 2], 40);
  return {
    width,
    weigh: (place, into) => {
      const below = Math.floor(place);
      const at = (place - below) * samplesPerStep;
      const row = Math.floor(at);
      const part = at - row;
      for (let k = 0, i = row * width; k < width; k++, i++)
        into[k] = table[i]! + part * (table[i + width]! - table[i]!);
      return below - width / 2 + 1;
    },
    transformAt: (turn) =>
      nodes.reduce((sum, x, i) => sum + 2 * weights[i]! * kernelAt(x) * Math.cos(turn * x), 0),
  };
}
