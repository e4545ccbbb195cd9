import { choice, derived, number } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { removalLaw } from '../process/removal.ts';
import { thresholdAtN } from './threshold.ts';

export const removalDepth = number({
  id: 'removal.depthPerPulse',
  name: 'depth per pulse',
  symbol: '\\delta',
  unit: 'm',
  display: 'nm',
  about:
    'Depth that one pulse gains for each factor e of fluence above threshold: the effective penetration depth, 10 to 100 nm for metals (common practice).',
  initial: 20e-9,
  range: { min: 1e-10, max: 1e-4 },
  typical: [5e-9, 200e-9],
});

export const branches = choice({
  id: 'removal.branches',
  name: 'branches of removal',
  symbol: '\\text{branches}',
  about:
    'Whether depth against the logarithm of fluence is one straight line, or an optical one and a steeper, thermal one from a higher threshold on, as steel and copper often show.',
  initial: 'one',
  options: { one: 'one line', two: 'two lines' },
});

export const secondDepth = number({
  id: 'removal.secondDepth',
  name: 'depth per pulse of the second branch',
  symbol: '\\delta_2',
  unit: 'm',
  display: 'nm',
  about:
    'Depth that one pulse gains for each factor e of fluence on the thermal branch, where that is the deeper one.',
  initial: 80e-9,
  range: { min: 1e-10, max: 1e-4 },
  typical: [20e-9, 500e-9],
});

export const secondThreshold = number({
  id: 'removal.secondThreshold',
  name: 'threshold of the second branch',
  symbol: 'F_{\\text{th},2}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  about:
    'Incident fluence per pulse at which the line of the thermal branch starts, for the pulses on a place as they are; not below the threshold of the first branch.',
  initial: 5000,
  range: { min: 0, above: true, max: 1e7 },
  typical: [1000, 5e4],
});

export const law = derived({
  id: 'removal.law',
  name: 'depth against fluence',
  symbol: 'd(F)',
  unit: { depth: 'm', threshold: 'J/m^2' },
  about:
    'Branches by which depth per pulse grows with the logarithm of incident fluence, for the pulses on a place; nothing is removed below the first threshold, and so nothing below its floor.',
  from: {
    depth: removalDepth,
    threshold: thresholdAtN,
    branches,
    secondDepth,
    secondThreshold,
  },
  compute: ({ depth, threshold, branches, secondDepth, secondThreshold }) => {
    const second = { depth: secondDepth, threshold: secondThreshold };
    return removalLaw({ depth, threshold }, branches === 'two' ? second : undefined);
  },
  enteredFor: ({ branches }) =>
    branches === 'two'
      ? {}
      : { keys: ['depth', 'threshold', 'branches'], formula: '\\delta\\ln(F/F_{\\text{th},N})' },
  shownAs: (law) =>
    law
      .map(
        ({ depth, threshold }) =>
          `${formatReadable(depth, 'm', 'nm', 3)} for each factor e above ${formatReadable(threshold, 'J/m^2', 'J/cm^2', 3)}`,
      )
      .join(', '),
  formula:
    '\\max\\left(\\delta\\ln\\frac{F}{F_{\\text{th},N}},\\ \\delta_2\\ln\\frac{F}{F_{\\text{th},2}}\\right)',
  source: 'nolte1997',
});
