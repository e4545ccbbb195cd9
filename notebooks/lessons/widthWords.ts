import { plateBeamDiameter } from '../../lib/design/expander.ts';
import { focusRadius, unshapedPeak } from '../../lib/design/focus.ts';
import { unshapedWidth } from '../../lib/design/unshaped.ts';
import type { Random } from '../../lib/numerics/random.ts';
import { micro } from '../columns.ts';
import { math, prose, term } from '../prose.ts';
import { drawOne, drawStepped } from './draws.ts';
import { choiceTask, type Lesson, markTask, numberTask } from './lesson.ts';
import { deviationSaid } from './toldNumbers.ts';
import { namedPlaces, namedWidthsFigure, spotCurveFigure } from './widthWordsFigures.ts';

/** A plain Gaussian in its focus, without a stop. */
const draw = (random: Random) => ({
  'plate.stop': 'open',
  'laser.beamDiameter': drawStepped(random, 3e-3, 5.5e-3, 1e-4),
  'lens.focalLength': drawOne(random, [80e-3, 100e-3, 125e-3, 160e-3, 200e-3]),
});

const half = markTask({
  id: 'half',
  stage: 'predict',
  question: prose`
    A laser spot has no edge, so each trade has its own habit of saying how wide it is. The **${term('full width at half maximum', 'full-width')}** (FWHM) goes from one side to the other between the places where the fluence has fallen to half its peak. The chart begins on the axis: mark the place that ends it.
  `,
  figure: spotCurveFigure,
  along: 'x',
  within: 0.014,
  reveals: [namedWidthsFigure],
  from: { radius: focusRadius, width: unshapedWidth },
  answer: ({ width }) => (micro * width) / 2,
  errors: [
    {
      id: 'one-over-e2',
      reason: prose`There the fluence has fallen to 13.5 %, which is 1/e² of the peak. Half of the peak lies further in.`,
      answer: ({ radius }) => micro * radius,
    },
    {
      id: 'one-over-e',
      reason: prose`There it has fallen to 37 %, which is 1/e of the peak. Half of the peak lies a little further in.`,
      answer: ({ radius }) => micro * radius * namedPlaces['1/e'],
    },
    {
      id: 'whole-width',
      reason: prose`That is as far from the axis as the whole width. The chart shows one side only: half of it lies there.`,
      answer: ({ width }) => micro * width,
    },
  ],
  explanation: prose`
    Half the maximum is reached ${math`0.59\,w`} from the axis, with ${math`w`} the 1/e² radius. From side to side the FWHM is ${unshapedWidth}. The chart now shows the other places that have a name.
  `,
});

const fromHalf = numberTask({
  id: 'from-half-maximum',
  stage: 'observe',
  question: prose`
    An instrument shows an FWHM of ${unshapedWidth}. Formulas for beams want the **${term('1/e² diameter', 'diameter')}**, between the places with 13.5 % of the peak. Read in the chart how the two compare. How large is it?
  `,
  shows: [namedWidthsFigure],
  from: { radius: focusRadius, width: unshapedWidth },
  unit: 'm',
  display: 'um',
  within: 0.03,
  answer: ({ radius }) => 2 * radius,
  errors: [
    {
      id: 'radius',
      reason: prose`That is the 1/e² radius, from the axis to one side. The diameter goes from side to side: twice that.`,
      answer: ({ radius }) => radius,
    },
    {
      id: 'not-converted',
      reason: prose`That is the FWHM itself. At 1/e² the spot is wider, as the chart shows.`,
      answer: ({ width }) => width,
    },
    {
      id: 'upside-down',
      reason: prose`You have divided by 1.70. The place at 1/e² lies further out than half the maximum: multiply.`,
      answer: ({ radius, width }) => width ** 2 / (2 * radius),
    },
    {
      id: 'one-over-e',
      reason: prose`That is the diameter at 1/e, 37 % of the peak. Go on to 1/e².`,
      answer: ({ radius }) => 2 * radius * namedPlaces['1/e'],
    },
  ],
  explanation: prose`
    For a Gaussian the 1/e² diameter is 1.699 times the FWHM. For a flat-top or a ring that factor means nothing: it belongs to this one shape.
  `,
});

const fromDeviation = numberTask({
  id: 'from-deviation',
  stage: 'observe',
  question: prose`
    The program of a camera gives a **${term('standard deviation', 'sigma')}** σ of ${deviationSaid} for the same spot: how far, in the mean of squares, its light lies from the middle in one direction. What is the 1/e² **radius** ${math`w`}?
  `,
  shows: [namedWidthsFigure],
  from: { radius: focusRadius, width: unshapedWidth },
  unit: 'm',
  display: 'um',
  within: 0.03,
  answer: ({ radius }) => radius,
  errors: [
    {
      id: 'deviation',
      reason: prose`That is σ itself. In the chart one σ lies half-way to 1/e².`,
      answer: ({ radius }) => radius * namedPlaces.sigma,
    },
    {
      id: 'diameter',
      reason: prose`That is four σ, the 1/e² diameter, which standards call D4σ. The radius was asked for.`,
      answer: ({ radius }) => 2 * radius,
    },
    {
      id: 'full-width',
      reason: prose`That is 2.35 σ, the full width at half maximum. The 1/e² radius is twice σ.`,
      answer: ({ width }) => width,
    },
  ],
  explanation: prose`
    ${math`w = 2\sigma`}, here ${focusRadius}. Four σ are the 1/e² diameter of a Gaussian, and for other shapes the second-moment diameter that beam standards go by.
  `,
});

