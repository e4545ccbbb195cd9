import { gaussLegendre, panelledRule } from './gaussLegendre.ts';

/**
 * A smooth function of a radius r ≥ 0, held by its values at Gauss–Legendre nodes of equal panels: the same
 * samples serve for integrals and, by barycentric interpolation, for values between them.
 */
export interface PanelledFunction {
  /** Width of a panel; panel p covers [p, p+1]·width. */
  readonly width: number;
  /** Nodes a panel. */
  readonly count: number;
  /** Radii of all nodes, ascending: panels × count. */
  readonly nodes: Float64Array;
  /** Quadrature weights for ∫ … dr over all panels. */
  readonly weights: Float64Array;
  /** Values at the nodes. */
  readonly values: Float64Array;
}

/** Nodes and weights of `panels` panels of `width`, `count` nodes each, from r = 0. */
export function panelNodes(width: number, panels: number, count: number) {
  return panelledRule(
    Array.from({ length: panels + 1 }, (_, p) => p * width),
    count,
  );
}

/** End of the range that the function covers. */
export function reachOf(f: PanelledFunction): number {
  return (f.nodes.length / f.count) * f.width;
}

/** Value at r, 0 ≤ r ≤ reach; 0 beyond. As exact as the samples resolve the function. */
export function valueAt(f: PanelledFunction, r: number): number {
  const panels = f.nodes.length / f.count;
  const panel = Math.min(Math.floor(r / f.width), panels - 1);
  if (!(r >= 0) || r > panels * f.width * (1 + 1e-12)) return 0;
  const t = 2 * (r / f.width - panel) - 1;
  const { nodes } = gaussLegendre(f.count);
  const weights = barycentricWeights(f.count);
  let top = 0;
  let bottom = 0;
  for (let i = 0; i < f.count; i++) {
    const difference = t - nodes[i]!;
    const value = f.values[panel * f.count + i]!;
    if (difference === 0) return value;
    const weight = weights[i]! / difference;
    top += weight * value;
    bottom += weight;
  }
  return top / bottom;
}

/**
 * The weights with which the samples make the value at r: adds `scale`·weight to `row` (length of all nodes).
 * {@link valueAt} written as a matrix row.
 */
export function addInterpolationRow(
  f: Pick<PanelledFunction, 'width' | 'count' | 'nodes'>,
  r: number,
  scale: number,
  row: Float64Array,
): void {
  const panels = f.nodes.length / f.count;
  const panel = Math.min(Math.floor(r / f.width), panels - 1);
  if (!(r >= 0) || r > panels * f.width) return;
  const t = 2 * (r / f.width - panel) - 1;
  const { nodes } = gaussLegendre(f.count);
  const weights = barycentricWeights(f.count);
  let bottom = 0;
  for (let i = 0; i < f.count; i++) {
    // Half a rounding unit away from a node the quotient stays finite and exact.
    bottom += weights[i]! / (t - nodes[i]! || 1e-300);
  }
  for (let i = 0; i < f.count; i++) {
    row[panel * f.count + i]! += (scale * weights[i]!) / (t - nodes[i]! || 1e-300) / bottom;
  }
}

const kept = new Map<number, Float64Array>();

/** Barycentric weights of Gauss–Legendre nodes: (−1)^i √((1−x²)·weight) (Wang & Xiang, Math. Comp. 81, 861 (2012) (memory)). */
function barycentricWeights(count: number): Float64Array {
  const known = kept.get(count);
  if (known) return known;
  const { nodes, weights } = gaussLegendre(count);
  const made = nodes.map((x, i) => (i % 2 ? -1 : 1) * Math.sqrt((1 - x * x) * weights[i]!));
  kept.set(count, made);
  return made;
}

/** ∫ g(f(r), r) dr over [from, to], panel by panel, with as many nodes as the samples have. */
export function integrateOver(
  f: PanelledFunction,
  from: number,
  to: number,
  g: (value: number, r: number) => number,
): number {
  const rule = gaussLegendre(f.count);
  const last = Math.ceil(to / f.width);
  let sum = 0;
  for (let panel = Math.floor(from / f.width); panel < last; panel++) {
    const low = Math.max(from, panel * f.width);
    const high = Math.min(to, (panel + 1) * f.width);
    const half = (high - low) / 2;
    for (let i = 0; i < f.count; i++) {
      const r = low + half * (1 + rule.nodes[i]!);
      sum += half * rule.weights[i]! * g(valueAt(f, r), r);
    }
  }
  return sum;
}
