import { depthFactor, type HeatInput, pulseRise } from './heatPulse.ts';

/** Σ n^(−3/2) over all n from 1, Riemann's ζ(3/2). */
export const zetaThreeHalves = 2.612375348685488;

/**
 * Rise, K, `distance` from the middle of `count` heat inputs in one place at `rate` (Hz), just before the next would come.
 * Summed one by one.
 */
export function staticRise(heat: HeatInput, rate: number, count: number, distance = 0): number {
  let sum = 0;
  // From the oldest on: the small ones first.
  for (let n = count; n >= 1; n--) sum += pulseRise(heat, distance * distance, n / rate);
  return sum;
}

/** Pulses along a line from x = 0 on: `speed` in m/s, `rate` in Hz, `count` of them. */
export interface PulseLine {
  readonly speed: number;
  readonly rate: number;
  readonly count: number;
}

/** Rise, K, at (x, y) of the line's coordinates, just before pulse number `count` (from 0) would come. One by one. */
export function scanRise(heat: HeatInput, { speed, rate, count }: PulseLine, x: number, y: number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const along = x - (i * speed) / rate;
    sum += pulseRise(heat, along * along + y * y, (count - i) / rate);
  }
  return sum;
}

/** Lines beside each other, all the same way, `spacing` apart, one begun every `period` (s). */
export interface PulseLines extends PulseLine {
  readonly lines: number;
  readonly spacing: number;
  readonly period: number;
}

/** Rise, K, at (x, y) when line number `lines` (from 0) would begin. Every pulse of every line one by one. */
export function linesRise(heat: HeatInput, field: PulseLines, x: number, y: number): number {
  const { speed, rate, count, lines, spacing, period } = field;
  let sum = 0;
  for (let j = 0; j < lines; j++) {
    const across = y - j * spacing;
    for (let i = 0; i < count; i++) {
      const along = x - (i * speed) / rate;
      sum += pulseRise(heat, along * along + across * across, (lines - j) * period - i / rate);
    }
  }
  return sum;
}

/**
 * Rise, K, just before the next heat input where `count` of them come to a point without size, at `rate` (Hz):
 * 2QΣn^{−3/2}/(ρc(4πχ/f)^{3/2}); left out, endlessly many. Overestimates: with w = 15 µm and 50 inputs of 1.5 µJ at 1 MHz
 * on steel it gives 5404 K, the spot 1594 K (R. Weber et al., Opt. Express 22, 11312 (2014); `heat.json`).
 */
export function pointRise(heat: HeatInput, rate: number, count?: number): number {
  const { energy, diffusivity, heatCapacity } = heat;
  let sum = count === undefined ? zetaThreeHalves : 0;
  for (let n = count ?? 0; n >= 1; n--) sum += n ** -1.5;
  return (2 * energy * sum) / (heatCapacity * ((4 * Math.PI * diffusivity) / rate) ** 1.5);
}

/** Conductor of heat, without the size of the heat input. */
type Conductor = Pick<HeatInput, 'diffusivity' | 'heatCapacity'>;

/** ζ(1/2): what Σ n^(−1/2) − 2√N tends to. */
const zetaHalf = -1.4603545088095868;

/** Σ n^(−1/2) up to `count`: one by one to 30, then by Euler and Maclaurin, whose next term is below 1e-8/30^(7/2) = 1e-13. */
export function inverseRootSum(count: number): number {
  if (count > 30) {
    const root = Math.sqrt(count);
    return 2 * root + zetaHalf + 0.5 / root - 1 / (24 * count * root) + 1 / (384 * count ** 3 * root);
  }
  let sum = 0;
  for (let n = count; n >= 1; n--) sum += 1 / Math.sqrt(n);
  return sum;
}

/**
 * Rise, K, just before the next of `count` heat inputs that a whole surface takes evenly: `fluence` (J/m²) each at `rate`,
 * so that heat flows into the depth only: F/(ρc√(πχ/f)) Σ n^{−1/2} (R. Weber et al., Opt. Express 25, 3966 (2017)).
 */
export function planeRise(heat: Conductor, fluence: number, rate: number, count: number): number {
  return fluence * depthFactor(heat, 1 / rate) * inverseRootSum(count);
}

/**
 * How many heat inputs a whole surface may take before its rise just before the next passes `limit` (K): whole, 0 or more.
 * Goes with the square of the limit over the fluence where it is large.
 */
export function allowedInputs(heat: Conductor, fluence: number, rate: number, limit: number): number {
  const most = limit / (fluence * depthFactor(heat, 1 / rate));
  // Σ n^(−1/2) lies between 2√N − 2 and 2√N, so that N lies between these ends.
  let [low, high] = [Math.floor((most * most) / 4), Math.ceil((most / 2 + 1) ** 2) + 1];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (inverseRootSum(middle) <= most) low = middle;
    else high = middle;
  }
  return low;
}
