import { focusRadius, unshapedPeak } from '../../lib/design/focus.ts';
import { usedPulseEnergy } from '../../lib/design/losses.ts';
import { plateOutFactor } from '../../lib/design/safety.ts';
import { dip, flatness, peakFluence, width } from '../../lib/design/spot.ts';
import { thresholdFluence } from '../../lib/design/threshold.ts';
import { unshapedPeakFluence, unshapedWidth } from '../../lib/design/unshaped.ts';
import { perSquareCentimetre } from '../columns.ts';
import { profileFigure } from '../matchingFigures.ts';
import { math, prose, term } from '../prose.ts';
import { drawOne, drawStepped } from './draws.ts';
import { gaussianSpotFigure } from './gaussianSpot.ts';
import { diameterOverHalfWidth } from './gaussianWidths.ts';
import { type Lesson, markTask, numberTask } from './lesson.ts';
import { spotAcrossFigure } from './spotAcross.ts';

const gaussian = numberTask({
  id: 'gaussian',
  stage: 'predict',
  question: prose`A pulse of ${usedPulseEnergy} is focused, without a plate, to a Gaussian spot of 1/e² radius ${focusRadius}. **${term('Fluence')}** is the energy on a small area divided by that area. It is not the same everywhere in the spot: over a Gaussian of energy ${math`E`} and 1/e² radius ${math`w_0`} it is highest on the axis, ${math`2E/(\pi w_0^2)`}. How high is that?`,
  unit: 'J/m^2',
  display: 'J/cm^2',
  within: 0.03,
  from: { peak: unshapedPeak, energy: usedPulseEnergy, radius: focusRadius },
  answer: ({ peak }) => peak,
  errors: [
    {
      id: 'mean-for-peak',
      reason: prose`That is the energy over the area of the 1/e² circle: the mean, so to speak. The middle of a Gaussian is twice as high.`,
      answer: ({ energy, radius }) => energy / (Math.PI * radius ** 2),
    },
    {
      id: 'diameter-for-radius',
      reason: prose`The diameter was taken for the radius, which makes the area four times as large. The peak is twice the energy over ${math`\pi`} times the square of the **radius**.`,
      answer: ({ radius }, ask) => ask({ pins: { 'focus.radius': 2 * radius } }).peak,
    },
    {
      id: 'both',
      reason: prose`Two things at once: the diameter was taken for the radius, and the mean for the peak. Together they make a factor of eight.`,
      answer: ({ energy, radius }) => energy / (Math.PI * (2 * radius) ** 2),
    },
    {
      id: 'half-maximum',
      reason: prose`This fits a spot whose diameter at half maximum (FWHM) is twice ${focusRadius}. The radius given is the 1/e² radius: use it as it is.`,
      answer: ({ radius }, ask) => ask({ pins: { 'focus.radius': radius * diameterOverHalfWidth } }).peak,
    },
    {
      id: 'whole-width',
      reason: prose`This fits a spot that is ${focusRadius} wide in all, from side to side at half maximum (FWHM). That length is the 1/e² **radius**: use it as it is.`,
      answer: ({ radius }, ask) =>
        ask({ pins: { 'focus.radius': (radius * diameterOverHalfWidth) / 2 } }).peak,
    },
  ],
  reveals: [gaussianSpotFigure],
  explanation: prose`The peak is ${math`2E/(\pi w_0^2)`}, here ${unshapedPeak}: twice the energy over the area of the 1/e² circle. Both numbers are called fluence in papers. Say which one yours is.`,
});

const shaped = markTask({
  id: 'shaped',
  stage: 'observe',
  question: prose`Now the plate with its step is in. The chart shows the fluence of the shaped spot from its axis outward. Mark its **${term('peak fluence')}** along the upright axis.`,
  figure: spotAcrossFigure,
  along: 'y',
  within: 0.02,
  from: { peak: peakFluence, dip, flatness },
  answer: ({ peak }) => peak * perSquareCentimetre,
  errors: [
    {
      id: 'on-axis',
      reason: prose`That is the fluence on the axis. For a Gaussian the axis is the peak, but this spot has a dip there: the peak is on the ring around it.`,
      answer: ({ peak, dip }) => peak * (1 - dip) * perSquareCentimetre,
    },
    {
      id: 'mean-for-peak',
      reason: prose`That is about the mean over the bright part of the spot. The peak is the highest place of the curve.`,
      answer: ({ peak, flatness }) => peak * flatness * perSquareCentimetre,
    },
    {
      id: 'half',
      reason: prose`That is half of the peak, where the width of a spot is read. Go up to the top of the curve.`,
      answer: ({ peak }) => (peak / 2) * perSquareCentimetre,
    },
  ],
  explanation: prose`The peak fluence is ${peakFluence}. It decides where the material is hit hardest; in the shaped spot that is not the axis.`,
});

