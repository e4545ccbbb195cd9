import { describe, expect, test } from 'vitest';
import { createFourierPlane } from '../../lib/numerics/fft2d.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { expectClose } from '../close.ts';

describe('two-dimensional Fourier transform', () => {
  test.each([2, 4, 8, 16])('equals the double sum, %d points a side', (size) => {
    const random = createRandom(7103);
    const plane = createFourierPlane(size);
    const input = plane.data.map(() => random.normal());
    plane.data.set(input);
    plane.transform();
    for (let k = 0; k < size; k++) {
      for (let l = 0; l < size; l++) {
        let re = 0;
        let im = 0;
        for (let i = 0; i < size; i++) {
          for (let j = 0; j < size; j++) {
            const angle = (-2 * Math.PI * (i * k + j * l)) / size;
            const at = 2 * (i * size + j);
            re += input[at]! * Math.cos(angle) - input[at + 1]! * Math.sin(angle);
            im += input[at]! * Math.sin(angle) + input[at + 1]! * Math.cos(angle);
          }
        }
        expectClose(plane.data[2 * (k * size + l)]!, re, { absolute: 1e-12, source: 'double sum' });
        expectClose(plane.data[2 * (k * size + l) + 1]!, im, { absolute: 1e-12, source: 'double sum' });
      }
    }
  });

  test('transposed, 64 points a side: the same values with rows and columns exchanged', () => {
    const random = createRandom(7105);
    const plane = createFourierPlane(64);
    const input = plane.data.map(() => random.normal());
    plane.data.set(input);
    const transposed = plane.transposedTransform().slice();
    plane.data.set(input);
    plane.transform();
    for (let k = 0; k < 64; k++)
      for (let l = 0; l < 128; l++)
        expect(transposed[2 * (64 * (l >> 1) + k) + (l & 1)]).toBe(plane.data[128 * k + l]);
  });

  test('there and back, Parseval, 256 points a side', () => {
    const random = createRandom(7104);
    const plane = createFourierPlane(256);
    const input = plane.data.map(() => random.normal());
    const energy = (values: Float64Array) => values.reduce((sum, value) => sum + value * value, 0);
    plane.data.set(input);
    plane.transform();
    expectClose(energy(plane.data) / 256 ** 2, energy(input), { relative: 1e-13, source: 'Parseval' });
    plane.inverseTransform();
    let worst = 0;
    plane.data.forEach((value, i) => {
      worst = Math.max(worst, Math.abs(value - input[i]!));
    });
    expectClose(worst, 0, { absolute: 1e-13, source: 'inverse' });
  });

  test.each([0, 1, 12, 8192, Number.NaN])('refuses %d points a side', (size) => {
    expect(() => createFourierPlane(size)).toThrow(/power of two/);
  });
});
