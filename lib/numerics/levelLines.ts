/** Values over a grid, row by row; neighbours are a step of 1 apart in both directions. */
export interface ValueGrid {
  readonly columns: number;
  readonly rows: number;
  readonly values: Float64Array;
}

/** Lines in columns (x) and rows (y) of a grid, one after the other with NaN between. */
export interface LevelLines {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** Of each pair of sides of a cell that a line joins, by which corners lie above: 0 below, 1 right, 2 above, 3 left. */
const joins: readonly (readonly number[])[] = [
  [],
  [3, 0],
  [0, 1],
  [3, 1],
  [1, 2],
  [3, 2, 0, 1],
  [0, 2],
  [3, 2],
  [2, 3],
  [0, 2],
  [3, 0, 1, 2],
  [1, 2],
  [1, 3],
  [0, 1],
  [0, 3],
  [],
];

/**
 * Where values cross `level`, by marching squares with straight interpolation, on every `stride`-th column and row (1 when
 * left out). Values of NaN draw nothing. The error is that of the interpolation: an eighth of the second derivative over
 * the slope, in steps of the grid.
 */
export function levelLines({ columns, rows, values }: ValueGrid, level: number, stride = 1): LevelLines {
  const [across, up] = [Math.floor((columns - 1) / stride), Math.floor((rows - 1) / stride)];
  const at = (i: number, j: number) => values[j * stride * columns + i * stride]!;
  // Two cells share a side, and a line passes through it from one to the other. Sides: below of (i, j) 2n, left 2n + 1.
  const wide = across + 1;
  const ends = new Map<number, number[]>();
  const link = (a: number, b: number) => {
    const known = ends.get(a);
    if (known) known.push(b);
    else ends.set(a, [b]);
  };
  for (let j = 0; j < up; j++) {
    let [a, d] = [at(0, j), at(0, j + 1)];
    for (let i = 0; i < across; i++) {
      const [b, c] = [at(i + 1, j), at(i + 1, j + 1)];
      const kind = (a > level ? 1 : 0) | (b > level ? 2 : 0) | (c > level ? 4 : 0) | (d > level ? 8 : 0);
      if (kind !== 0 && kind !== 15 && Number.isFinite(a + b + c + d)) {
        const n = j * wide + i;
        const side = [2 * n, 2 * (n + 1) + 1, 2 * (n + wide), 2 * n + 1];
        const pairs = joins[kind]!;
        for (let k = 0; k < pairs.length; k += 2) {
          const [from, to] = [side[pairs[k]!]!, side[pairs[k + 1]!]!];
          link(from, to);
          link(to, from);
        }
      }
      [a, d] = [b, c];
    }
  }
  const [x, y]: [number[], number[]] = [[], []];
  const place = (side: number) => {
    const n = side >> 1;
    const [i, j] = [n % wide, Math.floor(n / wide)];
    const upward = side % 2;
    const [from, to] = [at(i, j), upward ? at(i, j + 1) : at(i + 1, j)];
    const part = (level - from) / (to - from);
    x.push(stride * (upward ? i : i + part));
    y.push(stride * (upward ? j + part : j));
  };
  const follow = (start: number) => {
    let here: number | undefined = start;
    while (here !== undefined) {
      place(here);
      const next: number | undefined = ends.get(here)!.pop();
      if (next !== undefined) {
        const back = ends.get(next)!;
        back.splice(back.indexOf(here), 1);
      }
      here = next;
    }
    x.push(Number.NaN);
    y.push(Number.NaN);
  };
  // Lines that end at the edge first, from their ends; then the closed ones.
  for (const [side, others] of ends) if (others.length === 1) follow(side);
  for (const [side, others] of ends) if (others.length > 0) follow(side);
  return { x: Float64Array.from(x), y: Float64Array.from(y) };
}
