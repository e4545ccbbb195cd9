import { wavelength } from '../../lib/design/laser.ts';
import { expectedPeriods, rippleDirection } from '../../lib/design/rippleDirection.ts';
import { incidence, polarisationAngle } from '../../lib/design/rippleInputs.ts';
import { longRipplePeriod, ripplePeriod } from '../../lib/design/ripples.ts';
import { math, prose, term } from '../prose.ts';
import { directionFigure } from '../rippleDirectionFigure.ts';
import { periodWavelengthFigure } from '../rippleFigures.ts';
import { choiceTask } from './lesson.ts';
import { polarisationFigure } from './polarisationFigure.ts';
import { measuredPlace, periodChange, ridgesRun } from './ripplePeriodWords.ts';

export const ridges = choiceTask({
  id: 'ridges',
  stage: 'predict',
  question: prose`
    **${term('Ripples')}** are fine ridges that polarised pulses leave on a metal, about a wavelength apart. The arrow with two heads in the picture is the **${term('polarisation')}**, the direction in which the electric field swings; here it lies at ${polarisationAngle} to the scan. Which way do the ridges run?
  `,
  shows: [polarisationFigure],
  reveals: [directionFigure],
  from: { field: polarisationAngle, ridges: rippleDirection },
  options: {
    along: 'Along the polarisation',
    across: 'At right angles to the polarisation',
    scan: 'Along the scan',
    any: 'In no direction at all',
  },
  answer: ({ field, ridges }) => ridgesRun(ridges, field),
  errors: [
    {
      id: 'field-for-ridges',
      reason: prose`Along the polarisation runs the wave that digs them. Like the ridges of sand under water, ripples lie **across** the way of their wave.`,
      answer: ({ field }) => ridgesRun(field, field),
    },
    {
      id: 'scan-for-field',
      reason: prose`The scan does not turn them: ripples look the same where the spot stands still. It is the light that gives the direction.`,
      answer: ({ field }) => ridgesRun(0, field),
    },
    {
      id: 'circular-for-linear',
      reason: prose`So it is with circular polarisation, where the field has no direction of its own: dots and short pieces. Here it swings along one line, and so the ridges have one direction.`,
      answer: ({ field }) => ridgesRun(Number.NaN, field),
    },
  ],
  explanation: prose`
    The field drives a wave along the surface in its own direction, and the ridges lie across that wave: at right angles to the polarisation, here at ${rippleDirection} to the scan. So a half-wave retarder in the beam, which turns the polarisation (not the plate with the step), turns the ripples; turning the scan does not.
  `,
});

export const measured = choiceTask({
  id: 'measured',
  stage: 'predict',
  question: prose`
    The light has a wavelength of ${wavelength}. A model with the wave along a cold, smooth surface gives a **period**, the distance from ridge to ridge, of ${ripplePeriod}. You fire a hundred pulses in air, straight down, and measure under the microscope. What will you most likely find?
  `,
  reveals: [periodWavelengthFigure],
  from: { expected: expectedPeriods, model: ripplePeriod, wavelength },
  options: {
    longer: 'Longer than the wavelength',
    model: 'What the model says, to a per cent or two',
    shorter: '5 to 30 % below the wavelength',
    half: 'Less than half the wavelength',
  },
  answer: ({ expected: { low, high }, model, wavelength }) =>
    measuredPlace((low + high) / 2, model, wavelength),
  errors: [
    {
      id: 'model-for-measured',
      reason: prose`The model is for a cold, clean and smooth surface. Heat, oxide and the ripples themselves change it while the pulses come, and so ripples are found shorter.`,
      answer: ({ model, wavelength }) => measuredPlace(model, model, wavelength),
    },
    {
      id: 'other-mechanism',
      reason: prose`Such fine ripples do exist, but they have another cause. The ones that come from the wave along the surface stay near the wavelength.`,
      answer: ({ expected: { low }, model, wavelength }) => measuredPlace(low / 2, model, wavelength),
    },
    {
      id: 'above-for-below',
      reason: prose`It is the other way: as the pulses come, ripples get shorter than the wavelength, not longer.`,
      answer: ({ expected: { low, high }, model, wavelength }) =>
        measuredPlace(2 * wavelength - (low + high) / 2, model, wavelength),
    },
  ],
  explanation: prose`
    Measured periods lie 5 to 30 % below the **wavelength**, here at ${expectedPeriods}, and fall with the number of pulses. The model is a starting point: for the direction, for what water or a tilt changes, not for the last per cent.
  `,
});

export const crossed = choiceTask({
  id: 'crossed',
  stage: 'explain',
  set: { [polarisationAngle.id]: Math.PI / 2 },
  question: prose`
    The tilt stays, and the polarisation is turned by 90°: the field now swings **across** the plane of the tilt (s polarisation), and so the wave runs across it too. How does the period compare with the one without a tilt?
  `,
  shows: [polarisationFigure],
  reveals: [directionFigure],
  from: { period: ripplePeriod, other: longRipplePeriod },
  options: {
    'much-shorter': 'About a third shorter, as before',
    same: 'The same: the tilt is in the other direction',
    longer: 'A little longer',
    'twice-as-long': 'About twice as long',
  },
  answer: ({ period }, ask) => periodChange(period / ask({ set: { [incidence.id]: 0 } }).period),
  errors: [
    {
      id: 'p-for-s',
      reason: prose`That was p polarisation, where the wave runs in the plane of the tilt and the sine is added to its index. Now it runs across that plane.`,
      answer: (_values, ask) => {
        const along = ask({ set: { [polarisationAngle.id]: 0 } }).period;
        return periodChange(along / ask({ set: { [incidence.id]: 0 } }).period);
      },
    },
    {
      id: 'tilt-forgotten',
      reason: prose`Not quite. The light still moves along the surface, sideways to the wave, and takes something of its own: in the chart of the period against the angle, above, the curve of s polarisation rises.`,
      answer: ({ period }) => periodChange(period / period),
    },
    {
      id: 'with-the-light',
      reason: prose`That was the longer of the two periods in p polarisation, from the wave with the light. Across the tilt no wave runs with it, and none against it.`,
      answer: (_values, ask) => {
        const against = ask({ set: { [polarisationAngle.id]: 0 } }).other;
        return periodChange(against / ask({ set: { [incidence.id]: 0 } }).period);
      },
    },
  ],
  explanation: prose`
    Across the tilt the sine enters squared, ${math`\Lambda = \lambda/\sqrt{\eta^2-\sin^2\theta}`}: ${ripplePeriod}, longer than straight down, and only one period. Polarisation and tilt belong together: a period says little until both are written beside it.
  `,
});
