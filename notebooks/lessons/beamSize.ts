import { magnification, plateBeamDiameter } from '../../lib/design/expander.ts';
import { flattestRatio, neededMagnification, stepRatio } from '../../lib/design/match.ts';
import { stepDiameter } from '../../lib/design/plate.ts';
import { usedBeamDiameter } from '../../lib/design/rawBeam.ts';
import { dip, kind } from '../../lib/design/spot.ts';
import type { Random } from '../../lib/numerics/random.ts';
import { profileFigure } from '../matchingFigures.ts';
import { math, prose } from '../prose.ts';
import { beamOnPlateFigure, beamProfileFigure } from './beamOnPlate.ts';
import { drawOne, drawStepped } from './draws.ts';
import { choiceTask, type Lesson, markTask, numberTask } from './lesson.ts';
import { otherThan } from './otherThan.ts';
import { seenAs, seenOptions } from './spotKinds.ts';

/** 1/e² radius over full width at half maximum of a Gaussian: 2w = 1.699 FWHM. */
const diameterOverHalfWidth = Math.sqrt(2 / Math.LN2);
const milli = 1e3;

const radius = markTask({
  id: 'radius',
  stage: 'predict',
  question: prose`This is the light across a laser beam, from its axis outward. It fades without an edge, so people agreed on where to call it the edge: where the irradiance (the power per area) has fallen to 1/e² of that on the axis. That is 0.135, a little over an eighth. The distance from the axis to there is the **1/e² radius** ${math`w`}. Mark it.`,
  figure: beamProfileFigure,
  along: 'x',
  within: 0.018,
  from: { beam: plateBeamDiameter },
  answer: ({ beam }) => (beam / 2) * milli,
  errors: [
    {
      id: 'one-over-e',
      reason: prose`You marked where the light has fallen to 1/e, or 0.37. That radius is 1.41 times smaller. Eye safety counts in it; beams are told by 1/e². Follow the curve further down, to 0.135.`,
      answer: ({ beam }) => ((beam / 2) * milli) / Math.SQRT2,
    },
    {
      id: 'half-maximum',
      reason: prose`You marked where the light has fallen to a half. Twice that is the full width at half maximum (FWHM), another way to tell a width. Follow the curve further down, to 0.135.`,
      answer: ({ beam }) => ((beam / 2) * milli) / diameterOverHalfWidth,
    },
  ],
  explanation: prose`The curve reaches 0.135 at the 1/e² radius. Twice that radius is the 1/e² diameter, ${plateBeamDiameter} here; when this page says how wide a beam is, it means this diameter.`,
});

const ratio = numberTask({
  id: 'ratio',
  stage: 'predict',
  question: prose`A laser beam has a 1/e² diameter of ${usedBeamDiameter}. An expander, two lenses that widen a beam, makes it ${magnification} times as wide. Then it meets a glass plate with a round step in the middle, ${stepDiameter} in diameter. What matters is how the two compare: the radius of the step over the 1/e² radius of the beam at the plate. This is the **step ratio** ${math`\kappa`}. How large is it?`,
  unit: '1',
  display: '1',
  within: 0.02,
  from: { ratio: stepRatio, beam: plateBeamDiameter, raw: usedBeamDiameter, step: stepDiameter },
  answer: ({ ratio }) => ratio,
  errors: [
    {
      id: 'upside-down',
      reason: prose`That is the beam over the step. The step ratio has the step on top: it grows when the step grows, and falls when the beam grows.`,
      answer: ({ step, beam }) => beam / step,
    },
    {
      id: 'radius-for-diameter',
      reason: prose`A radius was compared with a diameter. Take both as radii, or both as diameters.`,
      answer: ({ step, beam }) => step / 2 / beam,
    },
    {
      id: 'diameter-for-radius',
      reason: prose`A diameter was compared with a radius: the diameter of the step with the radius of the beam. Take both as radii, or both as diameters.`,
      answer: ({ step, beam }) => step / (beam / 2),
    },
    {
      id: 'no-expander',
      reason: prose`That is the ratio for the beam as it leaves the laser. The plate stands behind the expander, where the beam is wider.`,
      answer: (_, ask) => ask({ set: { 'expander.magnification': 1 } }).ratio,
    },
    {
      id: 'half-maximum',
      reason: prose`The number fits a beam told by its full width at half maximum. Here the diameter is the 1/e² diameter already, so nothing is to be converted.`,
      answer: ({ raw }, ask) => ask({ set: { 'laser.beamDiameter': raw * diameterOverHalfWidth } }).ratio,
    },
  ],
  reveals: [beamOnPlateFigure],
  explanation: prose`The beam is ${plateBeamDiameter} wide at the plate, the step ${stepDiameter}: the step ratio is ${stepRatio}. At 1 the two are equally wide.`,
});

