import { describe, expect, it } from 'vitest';
import { createRandom } from '../../lib/numerics/random.ts';
import { type FieldSums, sumPlainly, sumSquaredField } from '../../lib/numerics/sumKernel.ts';
import { sumKernelProgram } from '../../lib/numerics/sumKernelProgram.ts';
import { assembleSumKernel } from './assembleSumKernel.ts';

const random = createRandom(11);
const fill = (length: number) => Float64Array.from({ length }, () => random.between(-1, 1));

function createSums(count: number, pairs: number, tiles: number, rows = 0): FieldSums {
  const terms = Math.min(5, 2 * pairs);
  const combine = {
    terms,
    starts: Int32Array.from({ length: rows }, () => Math.floor(random.between(0, 2 * pairs - terms + 1))),
    weights: fill(rows * terms),
  };
  const sums = { count, source: fill(count * pairs * 4), bessel: fill(count * tiles * 4) };
  return rows > 0 ? { ...sums, combine } : sums;
}

/** Values row by row, without what fills up the rows. */
function valuesOf(sums: FieldSums, how: (sums: FieldSums) => { values: Float64Array; stride: number }) {
  const width = sums.bessel.length / sums.count;
  const rows = sums.combine?.starts.length ?? sums.source.length / sums.count / 2;
  const { values, stride } = how(sums);
  return Array.from({ length: rows }, (_, row) => [...values.slice(row * stride, row * stride + width)]);
}

describe('kernel of the sums', () => {
  it('is the program that its text assembles to', async () => {
    expect(sumKernelProgram.replace(/\s/g, '')).toBe(await assembleSumKernel());
  });

  it('loads here, so that what follows tests it', () => {
    const first = sumSquaredField(createSums(2, 1, 1)).values.buffer;
    // Its answers lie in one memory; the plain sums make a new one each time.
    expect(sumSquaredField(createSums(2, 1, 1)).values.buffer).toBe(first);
  });

  for (const [count, pairs, tiles] of [
    [1, 1, 1],
    [3, 8, 2],
    [33, 9, 5],
    [120, 17, 3],
    [40, 36, 128],
  ] as const) {
    for (const rows of [0, 1, 7, 401]) {
      it(`${count} nodes, ${2 * pairs} planes, ${4 * tiles} radii, ${rows || 'no'} rows combined: as plain sums`, () => {
        const sums = createSums(count, pairs, tiles, rows);
        const plain = valuesOf(sums, sumPlainly);
        const quick = valuesOf(sums, sumSquaredField);
        // Both add in the same order, product by product: equal to the last bit.
        expect(quick).toEqual(plain);
      });
    }
  }
});
