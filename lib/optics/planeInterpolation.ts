/** Bandwidth of |U|² in ζ counts nodes out to this many beam radii: e^{−2·2.7²} = 5e-7 lies beyond. */
const widestCounted = 2.7;
/** 12 Chebyshev planes carry a phase of 5 rad to 2·J12(2.5) = 6e-8. */
const planesPerPanel = 12;
const phasePerPanel = 5;

/** Planes from which |U|² is interpolated, and for each plane wanted its panel and weights. */
export interface PlaneRule {
  readonly computed: Float64Array;
  /** Index of the first computed plane of its panel. */
  readonly start: Int32Array;
  /** {@link planesPerPanel} weights a plane. */
  readonly weights: Float64Array;
}

/**
 * |U|² holds no faster oscillation in ζ than the spread of x² over the plate, so that a few planes a panel fix all
 * between; `widest` is the outer edge of the plate in 1/e² beam radii.
 * Undefined where that takes as many planes as are wanted.
 */
export function planPlanes(planes: Float64Array, widest: number): PlaneRule | undefined {
  const low = planes.reduce((a, b) => Math.min(a, b));
  const span = planes.reduce((a, b) => Math.max(a, b)) - low;
  const panels = Math.max(1, Math.ceil((span * Math.min(widest, widestCounted) ** 2) / phasePerPanel));
  if (panels * planesPerPanel >= planes.length) return undefined;
  const width = span / panels;
  const nodes = Array.from(
    { length: planesPerPanel },
    (_, k) => -Math.cos((Math.PI * (k + 0.5)) / planesPerPanel),
  );
  const computed = new Float64Array(panels * planesPerPanel);
  computed.forEach((_, i) => {
    const panel = Math.floor(i / planesPerPanel);
    computed[i] = low + width * (panel + (1 + nodes[i % planesPerPanel]!) / 2);
  });
  const start = new Int32Array(planes.length);
  const weights = new Float64Array(planes.length * planesPerPanel);
  planes.forEach((plane, row) => {
    const panel = Math.min(panels - 1, Math.floor((plane - low) / width));
    start[row] = panel * planesPerPanel;
    const t = (2 * (plane - low)) / width - 2 * panel - 1;
    weights.set(chebyshevWeights(nodes, t), row * planesPerPanel);
  });
  return { computed, start, weights };
}

/** Barycentric weights at t (Berrut & Trefethen, SIAM Rev. 46, 501 (2004), memory). */
function chebyshevWeights(nodes: readonly number[], t: number): number[] {
  const hit = nodes.indexOf(t);
  if (hit >= 0) return nodes.map((_, k) => (k === hit ? 1 : 0));
  const parts = nodes.map((node, k) => ((k % 2 ? -1 : 1) * Math.sqrt(1 - node * node)) / (t - node));
  const sum = parts.reduce((a, b) => a + b, 0);
  return parts.map((part) => part / sum);
}

/** Rows of the planes wanted from those of the planes computed; four rows of the latter at a time. */
export function interpolatePlanes(
  rule: PlaneRule,
  computed: Float64Array,
  radii: number,
  planes: number,
): Float64Array {
  const values = new Float64Array(radii * planes);
  for (let plane = 0; plane < planes; plane++) {
    const at = plane * radii;
    for (let k = 0; k < planesPerPanel; k += 4) {
      const weight = plane * planesPerPanel + k;
      const [w0, w1] = [rule.weights[weight]!, rule.weights[weight + 1]!];
      const [w2, w3] = [rule.weights[weight + 2]!, rule.weights[weight + 3]!];
      const first = (rule.start[plane]! + k) * radii;
      const [second, third, fourth] = [first + radii, first + 2 * radii, first + 3 * radii];
      for (let i = 0; i < radii; i++) {
        values[at + i]! +=
          w0 * computed[first + i]! +
          w1 * computed[second + i]! +
          w2 * computed[third + i]! +
          w3 * computed[fourth + i]!;
      }
    }
  }
  return values;
}
