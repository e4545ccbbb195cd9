import { constant, derived } from '../graph/define.ts';
import { formatQuantity } from '../graph/units.ts';
import { bIntegral } from '../optics/bIntegral.ts';
import { peakPower } from '../optics/pulse.ts';
import { type XRayNearness, xRayNearness } from '../process/xRays.ts';
import { plateIrradiance as irradianceOnPlate } from './expander.ts';
import { pulseDuration, wavelength } from './laser.ts';
import { peakIrradianceOnWorkpiece, unshapedPeakIrradiance } from './limits.ts';
import { nonlinearIndex, plateThickness } from './nonlinearIndex.ts';
import { transmission } from './plate.ts';
import { peakFluence } from './spot.ts';
import { fluenceWithoutPlate, unshapedPeakFluence } from './unshaped.ts';

export const xRayIrradiance = constant({
  id: 'safety.xRayIrradiance',
  name: 'lowest irradiance of a publication on X-rays',
  symbol: 'I_\\text{X}',
  unit: 'W/m^2',
  display: 'W/cm^2',
  digits: 2,
  about:
    'Lowest peak irradiance, 8 × 10¹² W/cm², of a published study of X-rays from ultrashort pulses on metal; no limit below which none come.',
  value: 8e16,
  source: 'schille2021',
});

export const peakIrradiance = derived({
  id: 'safety.peakIrradiance',
  name: 'peak irradiance on the workpiece, for safety',
  symbol: 'I_\\text{workpiece}',
  unit: 'W/m^2',
  display: 'W/cm^2',
  digits: 2,
  about:
    'Peak in time and space of the irradiance on the workpiece with the plate, Gaussian pulse, incident; says how near it lies to published X-rays.',
  from: { irradiance: peakIrradianceOnWorkpiece, published: xRayIrradiance },
  compute: ({ irradiance }) => irradiance,
  enteredFor: () => ({ keys: ['irradiance'] }),
  valid: ({ irradiance, published }) => xRayNote(irradiance, published),
  formula: 'I_\\text{peak}',
  source: 'definition',
});

export const unshapedIrradiance = derived({
  id: 'unshaped.safety.peakIrradiance',
  name: 'peak irradiance on the workpiece without the step, for safety',
  symbol: 'I_\\text{u,workpiece}',
  unit: 'W/m^2',
  display: 'W/cm^2',
  digits: 2,
  about:
    'Peak in time and space of the irradiance on the workpiece with the plate taken out at unchanged energy, Gaussian pulse, incident; says how near it lies to published X-rays.',
  from: { irradiance: unshapedPeakIrradiance, published: xRayIrradiance },
  compute: ({ irradiance }) => irradiance,
  enteredFor: () => ({ keys: ['irradiance'] }),
  valid: ({ irradiance, published }) => xRayNote(irradiance, published),
  formula: 'I_\\text{u,peak}',
  source: 'definition',
});

export const plateOutFactor = derived({
  id: 'safety.plateOutFactor',
  name: 'rise of the peak with the plate taken out',
  symbol: 'F_\\text{u,peak}/F_\\text{peak}',
  unit: '1',
  digits: 3,
  about:
    'Peak fluence, and with it peak irradiance, on the workpiece without the plate over that with it, at unchanged energy and in the same plane.',
  from: { plain: unshapedPeakFluence, shaped: peakFluence },
  compute: ({ plain, shaped }) => plain / shaped,
  formula: '\\frac{F_\\text{u,peak}}{F_\\text{peak}}',
  source: 'definition',
});

export const plateIrradiance = derived({
  id: 'safety.plateIrradiance',
  name: 'peak irradiance on the plate, for safety',
  symbol: 'I_\\text{on plate}',
  unit: 'W/m^2',
  display: 'W/cm^2',
  digits: 2,
  about:
    'Peak in time and space of the irradiance on the plate, Gaussian beam and pulse, no losses before it; to be held against the damage threshold that its maker states (ISO 21254).',
  from: { irradiance: irradianceOnPlate },
  compute: ({ irradiance }) => irradiance,
  formula: 'I_\\text{plate}',
  source: 'definition',
});

