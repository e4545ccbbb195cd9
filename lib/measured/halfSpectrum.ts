/** Half of the power spectrum of a real picture, laid out as in `TileSpectra`. */
export interface HalfSpectrum {
  /** Frequencies along y; along x there are size/2 + 1. */
  readonly size: number;
  readonly values: ArrayLike<number>;
}

/** Value at whole frequencies kx, ky from −size/2 to size/2, of either half. */
export function valueAt({ size, values }: HalfSpectrum, kx: number, ky: number): number {
  const [x, y] = kx < 0 ? [-kx, -ky] : [kx, ky];
  return values[x * size + ((y + size) & (size - 1))]!;
}

/** Value between the frequencies, bilinear. */
export function valueBetween(spectrum: HalfSpectrum, kx: number, ky: number): number {
  const [x, y] = [Math.floor(kx), Math.floor(ky)];
  const [u, v] = [kx - x, ky - y];
  const low = (1 - u) * valueAt(spectrum, x, y) + u * valueAt(spectrum, x + 1, y);
  const high = (1 - u) * valueAt(spectrum, x, y + 1) + u * valueAt(spectrum, x + 1, y + 1);
  return (1 - v) * low + v * high;
}

/** Weighted with 1 2 1 along both frequencies, which evens out the speckle of a spectrum of few tiles. */
export function smoothSpectrum({ size, values }: HalfSpectrum): HalfSpectrum {
  const rows = size / 2 + 1;
  const along = new Float64Array(rows * size);
  for (let row = 0; row < rows; row++) {
    for (let y = 0, i = row * size; y < size; y++) {
      const before = values[i + ((y - 1) & (size - 1))]!;
      const after = values[i + ((y + 1) & (size - 1))]!;
      along[i + y] = (before + 2 * values[i + y]! + after) / 4;
    }
  }
  const half = { size, values: along };
  const smooth = new Float64Array(rows * size);
  for (let x = 0, i = 0; x < rows; x++) {
    for (let y = 0; y < size; y++, i++) {
      const before = x === 0 ? valueAt(half, -1, y > size / 2 ? y - size : y) : along[i - size]!;
      const after = x === rows - 1 ? before : along[i + size]!;
      smooth[i] = (before + 2 * along[i]! + after) / 4;
    }
  }
  return { size, values: smooth };
}

/** Calls `visit` for each frequency of the half plane (along y from −size/2 + 1) within `radius` of kx, ky. */
export function visitDisc(
  size: number,
  kx: number,
  ky: number,
  radius: number,
  visit: (x: number, y: number, distance: number) => void,
): void {
  const most = size / 2 - 1;
  for (let x = Math.max(-most, Math.ceil(kx - radius)); x <= Math.min(most, kx + radius); x++) {
    for (let y = Math.max(-most, Math.ceil(ky - radius)); y <= Math.min(most, ky + radius); y++) {
      const distance = Math.hypot(x - kx, y - ky);
      if (distance <= radius) visit(x, y, distance);
    }
  }
}
