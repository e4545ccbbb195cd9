import { light, workpieceZ } from '../../lib/design/focus.ts';
import type { Random } from '../../lib/numerics/random.ts';
import { rimsOf, riseOverMean } from '../../lib/optics/decentredCut.ts';
import type { Light } from '../../lib/optics/light.ts';
import { micro } from '../columns.ts';
import { prose, term } from '../prose.ts';
import { focus, judged, otherSide } from './alignmentChoices.ts';
import { defocusedFigure, rimsFigure } from './alignmentFigures.ts';
import { type Lesson, markTask, numberTask } from './lesson.ts';
import { missedCut } from './missedMiddle.ts';
import { rounded } from './rounded.ts';
import { besideFocusSaid, missedSaid } from './toldNumbers.ts';

/** A matched plate without a stop, the workpiece before or behind the focus where a ring stands. */
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

const highest = markTask({
  id: 'highest',
  stage: 'observe',
  question: prose`
    Now the workpiece stands ${besideFocusSaid} the focus, where the spot is a ${term('ring')} with a **rim** on either side. The beam is still ${missedSaid} too far right on the plate. Mark the place where the fluence is highest.
  `,
  figure: defocusedFigure,
  along: 'x',
  within: 0.04,
  from: { light, z: workpieceZ },
  answer: ({ light, z }) => {
    const { left, right } = rimsOf(missedCut(light, z));
    return micro * (left.irradiance > right.irradiance ? left.x : right.x);
  },
  errors: [
    {
      id: 'lower-rim',
      reason: prose`That is the lower of the two rims. Compare their heights: hold the full line against the line of the beam in the middle of the plate.`,
      answer: ({ light, z }) => {
        const { left, right } = rimsOf(missedCut(light, z));
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

/** The higher rim over the lower one. */
function rimRatio(light: Light, z: number): number {
  const { left, right } = rimsOf(missedCut(light, z));
  const heights = [left.irradiance, right.irradiance];
  return Math.max(...heights) / Math.min(...heights);
}

const oneOverOther = prose`That is one rim over the other. The imbalance is what it differs by: with equal rims it would be 0 and not 100 %.`;

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
  answer: ({ light, z }) => Math.abs(riseOverMean(missedCut(light, z))),
  errors: [
    {
      id: 'over-sum',
      reason: prose`You have divided by the sum of the rims. Their mean is half the sum, so the imbalance is twice as large.`,
      answer: ({ light, z }) => Math.abs(riseOverMean(missedCut(light, z))) / 2,
    },
    { id: 'ratio', reason: oneOverOther, answer: ({ light, z }) => rimRatio(light, z) },
    { id: 'ratio-turned', reason: oneOverOther, answer: ({ light, z }) => 1 / rimRatio(light, z) },
  ],
  explanation: prose`
    Several per cent for a beam that is off by about a twentieth of its radius: enough to be seen on a camera, and it shrinks in step with the decentring. Move the plate until nothing is left.
  `,
});

export const alignment: Lesson = {
  id: 'alignment',
  title: 'Is the plate in the middle?',
  about:
    'You can choose the plane in which a plate that is off the middle of the beam shows, and tell which way it is off.',
  minutes: 7,
  draw,
  tasks: [focus, highest, imbalance, otherSide, judged],
};
