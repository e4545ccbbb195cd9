import { wavelength } from '../../lib/design/laser.ts';
import { barePeriods, expectedPeriods, rippleDirection } from '../../lib/design/rippleDirection.ts';
import { ambientIndex, incidence, polarisationAngle } from '../../lib/design/rippleInputs.ts';
import { longRipplePeriod, ripplePeriod, waveOnSurface } from '../../lib/design/ripples.ts';
import type { Random } from '../../lib/numerics/random.ts';
import { math, prose, says } from '../prose.ts';
import { directionFigure } from '../rippleDirectionFigure.ts';
import { periodIncidenceFigure, periodWavelengthFigure } from '../rippleFigures.ts';
import { choiceTask, type Lesson, numberTask } from './lesson.ts';
import { polarisationFigure } from './polarisationFigure.ts';
import { measuredPlace, periodChange, ridgesRun } from './ripplePeriodWords.ts';

const degree = Math.PI / 180;
const surfaces = ['stainless', 'nickel', 'copper', 'titanium'] as const;
const wavelengths = [800e-9, 1030e-9, 1064e-9] as const;
const one = <T>(random: Random, of: readonly T[]): T => of[Math.floor(of.length * random.uniform())]!;

/** A metal to which a wave is bound, a wavelength, and a polarisation askew to the scan. */
const draw = (random: Random) => ({
  'workpiece.material': one(random, surfaces),
  'laser.wavelength': one(random, wavelengths),
  'laser.polarisationAngle': 5 * degree * Math.round(random.between(4, 14)),
});

/** The index of the wave along the surface, its real part. */
const index = says({ wave: waveOnSurface }, ({ wave }) => wave.index.toFixed(3));

const ridges = choiceTask({
  id: 'ridges',
  stage: 'predict',
  question: prose`
    **Ripples** are fine ridges that polarised pulses leave on a metal, about a wavelength apart. The arrow with two heads in the picture is the **polarisation**, the direction in which the electric field swings; here it lies at ${polarisationAngle} to the scan. Which way do the ridges run?
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
  ],
  explanation: prose`
    The field drives a wave along the surface in its own direction, and the ridges lie across that wave: at right angles to the polarisation, here at ${rippleDirection} to the scan. So a half-wave plate in the beam turns the ripples; turning the scan does not.
  `,
});

const measured = choiceTask({
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
      reason: prose`The model is for a cold and smooth surface. By the hundredth pulse the surface is hot, oxidised and no longer smooth, and ripples are found shorter.`,
      answer: ({ model, wavelength }) => measuredPlace(model, model, wavelength),
    },
    {
      id: 'other-mechanism',
      reason: prose`Such fine ripples do exist, but they have another cause. The ones that come from the wave along the surface stay near the wavelength.`,
      answer: ({ expected: { low }, model, wavelength }) => measuredPlace(low / 2, model, wavelength),
    },
  ],
  explanation: prose`
    Measured periods lie 5 to 30 % below the **wavelength**, here at ${expectedPeriods}, and fall with the number of pulses. The model is a starting point: for the direction, for what water or a tilt changes, not for the last per cent.
  `,
});

const water = numberTask({
  id: 'water',
  stage: 'observe',
  set: { [ambientIndex.id]: 1.33 },
  question: prose`
    Now the surface lies under water. There the wave along it has an **index** of ${index}: it is that many times shorter than light of ${wavelength} in vacuum. The light still falls straight down. What period does the model give?
  `,
  from: { period: ripplePeriod, wave: waveOnSurface, bare: barePeriods, wavelength },
  unit: 'm',
  display: 'nm',
  within: 0.03,
  answer: ({ period }) => period,
  errors: [
    {
      id: 'vacuum',
      reason: prose`That is the period in air, about the wavelength in vacuum. Under water the wave is shorter: divide the wavelength by the index.`,
      answer: (_values, ask) => ask({ set: { [ambientIndex.id]: 1 } }).bare.short,
    },
    {
      id: 'multiplied',
      reason: prose`You have multiplied by the index. In water the wave is **shorter** than in vacuum: divide.`,
      answer: ({ wave, wavelength }) => wavelength * wave.index,
    },
  ],
  explanation: prose`
    The period is the wavelength in vacuum over the index of the wave: ${ripplePeriod}. A laser’s wavelength is stated in vacuum, so whatever happens in a medium needs its index. Measured ripples under water are finer as well.
  `,
});

const tilted = numberTask({
  id: 'tilted',
  stage: 'observe',
  set: { [ambientIndex.id]: 1, [polarisationAngle.id]: 0, [incidence.id]: 30 * degree },
  question: prose`
    Back in air, the workpiece is tilted: the light of ${wavelength} comes in at ${incidence} to the upright on the surface, and the field swings in the plane of the tilt (**p polarisation**). Light now has a part of its own along the surface, and there are two periods. The shorter one is ${math`\Lambda = \lambda/(\eta + \sin\theta)`}, with ${math`\eta =`} ${index}, the index of the wave. How long is it?
  `,
  reveals: [periodIncidenceFigure],
  from: { period: ripplePeriod, other: longRipplePeriod, wave: waveOnSurface, angle: incidence, wavelength },
  unit: 'm',
  display: 'nm',
  within: 0.03,
  answer: ({ period }) => period,
  errors: [
    {
      id: 'sine-forgotten',
      reason: prose`That is the period of light that falls straight down. Add the sine of the angle to the index before you divide.`,
      answer: (_values, ask) => ask({ set: { [incidence.id]: 0 } }).period,
    },
    {
      id: 'against-the-light',
      reason: prose`That is the longer of the two, from the wave that runs against the light: there the sine is taken away. For the shorter one it is added.`,
      answer: ({ other }) => other,
    },
    {
      id: 'cosine',
      reason: prose`You have taken the cosine. The angle is counted from the upright on the surface, and what the light has **along** the surface is its sine.`,
      answer: ({ wavelength, wave, angle }) => wavelength / (wave.index + Math.cos(angle)),
    },
  ],
  explanation: prose`
    The wave that runs with the light gives ${ripplePeriod}, the one against it ${longRipplePeriod}. In the chart the two part from one place at 0°. So a tilt of the workpiece makes ripples of another period; it is a setting to write down.
  `,
});

const crossed = choiceTask({
  id: 'crossed',
  stage: 'explain',
  set: { [polarisationAngle.id]: 90 * degree },
  question: prose`
    The tilt stays, and the polarisation is turned by 90°: the field now swings **across** the plane of the tilt (s polarisation), and so the wave runs across it too. How does the period compare with the one without a tilt?
  `,
  shows: [polarisationFigure],
  reveals: [directionFigure],
  from: { period: ripplePeriod },
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
      reason: prose`Not quite. The light still moves along the surface, sideways to the wave, and takes something of its own: in the chart of before the curve of s polarisation rises.`,
      answer: ({ period }) => periodChange(period / period),
    },
  ],
  explanation: prose`
    Across the tilt the sine enters squared, ${math`\Lambda = \lambda/\sqrt{\eta^2-\sin^2\theta}`}: ${ripplePeriod}, longer than straight down, and only one period. Polarisation and tilt belong together: a period says little until both are written beside it.
  `,
});

export const ripplePeriodLesson: Lesson = {
  id: 'ripple-period',
  title: 'How far apart ripples lie',
  about: 'Say which way ripples run and about how far apart, in air, under water and on a tilted workpiece.',
  minutes: 7,
  draw,
  tasks: [ridges, measured, water, tilted, crossed],
};
