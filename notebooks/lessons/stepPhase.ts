import { wavelength } from '../../lib/design/laser.ts';
import { halfWaveHeight, plateIndex, stepHeight, stepPhase } from '../../lib/design/plate.ts';
import type { Patch } from '../../lib/graph/state.ts';
import { type GlassId, refractiveIndex } from '../../lib/materials/glasses.ts';
import { stepHeightForPhase } from '../../lib/optics/step.ts';
import { profileFigure } from '../matchingFigures.ts';
import { math, prose, term } from '../prose.ts';
import { axisOverPhaseFigure } from './axisOverPhase.ts';
import { delayedWaveFigure } from './delayedWave.ts';
import { drawOne, drawStepped } from './draws.ts';
import { choiceTask, type Lesson, markTask, numberTask } from './lesson.ts';
import { otherThan } from './otherThan.ts';

/** Radians a wave. */
const wave = 2 * Math.PI;

const height = numberTask({
  id: 'height',
  stage: 'predict',
  question: prose`Light is a wave, and glass slows it: by the **${term('refractive index')}** ${math`n`}, here ${plateIndex} at the laser’s wavelength of ${wavelength}. Light that passes through a raised step falls behind the light beside it, which passes the same height in air. The chart shows light that is late by **half a wave**, half of the distance from one crest to the next: crests meet troughs. How high must the step be for that?`,
  shows: [delayedWaveFigure],
  unit: 'm',
  display: 'nm',
  within: 0.02,
  from: { height: halfWaveHeight, wavelength, index: plateIndex },
  answer: ({ height }) => height,
  errors: [
    {
      id: 'vacuum',
      reason: prose`A step of half a wavelength would do if ${math`n`} were 2. The light falls behind the light in air only by ${math`n-1`} for each part of the height, which is less than one here.`,
      answer: ({ wavelength }) => wavelength / 2,
    },
    {
      id: 'glass-only',
      reason: prose`That is half a wavelength as it is in the glass. But the light beside the step moves on too, in air: only the difference counts, ${math`n-1`} in place of ${math`n`}.`,
      answer: ({ wavelength, index }) => wavelength / (2 * index),
    },
    {
      id: 'whole-wave',
      reason: prose`That height makes the light fall behind by a whole wave. Then crests meet crests again, as if there were no step. Half of it is asked.`,
      answer: ({ wavelength, index }) => wavelength / (index - 1),
    },
  ],
  explanation: prose`Over a height ${math`h`} the light in the glass falls behind by ${math`(n-1)\,h`}. Half a wavelength of that takes ${halfWaveHeight}.`,
});

const delays = {
  quarter: 'A quarter of a wave',
  half: 'About half a wave, as before',
  whole: 'About a whole wave: as if there were no step',
  oneAndHalf: 'About one wave and a half: it works like half a wave',
} as const;

/** The option whose delay lies nearest. */
function nearestDelay(phase: number): keyof typeof delays {
  const waves = { quarter: 0.25, half: 0.5, whole: 1, oneAndHalf: 1.5 };
  const keys = Object.keys(waves) as (keyof typeof delays)[];
  const far = (key: keyof typeof delays) => Math.abs(waves[key] - phase / wave);
  return keys.reduce((best, key) => (far(key) < far(best) ? key : best));
}

const harmonic = choiceTask({
  id: 'harmonic',
  stage: 'predict',
  set: (drawn) => ({ 'laser.wavelength': laserOf(drawn).harmonic }),
  question: prose`The plate is made for that wavelength, with a step ${stepHeight} high. Now crystals behind the laser turn its light into light of a shorter wavelength, ${wavelength}, and the same plate stays in. By how much does the light through the step fall behind now?`,
  options: delays,
  otherwise: {
    whole: prose`So it would be at half the first wavelength. Divide the first wavelength by the new one: that many times half a wave it is now, and a little more.`,
    oneAndHalf: prose`So it would be at a third of the first wavelength. Divide the first wavelength by the new one: that many times half a wave it is now, and a little more.`,
  },
  from: { phase: stepPhase },
  answer: ({ phase }) => nearestDelay(phase),
  errors: [
    {
      id: 'unchanged',
      reason: prose`The step keeps its height, and the light falls behind by nearly the same length. But a wave is shorter now, so that the same length is a larger part of it.`,
      answer: ({ phase }) => otherThan(nearestDelay(phase), nearestDelay(wave / 2)),
    },
    {
      id: 'wrong-way',
      reason: prose`A shorter wavelength does not make the delay a smaller part of a wave. The length stays nearly the same and the wave is shorter: it is a larger part.`,
      answer: ({ phase }) => otherThan(nearestDelay(phase), nearestDelay((wave / 2) ** 2 / phase)),
    },
  ],
  reveals: [profileFigure],
  explanation: prose`The plate now delays by ${stepPhase}. Whole waves do not count, since crests meet crests; what is left over does. A plate is made for one wavelength.`,
});

