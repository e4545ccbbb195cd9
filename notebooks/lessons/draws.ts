import type { Random } from '../../lib/numerics/random.ts';

/** A number between two ends in whole steps, so that it reads well in a question: 4.8 mm, not 4.7716. */
export function drawStepped(random: Random, low: number, high: number, step: number): number {
  const steps = Math.round((high - low) / step);
  const value = low + step * Math.floor(random.uniform() * (steps + 1));
  // Twelve digits: 4.2e-3 + 6 · 1e-4 is 4.8e-3 and not its neighbour.
  return Number(value.toPrecision(12));
}

/** One of a few values. */
export function drawOne<T>(random: Random, values: readonly [T, ...T[]]): T {
  return values[Math.floor(random.uniform() * values.length)]!;
}
