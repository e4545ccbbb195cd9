import { choice, constant, derived, number, picked } from '../graph/define.ts';
import { formatQuantity } from '../graph/units.ts';
import { glassById, refractiveIndex } from '../materials/glasses.ts';
import { energyThroughStop } from '../optics/farTail.ts';
import { phaseOfStep, stepHeightForPhase } from '../optics/step.ts';
import type { Zone } from '../optics/zones.ts';
import { Problem } from '../problem.ts';
import { plateBeamDiameter } from './expander.ts';
import { wavelength } from './laser.ts';
import { sellmeierTable, zonesText } from './shownParts.ts';

export const plateSource = choice({
  id: 'plate.source',
  name: 'what fixes the step height',
  symbol: '\\text{plate}',
  about:
    'A designed plate has the height that gives the wanted phase at the laser’s wavelength; a made plate has the height it was made with.',
  initial: 'designed',
  options: { designed: 'designed for a phase', made: 'made with a height' },
});

export const stepDiameter = number({
  id: 'plate.stepDiameter',
  name: 'step diameter',
  symbol: '2a',
  unit: 'm',
  display: 'mm',
  about: 'Diameter of the round step on the plate.',
  initial: 10e-3,
  range: { min: 0.1e-3, max: 100e-3 },
  typical: [2e-3, 20e-3],
});

export const stop = choice({
  id: 'plate.stop',
  name: 'stop',
  symbol: '\\text{stop}',
  about:
    'Whether a round stop (plate edge, scanner pupil or lens mount, the smallest) cuts the beam, taken in the plane of the plate.',
  initial: 'round',
  options: { round: 'round stop', open: 'no stop' },
});

export const apertureDiameter = number({
  id: 'plate.apertureDiameter',
  name: 'stop diameter',
  symbol: '2R',
  unit: 'm',
  display: 'mm',
  about: 'Clear diameter of the smallest stop, taken in the plane of the plate.',
  initial: 14e-3,
  range: { min: 0.1e-3, max: 200e-3 },
  typical: [5e-3, 30e-3],
});

export const glass = choice({
  id: 'plate.glass',
  name: 'glass of the plate',
  symbol: '\\text{glass}',
  about: 'Material that the step is made in.',
  initial: 'fusedSilica',
  options: {
    fusedSilica: 'fused silica',
    bk7: 'N-BK7',
    sapphire: 'sapphire (ordinary ray)',
    calciumFluoride: 'calcium fluoride',
    typed: 'typed refractive index',
  },
});

export const typedIndex = number({
  id: 'plate.typedIndex',
  name: 'typed refractive index',
  symbol: 'n_\\text{typed}',
  unit: '1',
  digits: 6,
  about: 'Refractive index of the plate in air at the laser’s wavelength, where the glass is typed.',
  initial: 1.45,
  range: { min: 1, above: true, max: 4 },
});

export const designPhase = number({
  id: 'plate.designPhase',
  name: 'designed phase of the step',
  symbol: '\\varphi_\\text{design}',
  unit: 'rad',
  display: 'waves',
  about:
    'Delay of the step that a designed plate is made for, at the laser’s wavelength; half a wave is π rad.',
  initial: Math.PI,
  range: { min: 0, above: true, max: 6 * Math.PI },
  typical: [0.2 * Math.PI, 2 * Math.PI],
});

export const madeHeight = number({
  id: 'plate.madeHeight',
  name: 'made step height',
  symbol: 'h_\\text{made}',
  unit: 'm',
  display: 'nm',
  about: 'Height of the step as made and measured.',
  initial: 1.144e-6,
  range: { min: 1e-9, max: 50e-6 },
  typical: [0.3e-6, 2.5e-6],
});

export const raised = choice({
  id: 'plate.raised',
  name: 'raised part',
  symbol: '\\text{raised}',
  about:
    'Whether the centre or the part around it is the thicker one; the other way round swaps the two sides of the focus.',
  initial: 'centre',
  options: { centre: 'centre raised', ring: 'ring raised' },
});

/** Sellmeier coefficients hold for wavelengths in micrometres. */
export const micrometre = constant({
  id: 'plate.micrometre',
  name: 'micrometre',
  symbol: '\\mathrm{\\mu m}',
  unit: 'm',
  about: 'Length that dispersion formulas of glasses and tables of optical constants are written in.',
  value: 1e-6,
  source: 'definition',
});

export const plateIndex = derived({
  id: 'plate.refractiveIndex',
  name: 'refractive index of the plate',
  symbol: 'n',
  unit: '1',
  digits: 6,
  about: 'Refractive index relative to air at the laser’s wavelength.',
  from: { glass, wavelength, typedIndex, micrometre },
  compute: ({ glass, wavelength, typedIndex, micrometre }) =>
    glass === 'typed' ? typedIndex : refractiveIndex(glass, (wavelength / micrometre) * 1e-6),
  formula: '\\sqrt{1+\\sum_i B_i\\lambda^2/(\\lambda^2-C_i)}',
  source: 'malitson1965',
  sourceFor: ({ glass }) => (glass === 'typed' ? undefined : glassById(glass).source),
  enteredFor: ({ glass }) =>
    glass === 'typed'
      ? { keys: ['glass', 'typedIndex'], formula: typedIndex.symbol }
      : { keys: ['glass', 'wavelength'], table: sellmeierTable(glass) },
});