export const airIrradiance = derived({
  id: 'safety.airIrradiance',
  name: 'highest irradiance in air behind the lens',
  symbol: 'I_\\text{air}',
  unit: 'W/m^2',
  display: 'W/cm^2',
  digits: 2,
  about:
    'Peak in time and space of the irradiance in the focus without workpiece and plate, for M² = 1, Gaussian pulse, linear optics: no plate and no plane near the focus gives more. Air breaks down near 1e13 to 1e14 W/cm² (memory). The focus inside an expander is counted apart.',
  from: { fluence: fluenceWithoutPlate, transmission, tau: pulseDuration },
  // On the axis |U| = 1 − e^{−R²/w²}, and T = 1 − e^{−2R²/w²}.
  compute: ({ fluence, transmission, tau }) =>
    peakPower(fluence * (1 - Math.sqrt(1 - transmission)) ** 2, tau),
  formula: '0.9394\\,\\frac{F_\\text{u,0}}{\\tau}\\left(1-\\sqrt{1-T}\\right)^2',
  source: 'integration',
});

export const plateBIntegral = derived({
  id: 'safety.bIntegral',
  name: 'B-integral in the plate',
  symbol: 'B',
  unit: 'rad',
  digits: 2,
  about:
    'Nonlinear phase on the axis at the peak of the pulse from one passage through the plate, step left out; no losses before it.',
  from: { irradiance: irradianceOnPlate, L: plateThickness, wavelength, n2: nonlinearIndex },
  compute: ({ irradiance, L, wavelength, n2 }) => bIntegral(irradiance, L, wavelength, n2),
  valid: ({ irradiance, L, wavelength, n2 }) =>
    bIntegral(irradiance, L, wavelength, n2) < 1
      ? undefined
      : 'From about 1 rad on the pulse changes its shape and the beam its focus (common practice): take a thinner plate, a wider beam or less energy.',
  formula: '\\frac{2\\pi}{\\lambda}n_2I_\\text{plate}L',
  source: 'integration',
});

export const xRayRatio = derived({
  id: 'safety.xRayRatio',
  name: 'irradiance against published X-rays',
  symbol: 'I_\\text{peak}/I_\\text{X}',
  unit: '1',
  digits: 2,
  about:
    'Peak irradiance on the workpiece, with the plate or without it, whichever is more, over the lowest of a published study of X-rays. From a hundredth on they are spoken of; no value is an all-clear.',
  from: { shaped: peakIrradianceOnWorkpiece, plain: unshapedPeakIrradiance, published: xRayIrradiance },
  compute: ({ shaped, plain, published }) => Math.max(shaped, plain) / published,
  valid: ({ shaped, plain, published }) => xRayNote(Math.max(shaped, plain), published),
  formula: '\\max(I_\\text{peak}, I_\\text{u,peak})/I_\\text{X}',
  source: 'definition',
});

const xRayTexts: Readonly<Record<XRayNearness, string>> = {
  observed:
    'lies at or above it: speak with radiation protection about shielding and dose before the first pulse.',
  close:
    'lies just below it, by less than a factor of two: bursts, high mean power, hot spots and a better focus bring X-rays there. Speak with radiation protection about shielding and dose before the first pulse.',
  near: 'lies within a factor of a hundred below it: bursts, high mean power, hot spots and a better focus bring X-rays all the same. Speak with radiation protection before the first pulse.',
  below: 'lies further than a factor of a hundred below it, which is no all-clear.',
};

/** What an irradiance on the workpiece, W/m², says of X-rays; always something. */
export function xRayNote(irradiance: number, published: number): string {
  const show = (value: number) => formatQuantity(value, 'W/m^2', 'W/cm^2', 2);
  return `X-rays from ultrashort pulses on metal were studied from ${show(published)} on; ${show(irradiance)} ${xRayTexts[xRayNearness(irradiance / published)]}`;
}
