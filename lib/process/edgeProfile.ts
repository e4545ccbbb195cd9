import type { Spot } from '../optics/askedSpot.ts';
import { type CrossedSpot, crossedSpot } from './crossedSpot.ts';
import { countingDiameter } from './fieldChecks.ts';
import { type Hatch, passesWorked } from './hatch.ts';
import { type LineMotion, lineMotion, placeAt, timeAt } from './lineMotion.ts';
import { quickSpectrum } from './quickSpectrum.ts';
import type { ScanMotion } from './scanTime.ts';

/** Accumulated fluence against the distance from an edge, inside above 0; 1 is the mean of a wide field. */
export interface EdgeProfile {
  readonly distance: Float64Array;
  readonly level: Float64Array;
}

/** Times at which the pulses are summed while the scanner speeds up. */
const times = 240;
/** Passes at angles of their own that are worked out; of more, as many spread over all. */
const mostPasses = 60;

/**
 * Mean along an edge of what a pass leaves at a distance from it, relative to a wide field at full speed. `slant` is the
 * cosine between lines and the normal of the edge; `extent` the field's size along that normal. The step between lines is
 * taken as fine.
 */
function levelAt(
  at: number,
  spot: CrossedSpot,
  {
    run,
    slant,
    extent,
  }: { readonly run: LineMotion | undefined; readonly slant: number; readonly extent: number },
): number {
  if (run === undefined) return spot.part(at) - spot.part(at - extent);
  const ramp = slant * run.ramp.way;
  const middle = spot.part(at - ramp) - spot.part(at - extent + ramp);
  const far = { ...spot, density: (u: number) => spot.density(-u) };
  return middle + rampPart(at, spot, run, slant) + rampPart(extent - at, far, run, slant);
}

/** What the ramp at the near end gives: ∫ v dt over it of the spot's irradiance, pulses coming evenly in time. */
function rampPart(at: number, spot: CrossedSpot, run: LineMotion, slant: number): number {
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

/** Cosine below which lines count as parallel to an edge: they end at the others. */
const parallel = 1e-6;

/** The profiles at the two kinds of edge. */
export interface EdgeProfiles {
  /** Where the first lines end. */
  readonly ends: EdgeProfile;
  /** Beside which the first lines run. */
  readonly sides: EdgeProfile;
}

/**
 * Accumulated fluence, averaged along an edge far from the corners, against the distance from it, by an integral over the
 * spot and the times of the pulses; all passes. Pulses and lines are taken as fine, so that what is between lines is left
 * out; tails included, to 2e-3.
 */
export function edgeProfiles(
  spot: Spot,
  hatch: Hatch,
  motion: Pick<ScanMotion, 'speed' | 'acceleration' | 'turnRound'>,
): EdgeProfiles {
  const spectrum = quickSpectrum(spot);
  const diameter = countingDiameter(spot);
  const along = crossedSpot(spectrum, diameter, 0);
  const up = spot.spectrumForm === 'round' ? along : crossedSpot(spectrum, diameter, Math.PI / 2);
  return {
    ends: edgeProfile(along, diameter, hatch, motion, 'ends'),
    sides: edgeProfile(up, diameter, hatch, motion, 'sides'),
  };
}

function edgeProfile(
  table: CrossedSpot,
  diameter: number,
  hatch: Hatch,
  motion: Pick<ScanMotion, 'speed' | 'acceleration' | 'turnRound'>,
  edge: keyof EdgeProfiles,
): EdgeProfile {
  const [extent, other] = edge === 'ends' ? [hatch.width, hatch.height] : [hatch.height, hatch.width];
  const passes = passesWorked(hatch, mostPasses).map((pass) => {
    const angle = pass * hatch.angle;
    const slant = Math.abs(edge === 'ends' ? Math.cos(angle) : Math.sin(angle));
    const across = Math.sqrt(Math.max(0, 1 - slant * slant));
    // A line from the middle of this edge ends at the opposite one, or at one beside it.
    const length = Math.min(extent / slant, across < parallel ? Number.POSITIVE_INFINITY : other / across);
    return { slant, extent, run: slant < parallel ? undefined : lineMotion(length, motion) };
  });
  const distance = distances(diameter, extent, passes);
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
  for (let step = diameter / 24, at = -1.5 * diameter; at < end; at += step) {
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
