import { sumKernelProgram } from './sumKernelProgram.ts';

/** Sums for |U|² at many radii in many planes, packed as the inner loop reads them. */
export interface FieldSums {
  /** Nodes a sum. */
  readonly count: number;
  /** [pair of planes][node][re, im of the first, re, im of the second]. */
  readonly source: Float64Array;
  /** J0, [tile of four radii][node][radius]. */
  readonly bessel: Float64Array;
  /** Rows wanted as sums of rows computed; without it the computed rows are the answer. */
  readonly combine?: RowSums;
}

/** Row r is the sum over k < terms of weights[r·terms + k] times computed row starts[r] + k. */
export interface RowSums {
  readonly terms: number;
  readonly starts: Int32Array;
  readonly weights: Float64Array;
}

/** Rows of `stride` doubles, a row a plane; in memory that the next call overwrites. */
export interface Rows {
  readonly values: Float64Array;
  readonly stride: number;
}

/** Planes and radii that the inner loop takes at once. */
export const planesPerTile = 2;
export const radiiPerTile = 4;

/** Rows shifted by a cache line each: at 512 radii twelve rows would else share the eight ways of one set. */
const rowShift = 8;

interface Exports {
  readonly memory: { readonly buffer: ArrayBuffer; grow(pages: number): number };
  squaredField(
    source: number,
    bessel: number,
    out: number,
    count: number,
    pairs: number,
    tiles: number,
    stride: number,
  ): void;
  combineRows(
    rows: number,
    starts: number,
    weights: number,
    out: number,
    terms: number,
    count: number,
    tiles: number,
    stride: number,
  ): void;
}

interface WebAssemblyHost {
  Module: new (bytes: Uint8Array) => object;
  Instance: new (module: object) => { readonly exports: object };
}

/** The compiled kernel; `null` where the engine has no WebAssembly with 128-bit SIMD. */
let kernel: Exports | null | undefined;

function openKernel(): Exports | null {
  if (kernel !== undefined) return kernel;
  const { WebAssembly: host } = globalThis as { WebAssembly?: WebAssemblyHost };
  const bytes = Uint8Array.from(sumKernelProgram.match(/[0-9a-f]{2}/g) ?? [], (pair) =>
    Number.parseInt(pair, 16),
  );
  try {
    kernel = host ? (new host.Instance(new host.Module(bytes)).exports as Exports) : null;
  } catch {
    kernel = null;
  }
  return kernel;
}

/** |U|² of all radii in all planes, in WebAssembly where the engine has it: 8 to 20 GFLOP/s against 2.5 to 4.7. */
export function sumSquaredField(sums: FieldSums): Rows {
  const program = openKernel();
  return program ? sumInKernel(program, sums) : sumPlainly(sums);
}

function sizesOf({ count, source, bessel }: FieldSums) {
  const pairs = source.length / (count * 2 * planesPerTile);
  const tiles = bessel.length / (count * radiiPerTile);
  return { pairs, tiles, stride: radiiPerTile * tiles + rowShift };
}

function sumInKernel(program: Exports, sums: FieldSums): Rows {
  const { count, source, bessel, combine } = sums;
  const { pairs, tiles, stride } = sizesOf(sums);
  const rows = combine ? combine.starts.length : 0;
  // Places in doubles, in the order of the memory; all even, so that each begins on 16 bytes.
  const besselAt = source.length;
  const outAt = besselAt + bessel.length;
  const weightsAt = outAt + 2 * pairs * stride;
  const startsAt = weightsAt + 2 * Math.ceil((combine?.weights.length ?? 0) / 2);
  const rowsAt = startsAt + 2 * Math.ceil(rows / 4);
  const width = radiiPerTile * tiles;
  const length = rowsAt + rows * width;
  reserve(program, 8 * length);
  const memory = new Float64Array(program.memory.buffer);
  memory.set(source, 0);
  memory.set(bessel, besselAt);
  program.squaredField(0, 8 * besselAt, 8 * outAt, count, pairs, tiles, 8 * stride);
  if (!combine) return { values: memory.subarray(outAt, weightsAt), stride };
  memory.set(combine.weights, weightsAt);
  new Int32Array(program.memory.buffer).set(combine.starts, 2 * startsAt);
  program.combineRows(
    8 * outAt,
    8 * startsAt,
    8 * weightsAt,
    8 * rowsAt,
    combine.terms,
    rows,
    tiles,
    8 * stride,
  );
  return { values: memory.subarray(rowsAt, length), stride: width };
}

const pageSize = 65536;

function reserve({ memory }: Exports, bytes: number): void {
  const missing = bytes - memory.buffer.byteLength;
  if (missing > 0) memory.grow(Math.ceil(missing / pageSize));
}

/** The same sums without the kernel, for engines without it and to check it by. */
export function sumPlainly(sums: FieldSums): Rows {
  const { count, source, bessel, combine } = sums;
  const { pairs, tiles, stride } = sizesOf(sums);
  const values = new Float64Array(planesPerTile * pairs * stride);
  for (let plane = 0; plane < planesPerTile * pairs; plane++) {
    const from = Math.floor(plane / planesPerTile) * count * 2 * planesPerTile + 2 * (plane % planesPerTile);
    for (let radius = 0; radius < radiiPerTile * tiles; radius++) {
      let b = Math.floor(radius / radiiPerTile) * count * radiiPerTile + (radius % radiiPerTile);
      let re = 0;
      let im = 0;
      for (let s = from; s < from + 4 * count; s += 4, b += radiiPerTile) {
        re += source[s]! * bessel[b]!;
        im += source[s + 1]! * bessel[b]!;
      }
      values[plane * stride + radius] = re * re + im * im;
    }
  }
  return combine ? combinePlainly({ values, stride }, combine) : { values, stride };
}

function combinePlainly({ values, stride }: Rows, { terms, starts, weights }: RowSums): Rows {
  const combined = new Float64Array(starts.length * stride);
  starts.forEach((start, row) => {
    for (let k = 0; k < terms; k++) {
      const weight = weights[row * terms + k]!;
      const from = (start + k) * stride;
      for (let i = 0; i < stride; i++) combined[row * stride + i]! += weight * values[from + i]!;
    }
  });
  return { values: combined, stride };
}
