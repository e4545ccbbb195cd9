import { choice, number } from '../graph/define.ts';

const count = { unit: '1', digits: 6 } as const;
const energy = { unit: 'J', display: 'uJ', range: { min: 1e-9, max: 1 }, typical: [0.1e-6, 200e-6] } as const;
const place = { unit: 'm', display: 'mm', range: { min: -0.1, max: 0.1 }, typical: [-1e-3, 1e-3] } as const;

export const lowEnergy = number({
  ...energy,
  id: 'coupon.lowEnergy',
  name: 'lowest pulse energy of the coupon',
  symbol: 'E_\\text{low}',
  about:
    'Energy of a pulse in the first column, where it is measured, before the losses that are named; low enough that some places stay without a mark.',
  initial: 0.3e-6,
});

export const highEnergy = number({
  ...energy,
  id: 'coupon.highEnergy',
  name: 'highest pulse energy of the coupon',
  symbol: 'E_\\text{high}',
  about: 'Energy of a pulse in the last column, where it is measured, before the losses that are named.',
  initial: 20e-6,
});

export const energyCount = number({
  ...count,
  id: 'coupon.energyCount',
  name: 'energies of the coupon',
  symbol: 'n_E',
  about: 'Number of energies, in equal ratios from the lowest to the highest; a whole number counts.',
  initial: 8,
  range: { min: 1, max: 30 },
});

export const firstZ = number({
  ...place,
  id: 'coupon.firstZ',
  name: 'first plane of the coupon',
  symbol: 'z_\\text{first}',
  about:
    'Position of the workpiece for the first rows, from the focal plane of the lens, positive behind it.',
  initial: -0.1e-3,
});

export const lastZ = number({
  ...place,
  id: 'coupon.lastZ',
  name: 'last plane of the coupon',
  symbol: 'z_\\text{last}',
  about: 'Position of the workpiece for the last rows, from the focal plane of the lens, positive behind it.',
  initial: 0.1e-3,
});

export const planeCount = number({
  ...count,
  id: 'coupon.planeCount',
  name: 'planes of the coupon',
  symbol: 'n_z',
  about:
    'Number of planes, in equal steps from the first to the last; a whole number counts, and one plane is the first.',
  initial: 3,
  range: { min: 1, max: 15 },
});

export const mostPulses = number({
  ...count,
  id: 'coupon.mostPulses',
  name: 'most pulses on a place',
  symbol: 'N_\\text{most}',
  about: 'Largest number of pulses on one place of the coupon; the smallest is one.',
  initial: 1,
  range: { min: 1, max: 1e6 },
});

export const pulseCount = number({
  ...count,
  id: 'coupon.pulseCount',
  name: 'numbers of pulses',
  symbol: 'n_N',
  about: 'How many numbers of pulses, in equal ratios from one to the most; a whole number counts.',
  initial: 1,
  range: { min: 1, max: 8 },
});

export const repeats = number({
  ...count,
  id: 'coupon.repeats',
  name: 'repeats of each spot',
  symbol: 'n_\\text{rep}',
  about: 'How often each spot is fired; three or more show how the marks scatter. A whole number counts.',
  initial: 3,
  range: { min: 1, max: 10 },
});

export const pitchFactor = number({
  ...count,
  id: 'coupon.pitchFactor',
  name: 'pitch over the largest mark',
  symbol: 'p/D',
  about:
    'Distance from place to place over the diameter of the largest predicted mark, so that debris and halo of one spot do not reach the next.',
  initial: 3,
  range: { min: 1.2, max: 50 },
  typical: [2, 6],
});

export const setting = choice({
  id: 'coupon.setting',
  name: 'what is set for each energy',
  symbol: '\\text{setting}',
  about:
    'The column beside the energy: the average power to read at the meter, or the part that the attenuator lets through.',
  initial: 'power',
  options: { power: 'average power', attenuator: 'transmission of the attenuator' },
});

export const fullEnergy = number({
  ...energy,
  id: 'coupon.fullEnergy',
  name: 'pulse energy with the attenuator open',
  symbol: 'E_\\text{open}',
  about:
    'Energy of a pulse where the attenuator lets everything through, measured in the same place as the energies of the coupon.',
  initial: 100e-6,
});
