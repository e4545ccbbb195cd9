import { number } from '../graph/define.ts';

export const maxRepetitionRate = number({
  id: 'laser.maxRepetitionRate',
  name: 'highest repetition rate of the laser',
  symbol: 'f_\\text{max}',
  unit: 'Hz',
  display: 'kHz',
  about: 'Most pulses per second (with bursts, bursts per second) that the laser can give.',
  initial: 1e6,
  range: { min: 1, max: 1e9 },
  typical: [100e3, 10e6],
});

export const maxPower = number({
  id: 'laser.maxPower',
  name: 'highest average power of the laser',
  symbol: 'P_\\text{max}',
  unit: 'W',
  about: 'Most average power that the laser can give, where the pulse energy is measured.',
  initial: 20,
  range: { min: 1e-6, max: 1e5 },
  typical: [1, 100],
});

export const maxPulseEnergy = number({
  id: 'laser.maxPulseEnergy',
  name: 'highest pulse energy of the laser',
  symbol: 'E_\\text{max}',
  unit: 'J',
  display: 'uJ',
  about: 'Most energy of one pulse that the laser can give, where the pulse energy is measured.',
  initial: 100e-6,
  range: { min: 1e-9, max: 1 },
  typical: [10e-6, 1e-3],
});
