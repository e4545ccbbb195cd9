import type { Spot } from '../optics/askedSpot.ts';
import { countingDiameter } from './fieldChecks.ts';
import type { Hatch } from './hatch.ts';
import { type LineMotion, lineMotion, placeAt, timeAt } from './lineMotion.ts';
import { summedReach } from './pulseSum.ts';
import type { ScanMotion } from './scanTime.ts';

/** Accumulated fluence against the distance from an edge, inside above 0; 1 is the mean of a wide field. */
export interface EdgeProfile {
  readonly distance: Float64Array;
  readonly level: Float64Array;
}

/** Steps across the spot's diameter of its irradiance, and of times at which pulses are summed while it speeds up. */
const [fine, times] = [48, 240];

/** The spot's irradiance summed along the edge, against the distance across it, as its integral from far outside; 0 to 1. */
function crossed(spot: Spot, alongX: boolean) {
  const half = summedReach * fine;
  const step = countingDiameter(spot) / fine;
  const marginal = new Float64Array(2 * half + 1);
  for (let i = -half; i <= half; i++)
    for (let j = -half; j <= half; j++)
      marginal[i + half]! += alongX
        ? spot.irradianceAt(j * step, i * step)
        : spot.irradianceAt(i * step, j * step);
  const integral = new Float64Array(marginal.length);
  for (let i = 1; i < integral.length; i++)
    integral[i] = integral[i - 1]! + (step * (marginal[i - 1]! + marginal[i]!)) / 2;
  const whole = integral.at(-1)!;
  const read = (values: Float64Array, u: number) => {
    const at = Math.min(2 * half, Math.max(0, u / step + half));
    const i = Math.min(2 * half - 1, Math.floor(at));
    return (values[i]! + (at - i) * (values[i + 1]! - values[i]!)) / whole;
  };
  const reach = half * step;
  return {
    reach,
    /** 1/m. */
    density: (u: number) => (Math.abs(u) > reach ? 0 : read(marginal, u)),
    part: (u: number) => read(integral, u),
  };
}

/**
 * Mean along an edge of what a pass leaves at a distance from it, relative to a wide field at full speed. `slant` is the
 * cosine between lines and the normal of the edge; `extent` the field's size along that normal. The step between lines is
 * taken as fine.
 */
function levelAt(
  at: number,
  spot: ReturnType<typeof crossed>,
  {
    run,
    slant,
    extent,
  }: { readonly run: LineMotion | undefined; readonly slant: number; readonly extent: number },
): number {
  if (run === undefined) return spot.part(at) - spot.part(at - extent);
  const ramp = slant * run.ramp.way;
  const middle = spot.part(at - ramp) - spot.part(at - extent + ramp);
  return middle + rampPart(at, spot, run, slant) + rampPart(extent - at, spot, run, slant);
}

/** What the ramp at the near end gives: ∫ v dt over it of the spot's irradiance, pulses coming evenly in time. */
function rampPart(at: number, spot: ReturnType<typeof crossed>, run: LineMotion, slant: number): number {
  if (run.ramp.time === 0) return 0;
  const place = (distance: number) => Math.min(run.ramp.way, Math.max(0, distance / slant));
  const [from, to] = [at - spot.reach, at + spot.reach].map((end) =>
    Math.min(run.ramp.time, timeAt(run, place(end))),
  ) as [number, number];
  if (to <= from) return 0;
  const step = (to - from) / times;
  let sum = 0;
  for (let i = 0; i < times; i++) sum += spot.density(at - slant * placeAt(run, from + (i + 0.5) * step));
  return sum * step * run.speed * slant;
}

/** Passes at angles of their own that are worked out; of more, as many spread over all. */
const mostPasses = 60;

/** Passes of a hatch with angles of their own: all of them, or as many spread evenly. */
export function passesWorked(hatch: Pick<Hatch, 'angle' | 'passes'>, most: number): readonly number[] {
  if (hatch.angle === 0 || hatch.passes === 1) return [0];
  const count = Math.min(most, hatch.passes);
  return Array.from({ length: count }, (_, i) => Math.floor(((i + 0.5) * hatch.passes) / count));
}

/** Cosine below which lines count as parallel to an edge: they end at the others. */
const parallel = 1e-6;

/**
 * Accumulated fluence, averaged along an edge far from the corners, against the distance from it, by an integral over the
 * spot and the times of the pulses; all passes. `edge` is at the ends of the first lines, or at their sides. Pulses and
 * lines are taken as fine, so that what is between lines is left out; to 1e-3.
 */
export function edgeProfile(
  spot: Spot,
  hatch: Hatch,
  motion: Pick<ScanMotion, 'speed' | 'acceleration' | 'turnRound'>,
  edge: 'ends' | 'sides',
): EdgeProfile {
  const [extent, other] = edge === 'ends' ? [hatch.width, hatch.height] : [hatch.height, hatch.width];
  const table = crossed(spot, edge === 'sides');
  const passes = passesWorked(hatch, mostPasses).map((pass) => {
    const angle = pass * hatch.angle;
    const slant = Math.abs(edge === 'ends' ? Math.cos(angle) : Math.sin(angle));
    const across = Math.sqrt(Math.max(0, 1 - slant * slant));
    // A line from the middle of this edge ends at the opposite one, or at one beside it.
    const length = Math.min(extent / slant, across < parallel ? Number.POSITIVE_INFINITY : other / across);
    return { slant, extent, run: slant < parallel ? undefined : lineMotion(length, motion) };
  });
  const distance = distances(countingDiameter(spot), extent, passes);
  const level = distance.map(
    (at) => passes.reduce((sum, pass) => sum + levelAt(at, table, pass), 0) / passes.length,
  );
  return { distance, level };
}

/** From a diameter and a half outside to the middle: a 24th of a diameter apart near the edge, then in growing steps. */
function distances(
  diameter: number,
  extent: number,
  passes: readonly { readonly slant: number; readonly run: LineMotion | undefined }[],
): Float64Array {
  const ramp = Math.max(...passes.map(({ slant, run }) => slant * (run?.ramp.way ?? 0)));
  const end = Math.min(extent / 2, ramp + 4 * diameter);
  const places: number[] = [];
  for (let step = diameter / 24, at = -summedReach * diameter; at < end; at += step) {
    places.push(at);
    if (at > 2 * diameter) step *= 1.03;
  }
  return Float64Array.from([...places, end]);
}

/** Largest level of a profile. */
export function highestLevel({ level }: EdgeProfile): number {
  return Math.max(...level);
}

/** Distance inside from which on the level stays within `tolerance` of 1; undefined where it does not, up to the middle. */
export function edgeWidth({ distance, level }: EdgeProfile, tolerance: number): number | undefined {
  const off = (i: number) => Math.abs(level[i]! - 1) - tolerance;
  let last = level.length - 1;
  if (off(last) > 0) return undefined;
  while (last > 0 && off(last - 1) <= 0) last--;
  if (last === 0) return 0;
  const [inner, outer] = [off(last), off(last - 1)];
  const between = distance[last]! + ((distance[last - 1]! - distance[last]!) * inner) / (inner - outer);
  return Math.max(0, between);
}
