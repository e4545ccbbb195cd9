const primes = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29] as const;

/** Most coordinates of a point. */
export const haltonDimensions = primes.length;

/**
 * Point `index` (from 1) of the sequence of J. H. Halton, Numer. Math. 2, 84 (1960) (memory): fills the unit cube of up
 * to ten dimensions evenly however many points are taken, the same ones on every machine. All coordinates in (0, 1).
 */
export function haltonPoint(index: number, dimensions: number): number[] {
  return primes.slice(0, dimensions).map((base) => mirrored(index, base));
}

/** The digits of `index` in that base, mirrored at the point. */
function mirrored(index: number, base: number): number {
  let sum = 0;
  let place = 1 / base;
  for (let rest = index; rest > 0; rest = Math.floor(rest / base), place /= base)
    sum += (rest % base) * place;
  return sum;
}
