import { derived } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import type { ChosenField } from '../process/chosenField.ts';
import { bestShaped, bestUnshaped } from './comparison.ts';
import { focalLength } from './lens.ts';

/** Numbers of a best setting: id, name, unit, unit shown, digits, symbol and meaning. */
const numbers = {
  defocus: [
    'defocus',
    'best plane in Rayleigh lengths',
    '1',
    '1',
    '\\zeta',
    'Distance behind the focus in Rayleigh lengths of that focus',
  ],
  diameter: [
    'diameter',
    'best diameter of the spot',
    'm',
    'um',
    'D',
    'Diameter of the spot as scanned: at 1/e² of the Gaussian of the same effective area',
  ],
  peakFluence: [
    'peakFluence',
    'best peak fluence',
    'J/m^2',
    'J/cm^2',
    'F_\\text{peak}',
    'Peak fluence of one pulse on the workpiece, incident',
  ],
  pulseEnergy: [
    'pulseEnergy',
    'best pulse energy',
    'J',
    'uJ',
    'E',
    'Energy of one pulse where it is measured',
  ],
  pulseSpacing: [
    'pulseSpacing',
    'best pulse spacing',
    'm',
    'um',
    'p',
    'Distance of neighbouring pulses along a line',
  ],
  lineSpacing: ['lineSpacing', 'best line spacing', 'm', 'um', '\\Delta y', 'Distance of neighbouring lines'],
  speed: ['speed', 'best scan speed', 'm/s', 'm/s', 'v', 'Speed of the spot along a line'],
  repetitionRate: [
    'repetitionRate',
    'best repetition rate',
    'Hz',
    'kHz',
    'f_\\text{rep}',
    'Pulses per second',
  ],
  power: [
    'power',
    'average power of the best setting',
    'W',
    'auto:W',
    'P',
    'Pulse energy times repetition rate',
  ],
  rate: [
    'areaRate',
    'best area processing rate',
    'm^2/s',
    'mm^2/s',
    '\\dot A',
    'Area of the field over the time for it',
  ],
  fieldTime: [
    'fieldTime',
    'shortest time for the field',
    's',
    'auto:s',
    't_\\text{field}',
    'Time for the whole field',
  ],
  inside: [
    'inside',
    'part of the field inside the window, best setting',
    '1',
    '%',
    'a_\\text{in}',
    'Part of the field inside the window for ripples',
  ],
  modulation: [
    'modulation',
    'modulation of the accumulated fluence, best setting',
    '1',
    '%',
    'm',
    'Highest less lowest accumulated fluence across the lines over their sum',
  ],
  energyPerArea: [
    'energyPerArea',
    'laser energy per area, best setting',
    'J/m^2',
    'J/cm^2',
    'E/A',
    'Energy of the laser, where it is measured, per area of the field: losses and stop count',
  ],
} as const;

type NumberKey = keyof typeof numbers;

/** One number of the best setting of one of the beams. */
function partOf(key: NumberKey, before: '' | 'unshaped.', best: Derived<ChosenField>) {
  const [id, name, unit, display, symbol, about] = numbers[key];
  const [words, mark] =
    before === '' ? ['with the plate', '^*'] : ['with the plate taken out', '_\\text{u}^*'];
  return derived({
    id: `${before}comparison.${id}`,
    name: `${name}, ${words}`,
    symbol: `{${symbol}}${mark}`,
    unit,
    display,
    digits: 3,
    about: `${about}, of the beam ${words} at its own best.`,
    from: { best },
    compute: ({ best }) => best[key],
    formula: '\\text{best}',
    source: 'search',
  });
}

export const bestDefocus = partOf('defocus', '', bestShaped);
export const bestDiameter = partOf('diameter', '', bestShaped);
export const bestPeakFluence = partOf('peakFluence', '', bestShaped);
export const bestPulseEnergy = partOf('pulseEnergy', '', bestShaped);
export const bestPulseSpacing = partOf('pulseSpacing', '', bestShaped);
export const bestLineSpacing = partOf('lineSpacing', '', bestShaped);
export const bestSpeed = partOf('speed', '', bestShaped);
export const bestRepetitionRate = partOf('repetitionRate', '', bestShaped);
export const bestPower = partOf('power', '', bestShaped);
export const bestAreaRate = partOf('rate', '', bestShaped);
export const bestFieldTime = partOf('fieldTime', '', bestShaped);
export const bestInside = partOf('inside', '', bestShaped);
export const bestModulation = partOf('modulation', '', bestShaped);
export const bestEnergyPerArea = partOf('energyPerArea', '', bestShaped);
export const unshapedBestDefocus = partOf('defocus', 'unshaped.', bestUnshaped);
export const unshapedBestDiameter = partOf('diameter', 'unshaped.', bestUnshaped);
export const unshapedBestPeakFluence = partOf('peakFluence', 'unshaped.', bestUnshaped);
export const unshapedBestPulseEnergy = partOf('pulseEnergy', 'unshaped.', bestUnshaped);
export const unshapedBestPulseSpacing = partOf('pulseSpacing', 'unshaped.', bestUnshaped);
export const unshapedBestLineSpacing = partOf('lineSpacing', 'unshaped.', bestUnshaped);
export const unshapedBestSpeed = partOf('speed', 'unshaped.', bestUnshaped);
export const unshapedBestRepetitionRate = partOf('repetitionRate', 'unshaped.', bestUnshaped);
export const unshapedBestPower = partOf('power', 'unshaped.', bestUnshaped);
export const unshapedBestAreaRate = partOf('rate', 'unshaped.', bestUnshaped);
export const unshapedBestFieldTime = partOf('fieldTime', 'unshaped.', bestUnshaped);
export const unshapedBestInside = partOf('inside', 'unshaped.', bestUnshaped);
export const unshapedBestModulation = partOf('modulation', 'unshaped.', bestUnshaped);
export const unshapedBestEnergyPerArea = partOf('energyPerArea', 'unshaped.', bestUnshaped);

/** The lens that makes the best spot of one of the beams, the plate and the beam on it left as they are. */
function lensOf(before: '' | 'unshaped.', best: Derived<ChosenField>) {
  const words = before === '' ? 'with the plate' : 'with the plate taken out';
  return derived({
    id: `${before}comparison.focalLength`,
    name: `focal length for the best spot, ${words}`,
    symbol: before === '' ? 'f^*' : 'f_\\text{u}^*',
    unit: 'm',
    display: 'mm',
    digits: 3,
    about: `Focal length of a lens that makes the spot as large as is best, ${words}, the beam on the plate left as it is; making the beam narrower behind the plate does the same.`,
    from: { best, focalLength },
    compute: ({ best, focalLength }) => best.scale * focalLength,
    formula: 'f\\,w_0^*/w_0',
    source: 'scaling',
  });
}

export const bestFocalLength = lensOf('', bestShaped);
export const unshapedBestFocalLength = lensOf('unshaped.', bestUnshaped);
