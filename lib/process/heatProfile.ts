import { besselJ0 } from '../numerics/bessel.ts';
import { panelledRule } from '../numerics/gaussLegendre.ts';
import { smoothSum } from '../numerics/smoothSum.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { depthFactor, type HeatInput, pulseRise, spreadSquare } from './heatPulse.ts';

/** Spectrum of a spot in polar nodes, as heat needs it: what conduction has not yet wiped out at the youngest age. */
export interface HeatSpectrum {
  /** rad/m, with the weight of q dq. */
  readonly q: Float64Array;
  readonly weight: Float64Array;
  /** Directions of the nodes, rad; none for a round spot, whose spectrum has no direction. */
  readonly directions: readonly number[];
  /** Real and imaginary part, direction by direction. */
  readonly re: readonly Float64Array[];
  readonly im: readonly Float64Array[];
}

/** Panels one over the spot's radius wide, as the spectrum changes; the first halved four times: late heat needs the low frequencies alone. */
function panels(most: number, radius: number) {
  const count = Math.min(48, Math.max(8, Math.ceil(most * radius)));
  const halved = [1 / 16, 1 / 8, 1 / 4, 1 / 2];
  const edges = [0, ...halved, ...Array.from({ length: count }, (_, i) => i + 1)];
  const scale = most / count;
  return panelledRule(
    edges.map((edge) => edge * scale),
    12,
  );
}
/** Directions over half a turn: opposite ones are conjugates of each other. */
const directionCount = 36;

/**
 * The spectrum of `spot` for ages from `youngest` (s) on, up to where e^(−q²χt) or the spectrum itself is below 1e-12.
 * `round` asks one direction for all.
 */
export function heatSpectrum(
  spot: Spot,
  diffusivity: number,
  youngest: number,
  round: boolean,
): HeatSpectrum {
  const directions = round
    ? [0]
    : Array.from({ length: directionCount }, (_, i) => (Math.PI * i) / directionCount);
  const end = Math.max(...directions.map((direction) => spot.spectrumEnd(direction)));
  const most = Math.min(end, Math.sqrt(27.6 / (diffusivity * youngest)));
  const rule = panels(most, Math.sqrt((2 * spot.effectiveArea) / Math.PI));
  const q = rule.nodes;
  const values = directions.map((direction) =>
    Array.from(q, (size) => spot.spectrum(size * Math.cos(direction), size * Math.sin(direction))),
  );
  return {
    q,
    weight: rule.weights.map((weight, i) => weight * q[i]!),
    directions: round ? [] : directions,
    re: values.map((row) => Float64Array.from(row, ({ re }) => re)),
    im: values.map((row) => Float64Array.from(row, ({ im }) => im)),
  };
}

/**
 * Rise, K, of the surface at (x, y) from the middle of one heat input with the spot's own profile, `age` after it:
 * Q/(ρc√(πχt)) · 1/(4π²) ∬ M(q) e^(−q²χt) e^(iqx) d²q. To 1e-4 of that
 * in the middle for round spots and 3e-4 for others, within some radii of the spot: the spectrum has kinks.
 */
export function profilePulseRise(
  heat: HeatInput,
  spectrum: HeatSpectrum,
  x: number,
  y: number,
  age: number,
): number {
  const { q, weight, directions, re, im } = spectrum;
  const spread = heat.diffusivity * age;
  const distance = Math.hypot(x, y);
  let sum = 0;
  for (let i = 0; i < q.length; i++) {
    const faded = q[i]! * q[i]! * spread;
    // e^(−32) = 1e-14: nothing is left of this frequency, nor of those above.
    if (faded > 32) break;
    const left = weight[i]! * Math.exp(-faded);
    if (directions.length === 0) sum += 2 * Math.PI * left * re[0]![i]! * besselJ0(q[i]! * distance);
    else
      for (let k = 0; k < directions.length; k++) {
        const phase = q[i]! * (x * Math.cos(directions[k]!) + y * Math.sin(directions[k]!));
        const wave = re[k]![i]! * Math.cos(phase) - im[k]![i]! * Math.sin(phase);
        sum += ((2 * Math.PI) / directions.length) * left * wave;
      }
  }
  return (heat.energy * depthFactor(heat, age) * sum) / (4 * Math.PI * Math.PI);
}

/** Spread, in squares of the spot's radius, from which on its shape counts less than 1e-2 of what is left of it, rings behind a stop too. */
const shapeless = 3000;

/**
 * Rise, K, at (x, y) from the middle of the next pulse, just before it, of `count` heat inputs along a line with the spot's
 * own profile; those whose heat has spread far beyond the spot count as the Gaussian of `heat.radius`.
 */
export function profileLineRise(
  heat: HeatInput,
  spectrum: HeatSpectrum,
  line: { readonly spacing: number; readonly rate: number; readonly count: number },
  x: number,
  y: number,
): number {
  const { spacing, rate, count } = line;
  const term = (n: number) => {
    const [age, along] = [n / rate, x + n * spacing];
    const square = along * along + y * y;
    const spread = spreadSquare(heat, age);
    const far = spread > shapeless * heat.radius ** 2 || square > 12 * spread;
    return far ? pulseRise(heat, square, age) : profilePulseRise(heat, spectrum, along, y, age);
  };
  const spread = (n: number) => spreadSquare(heat, n / rate);
  return smoothSum(term, 1, count, {
    scale: (n) => Math.min(n, Math.sqrt(spread(n)) / spacing),
    least: 8,
    done: (n) => n * spacing > Math.abs(x) && 2 * (x + n * spacing) ** 2 > 45 * spread(n),
  });
}

/** Where a moving spot leaves the surface hottest just before its next pulse, from the middle of that, m and K. */
export interface HottestOfProfile {
  readonly rise: number;
  readonly x: number;
  readonly y: number;
}

/** Places tried along and across the line, in radii of the spot. */
const [alongTried, acrossTried] = [
  [-1, -0.75, -0.5, -0.25, 0, 0.25, 0.5],
  [0, 0.25, 0.5, 0.75, 1],
];

/** The hottest of 7 × 5 places within the spot, on one side of the line: all there is for a spot alike on both. */
export function hottestOfProfile(
  heat: HeatInput,
  spectrum: HeatSpectrum,
  line: { readonly spacing: number; readonly rate: number; readonly count: number },
): HottestOfProfile {
  let best: HottestOfProfile = { rise: Number.NEGATIVE_INFINITY, x: 0, y: 0 };
  for (const across of acrossTried)
    for (const along of alongTried) {
      const [x, y] = [along * heat.radius, across * heat.radius];
      const rise = profileLineRise(heat, spectrum, line, x, y);
      if (rise > best.rise) best = { rise, x, y };
    }
  return best;
}
