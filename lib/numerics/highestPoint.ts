/**
 * The greatest value of f near (x, y): steps to the best of eight neighbours, halving the step where none is higher,
 * down to 2^−18 of the first `step`; the value is then short by 1e-11 of f''·step².
 */
export function highestNear(
  f: (x: number, y: number) => number,
  x: number,
  y: number,
  step: number,
): { readonly x: number; readonly y: number; readonly value: number } {
  let best = { x, y, value: f(x, y) };
  for (let size = step; size > step * 2 ** -18; ) {
    const centre = best;
    for (let i = 0; i < 9; i++) {
      const at = { x: centre.x + ((i % 3) - 1) * size, y: centre.y + (Math.floor(i / 3) - 1) * size };
      const value = f(at.x, at.y);
      if (value > best.value) best = { ...at, value };
    }
    if (best === centre) size /= 2;
  }
  return best;
}
