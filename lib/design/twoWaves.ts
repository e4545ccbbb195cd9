import { derived } from '../graph/define.ts';
import { spaced } from '../optics/focusMaps.ts';
import { twoWavesInFocus } from '../optics/twoWaves.ts';
import { stepRatio } from './match.ts';
import { stepPhase, zones } from './plate.ts';

/** Drawn out to this many 1/e² radii of the unshaped focus, where a spot behind κ = 1 has ended. */
const reach = 4;
const count = 161;

export const amplitudeOverRadius = derived({
  id: 'explain.amplitudeOverRadius',
  name: 'amplitude in the focus against radius',
  symbol: 'U(\\varrho)',
  unit: { radius: '1', whole: '1', centre: '1', taken: '1', left: '1', irradiance: '1' },
  about:
    'Focal amplitude against the radius over the unshaped focus radius: of the whole beam without the step, of the light through the middle alone, what a step of this phase takes away from the whole, what is left (both: the part in step with the whole beam), and the irradiance of what is left; coherent light, relative to the whole unclipped beam on the axis.',
  from: { ratio: stepRatio, zones, phase: stepPhase },
  compute: ({ ratio, zones, phase }) => {
    const radius = spaced(0, reach, count);
    const stopPerStep = zones[1]!.outer / zones[0]!.outer;
    const { whole, centre } = twoWavesInFocus(ratio, radius, stopPerStep);
    const taken = centre.map((u) => (1 - Math.cos(phase)) * u);
    const left = whole.map((u, i) => u - taken[i]!);
    const irradiance = left.map((re, i) => re ** 2 + (Math.sin(phase) * centre[i]!) ** 2);
    return { radius, whole, centre, taken, left, irradiance };
  },
  formula: 'U_\\text{all}-(1-e^{i\\varphi})\\,U_\\text{centre}',
  source: 'collins1970',
});

export const centreEnergy = derived({
  id: 'explain.centreEnergy',
  name: 'energy through the step',
  symbol: 'T_\\text{step}',
  unit: '1',
  display: '%',
  digits: 3,
  about: 'Part of the pulse energy incident on the plate that goes through the step.',
  from: { ratio: stepRatio },
  compute: ({ ratio }) => -Math.expm1(-2 * ratio * ratio),
  formula: '1-e^{-2\\kappa^2}',
  source: 'integration',
});
