import { derived } from '../graph/define.ts';
import {
  axisDiscs,
  axisMap,
  distanceScale,
  focusAgainstRatio,
  focusDiscs,
  shownPlaces,
  spaced,
  spreadInFocus,
} from '../optics/focusMaps.ts';
import { amplitudeParts } from '../optics/matching.ts';
import { wavefrontCurvature } from './expander.ts';
import { wavelength } from './laser.ts';
import { focalLength, plateDistance } from './lens.ts';
import { stepRatio } from './match.ts';
import { stepDiameter, stepPhase, zones } from './plate.ts';

/** Step ratios that the maps show. */
export const shownRatios: readonly [number, number] = [0.5, 1.6];
/** Distances that the axis map shows, ζ·κ²: seven Rayleigh lengths at κ = 1 either way. */
export const shownDistances: readonly [number, number] = [-7, 7];
/** Radii that the ratio map shows, v = 2κϱ: 2.5 focus radii at κ = 1. */
export const shownRadius = 5;

export const zonesPerStep = derived({
  id: 'explain.zonesPerStep',
  name: 'zones in step radii',
  symbol: '\\{r_j/a,\\varphi_j\\}',
  unit: 'none',
  about: 'Zones of the plate with radii over the step radius; does not contain the beam.',
  from: { zones },
  compute: ({ zones }) =>
    JSON.stringify(zones.map(({ outer, phase }) => ({ outer: outer / zones[0]!.outer, phase }))),
  formula: 'r_j/a',
  source: 'definition',
});

const computedMap = { unit: 'none', source: 'collins1970' } as const;
const mapRatios = spaced(...shownRatios, 89);

const edgesPerStep = derived({
  id: 'explain.edgesPerStep',
  name: 'zone edges in step radii',
  symbol: '\\{r_j/a\\}',
  unit: 'none',
  about: 'Edges of the zones of the plate over the step radius; contains neither beam nor phase.',
  from: { zones },
  compute: ({ zones }) => JSON.stringify(zones.map(({ outer }) => outer / zones[0]!.outer)),
  formula: 'r_j/a',
  source: 'definition',
});

export const distances = derived({
  id: 'explain.distances',
  name: 'scale of the distances from the focus',
  symbol: '(z_a,b,s)',
  unit: { unit: 'm', bend: '1', shift: '1' },
  about:
    'How places behind the lens lie against a coordinate without the beam: Rayleigh length of the beam as wide as the step, and what distance from plate to lens and wavefront change.',
  from: { wavelength, focalLength, plateDistance, wavefrontCurvature, step: stepDiameter },
  compute: ({ step, ...light }) => distanceScale(light, step / 2),
  formula:
    '\\left(\\frac{4\\lambda f^2}{\\pi(2a)^2},\\ \\frac{4\\lambda(f-d)}{\\pi(2a)^2},\\ \\frac{\\pi(2a)^2}{4\\lambda}\\cdot 1/R_b\\right)',
  source: 'collins1970',
});

const distanceBend = derived({
  id: 'explain.distanceBend',
  name: 'bend of the distances',
  symbol: 'b',
  unit: '1',
  about:
    'How much B/f changes over the Rayleigh length of the beam as wide as the step; 0 for a plate one focal length before the lens.',
  from: { distances },
  compute: ({ distances }) => distances.bend,
  formula: '\\frac{(f-d)\\lambda}{\\pi a^2}\\in(z_a,b,s)',
  source: 'collins1970',
});

const distanceShift = derived({
  id: 'explain.distanceShift',
  name: 'shift of the distances',
  symbol: 's',
  unit: '1',
  about:
    'How far the wavefront at the plate moves the focus, in Rayleigh lengths of the beam as wide as the step; 0 for a flat one.',
  from: { distances },
  compute: ({ distances }) => distances.shift,
  formula: '\\frac{\\pi a^2}{\\lambda R_b}\\in(z_a,b,s)',
  source: 'collins1970',
});

export const focusSpread = derived({
  id: 'explain.focusSpread',
  name: 'spread in the focus',
  symbol: 'B_0/f',
  unit: '1',
  about:
    'How many times as wide the focus of the unshaped beam is as one focal length behind the lens; 1 for a flat wavefront or a plate one focal length before the lens.',
  from: { distances },
  compute: ({ distances }) => spreadInFocus(distances),
  formula: '\\frac{1}{1-bs},\\ (z_a,b,s)',
  source: 'collins1970',
});

const axisFields = derived({
  ...computedMap,
  id: 'explain.axisDiscs',
  name: 'axis fields of discs',
  symbol: '(f/B)\\,U_j(0;\\kappa,z)',
  about: 'Field about the axis of a disc out to each zone edge, over step ratio and distance.',
  // Numbers, not the scale itself: they stay equal while lens or step move, and the map with them.
  from: { edgesPerStep, bend: distanceBend, shift: distanceShift },
  compute: ({ edgesPerStep, bend, shift }) => {
    const ends = shownPlaces(shownDistances, { bend, shift });
    const ratios = spaced(...shownRatios, 101);
    return { ...axisDiscs(JSON.parse(edgesPerStep), ratios, spaced(...ends, 121), { bend, shift }), ends };
  },
  formula: 'U_j',
});

const focusFields = derived({
  ...computedMap,
  id: 'explain.focusDiscs',
  name: 'focal fields of discs',
  symbol: 'U_j(\\rho;\\kappa)',
  about: 'Field in the focus of a disc out to each zone edge, over step ratio and radius.',
  from: { edgesPerStep },
  compute: ({ edgesPerStep }) => focusDiscs(JSON.parse(edgesPerStep), mapRatios, spaced(0, shownRadius, 81)),
  formula: 'U_j',
});

