import type { Missed, Want } from './solveRequest.ts';

/** How far values are from what is wanted. */
export interface Measure {
  /** Without unit, one a want: 1 is a tolerance off, or a hundredth of what is wanted. */
  residuals(values: readonly number[]): number[];
  /** Sum of the squared residuals. */
  cost(values: readonly number[]): number;
  missed(values: readonly number[]): Missed[];
  /** Signed distance from each edge of a want, for roots. */
  readonly edges: readonly { readonly index: number; readonly target: number; readonly near: number }[];
  /** Whether a whole stretch of values meets that want. */
  oneSided(index: number): boolean;
  /** The same for some of the wants. */
  only(indices: readonly number[]): Measure;
  readonly indices: readonly number[];
}

/** What a want allows. */
export function boundsOf(want: Want): readonly [low: number, high: number] {
  if (want.kind === 'between') return [want.low, want.high];
  if (want.kind === 'atLeast') return [want.value, Number.POSITIVE_INFINITY];
  return want.kind === 'atMost' ? [Number.NEGATIVE_INFINITY, want.value] : [want.value, want.value];
}

interface Scale {
  readonly low: number;
  readonly high: number;
  readonly size: number;
  readonly scale: number;
  readonly slack: number;
  readonly ratio: boolean;
  readonly weight: number;
}

/** The measure for wants, with sizes from some `samples` of their values where what is wanted is 0. */
export function createMeasure(wants: readonly Want[], samples: readonly (readonly number[])[]): Measure {
  const scales = wants.map((want, i) =>
    scaleOf(
      want,
      samples.map((values) => values[i]!),
    ),
  );
  return measureOf(
    wants,
    scales,
    wants.map((_, i) => i),
  );
}

function scaleOf(want: Want, seen: readonly number[]): Scale {
  const [low, high] = boundsOf(want);
  const ends = [low, high].filter(Number.isFinite);
  const sorted = seen.map(Math.abs).sort((a, b) => a - b);
  const size = Math.max(...ends.map(Math.abs)) || sorted[sorted.length >> 1] || sorted.at(-1) || 1;
  const spans = sorted.length > 1 && sorted.at(-1)! > 30 * sorted[0]!;
  const ratio = [...ends, ...seen].every((value) => value > 0) && spans;
  const slack = want.tolerance ?? size * (want.kind === 'value' ? 1e-6 : 1e-9);
  return { low, high, size, scale: want.tolerance || size * 1e-2, slack, ratio, weight: want.weight ?? 1 };
}

function measureOf(wants: readonly Want[], scales: readonly Scale[], indices: readonly number[]): Measure {
  const residuals = (values: readonly number[]) => indices.map((i) => residualOf(scales[i]!, values[i]!));
  return {
    indices,
    residuals,
    cost: (values) => residuals(values).reduce((sum, r) => sum + r * r, 0),
    missed: (values) => indices.flatMap((i) => missedOf(wants[i]!, scales[i]!, i, values[i]!)),
    edges: indices.flatMap((index) => {
      const { low, high, slack } = scales[index]!;
      const targets = [...new Set([low, high])].filter(Number.isFinite);
      return targets.map((target) => ({ index, target, near: slack }));
    }),
    oneSided: (index) => scales[index]!.low < scales[index]!.high,
    only: (some) => measureOf(wants, scales, some),
  };
}

function residualOf({ low, high, scale, ratio, weight, size }: Scale, value: number): number {
  const target = value < low ? low : value > high ? high : value;
  const off = ratio ? (size / scale) * Math.log(Math.max(value / target, 1e-12)) : (value - target) / scale;
  return Math.sqrt(weight) * off;
}

function missedOf(want: Want, { low, high, slack }: Scale, index: number, reached: number): Missed[] {
  if (reached >= low - slack && reached <= high + slack) return [];
  const wanted = reached < low ? low : high;
  const factor = wanted * reached > 0 ? { factor: reached / wanted } : {};
  return [{ index, id: want.id, wanted, reached, by: reached - wanted, ...factor }];
}
