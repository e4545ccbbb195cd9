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
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [best.at - step, best.at + step];
  let [c, d] = [b - golden * (b - a), a + golden * (b - a)];
  let [atC, atD] = [ask(c), ask(d)];
  while (b - a > tolerance) {
    if (atC < atD) {
      [b, d, atD] = [d, c, atC];
      c = b - golden * (b - a);
      atC = ask(c);
    } else {
      [a, c, atC] = [c, d, atD];
      d = a + golden * (b - a);
      atD = ask(d);
    }
  }
  return best;
}
