import { findRoot } from '../numerics/roots.ts';
import type { Stretch } from '../optics/depthInUse.ts';
import type { FieldSize } from './fieldChecks.ts';

/**
 * Position of a surface against the focus over a field, metres: z + slopeX·x + slopeY·y − bend·(x² + y²), x and y from
 * the axis of the lens, x along the width.
 */
export interface FieldSurface {
  readonly z: number;
  readonly slopeX: number;
  readonly slopeY: number;
  /** Field curvature, 1/m; above 0 where the focus lies further off towards the edge. */
  readonly bend: number;
}

/** What is not known of the surface, or changes: height error ± `height`, and a focus that moves off by 0 to `shift`. */
export interface Unsteady {
  readonly height: number;
  readonly shift: number;
}

/**
 * The surface of a part at z, tilted by `tilt` about the middle of the field so that it goes away from the lens in the
 * direction `direction` (from the width), under a lens whose focus lies `sag` further off at half the width `width`.
 */
export function fieldSurface(
  z: number,
  { tilt, direction, sag, width }: Readonly<Record<'tilt' | 'direction' | 'sag' | 'width', number>>,
): FieldSurface {
  const slope = Math.tan(tilt);
  return {
    z,
    slopeX: slope * Math.cos(direction),
    slopeY: slope * Math.sin(direction),
    bend: sag / (width / 2) ** 2,
  };
}

/** Position at a place. */
export function heightAt({ z, slopeX, slopeY, bend }: FieldSurface, x: number, y: number): number {
  return z + slopeX * x + slopeY * y - bend * (x * x + y * y);
}

/** True where a surface stands in one plane at right angles to the axis. */
export function isFlat({ slopeX, slopeY, bend }: FieldSurface): boolean {
  return slopeX === 0 && slopeY === 0 && bend === 0;
}

/** Lowest and highest of slope·x − bend·x² for |x| up to `half`. */
function alongSide(slope: number, bend: number, half: number): Stretch {
  const [left, right] = [-slope * half - bend * half * half, slope * half - bend * half * half];
  // The vertex, where it lies within the side: |slope/(2 bend)| < half.
  const top = Math.abs(slope) < 2 * Math.abs(bend) * half ? (slope * slope) / (4 * bend) : left;
  return { from: Math.min(left, right, top), to: Math.max(left, right, top) };
}

/** Lowest and highest position over a field, exactly: the two directions add up. */
export function rangeOver({ z, slopeX, slopeY, bend }: FieldSurface, { width, height }: FieldSize): Stretch {
  const x = alongSide(slopeX, bend, width / 2);
  const y = alongSide(slopeY, bend, height / 2);
  return { from: z + x.from + y.from, to: z + x.to + y.to };
}

/** A stretch with what is unsteady at its worst added. */
export function worstCase({ from, to }: Stretch, { height, shift }: Unsteady): Stretch {
  return { from: from - height - Math.max(0, shift), to: to + height - Math.min(0, shift) };
}

/** Positions that stay within `depth` at the worst; `to` below `from` where none do. */
export function steadyWithin({ from, to }: Stretch, { height, shift }: Unsteady): Stretch {
  return { from: from + height + Math.max(0, shift), to: to - height + Math.min(0, shift) };
}

/** Rows that a field is cut into for its part within the depth. */
const rows = 4000;

/** Part of the field's area, 0…1, on which the surface stays within `limits`; to 1e-4 by 4000 rows, each exact. */
export function partWithin(surface: FieldSurface, field: FieldSize, limits: Stretch): number {
  if (limits.to < limits.from) return 0;
  const { from, to } = rangeOver(surface, field);
  if (from >= limits.from && to <= limits.to) return 1;
  let sum = 0;
  for (let i = 0; i < rows; i++) {
    const y = field.height * ((i + 0.5) / rows - 0.5);
    const base = surface.z + surface.slopeY * y - surface.bend * y * y;
    const above = (level: number) => lengthAbove(surface, base - level, field.width / 2);
    sum += above(limits.from) - above(limits.to);
  }
  return Math.min(1, sum / (rows * field.width));
}

