import { gaussLegendre } from '../numerics/gaussLegendre.ts';
import { Problem } from '../problem.ts';
import type { Zone } from './zones.ts';

/** A Gaussian beam of unit peak field on the plate, SI units; lengths from the plate's centre. */
export interface PlateBeam {
  readonly wavelength: number;
  /** 1/e² irradiance radii along x and y in m. */
  readonly radiusX: number;
  readonly radiusY: number;
  /** Centre in m; default 0. */
  readonly centreX?: number;
  readonly centreY?: number;
  /** 1/(radius of the wavefront) in 1/m along x and y, diverging positive; default 0 (flat). */
  readonly curvatureX?: number;
  readonly curvatureY?: number;
  /** Angle of the beam to the axis in rad; default 0. */
  readonly tiltX?: number;
  readonly tiltY?: number;
}

/** Where the samples lie: `size` a side (a power of two) over a square of side `extent` in m about the axis. */
export interface PlateGrid {
  readonly size: number;
  readonly extent: number;
}

/**
 * A complex field as averages over square pixels, row by row along x, (re, im) interleaved. Pixel (column, row) has
 * its centre at ((column + ½)·pitch − size·pitch/2, the same for row).
 */
export interface SampledField {
  readonly size: number;
  /** m a pixel. */
  readonly pitch: number;
  readonly wavelength: number;
  readonly data: Float64Array;
}

/** One factor of the separable beam at a coordinate, as (re, im). */
export type Line = (at: number) => readonly [number, number];

function lineOf(k: number, radius: number, centre = 0, curvature = 0, tilt = 0): Line {
  return (at) => {
    const size = Math.exp(-(((at - centre) / radius) ** 2));
    const phase = k * (Math.sin(tilt) * at + (curvature * at * at) / 2);
    return [size * Math.cos(phase), size * Math.sin(phase)];
  };
}

/** Mean of `line` over [low, high] by four Gauss points: exact to seventh order. */
export function meanOver(line: Line, low: number, high: number): readonly [number, number] {
  const { nodes, weights } = gaussLegendre(4);
  let re = 0;
  let im = 0;
  for (let i = 0; i < 4; i++) {
    const [a, b] = line((low + high + (high - low) * nodes[i]!) / 2);
    re += (weights[i]! / 2) * a;
    im += (weights[i]! / 2) * b;
  }
  return [re, im];
}

/**
 * The beam behind a round stepped plate, averaged over pixels: zones in m from the centre, the last one ends at the
 * stop (Infinity: open). Pixels cut by an edge are integrated up to the circle, beam included (not a mere share of
 * the area): averages to 1e-6 of the peak, so that a hard edge costs the focus no accuracy.
 */
export function sampleShapedBeam(beam: PlateBeam, zones: readonly Zone[], grid: PlateGrid): SampledField {
  const { size, extent } = grid;
  const stop = zones.at(-1)!.outer;
  if (Number.isFinite(stop) && 2 * stop > extent) {
    throw new Problem(
      'impossible',
      `A stop of ${2 * stop} m diameter does not fit on a grid of ${extent} m. Widen the grid.`,
      { value: `${extent} m`, allowed: `from ${2 * stop} m` },
    );
  }
  const pitch = extent / size;
  const k = (2 * Math.PI) / beam.wavelength;
  const x = lineOf(k, beam.radiusX, beam.centreX, beam.curvatureX, beam.tiltX);
  const y = lineOf(k, beam.radiusY, beam.centreY, beam.curvatureY, beam.tiltY);
  const data = new Float64Array(2 * size * size);
  zones.forEach((zone, j) => {
    // t = Σ_j (t_j − t_{j+1}) · disc of radius r_j, with nothing beyond the last.
    const next = zones[j + 1];
    const re = Math.cos(zone.phase) - (next ? Math.cos(next.phase) : 0);
    const im = Math.sin(zone.phase) - (next ? Math.sin(next.phase) : 0);
    addDisc({ size, pitch, data }, zone.outer, x, y, re, im);
  });
  return { size, pitch, wavelength: beam.wavelength, data };
}

interface Canvas {
  readonly size: number;
  readonly pitch: number;
  readonly data: Float64Array;
}

/** Adds (re + i·im)·x·y inside the circle `radius` to the pixels' averages. */
function addDisc(canvas: Canvas, radius: number, x: Line, y: Line, re: number, im: number): void {
  const { size, pitch, data } = canvas;
  const edges = Float64Array.from({ length: size + 1 }, (_, i) => (i - size / 2) * pitch);
  const meansX = Array.from({ length: size }, (_, i) => meanOver(x, edges[i]!, edges[i + 1]!));
  const meansY = Array.from({ length: size }, (_, i) => meanOver(y, edges[i]!, edges[i + 1]!));
  for (let row = 0; row < size; row++) {
    const nearY = Math.min(Math.abs(edges[row]!), Math.abs(edges[row + 1]!));
    const [yRe, yIm] = meansY[row]!;
    for (let column = 0; column < size; column++) {
      const nearX = Math.min(Math.abs(edges[column]!), Math.abs(edges[column + 1]!));
      if (Math.hypot(nearX, nearY) >= radius) continue;
      const [xRe, xIm] = meansX[column]!;
      const cut = Math.hypot(nearX + pitch, nearY + pitch) > radius;
      const [a, b] = cut
        ? meanInside(radius, pitch, edges[column]!, edges[row]!, x, y)
        : [xRe * yRe - xIm * yIm, xRe * yIm + xIm * yRe];
      const at = 2 * (row * size + column);
      data[at]! += re * a - im * b;
      data[at + 1]! += re * b + im * a;
    }
  }
}

/**
 * (1/pitch²) ∫∫ x·y over the part of the pixel inside the circle: strips along x, each up to the circle, cut where
 * the circle enters or leaves the pixel. No pixel straddles an axis, so the circle is a monotonic arc in it.
 */
function meanInside(
  radius: number,
  pitch: number,
  left: number,
  bottom: number,
  x: Line,
  y: Line,
): [number, number] {
  const signX = left < 0 ? -1 : 1;
  const signY = bottom < 0 ? -1 : 1;
  const nearX = left < 0 ? -(left + pitch) : left;
  const nearY = bottom < 0 ? -(bottom + pitch) : bottom;
  const reach = (across: number) => Math.sqrt(Math.max(0, radius * radius - across * across));
  // From `full` on the strip is cut by the circle, from `end` on it is empty.
  const full = Math.min(Math.max(reach(nearY + pitch), nearX), nearX + pitch);
  const end = Math.min(reach(nearY), nearX + pitch);
  const { nodes, weights } = gaussLegendre(6);
  let re = 0;
  let im = 0;
  for (const [from, to] of [
    [nearX, full],
    [full, end],
  ] as const) {
    for (let i = 0; i < 6; i++) {
      const at = (from + to + (to - from) * nodes[i]!) / 2;
      const top = Math.min(reach(at), nearY + pitch);
      const [xRe, xIm] = x(signX * at);
      const [yRe, yIm] = meanOver(y, signY * nearY, signY * top);
      const area = ((weights[i]! / 2) * (to - from) * (top - nearY)) / (pitch * pitch);
      re += area * (xRe * yRe - xIm * yIm);
      im += area * (xRe * yIm + xIm * yRe);
    }
  }
  return [re, im];
}
