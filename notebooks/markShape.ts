import type { MarkedStretch } from '../lib/process/marks.ts';
import type { SeriesSpec } from './document.ts';

/** Marked stretches along lines from the centre; one line for a round spot. */
type Rays = readonly { readonly angle: number; readonly marked: readonly MarkedStretch[] }[];

/** Points along half a circle; a chord departs from it by 1e-4 of its radius. */
const half = 120;

/** Columns of x and y, runs apart by a gap. */
function joined(
  runs: readonly (readonly (readonly number[])[])[],
): Pick<SeriesSpec, 'x' | 'y'> & { rest: Float64Array } {
  const gap = [Number.NaN, Number.NaN, Number.NaN];
  const points = runs.flatMap((run) => [...run, gap]);
  const column = (k: number) => Float64Array.from(points, (point) => point[k] ?? Number.NaN);
  return { x: column(0), y: column(1), rest: column(2) };
}

/** A round mark as bands above and below the axis, in units of 1/`scale` m; empty where the spot is not round. */
export function surfaceOf(rays: Rays, scale: number): Pick<SeriesSpec, 'x' | 'y' | 'y2'> {
  const stretches = rays.length === 1 ? rays[0]!.marked : [];
  const runs = stretches.flatMap(({ from, to }) =>
    [1, -1].map((sign) =>
      Array.from({ length: 2 * half + 1 }, (_, i) => {
        // Evenly around the outer circle, so that its edge is round to the end.
        const x = -to * Math.cos((Math.PI * i) / (2 * half));
        const [outer, inner] = [to, from].map(
          (radius) => sign * Math.sqrt(Math.max(0, radius * radius - x * x)),
        );
        return [x, outer!, inner!].map((length) => length * scale);
      }),
    ),
  );
  const { x, y, rest } = joined(runs);
  return { x, y, y2: rest };
}

/** Outlines of a mark: circles of a round one; else its outermost contour and that of its centre, where they close. */
export function outlinesOf(rays: Rays, scale: number): Pick<SeriesSpec, 'x' | 'y'> {
  const around = (radius: number) =>
    Array.from({ length: 2 * half + 1 }, (_, i) => [(Math.PI * i) / half, radius] as const);
  const closed = (radiusOf: (marked: readonly MarkedStretch[]) => number | undefined) => {
    const points = rays.map(({ angle, marked }) => [angle, radiusOf(marked)] as const);
    const whole = points.filter((point): point is readonly [number, number] => (point[1] ?? 0) > 0);
    return whole.length === rays.length ? [[...whole, whole[0]!]] : [];
  };
  const lines =
    rays.length === 1
      ? rays[0]!.marked.flatMap(({ from, to }) => [to, ...(from > 0 ? [from] : [])].map(around))
      : [...closed((marked) => marked.at(-1)?.to), ...closed((marked) => marked[0]?.from)];
  const { x, y } = joined(
    lines.map((line) =>
      line.map(([angle, radius]) => [radius * scale * Math.cos(angle), radius * scale * Math.sin(angle)]),
    ),
  );
  return { x, y };
}
