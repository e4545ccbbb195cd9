import { derived, ifThere } from '../graph/define.ts';
import { stretchesOf } from '../process/marks.ts';
import { asked, thresholdLevel, unshapedAsked, unshapedThresholdLevel } from './marks.ts';

const stretchUnits = { angle: 'rad', marked: { from: 'm', to: 'm' } } as const;

export const markStretches = derived({
  id: 'spot.markStretches',
  name: 'where the surface is marked',
  symbol: '[\\rho_i,\\rho_{i+1}]_N',
  unit: stretchUnits,
  about:
    'Stretches along lines outward from the centre where the fluence is above the threshold for the pulses on a place; one line for a round spot.',
  from: { spot: asked, level: thresholdLevel },
  compute: ({ spot, level }) => stretchesOf(spot, level),
  formula: 'I(\\rho)>I_{\\text{th}}',
  source: 'liu1982',
});

export const unshapedMarkStretches = derived({
  id: 'unshaped.spot.markStretches',
  name: 'where the surface is marked without the step',
  symbol: '[\\rho_i,\\rho_{i+1}]_{\\text{u},N}',
  unit: stretchUnits,
  about: 'The same stretches with the plate taken out, and its losses with it.',
  from: { spot: unshapedAsked, level: unshapedThresholdLevel },
  compute: ({ spot, level }) => stretchesOf(spot, level),
  formula: 'I_\\text{u}(\\rho)>I_{\\text{u},\\text{th}}',
  source: 'liu1982',
});

export const levelOnMap = ifThere({
  id: 'focus.mapThreshold',
  name: 'threshold on the map',
  symbol: 'I_{\\text{th,map}}',
  unit: '1',
  about:
    'Threshold for the pulses on a place as relative irradiance, for the line on the map through the focus; none where the design has no threshold.',
  of: thresholdLevel,
});
