import { besselJ0 } from '../numerics/bessel.ts';
import { gaussLegendre } from '../numerics/gaussLegendre.ts';
import { largestOf } from '../numerics/largestOf.ts';
import { tabulate, tabulated } from '../numerics/polynomialTable.ts';
import { planesPerTile, type Rows, radiiPerTile, sumSquaredField } from '../numerics/sumKernel.ts';
import { planPlanes } from './planeInterpolation.ts';
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

/** J0(v s) in tiles of radii, node by node: [tile][node][radius]; to 1e-9. `radii` and `nodes` are not negative. */
export function tileBessel(nodes: Float64Array, radii: Float64Array): Float64Array {
  const tiles = Math.ceil(radii.length / radiiPerTile);
  const tiled = new Float64Array(tiles * nodes.length * radiiPerTile);
  const table = tabulate(besselJ0, largestOf(radii) * largestOf(nodes));
  let k = 0;
  for (let tile = 0; tile < tiles; tile++) {
    for (let n = 0; n < nodes.length; n++) {
      for (let i = 0; i < radiiPerTile; i++) {
        tiled[k++] = tabulated(
          table,
          radii[Math.min(radiiPerTile * tile + i, radii.length - 1)]! * nodes[n]!,
        );
      }
    }
  }
  return tiled;
}

/** The source with each plane's defocus: [pair of planes][node][re, im of the first, re, im of the second]. */
export function tileSource(
  source: ThroughFocusSource,
  stepRatio: number,
  planes: Float64Array,
): Float64Array {
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

/** The first `width` values of each row, without the rest. */
export function packRows({ values, stride }: Rows, width: number, into: Float64Array, count: number): void {
  if (stride === width) return into.set(values.subarray(0, count * width));
  for (let row = 0; row < count; row++) {
    into.set(values.subarray(row * stride, row * stride + width), row * width);
  }
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
  const source = createThroughFocusSource(zones, stepRatio, largestOf(radii), largestOf(planes));
  const count = source.nodes.length;
  const bessel = tileBessel(source.nodes, radii);
  const mirrored = isMirrored(zones, planes);
  const wanted = mirrored ? planes.subarray(0, Math.ceil(planes.length / 2)) : planes;
  const rule = planPlanes(wanted, stepRatio * source.nodes[count - 1]!);
  const tiled = tileSource(source, stepRatio, rule?.computed ?? wanted);
  const rows = sumSquaredField({ count, source: tiled, bessel, ...(rule && { combine: rule }) });
  const values = new Float64Array(radii.length * planes.length);
  packRows(rows, radii.length, values, wanted.length);
  for (let plane = wanted.length; plane < planes.length; plane++) {
    const twin = (planes.length - 1 - plane) * radii.length;
    values.copyWithin(plane * radii.length, twin, twin + radii.length);
  }
  return values;
}
