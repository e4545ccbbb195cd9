import { derived } from '../graph/define.ts';
import { formatNumber, formatReadable } from '../graph/units.ts';
import { Problem } from '../problem.ts';
import { depthAfter, type Engraved, layersUntil } from '../process/engraving.ts';
import { fieldTimes } from '../process/scanTime.ts';
import { fieldWidth } from './depthInUse.ts';
import { engravedLayers } from './engraving.ts';
import { nothingEngraved } from './engravingFloor.ts';
import { wantedDepth } from './grooveInputs.ts';
import { hatch, motion } from './hatch.ts';
import { density } from './heatMaterial.ts';
import { fieldHeight } from './scannerInputs.ts';

/** A layer that removes less than this part of the strongest one is called hardly any. */
const hardly = 0.01;

/** Why a depth is not reached. */
export function notReached({ depth, end }: Engraved, wanted: number): Problem {
  const [layers, last] = [depth.length - 1, depth.at(-1)!];
  if (last === 0 && end !== 'outside') return nothingEngraved();
  const show = (value: number) => formatReadable(value, 'm', 'um', 3);
  const strongest = depth.reduce((most, value, i) => Math.max(most, i === 0 ? 0 : value - depth[i - 1]!), 0);
  const fading = last - depth[layers - 1]! < hardly * strongest;
  const why = {
    nothing: `there the floor lies so far from the focus that no pulse removes anything any more`,
    outside: 'deeper than that the floor lies further from the focus than spots are worked out',
    most: fading
      ? `so deep the last layer removes less than a hundredth of the strongest one, because the floor has left the focus`
      : `which are the most that are counted here`,
    done: '',
  }[end];
  return new Problem(
    'absent',
    `A depth of ${show(wanted)} is not reached: ${formatNumber(layers, 5)} layers come to ${show(last)}, ${why}. Ask for less, raise the pulse energy, or move the workpiece up to follow the floor.`,
    { input: wantedDepth.id, value: show(wanted), allowed: `up to ${show(last)}` },
  );
}

export const engravingPlan = derived({
  id: 'engraving.plan',
  name: 'layers for the depth wanted',
  symbol: '(n_\\text{wish}, d)',
  unit: { needed: '1', layers: '1', depth: 'm' },
  about:
    'Layers until the mean depth is the one wanted, interpolated between two; as many whole ones; and the mean depth after those.',
  from: { layered: engravedLayers, wanted: wantedDepth },
  compute: ({ layered, wanted }) => {
    const needed = layersUntil(layered, wanted);
    if (needed === undefined) throw notReached(layered, wanted);
    const layers = Math.ceil(needed);
    return { needed, layers, depth: depthAfter(layered, layers) };
  },
  shownAs: ({ layers, depth }) => `${layers} layers, ${formatReadable(depth, 'm', 'um', 3)}`,
  formula: 'd(n)\\ge d_\\text{wish}',
  source: 'search',
});

export const planLayers = derived({
  id: 'engraving.planLayers',
  name: 'layers that the depth wanted takes',
  symbol: 'n_\\text{wish}',
  unit: '1',
  digits: 5,
  about: 'Whole layers until the mean depth is at least the one wanted.',
  from: { plan: engravingPlan },
  compute: ({ plan }) => plan.layers,
  formula: '\\lceil n_\\text{wish}\\rceil',
  source: 'definition',
});

export const planTime = derived({
  id: 'engraving.planTime',
  name: 'time for the depth wanted',
  symbol: 't_\\text{wish}',
  unit: 's',
  display: 'auto:s',
  digits: 3,
  about:
    'Time for all lines of all layers that the depth wanted takes, with turning round, ways back and delays.',
  from: { layers: planLayers, hatch, motion },
  compute: ({ layers, hatch, motion }) => fieldTimes({ ...hatch, passes: layers }, motion).total,
  formula: 't_\\text{field}(n_\\text{wish})',
  source: 'definition',
});

export const planVolume = derived({
  id: 'engraving.planVolume',
  name: 'volume that the depth wanted takes',
  symbol: 'V_\\text{wish}',
  unit: 'm^3',
  display: 'auto:m^3',
  digits: 3,
  about: 'Volume removed from the field by the whole layers that the depth wanted takes.',
  from: { plan: engravingPlan, width: fieldWidth, height: fieldHeight },
  compute: ({ plan, width, height }) => width * height * plan.depth,
  formula: 'F\\,G\\,d(n_\\text{wish})',
  source: 'definition',
});

export const planVolumeRate = derived({
  id: 'engraving.planVolumeRate',
  name: 'volume per time',
  symbol: '\\dot V_\\text{wish}',
  unit: 'm^3/s',
  display: 'mm^3/min',
  digits: 3,
  about: 'Volume removed over the time for it, with turning round, ways back and delays.',
  from: { volume: planVolume, time: planTime },
  compute: ({ volume, time }) => volume / time,
  formula: 'V_\\text{wish}/t_\\text{wish}',
  source: 'definition',
});

export const planMassRate = derived({
  id: 'engraving.planMassRate',
  name: 'mass that becomes fume and particles',
  symbol: '\\dot m_\\text{wish}',
  unit: 'kg/s',
  display: 'g/h',
  digits: 2,
  about:
    'Mass removed per time: all of it goes into the air and onto surfaces as vapour, particles and melt.',
  from: { rate: planVolumeRate, density },
  compute: ({ rate, density }) => rate * density,
  formula: '\\varrho\\,\\dot V_\\text{wish}',
  source: 'definition',
});
