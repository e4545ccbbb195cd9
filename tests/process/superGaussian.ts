import { besselJ0 } from '../../lib/numerics/bessel.ts';
import { panelledRule } from '../../lib/numerics/gaussLegendre.ts';
import type { Spot } from '../../lib/optics/askedSpot.ts';

/** Hankel transform of exp(−2r^2p) at q over its value at 0. */
function spectrumOf(q: number, p: number): number {
  const edges = Array.from({ length: 41 }, (_, i) => (i / 40) * 22 ** (1 / (2 * p)));
  const { nodes, weights } = panelledRule(edges, 16);
  const at = (q: number) =>
    nodes.reduce((sum, r, i) => sum + weights[i]! * r * besselJ0(q * r) * Math.exp(-2 * r ** (2 * p)), 0);
  return at(q) / at(0);
}

/** exp(−2(r/a)^2p), a Gaussian for p = 1 and a disc for endless p; `gamma` is Γ(1 + 1/p). */
export function superGaussian(a: number, p: number, gamma: number): Spot {
  return {
    irradianceAt: (x, y) => Math.exp(-2 * (Math.hypot(x, y) / a) ** (2 * p)),
    areaAbove: (level) => (level < 1 ? Math.PI * a * a * (-Math.log(level) / 2) ** (1 / p) : 0),
    peak: 1,
    effectiveArea: Math.PI * a * a * 2 ** (-1 / p) * gamma,
    transmission: 1,
    spectrum: (qx, qy) => ({ re: spectrumOf(Math.hypot(qx, qy) * a, p), im: 0 }),
    spectrumForm: 'round',
    spectrumEnd: () => Number.POSITIVE_INFINITY,
  };
}
