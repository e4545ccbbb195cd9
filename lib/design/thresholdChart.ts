import { choice, derived } from '../graph/define.ts';
import { incubationExponent, pulsesOnPlace, thresholdUncertainty } from './threshold.ts';

export const fluenceScale = choice({
  id: 'threshold.fluenceScale',
  name: 'scale of the fluence',
  symbol: '\\text{scale}',
  about:
    'How the fluence across the spot is drawn beside the threshold: by powers of ten, where a threshold far below the peak still shows, or in proportion.',
  initial: 'logarithmic',
  options: { logarithmic: 'logarithmic', linear: 'linear' },
});

export const thresholdAtNUncertainty = derived({
  id: 'threshold.uncertaintyAtN',
  name: 'standard uncertainty of the threshold for the pulses on a place',
  symbol: 'u(F_{\\text{th},N})',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 2,
  about:
    'Standard uncertainty of the threshold for the pulses on a place, as far as it comes from that of one pulse; incubation exponent and floor count as exact.',
  from: { u: thresholdUncertainty, N: pulsesOnPlace, S: incubationExponent },
  compute: ({ u, N, S }) => u * N ** (S - 1),
  formula: 'u(F_\\text{th})\\,N^{S-1}',
  source: 'jcgm100',
});
