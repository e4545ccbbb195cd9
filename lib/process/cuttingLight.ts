import type { Spot } from '../optics/askedSpot.ts';

/** What a groove asks of the light: relative irradiance on chords of the spot, in planes ever deeper below the surface. */
export interface CuttingLight {
  /** Places across the line in m, ascending in equal steps. */
  readonly across: Float64Array;
  /** `across` starts in the middle of the line, and the other side is its mirror image. */
  readonly mirrored: boolean;
  /** The spot is the same before and behind its middle. */
  readonly symmetric: boolean;
  /** Places along the line in m, ascending in equal steps about 0; their steps are a multiple of four. */
  readonly along: Float64Array;
  /** m from plane to plane. */
  readonly planeStep: number;
  /**
   * Relative irradiance in the plane `index`·planeStep below the fresh surface: a row of `along` for each place across.
   * Undefined where the spot is not computed any more. Kept once made.
   */
  plane(index: number): Float64Array | undefined;
}

/** How the light of a groove is sampled. */
export interface CuttingSampling {
  /** The spot at a depth in m below the fresh surface; undefined beyond the range in which spots are computed. */
  readonly spotAtDepth: (depth: number) => Spot | undefined;
  /** m from plane to plane; a twentieth of a Rayleigh length keeps the interpolation between them to 1e-5. */
  readonly planeStep: number;
  /** Relative irradiance below which a pulse neither removes nor counts. */
  readonly level: number;
  /** Greatest depth in m that is looked at when the length of the chords is chosen. */
  readonly depth: number;
  /** Direction of the line in rad from x. */
  readonly direction: number;
  /** The spot is the same on both sides of the line, and before and behind its middle. */
  readonly mirrored: boolean;
  /** Steps from the middle to the edge, across and along; {@link usualSteps} where left out. */
  readonly steps?: { readonly across: number; readonly along: number };
}

/** The groove of a Gaussian is then right to 1e-5 of its depth; see the test of convergence. */
export const usualSteps = { across: 96, along: 64 };
/** Chords of spots with fine structure get more nodes, at most this many to either side. */
const mostSteps = 320;

/** Samples the light as far out as it counts. */
export function sampleCuttingLight(sampling: CuttingSampling): CuttingLight {
  const { spotAtDepth, planeStep, level, mirrored } = sampling;
  const surface = spotAtDepth(0);
  const wide = surface === undefined ? 0 : reachAbove(surface, level);
  const long = Math.max(wide, ...[0.25, 0.5, 0.75, 1].map((part) => reachAt(sampling, part)));
  const steps = sampling.steps ?? usualSteps;
  const half = sampling.steps ? steps.along : fineEnough(surface, long, steps.along);
  const along = evenly(-long, long, 2 * half);
  const across = mirrored ? evenly(0, wide, steps.across) : evenly(-wide, wide, 2 * steps.across);
  const kept = new Map<number, Float64Array | undefined>();
  const sampled = new Map<Spot, Float64Array>();
  const plane = (index: number) => {
    if (!kept.has(index)) {
      const spot = spotAtDepth(index * planeStep);
      const chords = spot && (sampled.get(spot) ?? chordsOf(spot, across, along, sampling.direction));
      if (spot && chords) sampled.set(spot, chords);
      kept.set(index, chords);
    }
    return kept.get(index);
  };
  return { across, mirrored, symmetric: mirrored, along, planeStep, plane };
}

function reachAt({ spotAtDepth, level, depth }: CuttingSampling, part: number): number {
  const spot = spotAtDepth(part * depth);
  return spot === undefined ? 0 : reachAbove(spot, level);
}

/** The same light with its focus `scale` times as large: everything across grows with it, everything along z with its square. */
export function widenedLight(light: CuttingLight, scale: number): CuttingLight {
  return {
    ...light,
    across: light.across.map((place) => scale * place),
    along: light.along.map((place) => scale * place),
    planeStep: scale * scale * light.planeStep,
  };
}

/** Steps of the scan for the reach, in radii of the effective area, and how many of them. */
const scanStep = 0.02;
const scanSteps = 3000;

/**
 * Distance from the centre beyond which the spot lies below `level`, along its axes and between them; a little more
 * than the furthest place above it, so that the edge lies inside.
 */
function reachAbove(spot: Spot, level: number): number {
  const step = scanStep * Math.sqrt(spot.effectiveArea / Math.PI);
  const directions = spot.spectrumForm === 'round' ? [0] : [0, 0.25, 0.5, 0.75].map((part) => part * Math.PI);
  let last = 0;
  for (const direction of directions) {
    const [x, y] = [Math.cos(direction), Math.sin(direction)];
    for (let i = 0; i <= scanSteps; i++) {
      const radius = i * step;
      const highest = Math.max(
        spot.irradianceAt(radius * x, radius * y),
        spot.irradianceAt(-radius * x, -radius * y),
      );
      if (highest > level && i > last) last = i;
      if (highest === 0 && radius > 0) break;
    }
  }
  return (last + 2) * step;
}

/** Four nodes to the shortest period in the spot. */
function fineEnough(spot: Spot | undefined, length: number, usual: number): number {
  if (spot === undefined) return usual;
  const end = Math.max(spot.spectrumEnd(0), spot.spectrumEnd(Math.PI / 2));
  const wanted = Number.isFinite(end) ? Math.ceil((4 * length * end) / (2 * Math.PI)) : usual;
  return Math.min(mostSteps, Math.max(usual, 2 * Math.ceil(wanted / 2)));
}

function evenly(from: number, to: number, steps: number): Float64Array {
  return Float64Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);
}

function chordsOf(spot: Spot, across: Float64Array, along: Float64Array, direction: number): Float64Array {
  const [cosine, sine] = [Math.cos(direction), Math.sin(direction)];
  const values = new Float64Array(across.length * along.length);
  across.forEach((y, row) => {
    along.forEach((x, column) => {
      values[row * along.length + column] = spot.irradianceAt(x * cosine - y * sine, x * sine + y * cosine);
    });
  });
  return values;
}

/**
 * The chord at place number `row` across, at `depth` m below the fresh surface, into `into`; between planes by the cubic
 * through four of them. False, and zeros, where the spot is not computed so deep.
 */
export function chordAt(light: CuttingLight, row: number, depth: number, into: Float64Array): boolean {
  const columns = light.along.length;
  const at = depth / light.planeStep;
  const first = Math.max(0, Math.floor(at) - 1);
  const [a, b] = [light.plane(first), light.plane(first + 1)];
  const [c, d] = [light.plane(first + 2), light.plane(first + 3)];
  if (!a || !b || !c || !d) {
    into.fill(0, 0, columns);
    return false;
  }
  const t = at - first;
  const wa = ((1 - t) * (2 - t) * (3 - t)) / 6;
  const wb = (t * (2 - t) * (3 - t)) / 2;
  const wc = (t * (t - 1) * (3 - t)) / 2;
  const wd = (t * (t - 1) * (t - 2)) / 6;
  const start = row * columns;
  const end = light.symmetric ? (columns + 1) / 2 : columns;
  for (let i = 0; i < end; i++) {
    const j = start + i;
    into[i] = wa * a[j]! + wb * b[j]! + wc * c[j]! + wd * d[j]!;
  }
  if (light.symmetric) for (let i = 0; i < end; i++) into[columns - 1 - i] = into[i]!;
  return true;
}