const plateOut = numberTask({
  id: 'plate-out',
  stage: 'observe',
  question: prose`The chart shows the same pulse twice: with the plate and, as the thin line, with the plate taken out. Suppose the plate is taken out and the energy left as it is. How many times as high does the peak fluence become? Read both peaks and divide.`,
  shows: [profileFigure],
  unit: '1',
  display: '1',
  within: 0.06,
  from: { factor: plateOutFactor, dip, width, plainWidth: unshapedWidth },
  answer: ({ factor }) => factor,
  errors: [
    {
      id: 'upside-down',
      reason: prose`That is the peak with the plate over the one without. Taking the plate out makes the peak higher: the number must be above 1.`,
      answer: ({ factor }) => 1 / factor,
    },
    {
      id: 'axis-for-peak',
      reason: prose`The curve with the plate was read on its axis, in the dip. Read it where it is highest.`,
      answer: ({ factor, dip }) => factor / (1 - dip),
    },
  ],
  explanation: prose`The peak becomes ${plateOutFactor} times as high, without a change at the laser. Turn the energy down before a plate comes out: for the workpiece, for the optics behind it, and for people.`,
});

const reach = numberTask({
  id: 'reach',
  stage: 'explain',
  question: prose`With the plate in, a pulse of ${usedPulseEnergy} gives a peak fluence of ${peakFluence}. The material is marked where the fluence reaches ${thresholdFluence}. Which pulse energy just leaves a mark, where the spot is highest?`,
  unit: 'J',
  display: 'uJ',
  within: 0.02,
  from: {
    energy: usedPulseEnergy,
    peak: peakFluence,
    plain: unshapedPeakFluence,
    flatness,
    dip,
    threshold: thresholdFluence,
  },
  answer: ({ energy, peak, threshold }) => (energy * threshold) / peak,
  errors: [
    {
      id: 'mean-for-peak',
      reason: prose`With this energy the mean over the bright part of the spot reaches the threshold. Its peak got there before.`,
      answer: ({ energy, peak, flatness, threshold }) => (energy * threshold) / (peak * flatness),
    },
    {
      id: 'on-axis',
      reason: prose`With this energy the axis reaches the threshold. The ring around it has been marked before.`,
      answer: ({ energy, peak, dip, threshold }) => (energy * threshold) / (peak * (1 - dip)),
    },
    {
      id: 'without-plate',
      reason: prose`That energy would do without the plate. With it the same energy lies on a wider spot, and more is needed.`,
      answer: ({ energy, plain, threshold }) => (energy * threshold) / plain,
    },
    {
      id: 'upside-down',
      reason: prose`The fraction is the wrong way round: a threshold below the peak fluence of today needs less energy than today, one above it more.`,
      answer: ({ energy, peak, threshold }) => (energy * peak) / threshold,
    },
  ],
  explanation: prose`Fluence grows in step with the energy of the pulse. So the energy needed is that of today times the threshold over the peak fluence of today.`,
});

/** Peak and mean fluence. */
export const peakAndMean: Lesson = {
  id: 'peak-and-mean',
  title: 'Peak and mean fluence',
  about:
    'You can tell peak from mean fluence, for a Gaussian and for a shaped spot, and work out the energy that a peak needs.',
  minutes: 7,
  draw: (random) => ({
    'plate.stop': 'open',
    'threshold.source': 'typed',
    'threshold.typedFluence': drawStepped(random, 1000, 4000, 100),
    'laser.pulseEnergy': drawStepped(random, 2e-6, 8e-6, 5e-7),
    'expander.magnification': drawStepped(random, 1.8, 2.1, 0.05),
    'lens.focalLength': drawOne(random, [100e-3, 125e-3, 160e-3, 200e-3]),
  }),
  tasks: [gaussian, shaped, plateOut, reach],
};
