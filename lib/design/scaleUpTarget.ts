import { derived } from '../graph/define.ts';
import { formatQuantity, formatReadable } from '../graph/units.ts';
import { Problem } from '../problem.ts';
import { ceilings as ceilingsOf, missingTo, spotsFor } from '../process/scaleUpLimits.ts';
import { areaPerHour, limitInWords } from './scaleUp.ts';
import { spots as spotsInput, targetRate } from './scaleUpInputs.ts';
import { mostSpots, shotEnergy, work } from './scaleUpWork.ts';

const perHour = (rate: number) => formatReadable(rate, 'm^2/s', 'm^2/h', 3);

export const ceilings = derived({
  id: 'scaleUp.ceilings',
  name: 'what each limit alone leaves',
  symbol: '\\{\\dot A_i\\}',
  unit: { kind: 'none', rate: 'm^2/s' },
  about:
    'Area per time that each limit of the larger machine alone would leave, everything else without limit, the lowest in front: power, repetition rate and speed without turning and moving, turning round at the speed best for it, moves between fields that take no time themselves, heat where it limits.',
  from: { work, shot: shotEnergy },
  compute: ({ work, shot: _shot }) => ceilingsOf(work),
  shownAs: (all) => all.map(({ kind, rate }) => `${limitInWords(kind)} ${perHour(rate)}`).join(', '),
  formula:
    '\\frac{G v_i}{n_\\text{pass}n_\\text{scan}},\\ \\dot A(a_\\text{L}),\\ \\frac{(F-o)(G-o)}{t_\\text{move}}',
  source: 'definition',
});

export const missing = derived({
  id: 'scaleUp.missing',
  name: 'what is missing to the area wanted',
  symbol: '\\dot A_\\text{wish}/\\dot A_i',
  unit: { factor: '1', short: { kind: 'none', factor: '1' } },
  about:
    'Area per hour wanted over that reached, and for each limit that alone lies below the one wanted by how many times it does.',
  from: { target: targetRate, rate: areaPerHour, ceilings },
  compute: ({ target, rate, ceilings }) => missingTo(target, rate, ceilings),
  shownAs: ({ factor, short }) =>
    factor <= 1
      ? 'nothing'
      : `a factor of ${formatQuantity(factor, '1', '1', 3)}${short.length === 0 ? '' : `: ${short.map(({ kind, factor }) => `${limitInWords(kind)} ${formatQuantity(factor, '1', '1', 3)}`).join(', ')}`}`,
  formula: '\\dot A_\\text{wish}/\\dot A_\\text{L},\\ \\dot A_\\text{wish}/\\dot A_i',
  source: 'definition',
});

export const missingFactor = derived({
  id: 'scaleUp.missingFactor',
  name: 'area wanted over area reached',
  symbol: '\\dot A_\\text{wish}/\\dot A_\\text{L}',
  unit: '1',
  digits: 3,
  about: 'How many times the area per hour wanted is that reached; 1 or less where it is met.',
  from: { missing },
  compute: ({ missing }) => missing.factor,
  formula: '\\dot A_\\text{wish}/\\dot A_\\text{L}',
  source: 'definition',
});

export const spotsTried = derived({
  id: 'scaleUp.spotsTried',
  name: 'numbers of spots tried for the area wanted',
  symbol: '(N, \\dot A)_\\text{wish}',
  unit: { met: 'none', spots: '1', rate: 'm^2/s', limit: 'none' },
  about:
    'The least number of spots that meets the area wanted, with what limits it; where none does, the number that comes nearest. As many are tried as pulse energy and height of the field allow.',
  from: { work, target: targetRate, most: mostSpots },
  compute: ({ work, target, most }) => {
    const { met, spots, field } = spotsFor(work, target, most.all);
    return { met, spots, rate: field.rate, limit: field.limit };
  },
  shownAs: ({ spots, rate }) => `${spots}: ${perHour(rate)}`,
  formula: '\\min N: \\dot A_\\text{L}(N)\\ge\\dot A_\\text{wish}',
  source: 'search',
});

export const spotsForTarget = derived({
  id: 'scaleUp.spotsForTarget',
  name: 'spots that the area wanted needs',
  symbol: 'N_\\text{wish}',
  unit: '1',
  about: 'Least number of spots with which the area wanted per hour is met on the larger machine.',
  from: { tried: spotsTried, target: targetRate, most: mostSpots },
  compute: ({ tried, target, most }) => {
    if (tried.met) return tried.spots;
    const bound = most.energy <= most.height ? 'the energy of a pulse' : 'the height of the field';
    throw new Problem(
      'absent',
      `No number of spots brings ${perHour(target)}: of up to ${most.all}, which ${bound} allows, ${tried.spots === 1 ? 'one spot brings' : `${tried.spots} bring`} most, ${perHour(tried.rate)}, limited by ${limitInWords(tried.limit)}. Raise that limit, or ask for less.`,
      { input: targetRate.id, value: perHour(target), allowed: `up to ${perHour(tried.rate)}` },
    );
  },
  enteredFor: () => ({ keys: ['tried'] }),
  assigns: (spots) => ({ [spotsInput.id]: spots }),
  formula: '\\min N: \\dot A_\\text{L}(N)\\ge\\dot A_\\text{wish}',
  source: 'search',
});
