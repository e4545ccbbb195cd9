import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { evenFieldRise } from '../process/heatArea.ts';
import { diffusionLength as lengthOf } from '../process/scaleUp.ts';
import { riseLimit } from './heatInputs.ts';
import { diffusivity } from './heatMaterial.ts';
import { heatInput } from './heatPulses.ts';
import { spotDiameter } from './pulsesOnPlace.ts';
import { scaled, scaledSpeed } from './scaleUp.ts';
import { recipe } from './scaleUpRecipe.ts';
import { wholeSpots } from './scaleUpWork.ts';

export const dwellTime = derived({
  id: 'scaleUp.dwellTime',
  name: 'time that a spot rests over a place',
  symbol: 't_\\text{dwell}',
  unit: 's',
  display: 'auto:s',
  digits: 3,
  about: 'Time in which a spot moves by its own diameter on the larger machine.',
  from: { D: spotDiameter, v: scaledSpeed },
  compute: ({ D, v }) => D / v,
  formula: 'D/v_\\text{used}',
  source: 'definition',
});

export const diffusionLength = derived({
  id: 'scaleUp.diffusionLength',
  name: 'way of heat while a spot passes',
  symbol: '\\ell_\\text{dwell}',
  unit: 'm',
  display: 'um',
  digits: 3,
  about:
    'Diffusion length over the time that a spot rests over a place. Spots closer than that warm one another strongly while they pass; those further apart do so less, and later.',
  from: { D: spotDiameter, v: scaledSpeed, chi: diffusivity },
  compute: ({ D, v, chi }) => lengthOf(D, chi, v),
  formula: '\\sqrt{4\\chi t_\\text{dwell}}',
  source: 'scaling',
});

export const heatPerArea = derived({
  id: 'scaleUp.heatPerArea',
  name: 'mean heat per time and area of the field',
  symbol: 'q_\\text{heat}',
  unit: 'W/m^2',
  display: 'W/cm^2',
  digits: 3,
  about:
    'Heat that all spots leave in the workpiece, mean over the field and over the time in which it is written.',
  from: { heat: heatInput, spots: wholeSpots, field: scaled, recipe },
  compute: ({ heat, spots, field, recipe: { hatch } }) =>
    (heat.energy * spots * field.repetitionRate * field.writingTime) /
    (field.fieldTime * hatch.width * hatch.height),
  formula: '\\frac{N Q f_\\text{used}t_\\text{write}}{t_\\text{field,L}F G}',
  source: 'definition',
});

export const carriedPerArea = derived({
  id: 'scaleUp.carriedPerArea',
  name: 'mean heat per time and area that conduction carries away',
  symbol: 'q_\\text{away}',
  unit: 'W/m^2',
  display: 'W/cm^2',
  digits: 3,
  about:
    'Heat per time and area, evenly over the field for the time of one field, with which the middle of the field comes to the rise that is allowed: into a wide plate of its thickness, insulated behind, that was cold before.',
  from: { heat: heatInput, field: scaled, recipe, limit: riseLimit },
  compute: ({ heat, field, recipe: { hatch }, limit }) => {
    const { power, fieldTime } = field;
    const { width, height } = hatch;
    const rise = evenFieldRise(heat, { width, height, time: fieldTime, power });
    return (limit * power) / (rise * width * height);
  },
  formula: '\\Delta T_\\text{max}\\,\\frac{q}{\\Delta T_\\text{plate}(q)}',
  source: 'scaling',
});

export const heatShare = derived({
  id: 'scaleUp.heatShare',
  name: 'mean heat over what conduction carries away',
  symbol: 'q_\\text{heat}/q_\\text{away}',
  unit: '1',
  digits: 3,
  about:
    'Mean heat per area over that with which the middle of the field comes to the rise that is allowed; above 1 the field gets too warm as a whole, however far the spots are apart.',
  from: { heat: heatPerArea, carried: carriedPerArea, limit: riseLimit },
  compute: ({ heat, carried }) => heat / carried,
  enteredFor: () => ({ keys: ['heat', 'carried'] }),
  valid: ({ heat, carried, limit }) =>
    heat <= carried
      ? undefined
      : `The whole field warms by ${formatReadable((limit * heat) / carried, 'K', 'K', 2)} on average, more than the ${formatReadable(limit, 'K', 'K', 3)} allowed.`,
  formula: 'q_\\text{heat}/q_\\text{away}',
  source: 'definition',
});
