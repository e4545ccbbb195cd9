import { derived } from '../graph/define.ts';
import { deepestOf, ringAround } from '../optics/profileDetail.ts';
import { noEdge } from './depthOfFocus.ts';
import { peak, profile } from './spot.ts';

export const surroundings = derived({
  id: 'spot.ringAround',
  name: 'ring around the peak',
  symbol: '\\text{around}',
  unit: { height: '1', radius: 'm' },
  about:
    'The highest ring outside the highest part of the profile that reaches above half the peak: its height as a part of the peak, and its radius; both 0 where there is none.',
  from: { profile, peak },
  compute: ({ profile, peak }) => ringAround(profile, peak) ?? { height: 0, radius: 0 },
  formula: '\\max_{\\rho>\\rho_{0.5}} I(\\rho)',
  source: 'definition',
});

export const ringAroundHeight = derived({
  id: 'spot.ringAroundHeight',
  name: 'height of the ring around the peak',
  symbol: 'I_\\text{around}/I_\\text{max}',
  unit: '1',
  display: '%',
  digits: 2,
  about:
    'Fluence on the highest ring around the peak as a part of the peak, where that is above a half; 0 where there is no such ring.',
  from: { around: surroundings },
  compute: ({ around }) => around.height,
  formula: '\\frac{I(\\rho_\\text{around})}{I_\\text{max}}',
  source: 'definition',
});

export const ringAroundDiameter = derived({
  id: 'spot.ringAroundDiameter',
  name: 'diameter of the ring around the peak',
  symbol: '2\\rho_\\text{around}',
  unit: 'm',
  display: 'um',
  digits: 3,
  about: 'Diameter of the highest ring around the peak that reaches above half of it; 0 where there is none.',
  from: { around: surroundings },
  compute: ({ around }) => 2 * around.radius,
  formula: '2\\rho_\\text{around}',
  source: 'definition',
});

export const trough = derived({
  id: 'spot.trough',
  name: 'trough of the plateau',
  symbol: 'D_\\text{plateau}',
  unit: '1',
  display: '%',
  digits: 2,
  zeroBelow: 5e-4,
  about:
    'How far the lowest place inside the outermost crest of the plateau lies below the peak: the dip where that is the axis, more where a trough runs around it. The plateau is the disc out to where the profile last crosses 95\u202f% of its peak.',
  from: { profile, peak },
  compute: ({ profile, peak }) => {
    const deepest = deepestOf(profile, peak);
    if (deepest === undefined) throw noEdge();
    return deepest;
  },
  formula: '1-\\min_{\\rho\\le\\rho_\\text{crest}} I(\\rho)/I_\\text{max}',
  source: 'definition',
});
