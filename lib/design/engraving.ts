import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { Problem } from '../problem.ts';
import { depthAfter, type Engraved, engrave } from '../process/engraving.ts';
import { type EngravingParts, layerPlan, shapedEngraving, unshapedEngraving } from './engravingParts.ts';
import { engravingLayers, wantedDepth } from './grooveInputs.ts';
import { requireField } from './uniformity.ts';

/** Layers up to which a depth that is wanted is waited for: as many as can be typed. */
export const mostLayers = engravingLayers.range.max;
/** Mean depth after whole `layers`; a Problem where spots are worked out for fewer. */
export function depthAfterLayers(layered: Engraved, layers: number): number {
  const last = layered.depth.length - 1;
  if (layers <= last || layered.end !== 'outside') return depthAfter(layered, layers);
  const reached = formatReadable(layered.depth[last]!, 'm', 'um', 3);
  const follows = last === 1 ? 'one layer is followed' : `${last} layers are followed`;
  throw new Problem(
    'outside',
    `Only ${follows}: the floor then lies ${reached} deep, further from the focus than spots are worked out. Take no more layers, or weaker pulses, or pulses further apart.`,
    {
      input: engravingLayers.id,
      value: String(layers),
      allowed: `up to ${last}`,
      ...(last > 0 && {
        mend: { value: last, words: `Take ${last === 1 ? 'one layer' : `${last} layers`}` },
      }),
    },
  );
}

/** What one of the two beams engraves. */
function depthsOf({ before, words, mark, beam, diameter }: EngravingParts) {
  const layered = derived({
    id: `${before}engraving.layered`,
    name: `depth layer by layer${words}`,
    symbol: `d${mark}(n)`,
    unit: { depth: 'm', before: '1', end: 'none' },
    about: `Mean depth of the floor after each layer, on until the depth wanted is reached${words === '' ? '' : ', with the plate taken out'}; and the pulses counted on a place before each, over those of the first.`,
    from: { beam, plan: layerPlan, layers: engravingLayers, wanted: wantedDepth, diameter },
    compute: ({ beam, plan, layers, wanted, diameter }, report): Engraved => {
      requireField(plan.lattice.across, diameter, 'lines');
      requireField(plan.lattice.along, diameter, 'pulses');
      const goal = { layers: Math.round(layers), depth: wanted, most: mostLayers };
      return engrave(beam, plan, goal, report);
    },
    shownAs: ({ depth }) => `${formatReadable(depth.at(-1)!, 'm', 'um', 3)} after ${depth.length - 1} layers`,
    formula: 'd(n)=d(n-1)+\\frac{1}{p\\,\\Delta y}\\int\\!\\!\\int\\sum_i d_{N_i}(F_i)\\,dx\\,dy',
    source: 'search',
    heavy: 'search',
  });
  const depth = derived({
    id: `${before}engraving.depth`,
    name: `depth of the engraving${words}`,
    symbol: `\\bar d${mark}`,
    unit: 'm',
    display: 'um',
    digits: 3,
    about: `Mean depth of the floor after all layers of the engraving${words === '' ? '' : ', with the plate taken out'}.`,
    from: { layered, layers: engravingLayers },
    compute: ({ layered, layers }) => depthAfterLayers(layered, Math.round(layers)),
    formula: `d${mark}(n_\\text{l})`,
    source: 'search',
  });
  const depthPerLayer = derived({
    id: `${before}engraving.depthPerLayer`,
    name: `depth of a layer${words}`,
    symbol: `(d_1, \\bar d_n)${mark}`,
    unit: { first: 'm', mean: 'm' },
    about: 'Mean depth that the first layer removes, and the mean over all layers of the engraving.',
    from: { layered, layers: engravingLayers },
    compute: ({ layered, layers }) => ({
      first: depthAfter(layered, 1),
      mean: depthAfterLayers(layered, Math.round(layers)) / Math.round(layers),
    }),
    shownAs: ({ first, mean }) =>
      `${formatReadable(first, 'm', 'um', 3)} the first, ${formatReadable(mean, 'm', 'um', 3)} on the mean`,
    formula: `d${mark}(1),\\ d${mark}(n_\\text{l})/n_\\text{l}`,
    source: 'definition',
  });
  return { layered, depth, depthPerLayer };
}

export const { layered: engravedLayers, depth: engravedDepth, depthPerLayer } = depthsOf(shapedEngraving);
export const {
  layered: unshapedEngravedLayers,
  depth: unshapedEngravedDepth,
  depthPerLayer: unshapedDepthPerLayer,
} = depthsOf(unshapedEngraving);
