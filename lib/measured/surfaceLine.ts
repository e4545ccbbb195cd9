/** A straight line by its value at `origin` and its slope, with the scatter of the samples about it. */
export interface SurfaceLine {
  readonly origin: number;
  readonly level: number;
  readonly slope: number;
  /** Standard deviation of the samples about the line, from the median of their distances. */
  readonly scatter: number;
}

/** Median absolute deviation to standard deviation of normal scatter: 1/Φ⁻¹(3/4). */
const perMedianDeviation = 1.482602218505602;
/** Distances beyond so many scatters count for nothing: 95 % as sharp as a mean for normal scatter (common practice). */
const reach = 4.685;
const mostRounds = 50;

/**
 * A straight line through samples some of which do not belong to it: it starts through the medians of both halves and is
 * fitted again and again with Tukey's biweight, so that dust, pits and a rim that are not the most of the samples pull
 * it no more. Two places or more, ascending. `leastScatter` is the least that counts as scatter.
 */
export function surfaceLine(x: Float64Array, y: Float64Array, leastScatter: number): SurfaceLine {
  let line = throughMedians(x, y);
  for (let round = 0; round < mostRounds; round++) {
    const next = weightedLine(x, y, line, Math.max(leastScatter, line.scatter));
    const settled = Math.abs(next.level - line.level) <= 1e-6 * next.scatter;
    line = next;
    if (settled) break;
  }
  return line;
}

/** Height of the line at a place. */
export function lineAt({ origin, level, slope }: SurfaceLine, x: number): number {
  return level + slope * (x - origin);
}

/** The middle one, or the mean of the middle two. */
function median(values: Float64Array): number {
  const sorted = values.slice().sort();
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

function throughMedians(x: Float64Array, y: Float64Array): SurfaceLine {
  const middle = (x[0]! + x.at(-1)!) / 2;
  const split = Math.max(
    1,
    x.findIndex((place) => place > middle),
  );
  const [x1, x2] = [median(x.subarray(0, split)), median(x.subarray(split))];
  const [y1, y2] = [median(y.subarray(0, split)), median(y.subarray(split))];
  const slope = (y2 - y1) / (x2 - x1);
  return withScatter({ origin: middle, level: y1 + slope * (middle - x1), slope, scatter: 0 }, x, y);
}

function weightedLine(x: Float64Array, y: Float64Array, line: SurfaceLine, scatter: number): SurfaceLine {
  let [total, sumX, sumY, sumXX, sumXY] = [0, 0, 0, 0, 0];
  for (let i = 0; i < x.length; i++) {
    const u = (y[i]! - lineAt(line, x[i]!)) / (reach * scatter);
    const weight = Math.abs(u) < 1 ? (1 - u * u) ** 2 : 0;
    const place = x[i]! - line.origin;
    total += weight;
    sumX += weight * place;
    sumY += weight * y[i]!;
    sumXX += weight * place * place;
    sumXY += weight * place * y[i]!;
  }
  const spread = sumXX * total - sumX * sumX;
  if (!(spread > 0)) return line;
  const slope = (sumXY * total - sumX * sumY) / spread;
  return withScatter({ ...line, level: (sumY - slope * sumX) / total, slope }, x, y);
}

function withScatter(line: SurfaceLine, x: Float64Array, y: Float64Array): SurfaceLine {
  const distances = y.map((height, i) => Math.abs(height - lineAt(line, x[i]!)));
  return { ...line, scatter: perMedianDeviation * median(distances) };
}
