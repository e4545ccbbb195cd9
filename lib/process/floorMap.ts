import type { CellGrid } from './engravingCell.ts';

/** A square piece of the floor: `points` each way about (x, y), m from the place about which the lines turn. */
export interface FloorPatch {
  readonly x: number;
  readonly y: number;
  readonly side: number;
  readonly points: number;
}

/** Where the points of a patch lie in a cell under lines at an angle: read between four points of its grid. */
export interface CellReader {
  /** Goes to a point of the patch; `read` is of this one until the next. */
  goTo(point: number): void;
  /** Value of a cell there, straight between four of its points. */
  read(values: Float64Array): number;
}

/** Reads cells of that grid, which repeat about the place where the lines turn, under lines at `angle`, rad. */
export function cellReader(
  { x, y, side, points }: FloorPatch,
  { columns, rows, along, across }: CellGrid,
  angle: number,
): CellReader {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const [perColumn, perRow] = [columns / along, rows / across];
  const step = side / (points - 1);
  let [here, right, above, both, partU, partV] = [0, 0, 0, 0, 0, 0];
  return {
    goTo: (point) => {
      const atX = x - side / 2 + (point % points) * step;
      const atY = y - side / 2 + Math.floor(point / points) * step;
      const u = wrapped((c * atX + s * atY) * perColumn, columns);
      const v = wrapped((c * atY - s * atX) * perRow, rows);
      const [i, j] = [Math.min(columns - 1, Math.floor(u)), Math.min(rows - 1, Math.floor(v))];
      const [nextI, nextRow] = [i + 1 === columns ? 0 : i + 1, (j + 1 === rows ? 0 : j + 1) * columns];
      here = j * columns + i;
      right = j * columns + nextI;
      above = nextRow + i;
      both = nextRow + nextI;
      partU = u - i;
      partV = v - j;
    },
    read: (values) => {
      const low = values[here]! + partU * (values[right]! - values[here]!);
      const high = values[above]! + partU * (values[both]! - values[above]!);
      return low + partV * (high - low);
    },
  };
}

function wrapped(place: number, count: number): number {
  const rest = place % count;
  return rest < 0 ? rest + count : rest;
}
