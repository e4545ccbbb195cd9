import { expect, it } from 'vitest';
import { lowestNear } from '../../lib/numerics/lowestNear.ts';
import { expectClose } from '../close.ts';

it('finds the lowest of several valleys, and of one with a bend', () => {
  const waves = (x: number) => (x - 0.3) ** 2 + 0.01 * Math.cos(40 * x);
  const fine = Array.from({ length: 200001 }, (_, i) => -1 + i * 1e-5);
  const best = fine.reduce((low, x) => (waves(x) < waves(low) ? x : low));
  expectClose(lowestNear(waves, 0, 1, 40, 1e-9).at, best, { absolute: 1e-5, source: 'all places' });
  expectClose(lowestNear((x) => Math.abs(x - 0.123), 0, 1, 10, 1e-9).at, 0.123, { absolute: 1e-9 });
});

it('keeps the place where nothing is lower', () => {
  expect(lowestNear((x) => x * x, 0, 1, 10, 1e-9)).toEqual({ at: 0, value: 0 });
});
