import { choice, constant, derived, number, picked } from '../graph/define.ts';
import type { NumberInput } from '../graph/quantity.ts';
import { formatQuantity } from '../graph/units.ts';
import { expandBeam } from '../optics/expander.ts';
import { peakIrradiance, peakPower } from '../optics/pulse.ts';
import { Problem } from '../problem.ts';
import { pulseDuration, wavelength } from './laser.ts';
import { usedPulseEnergy } from './losses.ts';
import { usedBeamDiameter, usedBeamPropagationRatio } from './rawBeam.ts';
import { usedWaistDistance } from './waist.ts';

export const expanderKind = choice({
  id: 'expander.kind',
  name: 'description of the expander',
  symbol: '\\text{expander}',
  about:
    'Whether the expander is given by its magnification (flat wavefront at the plate) or by its two lenses and distances.',
  initial: 'magnification',
  options: { magnification: 'magnification', lenses: 'two lenses' },
});

export const magnification = number({
  id: 'expander.magnification',
  name: 'magnification',
  symbol: 'm',
  unit: '1',
  display: '1',
  about: 'Beam diameter at the plate over raw beam diameter.',
  initial: 2,
  range: { min: 0.05, max: 50 },
  typical: [0.5, 5],
});

export const firstFocalLength = number({
  id: 'expander.firstFocalLength',
  name: 'focal length of the first lens',
  symbol: 'f_1',
  unit: 'm',
  display: 'mm',
  about: 'First lens of the expander, met first by the light; negative for a diverging lens.',
  initial: -50e-3,
  range: { min: -2, max: 2, except: 0 },
});

export const secondFocalLength = number({
  id: 'expander.secondFocalLength',
  name: 'focal length of the second lens',
  symbol: 'f_2',
  unit: 'm',
  display: 'mm',
  about: 'Second lens of the expander.',
  initial: 100e-3,
  range: { min: 5e-3, max: 5 },
});

export const separation = number({
  id: 'expander.separation',
  name: 'distance between the lenses',
  symbol: 's',
  unit: 'm',
  display: 'mm',
  about: 'From the first lens of the expander to the second; f₁ + f₂ makes it afocal.',
  initial: 50e-3,
  range: { min: 1e-3, max: 10 },
});

export const plateDistance = number({
  id: 'expander.plateDistance',
  name: 'distance from expander to plate',
  symbol: 'L_\\text{plate}',
  unit: 'm',
  display: 'mm',
  about: 'From the second lens of the expander to the plate.',
  initial: 0.2,
  range: { min: 0, max: 20 },
});

export const lensBeam = derived({
  id: 'expander.lensBeam',
  name: 'beam behind the two lenses',
  symbol: '\\text{beam}_2',
  unit: 'none',
  about:
    'Diameter and wavefront at the plate, and the focus inside the expander where there is one, by ray matrices.',
  from: {
    waistDiameter: usedBeamDiameter,
    waistDistance: usedWaistDistance,
    ratio: usedBeamPropagationRatio,
    wavelength,
    f1: firstFocalLength,
    f2: secondFocalLength,
    s: separation,
    toPlate: plateDistance,
  },
  compute: ({ waistDiameter, waistDistance, ratio, wavelength, f1, f2, s, toPlate }) => {
    refuseZero(firstFocalLength, f1);
    refuseZero(secondFocalLength, f2);
    return expandBeam(
      { waistDiameter, waistPosition: -waistDistance, beamPropagationRatio: ratio, wavelength },
      {
        firstFocalLength: f1,
        secondFocalLength: f2,
        separation: s,
        distanceToFirst: 0,
        distanceToPlate: toPlate,
      },
    );
  },
  shownAs: ({ diameter, curvature }) =>
    `${formatQuantity(diameter, 'm', 'mm')} wide, curvature ${formatQuantity(curvature, '1/m', '1/m')}`,
  formula: 'q_2 = \\frac{A q_1 + B}{C q_1 + D}',
  source: 'kogelnik1966',
});

/** What is set is checked there; pinned and swept values are not. */
function refuseZero(input: NumberInput, focalLength: number): void {
  if (focalLength !== 0) return;
  throw new Problem(
    'impossible',
    `The ${input.name} of the expander is 0, which no lens has; type one above or below 0.`,
    { input: input.id, value: '0', allowed: 'above or below 0' },
  );
}

const simpleDiameter = derived({
  id: 'expander.magnifiedDiameter',
  name: 'magnified beam diameter',
  symbol: 'm\\,d_\\text{raw}',
  unit: 'm',
  display: 'mm',
  about: '1/e² diameter behind an expander of that magnification.',
  from: { m: magnification, d: usedBeamDiameter },
  compute: ({ m, d }) => m * d,
  formula: 'm\\,d_\\text{raw}',
  source: 'definition',
});

const lensDiameter = derived({
  id: 'expander.lensDiameter',
  name: 'beam diameter behind the two lenses',
  symbol: 'd_2',
  unit: 'm',
  display: 'mm',
  about: '1/e² diameter at the plate behind the two lenses.',
  from: { beam: lensBeam },
  compute: ({ beam }) => beam.diameter,
  formula: '2\\sqrt{-\\lambda M^2/(\\pi\\,\\mathrm{Im}\\,q_2^{-1})}',
  source: 'kogelnik1966',
});

export const plateBeamDiameter = picked({
  id: 'plate.beamDiameter',
  name: 'beam diameter at the plate',
  symbol: '2w',
  unit: 'm',
  display: 'mm',
  about: '1/e² diameter of the beam at the plate.',
  by: expanderKind,
  cases: { magnification: simpleDiameter, lenses: lensDiameter },
  formula: '\\begin{cases} m\\,d_\\text{raw} \\\\ d_2 \\end{cases}',
});

const flat = constant({
  id: 'expander.flatWavefront',
  name: 'flat wavefront',
  symbol: '0',
  unit: '1/m',
  about: 'Curvature of a flat wavefront.',
  value: 0,
  source: 'definition',
});

const lensCurvature = derived({
  id: 'expander.lensCurvature',
  name: 'wavefront curvature behind the two lenses',
  symbol: '1/R_2',
  unit: '1/m',
  about: 'One over the wavefront radius at the plate behind the two lenses, diverging positive.',
  from: { beam: lensBeam },
  compute: ({ beam }) => beam.curvature,
  formula: '\\mathrm{Re}\\,q_2^{-1}',
  source: 'kogelnik1966',
});

export const wavefrontCurvature = picked({
  id: 'plate.wavefrontCurvature',
  name: 'wavefront curvature at the plate',
  symbol: '1/R_b',
  unit: '1/m',
  about:
    'One over the radius of the wavefront at the plate, positive when the beam diverges; moves the focus along z.',
  by: expanderKind,
  cases: { magnification: flat, lenses: lensCurvature },
  formula: '\\begin{cases} 0 \\\\ \\mathrm{Re}\\,q_2^{-1} \\end{cases}',
});

export const plateIrradiance = derived({
  id: 'plate.peakIrradiance',
  name: 'peak irradiance on the plate',
  symbol: 'I_\\text{plate}',
  unit: 'W/m^2',
  display: 'W/cm^2',
  digits: 2,
  about:
    'Peak in time and space of the irradiance on the plate, Gaussian beam and pulse, per pulse; no losses before it are counted.',
  from: { d: plateBeamDiameter, E: usedPulseEnergy, tau: pulseDuration },
  compute: ({ d, E, tau }) => peakIrradiance(peakPower(E, tau), d / 2),
  formula: '\\frac{2E}{\\pi w^2}\\cdot\\frac{0.9394}{\\tau}',
  source: 'integration',
});
