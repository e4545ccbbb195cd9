import { Problem } from '../problem.ts';
import { edgesOf, smoothed } from './grooveEdges.ts';
import type { SectionTable } from './sectionTable.ts';
import { lineAt, type SurfaceLine, surfaceLine } from './surfaceLine.ts';

/** A measured groove below the surface on its two sides. Lengths in m. */
export interface LevelledSection {
  /** From the middle between the two places at half the depth, ascending. */
  readonly position: Float64Array;
  /** Below the surface; above it negative. */
  readonly depth: Float64Array;
  /** Standard deviation of the heights of the surface about the line through it. */
  readonly noise: number;
  /** Rise of the surface as measured over its length, before it was levelled; 1. */
  readonly tilt: number;
  /** The two parts that the line of the surface was laid through: from and to, left and right. */
  readonly sides: readonly (readonly [from: number, to: number])[];
  /** True where the values of the table grow into the material. */
  readonly downwards: boolean;
  /** What that was taken from: the groove alone, which goes down, or also what the header says. */
  readonly wayFrom: 'groove' | 'header';
  /** Samples above the surface by more than three times the noise, and how far the highest is above it. */
  readonly above: number;
  readonly rim: number;
  /** Rows of the table that hold no height. */
  readonly missing: number;
}

/** Part of the length on either side that is first taken for surface. */
const outerPart = 0.15;
/** Fewest samples of surface on a side: fewer do not show its height. */
const fewestOnSide = 5;
/** A groove is deeper than so many times the noise; what is above the surface by three times is left out of fits. */
const shallowest = 6;
const aboveNoise = 3;
/** Part of the groove's width beyond its edges that does not count as surface: the rim. */
const margin = 0.1;
/** How often edges and surface are found again from each other: they settle in two or three. */
const rounds = 4;

/**
 * Finds the groove of a cross-section and levels it by a line through the surface on its two sides, found and weighted so
 * that rim, dust and pits do not pull it. Which way the values count follows from the groove, which goes down; where as
 * much lies above as below, from the header. Throws Problem 'absent' where no groove shows, 'outside' where a side of it
 * is missing.
 */
export function levelSection({ position, height, named, missing }: SectionTable): LevelledSection {
  const x = Float64Array.from(position);
  const y = Float64Array.from(height);
  const least = leastNoise(y);
  let line = lineThrough(x, y, outerPlaces(x), least);
  const way = wayOf(x, y, line, named, least);
  const depthBelow = (at: SurfaceLine) => y.map((value, i) => way.sign * (value - lineAt(at, x[i]!)));
  let used: readonly number[] = [];
  for (let round = 0; round < rounds; round++) {
    const noise = Math.max(least, line.scatter);
    const edges = findEdges(x, depthBelow(line), noise);
    used = besides(x, edges);
    line = lineThrough(x, y, used, least);
  }
  const noise = Math.max(least, line.scatter);
  const depth = depthBelow(line);
  const { from, to, middle } = findEdges(x, depth, noise);
  const rim = depth.filter((value) => value < -aboveNoise * noise);
  const sides = [used.filter((i) => x[i]! < from), used.filter((i) => x[i]! > to)];
  return {
    position: x.map((place) => place - middle),
    depth,
    noise,
    tilt: line.slope,
    sides: sides.map((side) => [x[side[0]!]! - middle, x[side.at(-1)!]! - middle] as const),
    downwards: way.sign > 0,
    wayFrom: way.from,
    above: rim.length,
    rim: rim.reduce((most, value) => Math.max(most, -value), 0),
    missing,
  };
}

/** What an instrument that rounds its heights cannot be better than: the smallest step over √12, a billionth of their range. */
function leastNoise(y: Float64Array): number {
  const sorted = y.slice().sort();
  const range = sorted.at(-1)! - sorted[0]!;
  if (!(range > 0)) throw noGroove();
  const steps = sorted.slice(1).map((value, i) => value - sorted[i]!);
  // Differences of numbers read from decimals are rounded: below a millionth of the range they are no steps.
  const smallest = steps.filter((step) => step > 1e-6 * range).reduce((a, b) => Math.min(a, b), range);
  return Math.max(1e-9 * range, smallest / Math.sqrt(12));
}

function lineThrough(x: Float64Array, y: Float64Array, at: readonly number[], least: number): SurfaceLine {
  const of = (column: Float64Array) => Float64Array.from(at, (i) => column[i]!);
  return surfaceLine(of(x), of(y), least);
}

/** Samples in the outer parts of the length, at least five on either side. */
function outerPlaces(x: Float64Array): number[] {
  const length = x.at(-1)! - x[0]!;
  const last = x.length - 1;
  return [...x.keys()].filter((i) => {
    const outer = Math.min(x[i]! - x[0]!, x.at(-1)! - x[i]!) <= outerPart * length;
    return outer || i < fewestOnSide || i > last - fewestOnSide;
  });
}

/** Less than so much of what departs from the surface on one side of it says that it is not the groove. */
const clearly = 0.5;

/** Which way the groove goes: 1 where the values grow into the material. */
function wayOf(
  x: Float64Array,
  y: Float64Array,
  line: SurfaceLine,
  named: SectionTable['named'],
  least: number,
): { readonly sign: 1 | -1; readonly from: 'groove' | 'header' } {
  const beyond = aboveNoise * Math.max(least, line.scatter);
  let [up, down] = [0, 0];
  for (let i = 1; i < x.length - 1; i++) {
    const value = y[i]! - lineAt(line, x[i]!);
    const width = (x[i + 1]! - x[i - 1]!) / 2;
    if (value > beyond) up += value * width;
    else if (value < -beyond) down -= value * width;
  }
  if (up === 0 && down === 0) throw noGroove();
  const clear = Math.min(up, down) < clearly * Math.max(up, down);
  if (clear || named === 'unsaid') return { sign: up > down ? 1 : -1, from: 'groove' };
  return { sign: named === 'depth' ? 1 : -1, from: 'header' };
}

function findEdges(x: Float64Array, depth: Float64Array, noise: number) {
  const edges = edgesOf(x, smoothed(depth), aboveNoise * noise);
  if (!(edges.deepest > shallowest * noise)) throw noGroove();
  return edges;
}

/** Samples of surface on both sides of the groove and of what may be its rim. */
function besides(x: Float64Array, { from, to }: { readonly from: number; readonly to: number }): number[] {
  const away = margin * (to - from);
  const sides = [
    [...x.keys()].filter((i) => x[i]! < from - away),
    [...x.keys()].filter((i) => x[i]! > to + away),
  ] as const;
  const [left, right] = sides.map((side) => side.length >= fewestOnSide);
  if (left && right) return sides.flat();
  throw new Problem(
    'outside',
    `The cross-section does not show the unworked surface ${left ? 'to the right of' : right ? 'to the left of' : 'on either side of'} the groove, which its depth is counted from. Measure further out, by at least a tenth of the groove’s width and ${fewestOnSide} places on each side.`,
    { allowed: `${fewestOnSide} places of surface on each side` },
  );
}

function noGroove(): Problem {
  return new Problem(
    'absent',
    `No groove shows in the cross-section: nothing in it is deeper below a line through its two ends than ${shallowest} times the scatter of the surface. Give a section across one groove with surface on both sides.`,
    { allowed: `deeper than ${shallowest} times the scatter of the surface` },
  );
}