const place = markTask({
  id: 'place',
  stage: 'observe',
  set: (drawn) => ({ 'laser.wavelength': laserOf(drawn).other }),
  question: prose`The same plate again, with its step of ${stepHeight}, half a wave for its first laser. It is lent to a lab whose laser has a wavelength of ${wavelength}. The chart shows how bright the middle of the focus is for any delay. Mark the delay at which this plate stands there. For both lasers the glass has nearly the same refractive index.`,
  figure: axisOverPhaseFigure,
  along: 'x',
  within: 0.02,
  from: { phase: stepPhase, wavelength },
  answer: ({ phase }) => phase / wave,
  errors: [
    {
      id: 'unchanged',
      reason: prose`At half a wave it stood with the first laser. The length by which the light falls behind stays, but the wave it is compared with has another length now.`,
      answer: () => 0.5,
    },
    {
      id: 'upside-down',
      reason: prose`That is the wrong way round. With a longer wavelength the same length is a smaller part of a wave, with a shorter one a larger part.`,
      answer: ({ phase }) => 0.25 / (phase / wave),
    },
    {
      id: 'in-pi',
      reason: prose`That is the delay in units of π. The chart counts in whole waves, and a whole wave is 2π: halve it.`,
      answer: ({ phase }) => phase / Math.PI,
    },
  ],
  explanation: prose`For this laser the step is worth ${stepPhase}. The middle of the focus is brighter than at half a wave, and no size of the beam makes it dark.`,
});

const made = numberTask({
  id: 'made',
  stage: 'explain',
  set: (drawn) => ({
    'plate.madeHeight': roundedHeight(
      drawn['plate.designPhase'] as number,
      laserOf(drawn).other,
      drawn['plate.glass'] as GlassId,
    ),
  }),
  question: prose`A new plate is made for that laser, of the same glass. Measured, its step is ${stepHeight} high. At ${wavelength} its glass has a refractive index of ${plateIndex}. By how many waves does the light fall behind?`,
  unit: 'rad',
  display: 'waves',
  within: 0.02,
  from: { phase: stepPhase, height: stepHeight, wavelength, index: plateIndex },
  answer: ({ phase }) => phase,
  errors: [
    {
      id: 'vacuum',
      reason: prose`That is how many waves the height is in air. The light falls behind only by the difference between glass and air: multiply by ${math`n-1`}.`,
      answer: ({ height, wavelength }) => (wave * height) / wavelength,
    },
    {
      id: 'glass-only',
      reason: prose`That is how many waves fit into the step in the glass. As many as fit into the same height of air have passed beside it: ${math`n-1`} counts, not ${math`n`}.`,
      answer: ({ height, wavelength, index }) => (wave * height * index) / wavelength,
    },
    {
      id: 'upside-down',
      reason: prose`That is the wavelength over what the light falls behind. It is the other way round: how many waves are in that length.`,
      answer: ({ phase }) => wave ** 2 / phase,
    },
    {
      id: 'twice',
      reason: prose`That is twice as much, as if the light passed the step to and fro. It passes once.`,
      answer: ({ phase }) => 2 * phase,
    },
  ],
  explanation: prose`${math`(n-1)\,h/\lambda`} gives ${stepPhase}. A step that misses half a wave leaves light in the middle of the focus that nothing cancels, and makes the two sides of the focus differ.`,
});

/** Wavelengths of a laser, of a harmonic of it, and of another laser that the plate is lent to. */
interface Laser {
  readonly first: number;
  readonly harmonic: number;
  readonly other: number;
}

const lasers: readonly [Laser, ...Laser[]] = [
  { first: 1.03e-6, harmonic: 515e-9, other: 800e-9 },
  { first: 1.04e-6, harmonic: 520e-9, other: 775e-9 },
  { first: 1.064e-6, harmonic: 355e-9, other: 800e-9 },
  { first: 800e-9, harmonic: 400e-9, other: 1.03e-6 },
  { first: 775e-9, harmonic: 387e-9, other: 1.064e-6 },
];

const laserOf = (drawn: Patch) => lasers.find(({ first }) => first === drawn['laser.wavelength'])!;

/** Height of a step of that delay, rounded to a nanometre as a microscope tells it. */
function roundedHeight(phase: number, wavelength: number, glassId: GlassId): number {
  const height = stepHeightForPhase(phase, wavelength, refractiveIndex(glassId, wavelength));
  return Number(height.toFixed(9));
}

/** Phase: half a wave, and what it is at another wavelength. */
export const stepPhaseLesson: Lesson = {
  id: 'step-phase',
  title: 'Half a wave, and for which light',
  about:
    'You can work out the height of a step, and say what the same step does to light of another wavelength.',
  minutes: 8,
  draw: (random) => {
    const { first } = drawOne(random, lasers);
    const material = drawOne<GlassId>(random, ['fusedSilica', 'calciumFluoride', 'sapphire']);
    return {
      'laser.wavelength': first,
      // At a step ratio of 0.83, with nothing that cuts the beam, half a wave makes the middle dark.
      'plate.stop': 'open',
      'laser.pulseEnergy': 1e-6,
      'expander.magnification': 2.4,
      'plate.glass': material,
      'plate.source': 'made',
      'plate.madeHeight': roundedHeight(wave / 2, first, material),
      // What the plate of the last task comes out at.
      'plate.designPhase': wave * drawStepped(random, 0.4, 0.6, 0.01),
    };
  },
  tasks: [height, harmonic, place, made],
};
