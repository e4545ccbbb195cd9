/** A round profile by samples, linear between them; radii ascending from 0. Any unit of length and of light. */
export interface SampledProfile {
  readonly radius: Float64Array;
  readonly value: Float64Array;
}

/** Highest sample. */
export function highestSample({ value }: Pick<SampledProfile, 'value'>): number {
  return value.reduce((most, sample) => Math.max(most, sample), Number.NEGATIVE_INFINITY);
}

/**
 * Area of the whole plane where the profile lies above `level`, as far as it reaches. Linear interpolation between samples
 * h apart misplaces an edge of slope s and curvature c by up to h²c/(8s).
 */
export function sampledAreaAbove({ radius, value }: SampledProfile, level: number): number {
  let square = 0;
  for (let i = 1; i < radius.length; i++) {
    const [a, b] = [radius[i - 1]!, radius[i]!];
    const [below, above] = [value[i - 1]! > level, value[i]! > level];
    if (!below && !above) continue;
    const crossing = a + ((b - a) * (level - value[i - 1]!)) / (value[i]! - value[i - 1]! || 1);
    const [from, to] = [below ? a : crossing, above ? b : crossing];
    square += to * to - from * from;
  }
  return Math.PI * square;
}

/** ∫ value dA over the disc that the profile reaches to, exact for the linear pieces. */
export function sampledEnergy({ radius, value }: SampledProfile): number {
  let sum = 0;
  for (let i = 1; i < radius.length; i++) {
    const [a, b] = [radius[i - 1]!, radius[i]!];
    sum += (b - a) * (value[i - 1]! * (2 * a + b) + value[i]! * (a + 2 * b));
  }
  return (Math.PI / 3) * sum;
}

/** How far the axis lies below the highest sample, as a part of it: 0 where it is highest on the axis. */
export function sampledDip(profile: SampledProfile): number {
  return Math.max(0, 1 - profile.value[0]! / highestSample(profile));
}

/**
 * Root-mean-square difference of two columns of values at the same radii, over the area where either lies above half its
 * own highest sample; each sample stands for the ring that reaches halfway to its neighbours.
 */
export function rmsDifference(radius: Float64Array, one: Float64Array, other: Float64Array): number {
  const half = [one, other].map((value) => highestSample({ value }) / 2);
  const last = radius.length - 1;
  let [area, square] = [0, 0];
  for (let i = 0; i <= last; i++) {
    if (one[i]! <= half[0]! && other[i]! <= half[1]!) continue;
    const inner = (radius[i]! + radius[Math.max(0, i - 1)]!) / 2;
    const outer = (radius[i]! + radius[Math.min(last, i + 1)]!) / 2;
    const ring = outer * outer - inner * inner;
    area += ring;
    square += ring * (one[i]! - other[i]!) ** 2;
  }
  return area > 0 ? Math.sqrt(square / area) : 0;
}
