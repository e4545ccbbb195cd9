import { derived } from '../graph/define.ts';
import { spaced } from '../optics/focusMaps.ts';
import { amplitudeAt, amplitudeParts, axisCurvatureInFocus as curvatureOf } from '../optics/matching.ts';
import { stepRatio } from './match.ts';
import { stepPhase, zones } from './plate.ts';

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
    const parts = amplitudeParts(ratio, stopPerStep);
    const outer = parts.whole - parts.centre;
    const at = Array.from(phase, (phi) => amplitudeAt(parts, phi));
    return {
      phase,
      centre: phase.map((phi) => parts.centre * Math.cos(phi)),
      outer: phase.map(() => outer),
      sum: Float64Array.from(at, ({ re }) => re),
      irradiance: Float64Array.from(at, ({ re, im }) => re * re + im * im),
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

export const axisCurvatureInFocus = derived({
  id: 'explain.axisCurvatureInFocus',
  name: 'curvature on the axis in the focus',
  symbol: "I'",
  unit: '1',
  digits: 3,
  zeroBelow: lostInCancelling,
  about:
    'How the irradiance begins to grow off the axis in the focus, per square of the radius over the unshaped focus radius, relative to the unshaped, unclipped beam on its axis; coherent light. 0 is level, above 0 a dip, below 0 a peak.',
  from: { ratio: stepRatio, zones, phase: stepPhase },
  compute: ({ ratio, zones, phase }) => curvatureOf(ratio, phase, zones[1]!.outer / zones[0]!.outer),
  formula: '-2\\,\\mathrm{Re}(U_0^* U_2)',
  source: 'collins1970',
});
