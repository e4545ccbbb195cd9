import type { GrooveSection } from './groove.ts';

/** A groove in numbers; lengths in m, angles in rad. */
export interface GrooveShape {
  /** Greatest depth. */
  readonly depth: number;
  /** Depth in the middle of the line, y = 0. */
  readonly centreDepth: number;
  /** Area of the cross-section inside the top width over the top width. */
  readonly meanDepth: number;
  /** Width at the surface, see {@link shapeOf}. */
  readonly topWidth: number;
  /** Width at nine tenths of the greatest depth. */
  readonly bottomWidth: number;
  /** Angle of the walls against the surface between a fifth and four fifths of the depth, mean of both; π/2 is upright. */
  readonly wallAngle: number;
  /** Depth in the middle over mean depth. */
  readonly centreToMeanDepth: number;
  /** Greatest depth beside the groove, beyond its top edges: what faint rings of the spot cut. */
  readonly besideDepth: number;
}

/** Parts of the depth between which a wall is continued to the surface. */
const continuedFrom = { high: 0.4, low: 0.2 } as const;
/** What lies further out and is nowhere as deep as this part is beside the groove, not its wall. */
const belongs = 0.5;
/** Parts of the depth: a wall that rises by more than the first has met a ring; the second above the valley it is a wall again. */
const [rises, above] = [0.02, 0.1];

/**
 * Measures a cross-section; undefined where nothing is removed. A top edge lies where the wall meets the surface,
 * continued from two fifths and a fifth of the depth (or from as much higher up as a valley before a ring asks) with
 * depth^(2/3) straight over y², as a Gaussian leaves it (G. Raciukaitis et al., J. Laser Micro/Nanoeng. 4, 186 (2009),
 * memory, for the depth of a line). The wall is the one outside the outermost place half as deep as the groove: rings
 * further out that are less deep lie beside it. Places between samples are found on straight lines, levels of 2/3 power.
 */
export function shapeOf({ y, depth }: GrooveSection): GrooveShape | undefined {
  const greatest = depth.reduce((most, d) => Math.max(most, d), 0);
  if (!(greatest > 0)) return undefined;
  const section = { y, depth };
  const left = sideOf(section, greatest, -1);
  const right = sideOf(section, greatest, 1);
  const topWidth = right.edge - left.edge;
  const meanDepth = areaBetween(section, left.edge, right.edge) / topWidth;
  const centreDepth = depthAt(section, 0);
  return {
    depth: greatest,
    centreDepth,
    meanDepth,
    topWidth,
    bottomWidth: right.bottom - left.bottom,
    wallAngle: (left.angle + right.angle) / 2,
    centreToMeanDepth: centreDepth / meanDepth,
    besideDepth: besideOf(section, left.edge, right.edge),
  };
}

interface Side {
  readonly edge: number;
  readonly bottom: number;
  readonly angle: number;
}

function sideOf(section: GrooveSection, greatest: number, sign: 1 | -1): Side {
  const { low, edge } = footOf(section, greatest, sign);
  const high = low + continuedFrom.high - continuedFrom.low;
  const far = firstBelow(section, high * greatest, Math.max(belongs, high) * greatest, sign);
  const [a, b] = [far, edge].map((place) => (place - middleOf(section)) ** 2) as [number, number];
  const [up, down] = [high ** (2 / 3), low ** (2 / 3)];
  const square = b + ((b - a) * down) / (up - down);
  return {
    edge: middleOf(section) + sign * Math.sqrt(square),
    bottom: outermost(section, 0.9 * greatest, sign),
    angle: Math.atan(((0.8 - low) * greatest) / Math.abs(edge - outermost(section, 0.8 * greatest, sign))),
  };
}

/** The foot of a wall: a fifth of the depth and its place, or what lies a tenth above the valley before a ring. */
function footOf(section: GrooveSection, greatest: number, sign: 1 | -1): { low: number; edge: number } {
  const valley = valleyOf(section, greatest, sign);
  const low = valley === undefined ? continuedFrom.low : Math.max(continuedFrom.low, valley + above);
  return { low, edge: firstBelow(section, low * greatest, belongs * greatest, sign) };
}

