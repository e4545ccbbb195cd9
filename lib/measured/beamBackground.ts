import type { BeamGrid } from './beamGrid.ts';
import { ellipseForm, type Moments, type Plane } from './beamState.ts';

/** Background found on the cells free of the beam. */
export interface Background {
  readonly plane: Plane;
  /** Scatter of one cell about the plane, in counts. */
  readonly scatter: number;
  /** Sums over the free cells of 1, x, y, xx, xy, yy from the plane's own point. */
  readonly sums: readonly number[];
  /** Free cells over all cells of the grid. */
  readonly freeShare: number;
}

/** Least share of cells that the background may rest on: 6 %, four corners of 1/8 of the frame's side each. */
const leastShare = 0.06;
/** Cells beyond six radii (twice the window) say little about the background under the beam. */
const farthest = 6;

/** Squared ellipse distance of every cell centre (1 on the 1/e² ellipse), length of `grid.means`. */
export function distances(grid: BeamGrid, moments: Moments): Float64Array {
  const [a, b, c] = ellipseForm(moments);
  const result = new Float64Array(grid.means.length);
  for (let row = 0, k = 0; row < grid.rows; row++) {
    const y = grid.top + (row + 0.5) * grid.cell - moments.y;
    for (let column = 0; column < grid.columns; column++, k++) {
      const x = grid.left + (column + 0.5) * grid.cell - moments.x;
      result[k] = a * x * x + b * x * y + c * y * y;
    }
  }
  return result;
}

/**
 * Offset and linear gradient by least squares on the cells farther than `reach` radii from the centroid.
 * Where fewer than 6 % of the cells are left, the farthest 6 % serve instead. No model of the beam enters,
 * so a beam that is no Gaussian does not bend the background. Cells more than four times the scatter off
 * the plane (dust, a ghost, a hot pixel) are left out in two further passes.
 */
export function fitBackground(grid: BeamGrid, far: Float64Array, reach: number): Background {
  const limit = limitDistance(far, reach);
  const most = Math.max(farthest ** 2, 2 * limit);
  let used = select(far, limit, most);
  const share = used.length / far.length;
  let fit = fitPlane(grid, used);
  for (let pass = 0; pass < 2 && fit.scatter > 0; pass++) {
    const kept = used.filter((k) => Math.abs(residual(grid, fit.plane, k)) <= 4 * fit.scatter);
    if (kept.length === used.length) break;
    used = kept;
    fit = fitPlane(grid, used);
  }
  return { ...fit, freeShare: share };
}

function limitDistance(far: Float64Array, reach: number): number {
  let free = 0;
  for (const value of far) if (value > reach * reach) free++;
  const least = Math.max(12, Math.ceil(leastShare * far.length));
  if (free >= least) return reach * reach;
  return Float64Array.from(far).sort()[Math.max(0, far.length - least - 1)]!;
}

function select(far: Float64Array, limit: number, most: number): Uint32Array {
  const chosen = new Uint32Array(far.length);
  let count = 0;
  for (let k = 0; k < far.length; k++) if (far[k]! > limit && far[k]! <= most) chosen[count++] = k;
  if (count >= 12) return chosen.slice(0, count);
  return Uint32Array.from(far.keys());
}

function residual(grid: BeamGrid, plane: Plane, k: number): number {
  const column = k % grid.columns;
  const row = (k - column) / grid.columns;
  const x = grid.left + (column + 0.5) * grid.cell - plane.x;
  const y = grid.top + (row + 0.5) * grid.cell - plane.y;
  return grid.means[k]! - plane.level - plane.slopeX * x - plane.slopeY * y;
}

/** Plane by normal equations about the mean place of the cells, where level and slopes part. */
function fitPlane(grid: BeamGrid, cells: Uint32Array): Omit<Background, 'freeShare'> {
  const flat = { level: 0, slopeX: 0, slopeY: 0, x: 0, y: 0 };
  let [x, y] = [0, 0];
  for (const k of cells) {
    x += grid.left + ((k % grid.columns) + 0.5) * grid.cell;
    y += grid.top + (Math.floor(k / grid.columns) + 0.5) * grid.cell;
  }
  [x, y] = [x / cells.length, y / cells.length];
  let [xx, xy, yy, i, ix, iy] = [0, 0, 0, 0, 0, 0];
  for (const k of cells) {
    const u = grid.left + ((k % grid.columns) + 0.5) * grid.cell - x;
    const v = grid.top + (Math.floor(k / grid.columns) + 0.5) * grid.cell - y;
    const value = residual(grid, flat, k);
    xx += u * u;
    xy += u * v;
    yy += v * v;
    i += value;
    ix += value * u;
    iy += value * v;
  }
  const determinant = xx * yy - xy * xy;
  const slopeX = determinant > 0 ? (ix * yy - iy * xy) / determinant : 0;
  const slopeY = determinant > 0 ? (iy * xx - ix * xy) / determinant : 0;
  const plane = { level: i / cells.length, slopeX, slopeY, x, y };
  let squares = 0;
  for (const k of cells) squares += residual(grid, plane, k) ** 2;
  const scatter = Math.sqrt(squares / Math.max(1, cells.length - 3));
  return { plane, scatter, sums: [cells.length, 0, 0, xx, xy, yy] };
}
