import { repetitionRate } from '../../lib/design/laser.ts';
import { unshapedMarkDiameter } from '../../lib/design/marks.ts';
import { unshapedPulsesPerSpot, unshapedSpotDiameter } from '../../lib/design/pulsesOnPlace.ts';
import { pulseSpacing, scanSpeed } from '../../lib/design/scanInputs.ts';
import { thresholdFluence, typedThreshold } from '../../lib/design/threshold.ts';
import { unshapedPeakFluence } from '../../lib/design/unshaped.ts';
import { math, prose } from '../prose.ts';
import { choiceTask } from './lesson.ts';
import { otherThan } from './otherThan.ts';
import { pulsesOnLineFigure, sharesAboveFigure, sharesFigure } from './pulsesAndDoseFigures.ts';

/** What becomes of a count. */
function change(factor: number): 'half' | 'same' | 'twice' {
  if (factor < 0.7) return 'half';
  return factor > 1.4 ? 'twice' : 'same';
}

export const faster = choiceTask({
  id: 'faster',
  stage: 'predict',
  question: prose`
    A scanner moves the spot of a plain beam, without the plate, at ${scanSpeed}. The laser fires at ${repetitionRate} (a kilohertz is a thousand pulses a second). Somebody doubles **both**, speed and repetition rate. How many pulses then fall on each place?
  `,
  shows: [pulsesOnLineFigure],
  from: { count: unshapedPulsesPerSpot, speed: scanSpeed, rate: repetitionRate },
  options: { half: 'Half as many', same: 'As many as before', twice: 'Twice as many' },
  answer: ({ count, speed, rate }, ask) =>
    change(ask({ set: { [scanSpeed.id]: 2 * speed, [repetitionRate.id]: 2 * rate } }).count / count),
  errors: [
    {
      id: 'speed-alone',
      reason: prose`So it would be if the speed alone were doubled. But the laser fires twice as often as well.`,
      answer: ({ count, speed }, ask) => change(ask({ set: { [scanSpeed.id]: 2 * speed } }).count / count),
    },
    {
      id: 'rate-alone',
      reason: prose`So it would be if the laser alone fired twice as often. But the spot also leaves each place twice as fast.`,
      answer: ({ count, rate }, ask) => change(ask({ set: { [repetitionRate.id]: 2 * rate } }).count / count),
    },
  ],
  explanation: prose`
    What counts is the distance from one pulse to the next, the **pulse spacing** ${math`p = v/f`}: speed over repetition rate, here ${pulseSpacing}. Double both and the picture stays as it is; only the time is halved, and the average power doubled.
  `,
});

/** What part of the pulses that touch a place is above the threshold there. */
function share(part: number): 'all' | 'most' | 'few' | 'none' {
  if (part <= 0) return 'none';
  if (part < 0.5) return 'few';
  return part < 0.97 ? 'most' : 'all';
}

export const counting = choiceTask({
  id: 'counting',
  stage: 'explain',
  question: prose`
    The peak fluence of each pulse is ${unshapedPeakFluence}, the threshold ${thresholdFluence}. A pulse does something to a place only where its fluence **there** is above the threshold. Of the ${unshapedPulsesPerSpot} pulses per spot that a line brings to a place on it, how many are above?
  `,
  shows: [sharesFigure],
  reveals: [sharesAboveFigure],
  from: { mark: unshapedMarkDiameter, diameter: unshapedSpotDiameter, threshold: typedThreshold },
  options: {
    all: 'All of them',
    most: 'More than half of them',
    few: 'Some, fewer than half of them',
    none: 'None of them',
  },
  otherwise: {
    most: prose`The peak is only a little above the threshold, so each pulse marks a disc that is narrower than half the 1/e² diameter. Only pulses whose disc covers the place are above there.`,
    few: prose`The peak is well above the threshold, so each pulse marks a disc that is wider than half the 1/e² diameter. All pulses whose disc covers the place are above there.`,
    none: prose`The peak is above the threshold, and the pulse right over the place brings its peak there: that one is above at least, and some of its neighbours with it.`,
  },
  answer: ({ mark, diameter }) => share(mark / diameter),
  errors: [
    {
      id: 'all-that-touch',
      reason: prose`All of them touch the place, but those that lie further away bring only their flank there, and that stays below the threshold.`,
      answer: ({ diameter }) => share(diameter / diameter),
    },
    {
      id: 'mean-for-peak',
      reason: prose`You have taken half the peak, the energy over the area of the 1/e² circle. A place feels what falls on that place: right under the middle of the spot the whole peak.`,
      answer: ({ mark, threshold, diameter }, ask) =>
        otherThan(
          share(mark / diameter),
          share(ask({ set: { [typedThreshold.id]: 2 * threshold } }).mark / diameter),
        ),
    },
  ],
  explanation: prose`
    Each pulse marks a disc ${unshapedMarkDiameter} wide, and a place is above the threshold in those pulses whose disc covers it. So there are three counts, and each answers a question of its own: pulses per spot (how many touch), full peaks (how much energy), and pulses above the threshold (how many act). In these pages bounds for ripples, such as “ten pulses at least”, mean the last; papers often mean the first.
  `,
});