const safety = numberTask({
  id: 'one-over-e',
  stage: 'observe',
  question: prose`
    People who work on eye safety count a beam between the places with **1/e** of the peak, 37 %. The beam at the plate has a 1/e² diameter of ${plateBeamDiameter}. What is its diameter at 1/e?
  `,
  shows: [namedWidthsFigure],
  from: { beam: plateBeamDiameter },
  unit: 'm',
  display: 'mm',
  within: 0.03,
  answer: ({ beam }) => beam * namedPlaces['1/e'],
  errors: [
    {
      id: 'not-converted',
      reason: prose`That is the 1/e² diameter. At 1/e the beam is narrower, as the chart shows for the spot.`,
      answer: ({ beam }) => beam,
    },
    {
      id: 'upside-down',
      reason: prose`You have multiplied by √2. At 1/e, 37 %, the beam is narrower than at 13.5 %: divide.`,
      answer: ({ beam }) => beam / namedPlaces['1/e'],
    },
    {
      id: 'half-as-wide',
      reason: prose`You have halved it. From 1/e² to 1/e the exponent is halved, but in the exponent stands the square of the radius: the radius shrinks by √2.`,
      answer: ({ beam }) => beam / 2,
    },
    {
      id: 'full-width',
      reason: prose`That is the full width at half maximum. The place at 1/e, 37 %, lies a little further out.`,
      answer: ({ beam }) => beam * namedPlaces['half the maximum'],
    },
    {
      id: 'radius',
      reason: prose`That is the radius at 1/e. The diameter is twice as large.`,
      answer: ({ beam }) => (beam * namedPlaces['1/e']) / 2,
    },
  ],
  explanation: prose`
    √2 narrower. With the diameter at 1/e the energy over the circle is the peak itself, which is why that habit is there; with the one at 1/e² it is half the peak.
  `,
});

/** How far off a peak fluence is. */
function off(factor: number): 'right' | 'somewhat' | 'much' | 'low' {
  if (factor < 0.9) return 'low';
  if (factor < 1.1) return 'right';
  return factor < 2.2 ? 'somewhat' : 'much';
}

const taken = choiceTask({
  id: 'taken-for',
  stage: 'explain',
  question: prose`
    Somebody reads the FWHM of ${unshapedWidth}, takes it for the 1/e² diameter, and works out the peak fluence from it. How does the result compare with the true peak?
  `,
  shows: [namedWidthsFigure],
  from: { peak: unshapedPeak, width: unshapedWidth },
  options: {
    right: 'It is the same: the energy did not change',
    somewhat: 'It is 1.7 times too high',
    much: 'It is 2.9 times too high',
    low: 'It is 2.9 times too low',
  },
  answer: ({ peak, width }, ask) => off(ask({ pins: { [focusRadius.id]: width / 2 } }).peak / peak),
  errors: [
    {
      id: 'energy-alone',
      reason: prose`The energy is the same, but it is thought to lie on a smaller spot. The fluence is energy over area.`,
      answer: ({ peak }) => off(peak / peak),
    },
    {
      id: 'width-for-area',
      reason: prose`The width is off by 1.7. The fluence goes with the **area**, and so with the square of the width.`,
      answer: ({ peak, width }, ask) =>
        off(Math.sqrt(ask({ pins: { [focusRadius.id]: width / 2 } }).peak / peak)),
    },
    {
      id: 'other-way',
      reason: prose`The FWHM is smaller than the 1/e² diameter, so the spot is thought too small, and the same energy on it too dense.`,
      answer: ({ peak, width }, ask) => off(peak / ask({ pins: { [focusRadius.id]: width / 2 } }).peak),
    },
  ],
  explanation: prose`
    1.70 squared is 2.89. A mistake in a word becomes a factor of three in a fluence, more than many a process window is wide. So never pass on a width without its word: FWHM, 1/e, 1/e² or σ, and radius or diameter.
  `,
});

/** What the words for a width mean. */
export const widthWords: Lesson = {
  id: 'width-words',
  title: 'How wide is a spot?',
  about:
    'You can turn FWHM, 1/e, 1/e² and σ into one another, as radius or diameter, and say what a mix-up costs.',
  minutes: 7,
  draw,
  tasks: [half, fromHalf, fromDeviation, safety, taken],
};