/** Length of |x| ≤ half on which base + slopeX·x − bend·x² lies above 0. */
function lengthAbove({ slopeX, bend }: FieldSurface, base: number, half: number): number {
  const inside = (a: number, b: number) => Math.max(0, Math.min(half, b) - Math.max(-half, a));
  const middle = base > 0 ? 2 * half : 0;
  // A bend that changes nothing over the side would divide by next to nothing.
  if (Math.abs(bend) * half <= 1e-12 * Math.abs(slopeX)) {
    if (slopeX === 0) return middle;
    const root = -base / slopeX;
    return slopeX > 0 ? inside(root, half) : inside(-half, root);
  }
  if (bend === 0) return middle;
  const discriminant = slopeX * slopeX + 4 * bend * base;
  if (discriminant <= 0) return bend > 0 ? 0 : 2 * half;
  const q = slopeX + (slopeX < 0 ? -1 : 1) * Math.sqrt(discriminant);
  const [one, other] = [q / (2 * bend), q === 0 ? 0 : (-2 * base) / q];
  const between = inside(Math.min(one, other), Math.max(one, other));
  return bend > 0 ? between : 2 * half - between;
}

/** Fields this many times as large as the one asked about count as unlimited. */
const mostTimes = 1000;
/** Halvings after which no field is left: a part in 1e12. */
const leastTimes = 2 ** -40;

/**
 * By how much a field may grow (or must shrink, below 1) until `excess` of its range, rising with its size, rises above 0;
 * 0 where no field is small enough, null where none of up to a thousand times the size is too large. To 1e-12.
 */
export function largestTimes(
  surface: FieldSurface,
  field: FieldSize,
  excess: (range: Stretch) => number,
): number | null {
  const at = (times: number) =>
    excess(rangeOver(surface, { width: times * field.width, height: times * field.height }));
  if (at(mostTimes) <= 0) return null;
  let low = 1;
  while (at(low) > 0 && low > leastTimes) low /= 2;
  if (at(low) > 0) return 0;
  let high = 2 * low;
  while (at(high) <= 0) high *= 2;
  return findRoot(at, low, high, 1e-13 * low);
}

/** How large a field of the same shape may be, in times its size; null without a limit. */
export interface UsableTimes {
  /** With the surface where it stands. */
  readonly set: number | null;
  /** With the surface moved along z to where the largest field fits. */
  readonly moved: number | null;
}

/** The largest field of the same shape, about the same middle, over which the surface stays within `limits`. */
export function usableTimes(surface: FieldSurface, field: FieldSize, limits: Stretch): UsableTimes {
  const length = limits.to - limits.from;
  return {
    set: largestTimes(surface, field, ({ from, to }) => Math.max(to - limits.to, limits.from - from)),
    moved: largestTimes(surface, field, ({ from, to }) => to - from - length),
  };
}

/** What each cause takes of the depth over the field, corners included, each by itself; metres. */
export function depthTaken(
  { slopeX, slopeY, bend }: FieldSurface,
  { width, height }: FieldSize,
  unsteady: Unsteady,
): Readonly<Record<'tilt' | 'curvature' | 'height' | 'shift', number>> {
  return {
    tilt: Math.abs(slopeX) * width + Math.abs(slopeY) * height,
    curvature: (Math.abs(bend) * (width * width + height * height)) / 4,
    height: 2 * unsteady.height,
    shift: Math.abs(unsteady.shift),
  };
}

/** Largest slope, tangent of the tilt, in its direction at which the surface takes no more than `length` of depth. */
export function largestSlope(
  { bend }: FieldSurface,
  direction: number,
  field: FieldSize,
  length: number,
): number {
  const [x, y] = [Math.cos(direction), Math.sin(direction)];
  const excess = (slope: number) => {
    const { from, to } = rangeOver({ z: 0, slopeX: slope * x, slopeY: slope * y, bend }, field);
    return to - from - length;
  };
  if (excess(0) >= 0) return 0;
  // Tilt alone would take the whole depth at this slope; with curvature it takes more.
  const most = length / (Math.abs(x) * field.width + Math.abs(y) * field.height);
  return excess(most) <= 0 ? most : findRoot(excess, 0, most, 1e-13 * most);
}
