import type { AxisSpec, FigureSpec, MarkSpec, SeriesSpec } from '../../document.ts';
import { shortNumber } from './text.ts';

/** Where what is not above 0 goes: so far down that its curve leaves every frame. */
const nowhere = -99;

/** log10, and far below everything for what is not above 0; NaN stays a gap. */
export function logarithmOf(value: number): number {
  return value <= 0 ? nowhere : Math.log10(value);
}

/** Multiples of a power of ten that are ticks, from many to few. */
const multiples = [[1, 2, 5], [1, 3], [1]] as const;

/** Ticks over a domain of logarithms, with the numbers themselves as texts; at most `most` where powers of ten alone are not more. */
export function logarithmicTicks(
  domain: readonly [number, number],
  most: number,
): { readonly at: readonly number[]; readonly texts: readonly string[] } {
  const [low, high] = [Math.min(...domain), Math.max(...domain)];
  const powers = Array.from({ length: Math.ceil(high) - Math.floor(low) + 1 }, (_, i) => Math.floor(low) + i);
  const within = (at: number) => at >= low - 1e-9 && at <= high + 1e-9;
  const sets = multiples.map((factors) =>
    powers.flatMap((power) => factors.map((factor) => Math.log10(factor) + power)).filter(within),
  );
  const at = sets.find((ticks) => ticks.length <= most) ?? sets.at(-1)!;
  return { at, texts: at.map((place) => shortNumber(10 ** place, 1)) };
}

/** The figure as it is drawn on straight scales: logarithms stand along its logarithmic axes. */
export function straightened(spec: FigureSpec): Pick<FigureSpec, 'series' | 'marks'> {
  const { x, y, series, marks } = spec;
  if (!x.logarithmic && !y.logarithmic) return { series, marks: marks ?? [] };
  const along = ({ logarithmic }: AxisSpec) =>
    logarithmic ? (column: Float64Array) => column.map(logarithmOf) : (column: Float64Array) => column;
  const [alongX, alongY] = [along(x), along(y)];
  return {
    series: series.map(
      (one): SeriesSpec => ({
        ...one,
        x: alongX(one.x),
        y: alongY(one.y),
        ...(one.y2 ? { y2: alongY(one.y2) } : {}),
      }),
    ),
    marks: (marks ?? []).map(
      (mark): MarkSpec => ({
        ...mark,
        ...(mark.x !== undefined && x.logarithmic ? { x: logarithmOf(mark.x) } : {}),
        ...(mark.y !== undefined && y.logarithmic ? { y: logarithmOf(mark.y) } : {}),
      }),
    ),
  };
}
