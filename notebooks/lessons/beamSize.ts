import { magnification, plateBeamDiameter } from '../../lib/design/expander.ts';
import { flattestRatio, neededMagnification, stepRatio } from '../../lib/design/match.ts';
import { stepDiameter } from '../../lib/design/plate.ts';
import { usedBeamDiameter } from '../../lib/design/rawBeam.ts';
import { kind } from '../../lib/design/spot.ts';
import { profileFigure } from '../matchingFigures.ts';
import { math, prose, term } from '../prose.ts';
import { milli } from '../throughFocusFigures.ts';
import { beamOnPlateFigure, beamProfileFigure } from './beamOnPlate.ts';
import { drawOne, drawStepped } from './draws.ts';
import { diameterOverHalfWidth } from './gaussianWidths.ts';
import { choiceTask, type Lesson, markTask, numberTask } from './lesson.ts';
import { otherThan } from './otherThan.ts';
import { seenAs, seenOptions } from './spotKinds.ts';

const radius = markTask({
  id: 'radius',
  stage: 'observe',
  question: prose`The chart shows the light of a laser beam, from its axis outward. It fades and has no edge, so people agreed on a place to call its edge: where the irradiance (the power on a small area, divided by that area) has fallen to 1/e² of what it is on the axis. 1/e² is 0.135, a little more than an eighth. How far that place lies from the axis is the **1/e² radius** ${math`w`}. Mark it on the chart.`,
  figure: beamProfileFigure,
  along: 'x',
  within: 0.018,
  from: { beam: plateBeamDiameter },
  answer: ({ beam }) => (beam / 2) * milli,
  errors: [
    {
      id: 'one-over-e',
      reason: prose`You marked where the light has fallen to 1/e, which is 0.37. That radius is smaller by a factor of 1.41. Eye safety counts in it, optics in 1/e². Follow the curve further down, to 0.135.`,
      answer: ({ beam }) => ((beam / 2) * milli) / Math.SQRT2,
    },
    {
      id: 'half-maximum',
      reason: prose`You marked where the light has fallen to a half. Twice that radius is the full width at half maximum, FWHM, another way to tell a width. Follow the curve further down, to 0.135.`,
      answer: ({ beam }) => ((beam / 2) * milli) / diameterOverHalfWidth,
    },
  ],
  explanation: prose`At the 1/e² radius the curve has come down to 0.135. Twice this radius is the **1/e² diameter**, here ${plateBeamDiameter}. When this page says how wide a beam is, it means that diameter.`,
});

const ratio = numberTask({
  id: 'ratio',
  stage: 'predict',
  question: prose`Now the whole way. The beam leaves the laser with a 1/e² diameter of ${usedBeamDiameter}. An ${term('expander')} (two lenses that widen a beam) makes it ${magnification} times as wide. Then it meets a glass plate with a round step in its middle, ${stepDiameter} in diameter. What counts is how the two compare: the radius of the step over the 1/e² radius of the beam at the plate. That is the **step ratio** ${math`\kappa`}. How large is it?`,
  unit: '1',
  display: '1',
  within: 0.02,
  from: { ratio: stepRatio, beam: plateBeamDiameter, step: stepDiameter },
  answer: ({ ratio }) => ratio,
  errors: [
    {
      id: 'upside-down',
      reason: prose`That is the beam over the step. In the step ratio the step stands on top: a larger step makes it larger, a wider beam makes it smaller.`,
      answer: ({ step, beam }) => beam / step,
    },
    {
      id: 'radius-for-diameter',
      reason: prose`The radius of the step was divided by the diameter of the beam. Take both as radii, or both as diameters.`,
      answer: ({ step, beam }) => step / 2 / beam,
    },
    {
      id: 'diameter-for-radius',
      reason: prose`The diameter of the step was divided by the radius of the beam. Take both as radii, or both as diameters.`,
      answer: ({ step, beam }) => step / (beam / 2),
    },
    {
      id: 'expander-left-out',
      reason: prose`That is the ratio for the beam as it leaves the laser. The plate stands behind the expander, where the beam is wider.`,
      answer: (_, ask) => ask({ set: { 'expander.magnification': 1 } }).ratio,
    },
  ],
  reveals: [beamOnPlateFigure],
  explanation: prose`The beam is ${plateBeamDiameter} wide at the plate and the step ${stepDiameter}, so the step ratio is ${stepRatio}. At a step ratio of 1 the two are equally wide.`,
});

