/** A seeded source of numbers: the same seed gives the same sequence on every machine. */
export interface Random {
  /** Uniform in [0, 1). */
  uniform(): number;
  /** Uniform in [low, high). */
  between(low: number, high: number): number;
  /** Normal deviate of mean 0 and standard deviation 1. */
  normal(): number;
}

/**
 * Seeded generator: xoshiro128** (D. Blackman & S. Vigna, ACM Trans. Math. Softw. 47, 36 (2021)),
 * seeded by splitmix32. `normal` uses the polar method of Marsaglia.
 */
export function createRandom(seed: number): Random {
  const state = new Uint32Array(4);
  let s = seed >>> 0;
  for (let i = 0; i < 4; i++) {
    s = (s + 0x9e3779b9) >>> 0;
    let t = s ^ (s >>> 16);
    t = Math.imul(t, 0x21f0aaad);
    t ^= t >>> 15;
    t = Math.imul(t, 0x735a2d97);
    state[i] = t ^ (t >>> 15);
  }
  const rotate = (x: number, k: number) => (x << k) | (x >>> (32 - k));
  const next = () => {
    const [s0, s1, s2, s3] = state as unknown as [number, number, number, number];
    const result = Math.imul(rotate(Math.imul(s1, 5), 7), 9) >>> 0;
    const t = s1 << 9;
    const a = s2 ^ s0;
    const b = s3 ^ s1;
    state[1] = s1 ^ a;
    state[0] = s0 ^ b;
    state[2] = a ^ t;
    state[3] = rotate(b, 11);
    return result;
  };
  const uniform = () => ((next() >>> 5) * 67108864 + (next() >>> 6)) / 9007199254740992;
  return { uniform, between: (low, high) => low + (high - low) * uniform(), normal: () => polar(uniform) };
}

function polar(uniform: () => number): number {
  for (;;) {
    const u = 2 * uniform() - 1;
    const v = 2 * uniform() - 1;
    const s = u * u + v * v;
    if (s > 0 && s < 1) return u * Math.sqrt((-2 * Math.log(s)) / s);
  }
}
