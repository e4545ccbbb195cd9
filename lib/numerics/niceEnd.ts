/** The next of 1, 1.5, 2, 3, 4, 5, 6, 8, 10 × 10ⁿ at or above x: an end of an axis that stays while values move a little. */
export function niceEnd(x: number): number {
  if (!(x > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(x));
  const step = [1, 1.5, 2, 3, 4, 5, 6, 8, 10].find((s) => s * power >= x * (1 - 1e-9))!;
  return step * power;
}
