import { choice, derived, number, picked } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { Problem } from '../problem.ts';
import { thresholdAt } from '../process/incubation.ts';
import { fittedFluence, fittedUncertainty } from './fits.ts';
import { handbookDifferences, handbookRange } from './material.ts';

export const thresholdSource = choice({
  id: 'threshold.source',
  name: 'source of the threshold',
  symbol: '\\text{threshold source}',
  about:
    'Which threshold counts: the middle of the published range, a typed one, or the one fitted to measured spots.',
  initial: 'handbook',
  options: { handbook: 'handbook', typed: 'typed', fitted: 'fitted to measured spots' },
});

export const typedThreshold = number({
  id: 'threshold.typedFluence',
  name: 'typed threshold fluence',
  symbol: 'F_\\text{th,typed}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  about: 'Incident fluence of one pulse above which it leaves a mark, as typed.',
  initial: 2000,
  range: { min: 0, above: true, max: 1e7 },
  typical: [300, 2e4],
});

export const typedUncertainty = number({
  id: 'threshold.typedUncertainty',
  name: 'standard uncertainty of the typed threshold',
  symbol: 'u(F_\\text{th,typed})',
  unit: 'J/m^2',
  display: 'J/cm^2',
  about: 'How well the typed threshold is known: standard uncertainty, 0 where it counts as exact.',
  initial: 0,
  range: { min: 0, max: 1e7 },
  typical: [0, 2000],
});

const handbookFluence = derived({
  id: 'threshold.handbookFluence',
  name: 'threshold to start from',
  symbol: 'F_\\text{th,book}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 2,
  about:
    'Middle of the published range on a logarithmic scale, incident, one pulse: a value to start from, to be measured.',
  from: { range: handbookRange, differences: handbookDifferences },
  compute: ({ range }) => range.start,
  enteredFor: () => ({ keys: ['range'] }),
  valid: ({ differences }) =>
    differences.length === 0
      ? undefined
      : `Published under other conditions: ${differences.join('; ')}. Measure your own threshold.`,
  formula: '\\sqrt{F_\\text{low}F_\\text{high}}',
  source: 'common practice',
});

const handbookUncertainty = derived({
  id: 'threshold.handbookUncertainty',
  name: 'standard uncertainty of the threshold to start from',
  symbol: 'u(F_\\text{th,book})',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 2,
  about: 'Standard uncertainty where every value in the published range is alike on a logarithmic scale.',
  from: { range: handbookRange },
  compute: ({ range }) => range.uncertainty,
  formula: '\\frac{F_\\text{th,book}}{\\sqrt{12}}\\ln\\frac{F_\\text{high}}{F_\\text{low}}',
  source: 'jcgm100',
});

export const thresholdFluence = picked({
  id: 'threshold.fluence',
  name: 'threshold fluence',
  symbol: 'F_\\text{th}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 3,
  about: 'Incident fluence of one pulse on a fresh surface above which it leaves a mark, in use everywhere.',
  by: thresholdSource,
  cases: { handbook: handbookFluence, typed: typedThreshold, fitted: fittedFluence },
  formula: '\\begin{cases} F_\\text{th,book} \\\\ F_\\text{th,typed} \\\\ F_\\text{th,fit} \\end{cases}',
});

export const thresholdUncertainty = picked({
  id: 'threshold.uncertainty',
  name: 'standard uncertainty of the threshold',
  symbol: 'u(F_\\text{th})',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 2,
  about: 'Standard uncertainty (one standard deviation) of the threshold fluence in use, one pulse.',
  by: thresholdSource,
  cases: { handbook: handbookUncertainty, typed: typedUncertainty, fitted: fittedUncertainty },
  formula:
    '\\begin{cases} u(F_\\text{th,book}) \\\\ u(F_\\text{th,typed}) \\\\ u(F_\\text{th,fit}) \\end{cases}',
});

export const pulsesOnPlace = number({
  id: 'threshold.pulses',
  name: 'pulses on one place',
  symbol: 'N',
  unit: '1',
  about: 'Pulses that fall on one and the same place.',
  initial: 1,
  range: { min: 1, max: 1e7 },
  typical: [1, 1000],
});

export const incubationExponent = number({
  id: 'threshold.incubationExponent',
  name: 'incubation exponent',
  symbol: 'S',
  unit: '1',
  about:
    'How the threshold falls with the pulses on a place, as N to the power S − 1: 1 where it stays, 0.8 to 0.9 for many metals (common practice).',
  initial: 1,
  range: { min: 0.3, max: 1.2 },
  typical: [0.7, 1],
});

export const thresholdFloor = number({
  id: 'threshold.floor',
  name: 'threshold of endless pulses',
  symbol: 'F_\\infty',
  unit: 'J/m^2',
  display: 'J/cm^2',
  about:
    'Fluence per pulse below which no number of pulses leaves a mark; 0 where the power law goes on without end.',
  initial: 0,
  range: { min: 0, max: 1e7 },
  typical: [0, 2000],
});

export const thresholdAtN = derived({
  id: 'threshold.fluenceAtN',
  name: 'threshold for the pulses on a place',
  symbol: 'F_{\\text{th},N}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 3,
  about:
    'Incident fluence of each of N pulses on one place above which together they leave a mark; falls from the threshold of one pulse to the floor where the exponent is below 1, and rises where it is above.',
  from: { first: thresholdFluence, N: pulsesOnPlace, S: incubationExponent, floor: thresholdFloor },
  compute: ({ first, N, S, floor }) => {
    if (floor > first) throw floorAbove(floor, first);
    return thresholdAt({ first, exponent: S, floor }, N);
  },
  formula: 'F_\\infty+(F_\\text{th}-F_\\infty)\\,N^{S-1}',
  source: 'diniso2014',
});

export function floorAbove(floor: number, first: number): Problem {
  const show = (fluence: number) => formatReadable(fluence, 'J/m^2', 'J/cm^2', 3);
  return new Problem(
    'impossible',
    `The threshold of endless pulses (${show(floor)}) lies above that of one pulse (${show(first)}). Lower it, or set it to 0 for a power law without a floor.`,
    { input: 'threshold.floor', value: show(floor), allowed: `0 to ${show(first)}` },
  );
}
