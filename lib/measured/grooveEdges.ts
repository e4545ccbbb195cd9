/** Where a groove begins and ends, and how deep it is; lengths in the unit of the samples. */
export interface GrooveEdges {
  readonly from: number;
  readonly to: number;
  /** Halfway between the two outermost places at half the depth. */
  readonly middle: number;
  readonly deepest: number;
}

/**
 * The running median of 2·half + 1 samples, of fewer at the ends: spikes shorter than half of it vanish, a wall stays
 * where it is.
 */
export function smoothed(values: Float64Array, half = 2): Float64Array {
  return values.map((_, i) => {
    const reach = Math.min(half, i, values.length - 1 - i);
    return values.slice(i - reach, i + reach + 1).sort()[reach]!;
  });
}

/** Part of the depth that only the groove reaches, not a pit or a scratch beside it. */
const ownPart = 0.3;

/**
 * Edges of the deepest groove: from the outermost places deeper than 0.3 of it outwards, to where the depth falls to
 * `limit`. What stands between, such as the middle of a ring's groove, belongs to it.
 */
export function edgesOf(x: Float64Array, depth: Float64Array, limit: number): GrooveEdges {
  const deepest = depth.reduce((most, value) => Math.max(most, value), 0);
  const own = (value: number) => value > ownPart * deepest;
  let from = depth.findIndex(own);
  let to = depth.findLastIndex(own);
  if (from < 0) return { from: x[0]!, to: x[0]!, middle: x[0]!, deepest };
  while (from > 0 && depth[from]! > limit) from--;
  while (to < depth.length - 1 && depth[to]! > limit) to++;
  const half = deepest / 2;
  const [left, right] = [depth.findIndex((d) => d > half), depth.findLastIndex((d) => d > half)];
  const middle = (crossing(x, depth, left, left - 1, half) + crossing(x, depth, right, right + 1, half)) / 2;
  return { from: x[from]!, to: x[to]!, middle, deepest };
}

/** Where the line from a sample above `level` to its neighbour below crosses it; the sample itself at an end. */
function crossing(x: Float64Array, depth: Float64Array, inner: number, outer: number, level: number): number {
  if (outer < 0 || outer >= x.length) return x[inner]!;
  const part = (depth[inner]! - level) / (depth[inner]! - depth[outer]!);
  return x[inner]! + part * (x[outer]! - x[inner]!);
}
