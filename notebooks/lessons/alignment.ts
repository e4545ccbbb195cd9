import { light, workpieceZ } from '../../lib/design/focus.ts';
import type { Random } from '../../lib/numerics/random.ts';
import { micro } from '../columns.ts';
import { math, prose, says } from '../prose.ts';
import { lengthText } from '../shortTexts.ts';
import { defocusedFigure, inFocusFigure, otherSideFigure, rimsFigure } from './alignmentFigures.ts';
import { decentredCut, imbalanceOf, missed, rimsOf } from './decentredProfile.ts';
import { choiceTask, type Lesson, markTask, numberTask } from './lesson.ts';
import { rounded } from './rounded.ts';

/** A matched plate without a stop, the workpiece before or behind the focus where a shallow ring stands. */
function draw(random: Random) {
  const beamRadius = rounded(random.between(4e-3, 6e-3), 2);
  const focalLength = rounded(random.between(0.08, 0.15), 2);
  const length = (1.03e-6 * focalLength ** 2) / (Math.PI * beamRadius ** 2);
  const side = random.uniform() < 0.5 ? -1 : 1;
  return {
    'laser.beamDiameter': beamRadius,
    'plate.stepDiameter': 2 * beamRadius,
    'plate.stop': 'open',
    'lens.focalLength': focalLength,
    'workpiece.z': rounded(side * random.between(0.34, 0.4) * length, 2),
  };
}

const offset = says({ light }, () => lengthText(missed));
const where = says({ z: workpieceZ }, ({ z }) => `${lengthText(Math.abs(z))} ${z < 0 ? 'before' : 'behind'}`);

/** Less than this between the rims nobody sees. */
const seen = 5e-3;

/** Which rim is the brighter one. */
function brighter(imbalance: number): 'left' | 'right' | 'alike' {
  if (Math.abs(imbalance) < seen) return 'alike';
  return imbalance > 0 ? 'right' : 'left';
}

const focus = choiceTask({
  id: 'in-focus',
  stage: 'predict',
  question: prose`
    The plate is not quite in the middle of the beam: the beam meets it ${offset} too far to the right. This is called **decentring**. You look at the spot in the focus of the lens, where it is smallest. What do you see?
  `,
  reveals: [inFocusFigure],
  from: { light },
  options: {
    right: 'The right side of the spot is brighter',
    left: 'The left side of the spot is brighter',
    alike: 'Both sides are equally bright',
  },
  answer: ({ light }) => brighter(imbalanceOf(decentredCut(light, 0))),
  errors: [
    {
      id: 'same-side',
      reason: prose`That is what one would expect of a picture of the beam. But in the focus there is no picture of it: light from every part of the plate reaches every part of the spot.`,
      answer: () => brighter(missed),
    },
    {
      id: 'crossed-over',
      reason: prose`A lens does turn a picture over. But in the focus there is no picture of the beam at all: light from every part of the plate reaches every part of the spot.`,
      answer: () => brighter(-missed),
    },
  ],
  explanation: prose`
    A plate of half a wave only turns the sign of the light, so the light just behind it is up or down and nothing between. In the focus the spot of such light is always the same seen from opposite sides, however the beam lies on the plate. The shape is changed a little, but **left and right stay alike**: in the focus decentring cannot be seen as an imbalance.
  `,
});

const highest = markTask({
  id: 'highest',
  stage: 'observe',
  question: prose`
    Now the workpiece stands ${where} the focus, where the spot is a shallow ring with a **rim** on either side. The beam is still ${offset} too far right on the plate. Mark the place where the fluence is highest.
  `,
  figure: defocusedFigure,
  along: 'x',
  within: 0.05,
  from: { light, z: workpieceZ },
  answer: ({ light, z }) => {
    const { left, right } = rimsOf(decentredCut(light, z));
    return micro * (left.irradiance > right.irradiance ? left.x : right.x);
  },
  errors: [
    {
      id: 'lower-rim',
      reason: prose`That is the lower of the two rims. Compare their heights: hold the full line against the line of the beam in the middle of the plate.`,
      answer: ({ light, z }) => {
        const { left, right } = rimsOf(decentredCut(light, z));
        return micro * (left.irradiance > right.irradiance ? right.x : left.x);
      },
    },
    {
      id: 'axis',
      reason: prose`That is the axis, where a ring has its dip. The highest fluence lies on one of the two rims.`,
      answer: () => 0,
    },
  ],
  explanation: prose`
    Out of the focus the two rims differ. Which of them is the brighter one tells on which side of the middle the beam meets the plate, if you know on which side of the focus you look.
  `,
});

