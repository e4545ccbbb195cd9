/** The lowest place of a function with one valley between the ends, to `tolerance`, by golden sections. */
export function goldenSection(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  let [c, d] = [b - golden * (b - a), a + golden * (b - a)];
  let [atC, atD] = [f(c), f(d)];
  while (b - a > tolerance) {
    if (atC < atD) {
      [b, d, atD] = [d, c, atC];
      c = b - golden * (b - a);
      atC = f(c);
    } else {
      [a, c, atC] = [c, d, atD];
      d = a + golden * (b - a);
      atD = f(d);
    }
  }
  return atC < atD ? c : d;
}
