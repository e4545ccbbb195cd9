import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { type CuttingLaw, countingLevel } from '../process/cuttingLaw.ts';
import { removalLaw } from '../process/removal.ts';
import { burstPulses } from './burst.ts';
import { branches, removalDepth, secondDepth, secondThreshold } from './depthLaw.ts';
import { pulseSpacing } from './scanInputs.ts';
import { floorAbove, incubationExponent, thresholdFloor, thresholdFluence } from './threshold.ts';

export const cuttingLaw = derived({
  id: 'groove.law',
  name: 'depth pulse after pulse',
  symbol: 'd(F, N)',
  unit: {
    depth: 'm',
    incubation: { first: 'J/m^2', exponent: '1', floor: 'J/m^2' },
    second: { depth: 'm', threshold: 'J/m^2' },
  },
  about:
    'Depth that the N-th pulse counted on a place removes at the fluence F, incident on the place as it slopes: the threshold falls with N by incubation, the second branch stays.',
  from: {
    depth: removalDepth,
    first: thresholdFluence,
    exponent: incubationExponent,
    floor: thresholdFloor,
    branches,
    secondDepth,
    secondThreshold,
  },
  compute: ({ depth, first, exponent, floor, branches, secondDepth, secondThreshold }): CuttingLaw => {
    if (floor > first) throw floorAbove(floor, first);
    const one = { depth, incubation: { first, exponent, floor } };
    if (branches === 'one') return one;
    const second = { depth: secondDepth, threshold: secondThreshold };
    // Throws where the second branch starts below the first.
    removalLaw({ depth, threshold: first }, second);
    return { ...one, second };
  },
  enteredFor: ({ branches }) =>
    branches === 'two'
      ? {}
      : {
          keys: ['depth', 'first', 'exponent', 'floor', 'branches'],
          formula: '\\delta\\ln(F/F_{\\text{th},N})',
        },
  shownAs: ({ depth, incubation }) =>
    `${formatReadable(depth, 'm', 'nm', 3)} for each factor e above ${formatReadable(incubation.first, 'J/m^2', 'J/cm^2', 3)}, which falls with the pulses`,
  formula:
    '\\max\\left(\\delta\\ln\\frac{F}{F_{\\text{th},N}},\\ \\delta_2\\ln\\frac{F}{F_{\\text{th},2}}\\right)',
  source: 'nolte1997',
});

export const countedFrom = derived({
  id: 'groove.countedFrom',
  name: 'fluence from which a pulse counts',
  symbol: 'F_\\text{count}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 3,
  about:
    'Fluence from which a pulse counts among those on a place, and below which nothing is removed however many came before: the threshold of endless pulses, or 1/e² of that of one pulse where this is more; our choice.',
  from: { law: cuttingLaw },
  compute: ({ law }) => countingLevel(law),
  formula: '\\max(F_\\infty, F_\\text{th}/e^2)',
  source: 'definition',
});

export const pulseTrain = derived({
  id: 'groove.pulses',
  name: 'pulses along the line',
  symbol: '\\text{pulses}',
  unit: {
    pulseSpacing: 'm',
    pulsesPerBurst: '1',
    law: {
      depth: 'm',
      incubation: { first: 'J/m^2', exponent: '1', floor: 'J/m^2' },
      second: { depth: 'm', threshold: 'J/m^2' },
    },
  },
  about: 'Spacing of the pulses along the line, how many land in one place at once, and what each removes.',
  from: { pulseSpacing, pulsesPerBurst: burstPulses, law: cuttingLaw },
  compute: ({ pulseSpacing, pulsesPerBurst, law }) => ({ pulseSpacing, pulsesPerBurst, law }),
  shownAs: ({ pulseSpacing }) => `pulses ${formatReadable(pulseSpacing, 'm', 'um', 3)} apart`,
  formula: '(p, n_\\text{b}, d(F,N))',
  source: 'definition',
});