const imbalance = numberTask({
  id: 'imbalance',
  stage: 'observe',
  question: prose`
    A number is better than an impression. Take the difference of the two rims over their **mean**. How large is this imbalance?
  `,
  shows: [rimsFigure],
  from: { light, z: workpieceZ },
  unit: '1',
  display: '%',
  within: 0.08,
  answer: ({ light, z }) => Math.abs(imbalanceOf(decentredCut(light, z))),
  errors: [
    {
      id: 'over-sum',
      reason: prose`You have divided by the sum of the rims. Their mean is half the sum, so the imbalance is twice as large.`,
      answer: ({ light, z }) => Math.abs(imbalanceOf(decentredCut(light, z))) / 2,
    },
    {
      id: 'ratio',
      reason: prose`That is one rim over the other. The imbalance is what it differs by: with equal rims it would be 0 and not 100 %.`,
      answer: ({ light, z }) => {
        const { left, right } = rimsOf(decentredCut(light, z));
        const heights = [left.irradiance, right.irradiance];
        return Math.max(...heights) / Math.min(...heights);
      },
    },
  ],
  explanation: prose`
    A few per cent for a beam that is off by a twentieth of its radius: enough to be seen on a camera, and it shrinks in step with the decentring. Move the plate until nothing is left.
  `,
});

const otherSide = choiceTask({
  id: 'other-side',
  stage: 'predict',
  question: prose`
    You go through the focus to the other side, as far from it as before. The plate stays as it is. Which rim is the brighter one there?
  `,
  shows: [defocusedFigure],
  reveals: [otherSideFigure],
  from: { light, z: workpieceZ },
  options: { left: 'The left one', right: 'The right one', alike: 'Neither, they are equal' },
  answer: ({ light, z }) => brighter(imbalanceOf(decentredCut(light, -z))),
  errors: [
    {
      id: 'same-rim',
      reason: prose`The light crosses over in the focus: what went to one side before it goes to the other behind it.`,
      answer: ({ light, z }) => brighter(imbalanceOf(decentredCut(light, z))),
    },
    {
      id: 'as-in-focus',
      reason: prose`Equal rims belong to the focal plane alone. Out of it the imbalance comes back, on either side.`,
      answer: ({ light }) => brighter(imbalanceOf(decentredCut(light, 0))),
    },
  ],
  explanation: prose`
    The sides swap. So write down on which side of the focus you look (${math`z`} below 0 is before it, towards the lens), or you move the plate the wrong way and make it worse. Seeing both sides is the surest test: an imbalance that does **not** swap comes from something else, such as an uneven beam.
  `,
});

/** Where decentring shows, by what is seen in the focus and away from it. */
function shows(inFocus: number, away: number): 'focus' | 'away' | 'either' {
  if (Math.abs(away - inFocus) < seen) return 'either';
  return away > inFocus ? 'away' : 'focus';
}

const judged = choiceTask({
  id: 'judged',
  stage: 'explain',
  question: prose`
    You centre the plate at the lowest power, with a camera on the spot. In which plane do you judge whether it is in the middle?
  `,
  shows: [inFocusFigure, rimsFigure],
  from: { light, z: workpieceZ },
  options: {
    focus: 'In the focus, where the spot is smallest and brightest',
    away: 'A little away from the focus, where the rim shows',
    either: 'In any plane, it makes no difference',
  },
  answer: ({ light, z }) => {
    const seenAt = (at: number) => Math.abs(imbalanceOf(decentredCut(light, at)));
    return shows(seenAt(0), seenAt(z));
  },
  errors: [
    {
      id: 'smallest-spot',
      reason: prose`There the spot is sharp, and yet blind to this error: left and right stay alike in the focus, as the first chart shows.`,
      answer: ({ light, z }) => {
        const imbalance = Math.abs(imbalanceOf(decentredCut(light, z)));
        return shows(imbalance, 0);
      },
    },
    {
      id: 'no-difference',
      reason: prose`Hold the two charts against each other: in one of them both sides are equal although the beam is off, in the other they are not.`,
      answer: ({ light, z }) => {
        const imbalance = Math.abs(imbalanceOf(decentredCut(light, z)));
        return shows(imbalance, imbalance);
      },
    },
  ],
  explanation: prose`
    Away from the focus, about a third of a Rayleigh length or wherever the rim shows best. Make the rims equal there, then go back to the plane you work in. With the lowest power, eyewear for the wavelength, and the camera behind attenuators.
  `,
});

export const alignment: Lesson = {
  id: 'alignment',
  title: 'Is the plate in the middle?',
  about:
    'Choose the plane in which a plate that is off the middle of the beam shows, and tell which way it is off.',
  minutes: 7,
  draw,
  tasks: [focus, highest, imbalance, otherSide, judged],
};
