import { describe, expect, it } from 'vitest';
import { levelLines } from '../../lib/numerics/levelLines.ts';
import { createRandom } from '../../lib/numerics/random.ts';

function grid(columns: number, rows: number, of: (x: number, y: number) => number) {
  const values = Float64Array.from({ length: columns * rows }, (_, n) =>
    of(n % columns, Math.floor(n / columns)),
  );
  return { columns, rows, values };
}

/** Runs between the gaps. */
function runsOf({ x, y }: { readonly x: Float64Array; readonly y: Float64Array }): [number, number][][] {
  const runs: [number, number][][] = [[]];
  x.forEach((value, i) => {
    if (Number.isNaN(value)) runs.push([]);
    else runs.at(-1)!.push([value, y[i]!]);
  });
  return runs.filter((run) => run.length > 0);
}

describe('level lines', () => {
  it('of a hill are circles, closed, each point on the level', () => {
    const runs = runsOf(
      levelLines(
        grid(81, 81, (x, y) => -((x - 40) ** 2 + (y - 40) ** 2)),
        -400,
      ),
    );
    expect(runs).toHaveLength(1);
    expect(runs[0]![0]).toEqual(runs[0]!.at(-1));
    // Second derivative 2, slope 2r = 40: an eighth of 2/40 is 0.00625.
    for (const [x, y] of runs[0]!) expect(Math.abs(Math.hypot(x - 40, y - 40) - 20)).toBeLessThan(0.0063);
  });

  it('end at the edge of the grid, and nowhere else', () => {
    const runs = runsOf(
      levelLines(
        grid(50, 40, (x) => Math.cos(x / 5)),
        0.2,
      ),
    );
    expect(runs).toHaveLength(3);
    for (const run of runs) {
      expect([run[0]![1], run.at(-1)![1]].sort((a, b) => a - b)).toEqual([0, 39]);
      expect(run).toHaveLength(40);
    }
  });

  it('a coarser stride finds the same circle', () => {
    const [run] = runsOf(
      levelLines(
        grid(81, 81, (x, y) => -((x - 40) ** 2 + (y - 40) ** 2)),
        -400,
        2,
      ),
    );
    for (const [x, y] of run!) expect(Math.abs(Math.hypot(x - 40, y - 40) - 20)).toBeLessThan(4 * 0.0063);
  });

  it('of any values part what is above from what is below: every crossed side is passed once', () => {
    const random = createRandom(7);
    const noise = grid(30, 25, () => random.uniform());
    let crossed = 0;
    for (let y = 0; y < 25; y++) {
      for (let x = 0; x < 30; x++) {
        const here = noise.values[y * 30 + x]! > 0.5;
        if (x < 29 && noise.values[y * 30 + x + 1]! > 0.5 !== here) crossed++;
        if (y < 24 && noise.values[(y + 1) * 30 + x]! > 0.5 !== here) crossed++;
      }
    }
    const runs = runsOf(levelLines(noise, 0.5));
    const places = runs.map((run) => {
      const closed = run[0]![0] === run.at(-1)![0] && run[0]![1] === run.at(-1)![1];
      return closed ? run.slice(1) : run;
    });
    expect(places.flat()).toHaveLength(crossed);
    expect(new Set(places.flat().map(String)).size).toBe(crossed);
    for (const run of runs)
      for (let i = 1; i < run.length; i++)
        expect(Math.hypot(run[i]![0] - run[i - 1]![0], run[i]![1] - run[i - 1]![1])).toBeLessThanOrEqual(
          Math.SQRT2,
        );
  });

  it('there are none where nothing crosses the level, nor about a missing value', () => {
    expect(
      levelLines(
        grid(5, 5, () => 1),
        2,
      ).x,
    ).toHaveLength(0);
    expect(
      levelLines(
        grid(2, 2, (x) => (x === 0 ? Number.NaN : 1)),
        0.5,
      ).x,
    ).toHaveLength(0);
  });
});
