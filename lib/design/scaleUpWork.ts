import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { Problem } from '../problem.ts';
import { type ScaledWork, shotEnergy as shotEnergyOf } from '../process/scaleUp.ts';
import { mostSpots as mostSpotsOf } from '../process/scaleUpLimits.ts';
import { hatch } from './hatch.ts';
import { heatIfThere } from './scaleUpHeatLimit.ts';
import * as inputs from './scaleUpInputs.ts';
import { recipe } from './scaleUpRecipe.ts';

export const wholeSpots = derived({
  id: 'scaleUp.wholeSpots',
  name: 'whole number of spots side by side',
  symbol: 'N',
  unit: '1',
  about: 'Spots that write at once, a whole number.',
  from: { typed: inputs.spots },
  compute: ({ typed }) => Math.round(typed),
  formula: '\\operatorname{round} N_\\text{s}',
  source: 'definition',
});

export const mostSpots = derived({
  id: 'scaleUp.mostSpots',
  name: 'most spots that are possible',
  symbol: 'N_\\text{most}',
  unit: { energy: '1', height: '1', all: '1' },
  about:
    'As many spots as the energy of one pulse of the larger laser serves behind the splitter, as many as stand in the height of the field at their distance, and the lesser of the two.',
  from: {
    recipe,
    efficiency: inputs.splitterEfficiency,
    maxEnergy: inputs.largeMaxPulseEnergy,
    distance: inputs.spotDistance,
  },
  compute: ({ recipe, efficiency, maxEnergy, distance }) => {
    const most = mostSpotsOf(recipe, { efficiency }, maxEnergy, distance);
    if (most.energy < 1) throw tooWeak(recipe.energy, maxEnergy);
    return most;
  },
  shownAs: ({ energy, height }) => `${energy} by energy, ${height} by the height of the field`,
  formula: '\\min\\left(\\lfloor\\eta_\\text{s}E_\\text{L}/E\\rfloor,\\ \\lfloor G/s\\rfloor\\right)',
  source: 'definition',
});

const microjoules = (value: number) => formatReadable(value, 'J', 'uJ', 3);

function tooWeak(energy: number, maxEnergy: number): Problem {
  return new Problem(
    'impossible',
    `Each spot needs pulses of ${microjoules(energy)}, and the larger laser gives no more than ${microjoules(maxEnergy)}: not even one spot can be written. Enter a laser with more energy in a pulse, or lower the pulse energy of the field.`,
    {
      input: inputs.largeMaxPulseEnergy.id,
      value: microjoules(maxEnergy),
      allowed: `${microjoules(energy)} or more`,
    },
  );
}

export const shotEnergy = derived({
  id: 'scaleUp.shotEnergy',
  name: 'energy of one pulse for all spots',
  symbol: 'E_\\text{shot}',
  unit: 'J',
  display: 'uJ',
  digits: 3,
  about:
    'Energy that the laser gives in one pulse so that every spot gets that of the recipe, where the laser’s energy is measured: splitter losses counted from two spots on.',
  from: {
    spots: wholeSpots,
    recipe,
    efficiency: inputs.splitterEfficiency,
    maxEnergy: inputs.largeMaxPulseEnergy,
    most: mostSpots,
  },
  compute: ({ spots, recipe, efficiency, maxEnergy, most }) => {
    const energy = shotEnergyOf(recipe, { spots, efficiency });
    if (spots <= most.energy) return energy;
    throw new Problem(
      'impossible',
      `For ${spots} spots of ${microjoules(recipe.energy)} the laser must give pulses of ${microjoules(energy)} before a splitter of that efficiency, and the larger laser gives no more than ${microjoules(maxEnergy)}, enough for ${most.energy === 1 ? 'one spot' : `${most.energy} spots`}. Take no more spots, or a laser with more energy in a pulse.`,
      {
        input: inputs.spots.id,
        value: String(spots),
        allowed: `up to ${most.energy}`,
        mend: {
          value: most.energy,
          words: `Take ${most.energy === 1 ? 'one spot' : `${most.energy} spots`}`,
        },
      },
    );
  },
  formula: 'N E/\\eta_\\text{s}',
  source: 'definition',
});

export const stitching = derived({
  id: 'scaleUp.stitching',
  name: 'how fields are put side by side',
  symbol: '(t_\\text{move}, o)',
  unit: { moveTime: 's', overlap: 'm' },
  about:
    'Time from field to field and overlap of neighbours, which must be less than either side of the field.',
  from: { moveTime: inputs.moveTime, overlap: inputs.fieldOverlap, hatch },
  compute: ({ moveTime, overlap, hatch: { width, height } }) => {
    const side = Math.min(width, height);
    if (overlap < side) return { moveTime, overlap };
    const show = (length: number) => formatReadable(length, 'm', 'um', 3);
    throw new Problem(
      'impossible',
      `Neighbouring fields overlap by ${show(overlap)}, and the field is only ${show(side)} wide: nothing new would be written. Overlap less, or write larger fields.`,
      { input: inputs.fieldOverlap.id, value: show(overlap), allowed: `below ${show(side)}` },
    );
  },
  shownAs: ({ moveTime }) => formatReadable(moveTime, 's', 'auto:s', 3),
  formula: '(t_\\text{move}, o)',
  source: 'definition',
});

export const work = derived({
  id: 'scaleUp.work',
  name: 'work on the larger machine',
  symbol: '\\text{work}',
  unit: 'none',
  about: 'Recipe, larger machine with its spots, stitching, and what heat allows where that is known.',
  from: {
    recipe,
    stitching,
    spots: wholeSpots,
    distance: inputs.spotDistance,
    efficiency: inputs.splitterEfficiency,
    maxPower: inputs.largeMaxPower,
    maxRepetitionRate: inputs.largeMaxRepetitionRate,
    maxSpeed: inputs.largeMaxSpeed,
    acceleration: inputs.largeAcceleration,
    heat: heatIfThere,
  },
  compute: ({ recipe, stitching, distance, heat, ...machine }): ScaledWork => ({
    recipe,
    machine: { ...machine, distance },
    stitching,
    heat: heat === null ? null : { ...heat, distance },
  }),
  shownAs: ({ machine }) => `${machine.spots} ${machine.spots === 1 ? 'spot' : 'spots'}`,
  formula: '(\\text{recipe}, \\text{machine}, N)',
  source: 'definition',
});
