import { derived } from '../graph/define.ts';
import { formatQuantity } from '../graph/units.ts';
import { netArea } from '../process/scaleUp.ts';
import { type StepRate, scaleSteps } from '../process/scaleUpSteps.ts';
import { fieldTime } from './hatch.ts';
import { maxPower, maxRepetitionRate } from './laserLimits.ts';
import { squareMetre } from './scaleUp.ts';
import { todayHeatIfThere } from './scaleUpHeatLimit.ts';
import { spotDistance } from './scaleUpInputs.ts';
import { recipe } from './scaleUpRecipe.ts';
import { shotEnergy, stitching, work } from './scaleUpWork.ts';
import { acceleration, maxSpeed } from './scannerInputs.ts';

export const todayAreaPerHour = derived({
  id: 'scaleUp.todayAreaPerHour',
  name: 'area per hour as the field is set today',
  symbol: '\\dot A_\\text{today}',
  unit: 'm^2/s',
  display: 'm^2/h',
  digits: 3,
  about:
    'Area that today’s laser and scanner finish per hour with one spot and the speed that is set, fields put side by side in the same way.',
  from: { recipe, stitching, time: fieldTime },
  compute: ({ recipe, stitching, time }) => netArea(recipe.hatch, stitching) / (time + stitching.moveTime),
  formula: '\\frac{(F-o)(G-o)}{t_\\text{field}+t_\\text{move}}',
  source: 'definition',
});

export const todayTimePerSquareMetre = derived({
  id: 'scaleUp.todayTimePerSquareMetre',
  name: 'time for a square metre as the field is set today',
  symbol: 't_{\\mathrm{m^2},\\text{today}}',
  unit: 's',
  display: 'h',
  digits: 3,
  about: 'A square metre over today’s area per hour.',
  from: { area: squareMetre, rate: todayAreaPerHour },
  compute: ({ area, rate }) => area / rate,
  formula: '1\\,\\mathrm{m^2}/\\dot A_\\text{today}',
  source: 'definition',
});

export const steps = derived({
  id: 'scaleUp.steps',
  name: 'from today’s machine to the larger one',
  symbol: '\\{\\dot A_\\text{step}\\}',
  unit: { step: 'none', rate: 'm^2/s', limit: 'none' },
  about:
    'Area per time step by step, each keeping those before: as the field is set, today’s machine at its fastest, the power of the larger laser, its repetition rate, the larger scanner, and all spots; with each what limits it.',
  from: {
    work,
    shot: shotEnergy,
    heat: todayHeatIfThere,
    distance: spotDistance,
    time: fieldTime,
    maxPower,
    maxRepetitionRate,
    maxSpeed,
    acceleration,
  },
  compute: ({ work, shot: _shot, heat, distance, time, ...machine }): StepRate[] =>
    scaleSteps(work, {
      machine: { ...machine, spots: 1, distance, efficiency: 1 },
      heat: heat === null ? null : { ...heat, distance },
      time,
    }),
  shownAs: (steps) =>
    steps.map(({ step, rate }) => `${step} ${formatQuantity(rate, 'm^2/s', 'm^2/h', 3)}`).join(', '),
  formula: '\\dot A(\\text{machine}_\\text{step})',
  source: 'definition',
});
