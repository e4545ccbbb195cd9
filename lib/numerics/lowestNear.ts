import { goldenSection } from './goldenSection.ts';

/** A place and the value of the function there. */
export interface Lowest {
  readonly at: number;
  readonly value: number;
}

/**
 * The lowest value of a rugged function of one variable near a place: of `count` places to each side over `reach`, then
 * by golden sections about the best to `tolerance`. Finds the lowest where valleys are wider than reach/count.
 */
export function lowestNear(
  f: (x: number) => number,
  near: number,
  reach: number,
  count: number,
  tolerance: number,
): Lowest {
  let best: Lowest = { at: near, value: f(near) };
  const ask = (at: number): number => {
    const value = f(at);
    if (value < best.value) best = { at, value };
    return value;
  };
  const step = reach / count;
  for (let k = -count; k <= count; k++) if (k !== 0) ask(near + k * step);
  goldenSection(ask, best.at - step, best.at + step, tolerance);
  return best;
}
