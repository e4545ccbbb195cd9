import { panelledRule } from '../numerics/gaussLegendre.ts';
import type { PulseGrid } from './gridDose.ts';

/** What a sum over pulses needs of a spot: its irradiance far out, and its tail. */
export interface FarSpot {
  /** As in `Spot`, but as far out as the sum goes. */
  irradianceAt(x: number, y: number): number;
  /** ∫ of the irradiance over the plane, m². */
  readonly energy: number;
  /** Parts of that energy in the tail, without its ripple. */
  readonly tail: RoundTail | ArmedTail;
}

/** The tail of round edges goes out in all directions: its energy beyond a radius, m. */
export interface RoundTail {
  outside(radius: number): number;
}

/** That of straight edges goes out in arms along x and y: the energy beyond ±x and beyond ±y, m. */
export interface ArmedTail {
  outsideX(distance: number): number;
  outsideY(distance: number): number;
  /** Half-width of the arms that are summed, m; between them both tails have fallen away. */
  readonly arm: number;
}

/**
 * Accumulated fluence of a wide grid of pulses over its mean, u along and v across the lines from a pulse, by adding up
 * pulse after pulse out to `reach` metres. The weight of a pulse falls from 1 at half the reach smoothly to 0; what is
 * left out of its energy is spread evenly. The tail does ripple: where a ripple keeps step with the grid, an error of
 * the tail beyond the reach times its power of ½ (round) or 1 (straight) remains: below 1e-5 for round edges at 200
 * focus radii, 1e-4 for straight ones at 600.
 */
export function doseBySum(spot: FarSpot, grid: PulseGrid, u: number, v: number, reach: number): number {
  const [cos, sin] = [Math.cos(grid.direction), Math.sin(grid.direction)];
  const { along, across } = grid;
  const [weightAt, furthest] = weightsOf(spot.tail, reach);
  let sum = 0;
  for (let l = Math.ceil((v - furthest) / across); l * across <= v + furthest; l++) {
    const dv = v - l * across;
    const half = Math.sqrt(Math.max(0, furthest * furthest - dv * dv));
    for (const [from, to] of partsOfRow(spot.tail, dv, cos, sin, half)) {
      for (let k = Math.ceil((u - to) / along); k * along < u - from; k++) {
        const du = u - k * along;
        const [x, y] = [du * cos - dv * sin, du * sin + dv * cos];
        const weight = weightAt(x, y);
        if (weight > 0) sum += weight * spot.irradianceAt(x, y);
      }
    }
  }
  return (sum * along * across) / spot.energy + leftOut(spot.tail, reach);
}

/** Where along a row of pulses, `dv` from the place, any weight can be: all of ±half, or what lies in the arms. */
function partsOfRow(
  tail: FarSpot['tail'],
  dv: number,
  cos: number,
  sin: number,
  half: number,
): (readonly [number, number])[] {
  if ('outside' in tail) return [[-half, half]];
  // |du·slope + offset| ≤ arm; parallel to an arm, all or nothing.
  const inside = (slope: number, offset: number): readonly [number, number] => {
    if (Math.abs(slope) < 1e-12) return Math.abs(offset) <= tail.arm ? [-half, half] : [0, 0];
    const [a, b] = [(-offset - tail.arm) / slope, (-offset + tail.arm) / slope];
    return [Math.max(-half, Math.min(a, b)), Math.min(half, Math.max(a, b))];
  };
  const [first, second] = [inside(cos, -dv * sin), inside(sin, dv * cos)].sort((a, b) => a[0] - b[0]) as [
    readonly [number, number],
    readonly [number, number],
  ];
  if (second[0] > first[1]) return [first, second];
  return [[first[0], Math.max(first[1], second[1])]];
}

/** Weight of a pulse at x, y, and the radius beyond which it is 0. */
function weightsOf(tail: FarSpot['tail'], reach: number): [(x: number, y: number) => number, number] {
  if ('outside' in tail) return [(x, y) => fading(Math.hypot(x, y) / reach), reach];
  const { arm } = tail;
  const weight = (x: number, y: number) =>
    x * x > arm * arm && y * y > arm * arm ? 0 : fading(Math.abs(x) / reach) * fading(Math.abs(y) / reach);
  return [weight, Math.hypot(reach, arm)];
}

/** 1 up to ½, then a polynomial of degree 7 down to 0 at 1, with three derivatives that vanish at both ends. */
function fading(part: number): number {
  if (part <= 0.5) return 1;
  const t = Math.max(0, 2 - 2 * part);
  return t ** 4 * (35 - 84 * t + 70 * t * t - 20 * t ** 3);
}

/** Part of the energy that the weights leave out. */
function leftOut(tail: FarSpot['tail'], reach: number): number {
  if ('outside' in tail) return faded((radius) => tail.outside(radius), reach);
  const x = faded((distance) => tail.outsideX(distance), reach);
  const y = faded((distance) => tail.outsideY(distance), reach);
  return x + y - x * y + (tail.outsideX(tail.arm) - x) * (tail.outsideY(tail.arm) - y);
}

/** By parts: ∫ outside·(−dW/dρ) dρ. */
function faded(outside: (distance: number) => number, reach: number): number {
  const { nodes, weights } = panelledRule([0, 1], 24);
  return nodes.reduce((sum, t, i) => {
    const slope = 140 * (t * (1 - t)) ** 3;
    return sum + weights[i]! * slope * outside((1 - t / 2) * reach);
  }, 0);
}
