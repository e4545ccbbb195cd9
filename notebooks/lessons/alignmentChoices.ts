import { light, workpieceZ } from '../../lib/design/focus.ts';
import { riseOverMean } from '../../lib/optics/decentredCut.ts';
import { math, prose, term } from '../prose.ts';
import { defocusedFigure, inFocusFigure, otherSideFigure, rimsFigure } from './alignmentFigures.ts';
import { choiceTask } from './lesson.ts';
import { missed, missedCut } from './missedMiddle.ts';
import { missedSaid } from './toldNumbers.ts';

/** Less than this between the rims nobody sees. */
const seen = 5e-3;

/** Which rim is the brighter one. */
function brighter(imbalance: number): 'left' | 'right' | 'alike' {
  if (Math.abs(imbalance) < seen) return 'alike';
  return imbalance > 0 ? 'right' : 'left';
}

export const focus = choiceTask({
  id: 'in-focus',
  stage: 'predict',
  question: prose`
    The plate is not quite in the middle of the beam: the beam meets it ${missedSaid} too far to the right. This is called **decentring**. You look at the spot in the ${term('focal plane', 'focus')} of the lens, where a beam without the plate would be smallest. What do you see?
  `,
  reveals: [inFocusFigure],
  from: { light },
  options: {
    right: 'The right side of the spot is brighter',
    left: 'The left side of the spot is brighter',
    alike: 'Both sides are equally bright',
  },
  answer: ({ light }) => brighter(riseOverMean(missedCut(light, 0))),
  errors: [
    {
      id: 'same-side',
      reason: prose`That is what one would expect of a picture of the beam. But in the focus there is no picture of it: light from every part of the plate reaches every part of the spot.`,
      answer: () => brighter(Math.sign(missed)),
    },
    {
      id: 'crossed-over',
      reason: prose`A lens does turn a picture over. But in the focus there is no picture of the beam at all: light from every part of the plate reaches every part of the spot.`,
      answer: () => brighter(-Math.sign(missed)),
    },
  ],
  explanation: prose`
    A plate of half a wave only turns the sign of the light, so the light just behind it is up or down and nothing between. In the focus the spot of such light is always the same seen from opposite sides, however the beam lies on the plate. The shape is changed a little, but **left and right stay alike**: in the focus decentring cannot be seen as an imbalance.
  `,
});

export const otherSide = choiceTask({
  id: 'other-side',
  stage: 'predict',
  question: prose`
    You go through the focus to the other side, as far from it as before. The plate stays as it is. Which rim is the brighter one there?
  `,
  shows: [defocusedFigure],
  reveals: [otherSideFigure],
  from: { light, z: workpieceZ },
  options: { left: 'The left one', right: 'The right one', alike: 'Neither, they are equal' },
  answer: ({ light, z }) => brighter(riseOverMean(missedCut(light, -z))),
  errors: [
    {
      id: 'same-rim',
      reason: prose`The light crosses over in the focus: what went to one side before it goes to the other behind it.`,
      answer: ({ light, z }) => brighter(riseOverMean(missedCut(light, z))),
    },
    {
      id: 'as-in-focus',
      reason: prose`Equal rims belong to the focal plane alone. Out of it the imbalance comes back, on either side.`,
      answer: ({ light }) => brighter(riseOverMean(missedCut(light, 0))),
    },
  ],
  explanation: prose`
    The sides swap. So write down on which side of the focus you look (${math`z`} below 0 is before it, towards the lens), or you move the plate the wrong way and make it worse. Seeing both sides is the surest test: an imbalance that does **not** swap, or that shows in the focus too, comes from something else, such as a warped ${term('wavefront')} or a step that is not half a wave. A beam that is itself brighter on one side swaps just as a decentred one does, so look at the beam too.
  `,
});

/** Where decentring shows, by what is seen in the focus and away from it. */
function shows(inFocus: number, away: number): 'focus' | 'away' | 'either' {
  if (Math.abs(away - inFocus) < seen) return 'either';
  return away > inFocus ? 'away' : 'focus';
}

export const judged = choiceTask({
  id: 'judged',
  stage: 'explain',
  question: prose`
    You centre the plate at the lowest power, with a camera on the spot. In which plane do you judge whether it is in the middle?
  `,
  shows: [inFocusFigure, rimsFigure],
  from: { light, z: workpieceZ },
  options: {
    focus: 'In the focal plane of the lens, where a plain beam is smallest',
    away: 'A little before or behind the focal plane',
    either: 'In any plane, it makes no difference',
  },
  answer: ({ light, z }) => {
    const seenAt = (at: number) => Math.abs(riseOverMean(missedCut(light, at)));
    return shows(seenAt(0), seenAt(z));
  },
  errors: [
    {
      id: 'smallest-spot',
      reason: prose`A plain beam is sharpest there, and yet this plane is blind to the error: left and right stay alike in the focus, as the first chart shows.`,
      answer: ({ light, z }) => {
        const imbalance = Math.abs(riseOverMean(missedCut(light, z)));
        return shows(imbalance, 0);
      },
    },
    {
      id: 'no-difference',
      reason: prose`Hold the two charts against each other: in one of them both sides are equal although the beam is off, in the other they are not.`,
      answer: ({ light, z }) => {
        const imbalance = Math.abs(riseOverMean(missedCut(light, z)));
        return shows(imbalance, imbalance);
      },
    },
  ],
  explanation: prose`
    Out of the focal plane, by about a third of a ${term('Rayleigh length')}, stand two rims that can be compared. Make them equal there, then go back to the plane you work in. Keep to the lowest power, wear eyewear for the wavelength, and put the camera behind attenuators.
  `,
});
