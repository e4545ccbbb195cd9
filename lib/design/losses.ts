import { choice, derived, number, picked } from '../graph/define.ts';
import { burstPulses } from './burst.ts';
import { pulseEnergy, repetitionRate } from './laser.ts';

export const energySource = choice({
  id: 'laser.energySource',
  name: 'source of the pulse energy',
  symbol: '\\text{energy source}',
  about: 'Which energy counts: that of one pulse as typed, or the average power over the repetition rate.',
  initial: 'typed',
  options: { typed: 'typed pulse energy', power: 'average power and repetition rate' },
});

export const typedPower = number({
  id: 'laser.typedPower',
  name: 'average power as read off',
  symbol: 'P_\\text{typed}',
  unit: 'W',
  about: 'Reading of the power meter: mean over time, at the place where the pulse energy counts.',
  initial: 4,
  range: { min: 1e-6, max: 1e4 },
  typical: [0.1, 100],
});

export const energyFromPower = derived({
  id: 'laser.energyFromPower',
  name: 'pulse energy from the average power',
  symbol: 'E_P',
  unit: 'J',
  display: 'uJ',
  about:
    'Mean energy of one pulse: average power over pulses per second, those of bursts counted one by one, where every pulse is let through.',
  from: { P: typedPower, f: repetitionRate, burst: burstPulses },
  compute: ({ P, f, burst }) => P / (f * burst),
  formula: 'P_\\text{typed}/(n_\\text{b} f_\\text{rep})',
  source: 'definition',
});

export const usedPulseEnergy = picked({
  id: 'laser.usedPulseEnergy',
  name: 'pulse energy in use',
  symbol: 'E',
  unit: 'J',
  display: 'uJ',
  about:
    'Energy of one pulse that everything follows from: where it is measured, before the losses that are named and before the stop.',
  by: energySource,
  cases: { typed: pulseEnergy, power: energyFromPower },
  formula: '\\begin{cases} E_\\text{typed} \\\\ E_P \\end{cases}',
});

export const averagePower = derived({
  id: 'laser.averagePower',
  name: 'average power',
  symbol: 'P',
  unit: 'W',
  display: 'auto:W',
  about:
    'Pulse energy times pulses per second, those of bursts counted one by one, mean over time, where the pulse energy is measured.',
  from: { E: usedPulseEnergy, f: repetitionRate, burst: burstPulses },
  compute: ({ E, f, burst }) => E * f * burst,
  formula: 'n_\\text{b}\\,E\\,f_\\text{rep}',
  source: 'definition',
});

export const opticsTransmission = number({
  id: 'losses.opticsTransmission',
  name: 'transmission of the optics',
  symbol: 'T_\\text{optics}',
  unit: '1',
  display: '%',
  about:
    'Part of the pulse energy that passes expander, mirrors and lens, from where it is measured to the workpiece; 100\u202f% where it is measured at the workpiece. The plate and the stop are counted apart.',
  initial: 1,
  range: { min: 0, above: true, max: 1 },
  typical: [0.5, 1],
});

export const plateTransmission = number({
  id: 'losses.plateTransmission',
  name: 'transmission of the plate',
  symbol: 'T_\\text{plate}',
  unit: '1',
  display: '%',
  about:
    'Part of the energy that passes the surfaces of the plate; it goes with the plate where that is taken out. 93\u202f% for two uncoated surfaces of fused silica.',
  initial: 1,
  range: { min: 0, above: true, max: 1 },
  typical: [0.8, 1],
});

export const energyAfter = derived({
  id: 'losses.energyAfter',
  name: 'pulse energy behind the losses',
  symbol: "E'",
  unit: 'J',
  display: 'uJ',
  about:
    'Energy of one pulse behind the losses of optics and plate and before the stop; all fluences on the workpiece follow from it.',
  from: { E: usedPulseEnergy, optics: opticsTransmission, plate: plateTransmission },
  compute: ({ E, optics, plate }) => E * optics * plate,
  formula: 'E\\,T_\\text{optics}\\,T_\\text{plate}',
  source: 'definition',
});
