import { addInterpolationRow, panelNodes } from './panelledFunction.ts';

/**
 * Interpolation at many places from samples at the nodes of equal panels: what {@link addInterpolationRow} does, with
 * the weights kept for many functions. The returned function takes a row of panels · count samples for each function and
 * writes a row of `factor` times the values at `places` for each; 0 beyond the panels.
 */
export function interpolationRows(
  width: number,
  panels: number,
  count: number,
  places: Float64Array,
): (samples: Float64Array, factor: number, into: Float64Array) => void {
  const grid = { width, count, nodes: panelNodes(width, 1, count).nodes };
  const weights = new Float64Array(places.length * count);
  const starts = new Int32Array(places.length);
  places.forEach((place, i) => {
    const panel = Math.min(Math.floor(place / width), panels - 1);
    if (place > panels * width * (1 + 1e-12)) return;
    starts[i] = panel * count;
    const within = Math.min(width, Math.max(0, place - panel * width));
    addInterpolationRow(grid, within, 1, weights.subarray(i * count, (i + 1) * count));
  });
  const stride = panels * count;
  return (samples, factor, into) => {
    const rows = Math.floor(into.length / places.length);
    const use: Weights = { weights, starts, count, stride, factor };
    let row = 0;
    for (; row + 4 <= rows; row += 4) sumFour(use, samples, row, into);
    for (; row < rows; row++) sumOne(use, samples, row, into);
  };
}

interface Weights {
  readonly weights: Float64Array;
  /** First sample of the panel of each place. */
  readonly starts: Int32Array;
  readonly count: number;
  readonly stride: number;
  readonly factor: number;
}

/** Four rows at once: a sum that waits for each of its own additions takes three times as long a row. */
function sumFour(
  { weights, starts, count, stride, factor }: Weights,
  samples: Float64Array,
  row: number,
  into: Float64Array,
) {
  const places = starts.length;
  for (let i = 0, to = row * places; i < places; i++, to++) {
    let at = row * stride + starts[i]!;
    let [a, b, c, d] = [0, 0, 0, 0];
    for (let k = i * count; k < (i + 1) * count; k++, at++) {
      const weight = weights[k]!;
      a += weight * samples[at]!;
      b += weight * samples[at + stride]!;
      c += weight * samples[at + 2 * stride]!;
      d += weight * samples[at + 3 * stride]!;
    }
    into[to] = factor * a;
    into[to + places] = factor * b;
    into[to + 2 * places] = factor * c;
    into[to + 3 * places] = factor * d;
  }
}

function sumOne(
  { weights, starts, count, stride, factor }: Weights,
  samples: Float64Array,
  row: number,
  into: Float64Array,
) {
  const places = starts.length;
  for (let i = 0; i < places; i++) {
    const at = row * stride + starts[i]!;
    let sum = 0;
    for (let k = 0; k < count; k++) sum += weights[i * count + k]! * samples[at + k]!;
    into[row * places + i] = factor * sum;
  }
}
