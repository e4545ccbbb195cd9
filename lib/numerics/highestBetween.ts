/** Golden-section search for the one maximum in [low, high], to 1e-8 of the interval. */
export function highestBetween(f: (x: number) => number, low: number, high: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let a = low;
  let b = high;
  let c = b - golden * (b - a);
  let d = a + golden * (b - a);
  let fc = f(c);
  let fd = f(d);
  while (b - a > 1e-8 * (high - low)) {
    if (fc > fd) {
      [b, d, fd] = [d, c, fc];
      c = b - golden * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + golden * (b - a);
      fd = f(d);
    }
  }
  return (a + b) / 2;
}

/**
 * Where `f`, of several maxima, is highest in [low, high]: equally spaced tries, as many as the first of `tries`, then as
 * many as the next around the best one, and so on, and the golden section at last. The ends are tried too.
 */
export function highestOf(
  f: (x: number) => number,
  low: number,
  high: number,
  tries: readonly number[],
): number {
  let [from, to, best] = [low, high, low];
  for (const count of tries) {
    const step = (to - from) / count;
    const places = Array.from({ length: count + 1 }, (_, i) => (i === count ? to : from + i * step));
    const values = places.map(f);
    best = places[values.indexOf(Math.max(...values))]!;
    [from, to] = [Math.max(from, best - step), Math.min(to, best + step)];
  }
  const found = highestBetween(f, from, to);
  return f(found) > f(best) ? found : best;
}
