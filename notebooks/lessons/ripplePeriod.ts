import { wavelength } from '../../lib/design/laser.ts';
import { barePeriods } from '../../lib/design/rippleDirection.ts';
import { ambientIndex, incidence, polarisationAngle } from '../../lib/design/rippleInputs.ts';
import { longRipplePeriod, ripplePeriod, waveOnSurface } from '../../lib/design/ripples.ts';
import type { Random } from '../../lib/numerics/random.ts';
import { math, prose } from '../prose.ts';
import { periodIncidenceFigure } from '../rippleFigures.ts';
import { drawOne } from './draws.ts';
import { type Lesson, numberTask } from './lesson.ts';
import { crossed, measured, ridges } from './ripplePeriodChoices.ts';
import { waveIndexSaid } from './toldNumbers.ts';

const degree = Math.PI / 180;
const surfaces = ['stainless', 'nickel', 'copper', 'titanium'] as const;
const wavelengths = [800e-9, 1030e-9, 1064e-9] as const;

/** A metal to which a wave is bound, a wavelength, and a polarisation askew to the scan. */
const draw = (random: Random) => ({
  'workpiece.material': drawOne(random, surfaces),
  'laser.wavelength': drawOne(random, wavelengths),
  'laser.polarisationAngle': 5 * degree * Math.round(random.between(4, 14)),
});

const water = numberTask({
  id: 'water',
  stage: 'observe',
  set: { [ambientIndex.id]: 1.33 },
  question: prose`
    Now the surface lies under water. There the wave along it has an **index** of ${waveIndexSaid}: it is that many times shorter than light of ${wavelength} in vacuum. The light still falls straight down. What period does the model give?
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
    Back in air, the workpiece is tilted along the scan: the light of ${wavelength} comes in at ${incidence} to the upright on the surface. The field swings along the scan too, in the plane of the tilt; that is called **p polarisation**. Light now has a part of its own along the surface, and there are two periods. The shorter one is ${math`\Lambda = \lambda/(\eta + \sin\theta)`}, with ${math`\eta =`} ${waveIndexSaid}, the index of the wave. How long is it?
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
      id: 'with-the-light',
      reason: prose`That is the longer of the two, from the wave that runs with the light: the two stay in step for longer, so the sine is taken away. For the shorter one it is added.`,
      answer: ({ other }) => other,
    },
    {
      id: 'cosine',
      reason: prose`You have taken the cosine. The angle is counted from the upright on the surface, and what the light has **along** the surface is its sine.`,
      answer: ({ wavelength, wave, angle }) => wavelength / (wave.index + Math.cos(angle)),
    },
  ],
  explanation: prose`
    The wave that runs against the light gives ${ripplePeriod}, the one with it ${longRipplePeriod}. In the chart the two part from one place at 0°. So a tilt of the workpiece makes ripples of another period; it is a setting to write down.
  `,
});

export const ripplePeriodLesson: Lesson = {
  id: 'ripple-period',
  title: 'How far apart ripples lie',
  about:
    'You can say which way ripples run and about how far apart, in air, under water and on a tilted workpiece.',
  minutes: 7,
  draw,
  tasks: [ridges, measured, water, tilted, crossed],
};
