import { number } from '../graph/define.ts';

export const targetRate = number({
  id: 'scaleUp.target',
  name: 'area per hour wanted',
  symbol: '\\dot A_\\text{wish}',
  unit: 'm^2/s',
  display: 'm^2/h',
  about: 'Area that is to be finished per hour of writing, all moves between fields counted.',
  initial: 0.1 / 3600,
  range: { min: 1e-12, max: 1 },
  typical: [0.01 / 3600, 1 / 3600],
});

export const largeMaxPower = number({
  id: 'scaleUp.maxPower',
  name: 'average power of the larger laser',
  symbol: 'P_\\text{L}',
  unit: 'W',
  about: 'Highest average power of the laser that the work is scaled up to, where the energy is measured.',
  initial: 100,
  range: { min: 1e-6, max: 1e5 },
  typical: [10, 1000],
});

export const largeMaxRepetitionRate = number({
  id: 'scaleUp.maxRepetitionRate',
  name: 'repetition rate of the larger laser',
  symbol: 'f_\\text{L}',
  unit: 'Hz',
  display: 'kHz',
  about: 'Highest repetition rate of that laser; with bursts, of its bursts.',
  initial: 2e6,
  range: { min: 1, max: 1e9 },
  typical: [200e3, 20e6],
});

export const largeMaxPulseEnergy = number({
  id: 'scaleUp.maxPulseEnergy',
  name: 'pulse energy of the larger laser',
  symbol: 'E_\\text{L}',
  unit: 'J',
  display: 'uJ',
  about: 'Highest energy of one pulse of that laser, which all spots share.',
  initial: 500e-6,
  range: { min: 1e-9, max: 1 },
  typical: [50e-6, 5e-3],
});

export const largeMaxSpeed = number({
  id: 'scaleUp.maxSpeed',
  name: 'speed of the larger scanner',
  symbol: 'v_\\text{L}',
  unit: 'm/s',
  about: 'Fastest that the scanner of the scaled-up work moves the spots over the workpiece.',
  initial: 20,
  range: { min: 0, above: true, max: 10e3 },
  typical: [2, 200],
});

export const largeAcceleration = number({
  id: 'scaleUp.acceleration',
  name: 'acceleration of the larger scanner',
  symbol: 'a_\\text{L}',
  unit: 'm/s^2',
  about: 'How fast that scanner changes the speed of the spots on the workpiece at the ends of a line.',
  initial: 50e3,
  range: { min: 1e-3, max: 1e9 },
  typical: [5e3, 500e3],
});

export const spots = number({
  id: 'scaleUp.spots',
  name: 'spots side by side',
  symbol: 'N_\\text{s}',
  unit: '1',
  about:
    'How many equal spots a splitter makes of the beam, side by side across the lines; each writes lines of its own. A whole number, else rounded.',
  initial: 4,
  range: { min: 1, max: 10e3 },
  typical: [1, 100],
  whole: true,
});

export const splitterEfficiency = number({
  id: 'scaleUp.splitterEfficiency',
  name: 'efficiency of the splitter',
  symbol: '\\eta_\\text{s}',
  unit: '1',
  display: '%',
  about:
    'Part of the energy that goes into the wanted spots, all of them together; counts with two spots or more.',
  initial: 0.8,
  range: { min: 0.01, max: 1 },
  typical: [0.5, 0.95],
});

export const spotDistance = number({
  id: 'scaleUp.spotDistance',
  name: 'distance from spot to spot',
  symbol: 's',
  unit: 'm',
  display: 'um',
  about: 'Distance between the centres of neighbouring spots on the workpiece.',
  initial: 200e-6,
  range: { min: 1e-6, max: 0.1 },
  typical: [50e-6, 2e-3],
});

export const moveTime = number({
  id: 'scaleUp.moveTime',
  name: 'time from field to field',
  symbol: 't_\\text{move}',
  unit: 's',
  about: 'Time to move the workpiece to the next field until it stands still, with the laser off.',
  initial: 0.3,
  range: { min: 0, max: 3600 },
  typical: [0, 2],
});

export const fieldOverlap = number({
  id: 'scaleUp.fieldOverlap',
  name: 'overlap of neighbouring fields',
  symbol: 'o',
  unit: 'm',
  display: 'um',
  about: 'Width of the stripe that two neighbouring fields both cover, so that no gap stays at the seam.',
  initial: 20e-6,
  range: { min: 0, max: 0.1 },
  typical: [0, 200e-6],
});

export const damageThreshold = number({
  id: 'plate.damageThreshold',
  name: 'damage threshold of the plate',
  symbol: 'F_\\text{d}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  about:
    'Fluence of one pulse that damages the plate or its coating after as many pulses as it will see, at this wavelength and pulse duration: as typed from the maker’s test by ISO 21254 (memory).',
  initial: 5000,
  range: { min: 0, above: true, max: 1e7 },
  typical: [500, 50e3],
});

export const damageMargin = number({
  id: 'plate.damageMargin',
  name: 'margin to the damage threshold',
  symbol: 'k_\\text{d}',
  unit: '1',
  about: 'How many times the fluence on the plate must stay below the damage threshold.',
  initial: 3,
  range: { min: 1, max: 1000 },
  typical: [1, 10],
});

export const opticsAbsorption = number({
  id: 'scaleUp.opticsAbsorption',
  name: 'part absorbed in one optic',
  symbol: '\\alpha_\\text{o}',
  unit: '1',
  display: '%',
  about:
    'Part of the average power that one optic, plate, lens or mirror, turns into heat; some 0.001\u202f% for clean coated silica, far more once it is dirty (common practice).',
  initial: 1e-4,
  range: { min: 0, max: 1 },
  typical: [0, 1e-3],
});
