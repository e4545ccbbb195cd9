import { fittedBeamRadius, fittedMarks, gaussianFit } from '../../lib/design/fits.ts';
import { focusRadius } from '../../lib/design/focus.ts';
import type { Random } from '../../lib/numerics/random.ts';
import { math, prose } from '../prose.ts';
import { drawnMarks } from './drawnMarks.ts';
import { type Lesson, markTask, numberTask } from './lesson.ts';
import { rounded } from './rounded.ts';
import { defocused, doubling } from './thresholdPlotChoices.ts';
import { lineFigure, logOf, marksFigure } from './thresholdPlotFigures.ts';
import { crossingSaid } from './toldNumbers.ts';

/** A slow beam without the plate, and marks made with it. */
function draw(random: Random) {
  const beamRadius = rounded(random.between(2e-3, 3e-3), 2);
  const focalLength = rounded(random.between(0.12, 0.18), 2);
  const ratio = rounded(random.between(1.15, 1.22), 3);
  const threshold = rounded(random.between(1500, 3500), 2);
  const radius = (ratio * 1.03e-6 * focalLength) / (Math.PI * beamRadius);
  const thresholdEnergy = (threshold * Math.PI * radius ** 2) / 2;
  return {
    'laser.beamDiameter': beamRadius,
    'plate.stepDiameter': 2 * beamRadius,
    'plate.stop': 'open',
    'lens.focalLength': focalLength,
    'laser.beamPropagationRatio': ratio,
    'laser.pulseEnergy': rounded(2 * thresholdEnergy, 2),
    'threshold.source': 'typed',
    'threshold.typedFluence': threshold,
    'threshold.fitModel': 'gaussian',
    'threshold.spotTable': drawnMarks(random, { radius, thresholdEnergy }),
  };
}

const zero = markTask({
  id: 'zero',
  stage: 'observe',
  question: prose`
    Here are marks measured under the microscope, ${math`D^2`} against ${math`\ln E`}. Lay a straight line through them in your mind. Where does it meet ${math`D^2 = 0`}? Mark the place.
  `,
  figure: marksFigure,
  along: 'x',
  within: 0.035,
  reveals: [lineFigure],
  from: { fit: gaussianFit, marks: fittedMarks },
  answer: ({ fit }) => logOf(fit.thresholdEnergy),
  errors: [
    {
      id: 'smallest-mark',
      reason: prose`That is the smallest mark that was seen. It has a diameter already, so its energy lies above the threshold; follow the line on to the left until ${math`D^2`} is nothing.`,
      answer: ({ marks }) => logOf(Math.min(...marks.map(({ energy }) => energy))),
    },
    {
      id: 'one-microjoule',
      reason: prose`There ${math`\ln E`} is 0, that is 1 µJ, which only says in what unit the energy is counted. Look for the place where ${math`D^2`}, the upright axis, is 0.`,
      answer: ({ fit }) => (Math.abs(logOf(fit.thresholdEnergy)) > 0.35 ? 0 : undefined),
    },
  ],
  explanation: prose`
    There a mark would have no size: the peak of the pulse just reaches the threshold. The line says ${math`E_\text{th} =`} ${crossingSaid}. Nobody can see a mark of size nothing, so the threshold is always read off the line and not off the smallest mark.
  `,
});

const radius = numberTask({
  id: 'radius',
  stage: 'observe',
  question: prose`
    The slope tells how wide the spot is: one step of 1 in ${math`\ln E`} adds ${math`2w^2`} to ${math`D^2`}. Read the rise between the two places in the chart. What is the **1/e² radius** ${math`w`}?
  `,
  shows: [lineFigure],
  from: { radius: fittedBeamRadius, formula: focusRadius },
  unit: 'm',
  display: 'um',
  within: 0.04,
  answer: ({ radius }) => radius,
  errors: [
    {
      id: 'diameter',
      reason: prose`That is the diameter, ${math`2w`}. The radius was asked for: half of it.`,
      answer: ({ radius }) => 2 * radius,
    },
    {
      id: 'factor-two',
      reason: prose`You took the root of the whole rise. The rise is ${math`2w^2`}: halve it before you take the root.`,
      answer: ({ radius }) => Math.sqrt(2 * radius ** 2),
    },
    {
      id: 'one-over-e',
      reason: prose`That is the radius at 1/e, 37 % of the peak, √2 smaller. Here the radius at 1/e² is meant, as always for beams unless somebody says otherwise.`,
      answer: ({ radius }) => radius / Math.SQRT2,
    },
    {
      id: 'full-width',
      reason: prose`That is the full width at half the peak (FWHM), 1.18 times the 1/e² radius. Both are widths of the same spot; say which one you mean.`,
      answer: ({ radius }) => radius * Math.sqrt(2 * Math.LN2),
    },
    {
      id: 'from-formula',
      reason: prose`That is ${math`\lambda f/(\pi w_\text{lens})`}, the radius that a perfect beam would have in the focus. The marks tell what the spot has in truth: take it from the slope.`,
      answer: ({ formula }) => formula,
    },
  ],
  explanation: prose`
    Half the rise is ${math`w^2`}, and its root the 1/e² radius, ${fittedBeamRadius}. A perfect beam would have ${focusRadius} here; this one is wider, mostly by its beam quality M². So the plot measures the spot where it counts, on the workpiece.
  `,
});

const fluence = numberTask({
  id: 'threshold-fluence',
  stage: 'observe',
  question: prose`
    The line meets zero at ${crossingSaid}, and the spot has a 1/e² radius of ${fittedBeamRadius}. What is the threshold as **peak fluence**? For a Gaussian the peak is ${math`2E/(\pi w^2)`}.
  `,
  shows: [lineFigure],
  from: { fit: gaussianFit, radius: fittedBeamRadius },
  unit: 'J/m^2',
  display: 'J/cm^2',
  within: 0.04,
  answer: ({ fit }) => fit.thresholdFluence,
  errors: [
    {
      id: 'mean-for-peak',
      reason: prose`That is the energy over the area of the 1/e² circle, a mean. The peak of a Gaussian is twice as high: mind the 2 in front.`,
      answer: ({ fit, radius }) => fit.thresholdEnergy / (Math.PI * radius ** 2),
    },
    {
      id: 'diameter-for-radius',
      reason: prose`You have put the diameter where the radius belongs: four times the area, a quarter of the fluence.`,
      answer: ({ fit, radius }) => (2 * fit.thresholdEnergy) / (Math.PI * (2 * radius) ** 2),
    },
    {
      id: 'one-over-e',
      reason: prose`That is twice too much: it is what comes out with the radius at 1/e, which is √2 smaller. The formula with the 2 belongs to the radius at 1/e².`,
      answer: ({ fit, radius }) => (2 * fit.thresholdEnergy) / (Math.PI * (radius / Math.SQRT2) ** 2),
    },
  ],
  explanation: prose`
    From slope and crossing alone: no camera, no knowledge of the beam. The threshold is a **peak** fluence, since the mark begins where the pulse is brightest. Before you hold a published threshold against yours, ask whether it is peak or mean: that is a factor of two.
  `,
});

export const thresholdPlot: Lesson = {
  id: 'threshold-plot',
  title: 'The threshold plot',
  about:
    'You can read the 1/e² radius of a spot and the threshold fluence of a surface from the sizes of a few marks.',
  minutes: 8,
  draw,
  tasks: [doubling, zero, radius, fluence, defocused],
};
