import { panelledRule } from '../numerics/gaussLegendre.ts';
import type { Spot } from '../optics/askedSpot.ts';

const nodesPerPanel = 12;

/**
 * What one line of dense pulses leaves across itself, ∫I ds along the line over ∫I of one spot, per metre: times the
 * energy per length it is the accumulated fluence. `places` in m from the middle of the line, lines at `direction` (rad
 * from x). (1/π) ∫₀^end Re(M e^{iqy}) dq over `panels` of 12 frequencies: with 16 to 1.5e-5 of the highest out to some spot
 * diameters; the kinks of M, where edges separate, leave an error that falls as panels^−2.5.
 */
export function lineProfile(
  spot: Pick<Spot, 'spectrum' | 'spectrumEnd'>,
  places: Float64Array,
  direction = 0,
  panels = 16,
): Float64Array {
  const across = direction + Math.PI / 2;
  const end = spot.spectrumEnd(across);
  const edges = Array.from({ length: panels + 1 }, (_, i) => (i * end) / panels);
  const { nodes, weights } = panelledRule(edges, nodesPerPanel);
  const modes = Array.from(nodes, (q) => spot.spectrum(q * Math.cos(across), q * Math.sin(across)));
  return places.map((y) => {
    let sum = 0;
    for (let i = 0; i < nodes.length; i++) {
      const { re, im } = modes[i]!;
      sum += weights[i]! * (re * Math.cos(nodes[i]! * y) - im * Math.sin(nodes[i]! * y));
    }
    return sum / Math.PI;
  });
}
