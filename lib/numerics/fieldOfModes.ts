import FFT from 'fft.js';

/**
 * Fourier modes kx = 0 … `most`, ky = −`most` … `most` of a real function on a square of side `size`; those of negative
 * kx are their conjugates. (re, im) interleaved: index 2·(kx·(2·most+1) + ky + most).
 */
export interface Modes {
  readonly most: number;
  readonly values: Float64Array;
}

/** Modes Σ f(i,j) e^{−2πi(kx·i + ky·j)/size} of real `values`, size × size row by row, size a power of two. */
export function modesOf(values: Float64Array, size: number, most: number): Modes {
  const fft = new FFT(size);
  const columns = Array.from({ length: most + 1 }, () => new Float64Array(2 * size));
  const [packed, row] = [new Float64Array(2 * size), new Float64Array(2 * size)];
  // Two real rows are one complex row.
  for (let y = 0; y < size; y += 2) {
    for (let x = 0; x < size; x++) {
      packed[2 * x] = values[y * size + x]!;
      packed[2 * x + 1] = values[(y + 1) * size + x]!;
    }
    fft.transform(row, packed);
    for (let k = 0; k <= most; k++) {
      const mirrored = 2 * ((size - k) % size);
      const [re, im, otherRe, otherIm] = [row[2 * k]!, row[2 * k + 1]!, row[mirrored]!, row[mirrored + 1]!];
      const column = columns[k]!;
      column[2 * y] = (re + otherRe) / 2;
      column[2 * y + 1] = (im - otherIm) / 2;
      column[2 * y + 2] = (im + otherIm) / 2;
      column[2 * y + 3] = (otherRe - re) / 2;
    }
  }
  const side = 2 * most + 1;
  const modes = new Float64Array(2 * (most + 1) * side);
  columns.forEach((column, k) => {
    fft.transform(row, column);
    for (let l = -most; l <= most; l++) {
      const from = 2 * ((l + size) % size);
      const to = 2 * (k * side + l + most);
      modes[to] = row[from]!;
      modes[to + 1] = row[from + 1]!;
    }
  });
  return { most, values: modes };
}

/** Where a function of modes is wanted: every `stride`-th of `size` points a side, from the first, size > 2·most. */
export interface FieldPoints {
  readonly size: number;
  readonly stride: number;
  readonly columns: number;
  readonly rows: number;
}

/** Σ over all modes of their value times e^{2πi(kx·i + ky·j)/size} at those points, row by row. */
export function fieldOfModes(
  { most, values }: Modes,
  { size, stride, columns, rows }: FieldPoints,
): Float64Array {
  const fft = new FFT(size);
  const side = 2 * most + 1;
  const along = new Float64Array(2 * (most + 1) * rows);
  const [column, row] = [new Float64Array(2 * size), new Float64Array(2 * size)];
  for (let k = 0; k <= most; k++) {
    column.fill(0);
    for (let l = -most; l <= most; l++) {
      const from = 2 * (k * side + l + most);
      const to = 2 * ((l + size) % size);
      column[to] = values[from]! * size;
      column[to + 1] = values[from + 1]! * size;
    }
    fft.inverseTransform(row, column);
    for (let j = 0; j < rows; j++) {
      along[2 * (j * (most + 1) + k)] = row[2 * j * stride]!;
      along[2 * (j * (most + 1) + k) + 1] = row[2 * j * stride + 1]!;
    }
  }
  const field = new Float64Array(columns * rows);
  for (let j = 0; j < rows; j += 2) {
    packRows(along, most, j, j + 1 < rows ? j + 1 : j, column, size);
    fft.inverseTransform(row, column);
    for (let i = 0; i < columns; i++) {
      field[j * columns + i] = row[2 * i * stride]!;
      if (j + 1 < rows) field[(j + 1) * columns + i] = row[2 * i * stride + 1]!;
    }
  }
  return field;
}

/** Half spectra of two real rows as the whole spectrum of first + i·second, times size. */
function packRows(
  along: Float64Array,
  most: number,
  first: number,
  second: number,
  into: Float64Array,
  size: number,
): void {
  into.fill(0);
  for (let k = 0; k <= most; k++) {
    const [a, b] = [2 * (first * (most + 1) + k), 2 * (second * (most + 1) + k)];
    const [aRe, aIm, bRe, bIm] = [along[a]!, along[a + 1]!, along[b]!, along[b + 1]!];
    into[2 * k] = size * (aRe - bIm);
    into[2 * k + 1] = size * (aIm + bRe);
    if (k === 0) continue;
    into[2 * (size - k)] = size * (aRe + bIm);
    into[2 * (size - k) + 1] = size * (bRe - aIm);
  }
}