function phasesOf(zonesPerStep: string): number[] {
  return (JSON.parse(zonesPerStep) as { phase: number }[]).map(({ phase }) => phase);
}

export const axisOverRatio = derived({
  ...computedMap,
  id: 'explain.axisMap',
  name: 'axis over step ratio and distance',
  symbol: 'I(0;\\kappa,z)',
  about:
    'Relative irradiance and curvature on the axis over step ratio and distance, beam varied, plate, stop, lens and wavefront kept; coherent light.',
  from: { axisFields, zonesPerStep },
  compute: ({ axisFields, zonesPerStep }) => ({
    ...axisMap(axisFields, phasesOf(zonesPerStep)),
    ends: axisFields.ends,
  }),
  formula: '(f/B)^2|U_0|^2,\\ -2\\,\\mathrm{Re}(U_0^*U_2)',
});

export const focusOverRatio = derived({
  ...computedMap,
  id: 'explain.focusMap',
  name: 'profile in focus over step ratio',
  symbol: 'I(\\rho;\\kappa)',
  about:
    'Irradiance in the focus at equal pulse energy over step ratio and radius, beam varied, plate and stop kept; coherent light.',
  from: { focusFields, zonesPerStep },
  compute: ({ focusFields, zonesPerStep }) =>
    focusAgainstRatio(focusFields, phasesOf(zonesPerStep), mapRatios),
  formula: '|U(\\varrho,0)|^2/\\kappa^2',
});

/** Amplitudes and irradiances are parts of 1 and cancel to no better than this. */
const lostInCancelling = 1e-12;

/** Amplitudes on the axis in the focus against the phase of the step: columns of equal length. */
export const amplitudeOverPhase = derived({
  id: 'explain.amplitudeOverPhase',
  name: 'amplitude on the axis against phase',
  symbol: 'U(0,0;\\varphi)',
  unit: { phase: 'rad', centre: '1', outer: '1', sum: '1', irradiance: '1' },
  about:
    'Focal amplitude on the axis of the part through the centre (component in step with the outer part), of the outer part, their sum, and the irradiance, against the phase of the step.',
  from: { ratio: stepRatio, zones },
  compute: ({ ratio, zones }) => {
    const phase = spaced(0, 2 * Math.PI, 121);
    const stopPerStep = zones[1]!.outer / zones[0]!.outer;
    const parts = amplitudeParts(ratio, 0, stopPerStep);
    const outer = parts.whole - parts.centre;
    return {
      phase,
      centre: phase.map((phi) => parts.centre * Math.cos(phi)),
      outer: phase.map(() => outer),
      sum: phase.map((phi) => amplitudeParts(ratio, phi, stopPerStep).re),
      irradiance: phase.map((phi) => {
        const { re, im } = amplitudeParts(ratio, phi, stopPerStep);
        return re * re + im * im;
      }),
    };
  },
  formula: '(1-e^{-\\kappa^2})e^{i\\varphi} + (e^{-\\kappa^2}-e^{-(R/w)^2})',
  source: 'collins1970',
});

export const centreAmplitude = derived({
  id: 'explain.centreAmplitude',
  name: 'amplitude from the centre',
  symbol: 'U_\\text{centre}',
  unit: '1',
  digits: 3,
  zeroBelow: lostInCancelling,
  about: 'Focal amplitude on the axis from the light through the step, relative to the whole unclipped beam.',
  from: { ratio: stepRatio },
  compute: ({ ratio }) => -Math.expm1(-ratio * ratio),
  formula: '1-e^{-\\kappa^2}',
  source: 'collins1970',
});

export const outerAmplitude = derived({
  id: 'explain.outerAmplitude',
  name: 'amplitude from around the step',
  symbol: 'U_\\text{outer}',
  unit: '1',
  digits: 3,
  zeroBelow: lostInCancelling,
  about:
    'Focal amplitude on the axis from the light around the step and inside the stop, relative to the whole unclipped beam.',
  from: { ratio: stepRatio, zones },
  compute: ({ ratio, zones }) => {
    const stopRatio = (ratio * zones[1]!.outer) / zones[0]!.outer;
    return Math.exp(-ratio * ratio) - Math.exp(-stopRatio * stopRatio);
  },
  formula: 'e^{-\\kappa^2}-e^{-(R/w)^2}',
  source: 'collins1970',
});

export const axisIrradianceInFocus = derived({
  id: 'explain.axisIrradianceInFocus',
  name: 'irradiance on the axis in the focus',
  symbol: 'I(0,0)',
  unit: '1',
  display: '%',
  digits: 3,
  zeroBelow: lostInCancelling,
  about: 'Irradiance on the axis in the focus relative to the unshaped, unclipped beam, coherent light.',
  from: { centre: centreAmplitude, outer: outerAmplitude, phase: stepPhase },
  compute: ({ centre, outer, phase }) => centre ** 2 + outer ** 2 + 2 * centre * outer * Math.cos(phase),
  formula: 'U_\\text{centre}^2+U_\\text{outer}^2+2U_\\text{centre}U_\\text{outer}\\cos\\varphi',
  source: 'collins1970',
});

export const axisIrradianceHalfWave = derived({
  id: 'explain.axisIrradianceHalfWave',
  name: 'irradiance on the axis with half a wave',
  symbol: 'I_\\pi(0,0)',
  unit: '1',
  display: '%',
  digits: 3,
  zeroBelow: lostInCancelling,
  about:
    'Irradiance on the axis in the focus if the step were half a wave, relative to the unshaped, unclipped beam, coherent light.',
  from: { centre: centreAmplitude, outer: outerAmplitude },
  compute: ({ centre, outer }) => (centre - outer) ** 2,
  formula: '(U_\\text{centre}-U_\\text{outer})^2',
  source: 'collins1970',
});
