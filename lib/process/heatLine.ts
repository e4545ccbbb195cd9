import { gaussLegendre } from '../numerics/gaussLegendre.ts';
import { smoothSum } from '../numerics/smoothSum.ts';
import { type HeatInput, pulseRise, spreadSquare } from './heatPulse.ts';

/** Heat inputs at 0, p, 2p … along a line, and how long ago each came. */
export interface HeatedLine {
  /** m. */
  readonly spacing: number;
  readonly count: number;
  /** Age of the input at 0, s. */
  readonly age: number;
  /** By how much each input is older than the one before it, s: negative for a line that runs from 0 on. */
  readonly ageStep: number;
}

/** Exponent from which on a Gaussian counts nothing. */
const deadFrom = 45;

/**
 * Rise, K, of the line being written, just before the next pulse, from the `count` heat inputs before it: `behind` (m, 0 or
 * more) the place where that comes, on the line; `rate` in Hz.
 */
export function ownLineRise(
  heat: HeatInput,
  spacing: number,
  rate: number,
  count: number,
  behind = 0,
): number {
  const square = (n: number) => (n * spacing - behind) ** 2;
  const spread = (n: number) => spreadSquare(heat, n / rate);
  return smoothSum((n) => pulseRise(heat, square(n), n / rate), 1, count, {
    scale: (n) => Math.min(n, (2 * Math.sqrt(spread(n))) / spacing),
    done: (n) => n * spacing > behind && 2 * square(n) > deadFrom * spread(n),
  });
}

/** Places tried behind the next pulse: in pulse spacings, and in eighths of the spot’s radius. */
const spacingsTried = [0, 1 / 2, 1, 3 / 2, 2, 3];
const eighthsTried = Array.from({ length: 16 }, (_, i) => i + 1);

/**
 * How far behind the next pulse, m, the line being written is hottest just before that comes, among places up to three pulse
 * spacings or two radii behind and no further than its first pulse: what lies between them is up to 1 % hotter.
 */
export function hottestBehind(heat: HeatInput, spacing: number, rate: number, count: number): number {
  const tried = [
    ...spacingsTried.map((part) => part * spacing),
    ...eighthsTried.map((part) => (part * heat.radius) / 8),
  ];
  let [best, highest] = [0, 0];
  for (const behind of tried) {
    if (behind > count * spacing) continue;
    const rise = ownLineRise(heat, spacing, rate, count, behind);
    if (rise > highest) [best, highest] = [behind, rise];
  }
  return best;
}

/**
 * Rise, K, that a line leaves at `along` (by number of its inputs, also between them) and `across` (m) of it. Near inputs are added one
 * by one, the others as an integral: to 1e-6 of the rise.
 */
export function lineRise(heat: HeatInput, line: HeatedLine, along: number, across: number): number {
  const { spacing, count, age, ageStep } = line;
  const ageOf = (i: number) => age + i * ageStep;
  const square = (i: number) => ((i - along) * spacing) ** 2 + across * across;
  const scale = (i: number) => {
    const old = ageOf(i);
    return Math.min(old / Math.abs(ageStep), (2 * Math.sqrt(spreadSquare(heat, old))) / spacing);
  };
  const side = (sign: 1 | -1, first: number, terms: number) => {
    const at = (n: number) => first + sign * n;
    return smoothSum((n) => pulseRise(heat, square(at(n)), ageOf(at(n))), 0, terms - 1, {
      scale: (n) => scale(at(n)),
      done: (n) => 2 * square(at(n)) > deadFrom * spreadSquare(heat, ageOf(at(n))),
    });
  };
  const near = Math.min(Math.max(0, Math.round(along)), count);
  return side(1, near, count - near) + side(-1, near - 1, near);
}

const rule = gaussLegendre(32);
/** Radii of the spread heat beyond which a line counts nothing: e^(−2·3.8²) = 3e-13. */
const widest = 3.8;

/**
 * The same as a continuous line, 32 nodes over what counts of it and the correction of its ends: where all of the line is
 * several times as old as it took to write it, 1e-5. For a long line of one age it is
 * 2(Q/p)/(ρc√(πχt)√(2π(w²+8χt))) e^{−2y²/(w²+8χt)}. Where inputs lie further apart than a sixth of the radius to which they
 * have spread, {@link lineRise} is used.
 */
export function oldLineRise(heat: HeatInput, line: HeatedLine, along: number, across: number): number {
  const { spacing, count, age, ageStep } = line;
  const youngest = Math.min(age, age + (count - 1) * ageStep);
  if (spreadSquare(heat, youngest) < (6 * spacing) ** 2) return lineRise(heat, line, along, across);
  const oldest = Math.max(age, age + (count - 1) * ageStep);
  const reach = (widest * Math.sqrt(spreadSquare(heat, oldest))) / spacing;
  const [from, to] = [Math.max(-0.5, along - reach), Math.min(count - 0.5, along + reach)];
  const half = (to - from) / 2;
  const term = (i: number) =>
    pulseRise(heat, ((i - along) * spacing) ** 2 + across * across, age + i * ageStep);
  let sum = 0;
  for (let k = 0; k < rule.nodes.length; k++)
    sum += rule.weights[k]! * term(from + half * (1 + rule.nodes[k]!));
  return half * sum - (slopeAt(term, to) - slopeAt(term, from)) / 24;
}

/** Change from one input to the next. */
const slopeAt = (term: (i: number) => number, i: number) => term(i + 0.5) - term(i - 0.5);
