import { chiSquareTail } from '../../lib/numerics/distributions.ts';

/** Share of normal numbers (mean 0, deviation 1) below x: half of χ² of one degree lies on each side. */
export function normalShareBelow(x: number): number {
  const beyond = chiSquareTail(x * x, 1) / 2;
  return x > 0 ? 1 - beyond : beyond;
}
