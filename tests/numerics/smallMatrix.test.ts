import { expect, it } from 'vitest';
import { addMatrix, invertPositive, multiply, quadratic, trace } from '../../lib/numerics/smallMatrix.ts';
import { expectClose } from '../close.ts';

const rows = (...values: number[][]) => values.map((row) => Float64Array.from(row));

it('an inverse times its matrix is one, whatever the units', () => {
  // Rows and columns scaled as for metres beside logarithms.
  const scale = [1e-12, 1, 1e6];
  const matrix = rows([4, 1, 0.5], [1, 3, -1], [0.5, -1, 2]).map((row, i) =>
    row.map((value, k) => value * scale[i]! * scale[k]!),
  );
  const one = multiply(matrix, invertPositive(matrix));
  one.forEach((row, i) => {
    row.forEach((value, k) => {
      const expected = i === k ? 1 : 0;
      expectClose(value * (scale[k]! / scale[i]!), expected, { absolute: 1e-14 });
    });
  });
});

it('products, traces and quadratic forms', () => {
  const a = rows([1, 2], [3, 4]);
  expect(multiply(a, a).map((row) => [...row])).toEqual([
    [7, 10],
    [15, 22],
  ]);
  expect(trace(a)).toBe(5);
  expect(quadratic([1, 2], a, [3, 4])).toBe(61);
  addMatrix(a, rows([1, 1], [1, 1]), -1);
  expect(a.map((row) => [...row])).toEqual([
    [0, 1],
    [2, 3],
  ]);
});