const designedHeight = derived({
  id: 'plate.designedHeight',
  name: 'designed step height',
  symbol: 'h_\\text{design}',
  unit: 'm',
  display: 'nm',
  about: 'Height of the step that gives the designed phase at the laser’s wavelength.',
  from: { phase: designPhase, wavelength, n: plateIndex },
  compute: ({ phase, wavelength, n }) => stepHeightForPhase(phase, wavelength, n),
  formula: '\\frac{\\varphi_\\text{design}\\,\\lambda}{2\\pi\\,(n-1)}',
  source: 'definition',
});

export const stepHeight = picked({
  id: 'plate.stepHeight',
  name: 'step height',
  symbol: 'h',
  unit: 'm',
  display: 'nm',
  about: 'Height of the step on the plate.',
  by: plateSource,
  cases: { designed: designedHeight, made: madeHeight },
  formula: '\\begin{cases} h_\\text{design} \\\\ h_\\text{made} \\end{cases}',
});

export const stepPhase = derived({
  id: 'plate.stepPhase',
  name: 'phase of the step',
  symbol: '\\varphi',
  unit: 'rad',
  display: 'waves',
  about: 'Delay of the raised part at the laser’s wavelength; always from the height.',
  from: { h: stepHeight, wavelength, n: plateIndex },
  compute: ({ h, wavelength, n }) => phaseOfStep(h, wavelength, n),
  formula: '\\frac{2\\pi\\,(n-1)\\,h}{\\lambda}',
  source: 'definition',
});

export const halfWaveHeight = derived({
  id: 'plate.halfWaveHeight',
  name: 'height of half a wave',
  symbol: 'h_{\\lambda/2}',
  unit: 'm',
  display: 'nm',
  about: 'Height of a step that delays by half a wave at the laser’s wavelength in this material.',
  from: { wavelength, n: plateIndex },
  compute: ({ wavelength, n }) => stepHeightForPhase(Math.PI, wavelength, n),
  formula: '\\frac{\\lambda}{2\\,(n-1)}',
  source: 'definition',
});

/** An open plate ends this many step radii out: beyond any Gaussian of the allowed sizes. */
const openReach = 1e4;

/** The problem of a step that is not smaller than the stop; diameters in metres. */
export function stepOutsideStop(step: number, aperture: number): Problem {
  return new Problem(
    'impossible',
    `The step (${formatQuantity(step, 'm', 'mm')}) lies outside the stop (${formatQuantity(aperture, 'm', 'mm')}): no light passes beside the step. Choose a smaller step or a larger stop.`,
    { input: 'plate.stepDiameter' },
  );
}

export const zones = derived({
  id: 'plate.zones',
  name: 'zones of the plate',
  symbol: '\\{r_j,\\varphi_j\\}',
  unit: 'none',
  about: 'Outer radius and delay of each zone, from the axis outward; the last ends at the stop.',
  from: { stepDiameter, stop, apertureDiameter, phase: stepPhase, raised },
  compute: ({ stepDiameter, stop, apertureDiameter, phase, raised }): readonly Zone[] => {
    const step = stepDiameter / 2;
    const edge = stop === 'open' ? openReach * step : apertureDiameter / 2;
    if (edge <= step) {
      throw stepOutsideStop(stepDiameter, apertureDiameter);
    }
    return [
      { outer: step, phase: raised === 'centre' ? phase : -phase },
      { outer: edge, phase: 0 },
    ];
  },
  formula: '(a,\\varphi),\\ (R,0)',
  source: 'definition',
  shownAs: (zones) =>
    zones.at(-1)!.outer < openReach * zones[0]!.outer
      ? zonesText(zones)
      : `${zonesText(zones.slice(0, -1))}, beyond it: ${formatQuantity(0, 'rad', 'waves')}`,
  enteredFor: ({ stop }) =>
    stop === 'open'
      ? { keys: ['stepDiameter', 'stop', 'phase', 'raised'], formula: '(a,\\varphi),\\ (\\infty,0)' }
      : {},
});

export const transmission = derived({
  id: 'plate.transmission',
  name: 'energy through the stop',
  symbol: 'T',
  unit: '1',
  display: '%',
  about: 'Part of the energy incident on the plate that passes the stop; losses at surfaces are not counted.',
  from: { stop, apertureDiameter, beam: plateBeamDiameter },
  compute: ({ stop, apertureDiameter, beam }) =>
    stop === 'open' ? 1 : energyThroughStop(apertureDiameter / beam),
  formula: '1-e^{-2(R/w)^2}',
  source: 'integration',
  enteredFor: ({ stop }) => (stop === 'open' ? { keys: ['stop'], formula: '1' } : {}),
});
