import { integrateOver, type PanelledFunction, panelNodes } from '../numerics/panelledFunction.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { Problem } from '../problem.ts';

/**
 * The area of a spot above level peak·e^{−s²}, m², against s: what every sum over the fluences of a spot is made of.
 * In s the area starts smoothly at the peak, linear for a crest and with s² for a summit.
 */
export type AreaLayers = PanelledFunction;

const panels = 32;
const nodesPerPanel = 6;
/** ln of the greatest ratio of peak to level: a thousand. */
const deepest = Math.log(1000);

const kept = new WeakMap<Spot, AreaLayers>();

/** The layers of a spot down to a thousandth of its peak; kept with the spot. */
export function layersOf(spot: Spot): AreaLayers {
  const known = kept.get(spot);
  if (known) return known;
  const width = Math.sqrt(deepest) / panels;
  const { nodes, weights } = panelNodes(width, panels, nodesPerPanel);
  const values = nodes.map((s) => spot.areaAbove(spot.peak * Math.exp(-s * s)));
  const layers = { width, count: nodesPerPanel, nodes, weights, values };
  kept.set(spot, layers);
  return layers;
}

/**
 * ∫ A(peak·e^{−t}) g(t) dt from 0 to ln `ratio`, `ratio` = peak over the lowest level, 1 to 1000; 0 below 1. Spots with
 * several crests: to 1e-5 of the whole.
 */
export function sumLayers(spot: Spot, ratio: number, g: (t: number) => number = () => 1): number {
  if (!(ratio > 1)) return 0;
  const depth = Math.log(ratio);
  if (depth > deepest * (1 + 1e-12)) throw tooHigh(ratio);
  return integrateOver(
    layersOf(spot),
    0,
    Math.sqrt(Math.min(depth, deepest)),
    (area, s) => 2 * s * area * g(s * s),
  );
}

function tooHigh(ratio: number): Problem {
  return new Problem(
    'outside',
    `The peak fluence is ${ratio.toPrecision(3)} times the threshold; spots are summed up to 1000 times. Lower the pulse energy or move the workpiece.`,
    { input: 'laser.pulseEnergy', value: ratio.toPrecision(3), allowed: 'up to 1000' },
  );
}