/** Where the wall ends in a valley before a ring: the depth there in parts of the greatest. */
function valleyOf(section: GrooveSection, greatest: number, sign: 1 | -1): number | undefined {
  const { depth } = section;
  let lowest = greatest;
  for (let i = indexOf(section, belongs * greatest, sign); i >= 0 && i < depth.length; i += sign) {
    if (depth[i]! < lowest) lowest = depth[i]!;
    if (lowest < (continuedFrom.low - above) * greatest) return undefined;
    // Higher up a rise is part of the wall.
    if (lowest < (belongs - above) * greatest && depth[i]! > lowest + rises * greatest)
      return lowest / greatest;
  }
  return undefined;
}

/** Middle between the half-depth places: measured grooves need not lie at 0. */
function middleOf(section: GrooveSection): number {
  const half = section.depth.reduce((most, d) => Math.max(most, d), 0) / 2;
  return (outermost(section, half, 1) + outermost(section, half, -1)) / 2;
}

/** The place furthest to one side at which the groove is as deep as `level`, m. */
function outermost(section: GrooveSection, level: number, sign: 1 | -1): number {
  return firstBelow(section, level, level, sign);
}

/** Number of the sample furthest to one side that is as deep as `level`. */
function indexOf({ depth }: GrooveSection, level: number, sign: 1 | -1): number {
  return sign === 1 ? depth.findLastIndex((d) => d >= level) : depth.findIndex((d) => d >= level);
}

/** From the outermost place as deep as `from`, the first place further out at which the groove is no deeper than `level`, m. */
function firstBelow({ y, depth }: GrooveSection, level: number, from: number, sign: 1 | -1): number {
  let i = indexOf({ y, depth }, from, sign);
  if (i < 0) return 0;
  const last = depth.length - 1;
  while (i + sign >= 0 && i + sign <= last && depth[i + sign]! >= level) i += sign;
  const outer = i + sign;
  if (outer < 0 || outer > last) return y[i]!;
  // Near its edge a groove rises as the 3/2 power: straight between samples in the 2/3 power.
  const [inside, outside, wanted] = [depth[i]!, Math.max(0, depth[outer]!), level].map(
    (d) => d ** (2 / 3),
  ) as [number, number, number];
  const part = inside === outside ? 0 : (inside - wanted) / (inside - outside);
  return y[i]! + part * (y[outer]! - y[i]!);
}

/** Depth at a place, straight between samples. */
export function depthAt({ y, depth }: GrooveSection, place: number): number {
  const last = y.length - 1;
  if (place <= y[0]!) return depth[0]!;
  if (place >= y[last]!) return depth[last]!;
  let [low, high] = [0, last];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (y[middle]! <= place) low = middle;
    else high = middle;
  }
  const part = (place - y[low]!) / (y[high]! - y[low]!);
  return depth[low]! + part * (depth[high]! - depth[low]!);
}

/** ∫ depth dy between two places, m²: trapezoids, cut at the places. */
function areaBetween(section: GrooveSection, from: number, to: number): number {
  const { y, depth } = section;
  let sum = 0;
  for (let i = 1; i < y.length; i++) {
    const [a, b] = [Math.max(from, y[i - 1]!), Math.min(to, y[i]!)];
    if (b <= a) continue;
    const whole = a === y[i - 1] && b === y[i];
    sum += ((b - a) * (whole ? depth[i - 1]! + depth[i]! : depthAt(section, a) + depthAt(section, b))) / 2;
  }
  return sum;
}

function besideOf({ y, depth }: GrooveSection, from: number, to: number): number {
  return depth.reduce((most, d, i) => (y[i]! < from || y[i]! > to ? Math.max(most, d) : most), 0);
}

/** Width from outermost wall to outermost wall at which the groove is as deep as `level`, m; 0 where it is not. */
export function widthAt(section: GrooveSection, level: number): number {
  if (!section.depth.some((depth) => depth >= level)) return 0;
  return outermost(section, level, 1) - outermost(section, level, -1);
}