const focus = choiceTask({
  id: 'focus',
  stage: 'predict',
  question: prose`Light through the step comes half a wave late. In the focus of the lens it works against the light that passes around the step: where both are equally strong, they cancel. The step ratio is ${stepRatio}, and nothing cuts the beam. What do you expect in the focus?`,
  shows: [beamOnPlateFigure],
  options: seenOptions,
  otherwise: {
    peaked: prose`The middle is brightest where so little light passes around the step that it cannot work against the rest. Look on the chart how much light of this beam is left beyond the step.`,
    flat: prose`The top is flat only where the two parts keep a certain balance, at a step ratio of about 1.3. Hold the step ratio of this beam against that.`,
    ring: prose`A dark middle takes a good part of the light around the step, to work against the light through it. Look on the chart how little of this beam is left beyond the step.`,
  },
  from: { kind, ratio: stepRatio, step: stepDiameter },
  answer: ({ kind }) => seenAs(kind),
  errors: [
    {
      id: 'upside-down',
      reason: prose`That would be so with the ratio the other way round, beam over step. Look on the chart how far out on the beam the step ends, and how much light is left beyond it.`,
      answer: ({ kind, ratio, step }, ask) =>
        otherThan(seenAs(kind), seenAs(ask({ pins: { 'plate.beamDiameter': step * ratio } }).kind)),
    },
    {
      id: 'no-step',
      reason: prose`That is the focus of the beam without a step. The step takes no light away, but what passes through it arrives half a wave late and works against the rest.`,
      answer: ({ kind }, ask) =>
        otherThan(seenAs(kind), seenAs(ask({ pins: { 'plate.stepPhase': 0 } }).kind)),
    },
  ],
  reveals: [profileFigure],
  explanation: prose`Below a step ratio of 0.83 the light around the step is the stronger part on the axis, above it the light through the step; at 0.83 they cancel and the middle is dark. At 1.30 the top is flattest, and far above that nearly all light passes through the step and there is little left to work against it.`,
});

const needed = numberTask({
  id: 'magnification',
  stage: 'explain',
  set: { 'match.goal': 'flattest' },
  question: prose`With this plate the focus is flattest at a step ratio of ${flattestRatio}. The step is ${stepDiameter} wide, the beam from the laser ${usedBeamDiameter}. To which magnification must the expander be set?`,
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
      id: 'equally-wide',
      reason: prose`That makes the beam as wide as the step, a step ratio of 1. Many set it so, but it is not where the focus of this plate is flattest.`,
      answer: (_, ask) => ask({ set: { 'match.goal': 'equal' } }).needed,
    },
    {
      id: 'upside-down',
      reason: prose`That makes the beam wider than the step. For a step ratio above 1 it must be narrower than the step: divide the step by the ratio.`,
      answer: ({ step, raw, flattest }) => (step * flattest) / raw,
    },
    {
      id: 'radius-for-diameter',
      reason: prose`The radius of the step was compared with the diameter of the beam. Take both as diameters.`,
      answer: ({ step, raw, flattest }) => step / 2 / flattest / raw,
    },
    {
      id: 'change-only',
      reason: prose`That is the factor by which today’s magnification must change. The question is what it must become.`,
      answer: ({ ratio, flattest }) => ratio / flattest,
    },
  ],
  explanation: prose`At the plate the beam must be ${stepDiameter} over ${flattestRatio} wide. From the ${usedBeamDiameter} of the laser that takes a magnification of ${neededMagnification}.`,
});

/** Step ratios at which the focus is a ring, flat, or peaked; equally often. */
const ratios: readonly [Span, ...Span[]] = [
  [0.74, 1.15],
  [1.25, 1.32],
  [1.38, 1.7],
];
type Span = readonly [low: number, high: number];

/** Beam size against the step. */
export const beamSize: Lesson = {
  id: 'beam-size',
  title: 'Beam size against the step',
  about: 'You can work out the step ratio of a beam and a plate, and say what it does to the focus.',
  minutes: 7,
  draw: (random) => {
    const raw = drawStepped(random, 3.6e-3, 6e-3, 1e-4);
    const step = drawOne(random, [8e-3, 10e-3, 12e-3]);
    const magnified = step / raw / random.between(...drawOne(random, ratios));
    return {
      'plate.stop': 'open',
      'laser.pulseEnergy': 2e-6,
      'laser.beamDiameter': raw,
      'plate.stepDiameter': step,
      'expander.magnification': Number(magnified.toPrecision(3)),
    };
  },
  tasks: [radius, ratio, focus, needed],
};