const focus = choiceTask({
  id: 'focus',
  stage: 'predict',
  question: prose`Light through the step comes half a wave late. In the focus of the lens it therefore works against the light from around the step. With the step ratio of ${stepRatio}, and nothing that cuts the beam, what stands in the focus?`,
  shows: [beamOnPlateFigure],
  options: seenOptions,
  from: { kind, ratio: stepRatio, step: stepDiameter },
  answer: ({ kind }) => seenAs(kind),
  errors: [
    {
      id: 'upside-down',
      reason: prose`That is what a beam would do that is wider where this one is narrower: step and beam are the other way round. Look where the edge of the step lies on the beam.`,
      answer: ({ kind, ratio, step }, ask) =>
        otherThan(seenAs(kind), seenAs(ask({ pins: { 'plate.beamDiameter': step * ratio } }).kind)),
    },
  ],
  reveals: [profileFigure],
  explanation: prose`The profile has a dip of ${dip} on its axis.`,
});

const needed = numberTask({
  id: 'magnification',
  stage: 'explain',
  set: { 'match.goal': 'flattest' },
  question: prose`With nothing that cuts the beam and a step of half a wave, the focus is flattest at a step ratio of ${flattestRatio}. The step stays ${stepDiameter} wide, the raw beam ${usedBeamDiameter}. To what magnification must the expander be set?`,
  unit: '1',
  display: '1',
  within: 0.02,
  from: {
    needed: neededMagnification,
    flattest: flattestRatio,
    ratio: stepRatio,
    raw: usedBeamDiameter,
    step: stepDiameter,
  },
  answer: ({ needed }) => needed,
  errors: [
    {
      id: 'equal',
      reason: prose`That makes the beam as wide as the step, a step ratio of 1. It is common practice, but not the flattest focus of this plate.`,
      answer: (_, ask) => ask({ set: { 'match.goal': 'equal' } }).needed,
    },
    {
      id: 'upside-down',
      reason: prose`That makes the beam wider than the step by the step ratio. For a step ratio above 1 it must be narrower than the step.`,
      answer: ({ step, raw, flattest }) => (step * flattest) / raw,
    },
    {
      id: 'radius-for-diameter',
      reason: prose`The radius of the step was compared with the diameter of the beam. Take both as diameters.`,
      answer: ({ needed }) => needed / 2,
    },
    {
      id: 'change-only',
      reason: prose`That is by how much the magnification of today must be changed, not what it must become.`,
      answer: ({ ratio, flattest }) => ratio / flattest,
    },
  ],
  explanation: prose`The beam at the plate must be ${stepDiameter} over ${flattestRatio}, and the expander makes it from ${usedBeamDiameter}: a magnification of ${neededMagnification}.`,
});

/** Beam size against the step. */
export const beamSize: Lesson = {
  id: 'beam-size',
  title: 'Beam size against the step',
  about: 'You can tell the step ratio of a beam and a plate, and what it does to the focus.',
  minutes: 7,
  draw: (random: Random) => ({
    'plate.stop': 'open',
    'laser.beamDiameter': drawStepped(random, 3.6e-3, 6e-3, 1e-4),
    'expander.magnification': drawStepped(random, 1.4, 2.6, 0.1),
    'plate.stepDiameter': drawOne(random, [8e-3, 10e-3, 12e-3]),
  }),
  tasks: [radius, ratio, focus, needed],
};
