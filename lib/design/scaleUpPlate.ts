import { derived } from '../graph/define.ts';
import { bIntegral } from '../optics/bIntegral.ts';
import { peakIrradiance, peakPower } from '../optics/pulse.ts';
import { spotsOfEnergy } from '../process/scaleUp.ts';
import { plateBeamDiameter } from './expander.ts';
import { pulseDuration, wavelength } from './laser.ts';
import { nonlinearIndex, plateThickness } from './nonlinearIndex.ts';
import { scaledPower } from './scaleUp.ts';
import { damageMargin, damageThreshold, opticsAbsorption, splitterEfficiency } from './scaleUpInputs.ts';
import { recipe } from './scaleUpRecipe.ts';
import { shotEnergy } from './scaleUpWork.ts';

export const plateFluence = derived({
  id: 'plate.fluence',
  name: 'peak fluence on the plate, all spots',
  symbol: 'F_\\text{plate}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 3,
  about:
    'Fluence of one pulse on the axis of the Gaussian beam where it meets the plate, with the energy that all spots share: the splitter stands behind the plate or beside it, no losses before.',
  from: { d: plateBeamDiameter, E: shotEnergy },
  compute: ({ d, E }) => (2 * E) / (Math.PI * (d / 2) ** 2),
  formula: '\\frac{2E_\\text{shot}}{\\pi w^2}',
  source: 'integration',
});

export const plateLoad = derived({
  id: 'plate.damageShare',
  name: 'fluence on the plate over what it may bear',
  symbol: 'k_\\text{d}F_\\text{plate}/F_\\text{d}',
  unit: '1',
  digits: 3,
  about:
    'Peak fluence on the plate times the margin over its damage threshold; above 1 the margin is not kept.',
  from: { fluence: plateFluence, margin: damageMargin, threshold: damageThreshold },
  compute: ({ fluence, margin, threshold }) => (margin * fluence) / threshold,
  valid: ({ fluence, margin, threshold }) =>
    fluence > threshold
      ? 'The fluence lies above the damage threshold itself.'
      : margin * fluence > threshold
        ? 'The margin to the damage threshold is not kept.'
        : undefined,
  formula: 'k_\\text{d}F_\\text{plate}/F_\\text{d}',
  source: 'definition',
});

export const plateKeeps = derived({
  id: 'plate.keepsMargin',
  name: 'whether the plate keeps its margin',
  symbol: 'k_\\text{d}F_\\text{plate}\\le F_\\text{d}',
  unit: 'none',
  about: 'True where the peak fluence on the plate stays below its damage threshold by the margin.',
  from: { share: plateLoad },
  compute: ({ share }): boolean => share <= 1,
  shownAs: (keeps) => (keeps ? 'yes' : 'no'),
  formula: 'k_\\text{d}F_\\text{plate}\\le F_\\text{d}',
  source: 'definition',
});

export const spotsOfPlate = derived({
  id: 'plate.mostSpots',
  name: 'most spots that the plate bears',
  symbol: 'N_\\text{plate}',
  unit: '1',
  about:
    'As many spots as can share a pulse that the plate bears with its margin; 0 where not even one can be written.',
  from: {
    d: plateBeamDiameter,
    margin: damageMargin,
    threshold: damageThreshold,
    recipe,
    efficiency: splitterEfficiency,
  },
  compute: ({ d, margin, threshold, recipe, efficiency }) =>
    spotsOfEnergy((Math.PI * (d / 2) ** 2 * threshold) / (2 * margin), recipe.energy, efficiency),
  formula:
    '\\left\\lfloor\\frac{\\eta_\\text{s}}{E}\\,\\frac{\\pi w^2F_\\text{d}}{2k_\\text{d}}\\right\\rfloor',
  source: 'definition',
});

export const scaledBIntegral = derived({
  id: 'scaleUp.bIntegral',
  name: 'B-integral in the plate, all spots',
  symbol: 'B_\\text{L}',
  unit: 'rad',
  digits: 2,
  about:
    'Nonlinear phase on the axis at the peak of the pulse that all spots share, from one passage through the plate, step left out; no losses before it.',
  from: {
    d: plateBeamDiameter,
    E: shotEnergy,
    tau: pulseDuration,
    L: plateThickness,
    wavelength,
    n2: nonlinearIndex,
  },
  compute: ({ d, E, tau, L, wavelength, n2 }) =>
    bIntegral(peakIrradiance(peakPower(E, tau), d / 2), L, wavelength, n2),
  formula: '\\frac{2\\pi}{\\lambda}n_2\\frac{2E_\\text{shot}}{\\pi w^2}\\frac{0.9394}{\\tau}L',
  source: 'integration',
});

export const absorbedPower = derived({
  id: 'scaleUp.absorbedPower',
  name: 'heat in one optic',
  symbol: 'P_\\text{optic}',
  unit: 'W',
  display: 'auto:W',
  digits: 3,
  about: 'Average power that one plate, lens or mirror turns into heat while the larger laser writes.',
  from: { power: scaledPower, part: opticsAbsorption },
  compute: ({ power, part }) => part * power,
  formula: '\\alpha_\\text{o}P_\\text{used}',
  source: 'definition',
});
