/** Seeds are whole numbers below this. */
const seeds = 2 ** 31;

/** A seed for a case of a lesson; another than the last one. */
export function newSeed(last?: number): number {
  const seed = Math.floor(Math.random() * seeds);
  return seed === last ? newSeed(last) : seed;
}
