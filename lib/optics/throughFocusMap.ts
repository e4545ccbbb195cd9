import { besselJ0 } from '../numerics/bessel.ts';
import { gaussLegendre } from '../numerics/gaussLegendre.ts';
import { interpolatePlanes, planPlanes } from './planeInterpolation.ts';
import { cutZones, integrationEnd, type Zone } from './zones.ts';

/** Nodes on the plate and the factors of the field there; the Bessel matrix belongs to the radii asked for. */
export interface ThroughFocusSource {
  /** Nodes s = r/a. */
  readonly nodes: Float64Array;
  /** Quadrature weight times amplitude times e^{iφ}, in the focus: real and imaginary part. */
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/**
 * One Gauss rule a zone of the fewest nodes that keep 1e-7 of the unshaped amplitude on the axis, for |v| up to
 * `largestRadius` and |ζ| up to `largestDefocus`: a quarter of the phase over the zone, and the edge of the Bessel-like
 * fall beyond it, which widens as its cube root (measured for phases of 5 to 200 rad). A Gaussian without phase
 * takes 2.5 nodes a beam radius.
 */
function countNodes(
  inner: number,
  outer: number,
  stepRatio: number,
  radius: number,
  defocus: number,
): number {
  const phase = (radius + 2 * stepRatio * stepRatio * defocus * outer) * (outer - inner);
  const width = stepRatio * (outer - inner);
  return Math.ceil(Math.max(phase / 4 + 2 * Math.cbrt(phase) + 1, 5 + 2.5 * width));
}

/** Nodes and source for zones in units of the step radius a; `stepRatio` κ = a/w. */
export function createThroughFocusSource(
  zones: readonly Zone[],
  stepRatio: number,
  largestRadius: number,
  largestDefocus: number,
): ThroughFocusSource {
  const used = cutZones(zones, integrationEnd(zones, 1 / stepRatio));
  const nodes: number[] = [];
  const re: number[] = [];
  const im: number[] = [];
  used.forEach(({ outer, phase }, j) => {
    const inner = j === 0 ? 0 : used[j - 1]!.outer;
    const rule = gaussLegendre(countNodes(inner, outer, stepRatio, largestRadius, largestDefocus));
    const half = (outer - inner) / 2;
    rule.nodes.forEach((t, i) => {
      const s = inner + half * (1 + t);
      const amplitude =
        2 * stepRatio * stepRatio * s * half * rule.weights[i]! * Math.exp(-((stepRatio * s) ** 2));
      nodes.push(s);
      re.push(amplitude * Math.cos(phase));
      im.push(amplitude * Math.sin(phase));
    });
  });
  return { nodes: Float64Array.from(nodes), re: Float64Array.from(re), im: Float64Array.from(im) };
}

/** Radii and planes that the inner loop takes at once: eight sums stay in registers, and each source value serves twice. */
const radiiPerTile = 2;
const planesPerTile = 2;

/** J0(v s) in pairs of radii, node by node: [pair][node][radius of the pair]. */
export function tileBessel(nodes: Float64Array, radii: Float64Array): Float64Array {
  const tiles = Math.ceil(radii.length / radiiPerTile);
  const matrix = new Float64Array(tiles * nodes.length * radiiPerTile);
  let k = 0;
  for (let tile = 0; tile < tiles; tile++) {
    const first = radii[radiiPerTile * tile]!;
    const second = radii[Math.min(radiiPerTile * tile + 1, radii.length - 1)]!;
    for (let n = 0; n < nodes.length; n++) {
      matrix[k++] = besselJ0(first * nodes[n]!);
      matrix[k++] = besselJ0(second * nodes[n]!);
    }
  }
  return matrix;
}

/** The source with each plane's defocus: [pair of planes][node][re, im of the first, re, im of the second]. */
function tileSource(source: ThroughFocusSource, stepRatio: number, planes: Float64Array): Float64Array {
  const { nodes, re, im } = source;
  const tiles = Math.ceil(planes.length / planesPerTile);
  const tiled = new Float64Array(tiles * nodes.length * planesPerTile * 2);
  let k = 0;
  for (let tile = 0; tile < tiles; tile++) {
    for (let n = 0; n < nodes.length; n++) {
      const square = (stepRatio * nodes[n]!) ** 2;
      for (let p = 0; p < planesPerTile; p++) {
        const turn = -square * planes[Math.min(planesPerTile * tile + p, planes.length - 1)]!;
        const c = Math.cos(turn);
        const s = Math.sin(turn);
        tiled[k++] = re[n]! * c - im[n]! * s;
        tiled[k++] = re[n]! * s + im[n]! * c;
      }
    }
  }
  return tiled;
}

/** |U|² of all radii in all planes, row by row: a row a plane. */
function multiply(bessel: Float64Array, source: Float64Array, count: number, radii: number, planes: number) {
  const values = new Float64Array(radii * planes);
  for (let plane = 0; plane < planes; plane += planesPerTile) {
    const sourceStart = plane * count * 2;
    for (let radius = 0; radius < radii; radius += radiiPerTile) {
      let [re00, im00, re01, im01, re10, im10, re11, im11] = [0, 0, 0, 0, 0, 0, 0, 0];
      let b = radius * count;
      let q = sourceStart;
      for (let n = 0; n < count; n++) {
        const j0 = bessel[b]!;
        const j1 = bessel[b + 1]!;
        const s0 = source[q]!;
        const t0 = source[q + 1]!;
        const s1 = source[q + 2]!;
        const t1 = source[q + 3]!;
        re00 += j0 * s0;
        im00 += j0 * t0;
        re01 += j1 * s0;
        im01 += j1 * t0;
        re10 += j0 * s1;
        im10 += j0 * t1;
        re11 += j1 * s1;
        im11 += j1 * t1;
        b += 2;
        q += 4;
      }
      const at = plane * radii + radius;
      const two = radius + 1 < radii;
      values[at] = re00 * re00 + im00 * im00;
      if (two) values[at + 1] = re01 * re01 + im01 * im01;
      if (plane + 1 < planes) {
        values[at + radii] = re10 * re10 + im10 * im10;
        if (two) values[at + radii + 1] = re11 * re11 + im11 * im11;
      }
    }
  }
  return values;
}

/**
 * True where |U(ϱ, −ζ)| = |U(ϱ, ζ)| for every pair of planes: all phases alike but for whole half waves, to 1e-9 rad
 * (1e-9 of the amplitude), and planes that mirror one another.
 */
function isMirrored(zones: readonly Zone[], planes: Float64Array): boolean {
  const first = zones[0]!.phase;
  if (zones.some(({ phase }) => Math.abs(Math.sin(phase - first)) > 1e-9)) return false;
  return planes.every((plane, i) => Math.abs(plane + planes[planes.length - 1 - i]!) < 1e-12);
}

/**
 * |U|² through the focus: `planes` are ζ (effective, wavefront curvature included), rows of the result; `radii` are
 * v = 2πaρ/(λB), columns. Zones in units of the step radius a, `stepRatio` κ = a/w; M² = 1. 1 is the axis of the
 * unshaped, unstopped beam in its focus; to 1e-6 of that. For phases over a zone, (v + 2κ²|ζ|s)·Δs, up to 1800 rad.
 * Where plate and planes allow it, half the planes are computed and mirrored.
 * Source: Collins, J. Opt. Soc. Am. 60, 1168 (1970), for a Gaussian beam behind a round plate.
 */
export function throughFocusMap(
  zones: readonly Zone[],
  stepRatio: number,
  radii: Float64Array,
  planes: Float64Array,
): Float64Array {
  const largest = (values: Float64Array) =>
    values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const source = createThroughFocusSource(zones, stepRatio, largest(radii), largest(planes));
  const bessel = tileBessel(source.nodes, radii);
  const count = source.nodes.length;
  const product = (some: Float64Array) =>
    multiply(bessel, tileSource(source, stepRatio, some), count, radii.length, some.length);
  const compute = (some: Float64Array) => {
    const rule = planPlanes(some, stepRatio * source.nodes[count - 1]!);
    return rule ? interpolatePlanes(rule, product(rule.computed), radii.length, some.length) : product(some);
  };
  if (!isMirrored(zones, planes)) return compute(planes);
  const half = compute(planes.subarray(0, Math.ceil(planes.length / 2)));
  const values = new Float64Array(radii.length * planes.length);
  values.set(half);
  for (let plane = Math.ceil(planes.length / 2); plane < planes.length; plane++) {
    const twin = (planes.length - 1 - plane) * radii.length;
    values.copyWithin(plane * radii.length, twin, twin + radii.length);
  }
  return values;
}
