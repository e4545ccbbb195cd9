import { fitNonlinear } from '../numerics/leastSquares.ts';
import { Problem } from '../problem.ts';
import type { BeamGrid } from './beamGrid.ts';
import { type Moments, type Plane, planeAt, principalAxes } from './beamState.ts';

/** Elliptical Gaussian beside the moments, lengths in pixels. */
export interface GaussianFit {
  /** Central second moments of the fitted Gaussian; 2σ is its 1/e² radius. */
  readonly moments: Moments;
  /** Fitted peak above the background, in counts. */
  readonly peak: number;
  /** Root mean square of data minus fit inside the window, over the fitted peak. */
  readonly misfit: number;
}

/** Cells along a side that the fit looks at: enough for 1e-3 of the width, few enough for 10 ms. */
const side = 80;

/**
 * Least-squares elliptical Gaussian on the background-subtracted cells within two 1/e² radii of the
 * centroid, the background held. Undefined where the fit does not settle or is no peak.
 */
export function fitGaussian(
  grid: BeamGrid,
  plane: Plane,
  start: Moments,
  power: number,
): GaussianFit | undefined {
  const points = gatherPoints(grid, plane, start);
  const determinant = start.xx * start.yy - start.xy ** 2;
  const peak = power / (2 * Math.PI * Math.sqrt(determinant));
  const [a, b, c] = [start.yy / determinant, -start.xy / determinant, start.xx / determinant];
  try {
    const fit = fitNonlinear({
      observed: points.values,
      start: [peak, 0, 0, a, b, c],
      model: (p, into) => fillModel(points, p, into),
      derivatives: (p, into) => fillDerivatives(points, p, into),
      mostSteps: 60,
    });
    return toGaussian(fit.parameters, start, grid.cell, Math.sqrt(fit.reducedChiSquare));
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
}

interface Points {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly values: Float64Array;
}

function gatherPoints(grid: BeamGrid, plane: Plane, { x, y, xx, yy }: Moments): Points {
  const [halfX, halfY] = [4 * Math.sqrt(xx), 4 * Math.sqrt(yy)];
  const stride = Math.max(1, Math.ceil((2 * Math.max(halfX, halfY)) / (side * grid.cell)));
  const found: [number[], number[], number[]] = [[], [], []];
  for (let row = 0; row < grid.rows; row += stride) {
    const v = grid.top + (row + 0.5) * grid.cell - y;
    if (Math.abs(v) > halfY) continue;
    for (let column = 0; column < grid.columns; column += stride) {
      const u = grid.left + (column + 0.5) * grid.cell - x;
      if (Math.abs(u) > halfX) continue;
      found[0].push(u);
      found[1].push(v);
      found[2].push(grid.means[row * grid.columns + column]! - planeAt(plane, x + u, y + v));
    }
  }
  const [us, vs, values] = found.map((list) => Float64Array.from(list)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  return { x: us, y: vs, values };
}

/** p = [peak, x, y, a, b, c]: peak·exp(−(a u² + 2b u v + c v²)/2). */
function fillModel({ x, y }: Points, p: Float64Array, into: Float64Array): void {
  const [peak, x0, y0, a, b, c] = p as unknown as [number, number, number, number, number, number];
  for (let i = 0; i < into.length; i++) {
    const u = x[i]! - x0;
    const v = y[i]! - y0;
    into[i] = peak * Math.exp(-0.5 * (a * u * u + 2 * b * u * v + c * v * v));
  }
}

function fillDerivatives({ x, y }: Points, p: Float64Array, into: Float64Array): void {
  const [peak, x0, y0, a, b, c] = p as unknown as [number, number, number, number, number, number];
  for (let i = 0, k = 0; i < x.length; i++, k += 6) {
    const u = x[i]! - x0;
    const v = y[i]! - y0;
    const shape = Math.exp(-0.5 * (a * u * u + 2 * b * u * v + c * v * v));
    const value = peak * shape;
    into[k] = shape;
    into[k + 1] = value * (a * u + b * v);
    into[k + 2] = value * (b * u + c * v);
    into[k + 3] = -0.5 * value * u * u;
    into[k + 4] = -value * u * v;
    into[k + 5] = -0.5 * value * v * v;
  }
}

function toGaussian(
  p: Float64Array,
  start: Moments,
  cell: number,
  residual: number,
): GaussianFit | undefined {
  const [peak, x, y, a, b, c] = p as unknown as [number, number, number, number, number, number];
  const determinant = a * c - b * b;
  if (!(peak > 0 && determinant > 0 && a > 0)) return undefined;
  // Cells average s pixels, as in the moments: Sheppard's (s² − 1)/12.
  const widened = (cell ** 2 - 1) / 12;
  const moments = {
    x: start.x + x,
    y: start.y + y,
    xx: c / determinant - widened,
    yy: a / determinant - widened,
    xy: -b / determinant,
  };
  const { first, second } = principalAxes(moments);
  return first > 0 && second > 0 ? { moments, peak, misfit: residual / peak } : undefined;
}
