import { type AxisCurves, axisCurves } from '../../lib/design/familyMap.ts';
import { rayleighLength, zeroCurvaturePlanes } from '../../lib/design/focus.ts';
import { focalLength, plateDistance } from '../../lib/design/lens.ts';
import { stepPhase } from '../../lib/design/plate.ts';
import { peakFluence } from '../../lib/design/spot.ts';
import { math, prose, term } from '../prose.ts';
import { axisCurveFigure, milli } from '../throughFocusFigures.ts';
import { drawOne, drawStepped } from './draws.ts';
import { type Ask, choiceTask, type Lesson, markTask, numberTask } from './lesson.ts';
import { otherThan } from './otherThan.ts';
import { stillFigure } from './stillFigure.ts';

/** The axis through the focus, to be read off. */
const axisFigure = stillFigure(
  axisCurveFigure,
  'Fluence of one pulse on the axis along z, with the plate and with the plate taken out.',
);

/** Radians a wave. */
const wave = 2 * Math.PI;

/** Places by how near they are to the focus, the nearest first. */
const byNearness = (places: readonly number[]) => places.toSorted((a, b) => Math.abs(a) - Math.abs(b));

const nearest = numberTask({
  id: 'nearest',
  stage: 'predict',
  question: prose`Places along the beam are told by ${math`z`}: 0 in the ${term('focal plane', 'focus')} of the lens, plus **behind** it (away from the lens), minus **before** it. A ${term('plate')} whose middle is raised, so that light through it comes ${stepPhase} late, gives the chart below, and spots whose middle is level (neither a peak nor a hollow) at ${zeroCurvaturePlanes}. Instead of it you are sent a plate with the **ring around the middle raised**, by the same height. Where is the level place nearest to the focus now? Type it with its sign.`,
  shows: [axisFigure],
  unit: 'm',
  display: 'mm',
  within: 0.03,
  from: { planes: zeroCurvaturePlanes },
  answer: (_, ask) => byNearness(ask({ set: { 'plate.raised': 'ring' } }).planes)[0] ?? Number.NaN,
  errors: [
    {
      id: 'same-side',
      reason: prose`There it was with the middle raised. Now the light around the middle is the late one. That swaps the two sides: what stood behind the focus stands before it, and the other way round.`,
      answer: ({ planes }) => byNearness(planes)[0],
    },
    {
      id: 'other-place',
      reason: prose`You took the place in the list that lies on the other side. The whole list changes sides: each place keeps its distance from the focus and changes its sign.`,
      answer: ({ planes }) => {
        const [first = 0, ...others] = byNearness(planes);
        return others.find((place) => place * first < 0);
      },
    },
    {
      id: 'not-nearest',
      reason: prose`There the spot has a level middle too, and you have swapped the sides rightly. But another level place lies nearer to the focus: look for the one that is nearest, on whichever side.`,
      answer: (_, ask) => byNearness(ask({ set: { 'plate.raised': 'ring' } }).planes)[1],
    },
  ],
  explanation: prose`Raising the ring in place of the middle swaps the two sides of the focus. Every place keeps its distance and changes its sign; with the plate one focal length before the lens, exactly.`,
});

/** Where a curve along z is highest, in millimetres. */
function brightestPlace(along: Float64Array, { extent }: AxisCurves): number {
  const at = along.reduce((best, value, i) => (value > along[best]! ? i : best), 0);
  return (extent.low + ((extent.high - extent.low) * at) / (along.length - 1)) * milli;
}

const brightest = markTask({
  id: 'brightest',
  stage: 'observe',
  set: { 'plate.raised': 'ring' },
  question: prose`Here is how bright the axis is along the beam, now with the ring raised. The other curve is the beam with no plate. Mark the place along ${math`z`} where the axis is brightest **with the plate**.`,
  figure: axisFigure,
  along: 'x',
  within: 0.02,
  from: { curves: axisCurves },
  answer: ({ curves }) => brightestPlace(curves.shaped, curves),
  errors: [
    {
      id: 'without-plate',
      reason: prose`There the beam without the plate is brightest: in its focus. Look at the other curve; the plate makes the focus itself dark and the places on its two sides bright.`,
      answer: ({ curves }) => brightestPlace(curves.unshaped, curves),
    },
    {
      id: 'other-side',
      reason: prose`There it would be brightest with the middle raised. With the ring raised that is the lower of the two hills.`,
      answer: (_, ask) => {
        const { curves } = ask({ set: { 'plate.raised': 'centre' } });
        return brightestPlace(curves.shaped, curves);
      },
    },
  ],
  explanation: prose`With a step that is not half a wave one side of the focus is brighter. Which one, depends on which part of the plate is raised: ask before you order, and note it on the plate.`,
});

const sides = {
  before: 'Before the focus, nearer to the lens',
  behind: 'Behind the focus, away from the lens',
  alike: 'On neither: both sides are alike',
} as const;

/** Peaks that differ by less than this part are alike: no camera tells them apart. */
const alike = 1e-3;
/** The two places compared lie this many Rayleigh lengths from the focus. */
const lengthsAway = 2;

type Peaks = Ask<{ readonly peak: typeof peakFluence }>;

/** The side of the focus whose spot is higher, at equal distances. */
function brighterSide(
  ask: Peaks,
  away: number,
  set: Readonly<Record<string, unknown>> = {},
): keyof typeof sides {
  const before = ask({ set: { ...set, 'workpiece.z': -away } }).peak;
  const behind = ask({ set: { ...set, 'workpiece.z': away } }).peak;
  if (Math.abs(before / behind - 1) < alike) return 'alike';
  return before > behind ? 'before' : 'behind';
}

const swapped = { before: 'behind', behind: 'before', alike: 'alike' } as const;

const distance = choiceTask({
  id: 'distance',
  stage: 'predict',
  set: (drawn) => ({
    'plate.raised': 'centre',
    'plate.designPhase': Math.PI,
    'lens.distanceMode': 'typed',
    'lens.typedPlateDistance': drawn['lens.typedPlateDistance'],
  }),
  question: prose`Now a step of exactly half a wave: its two sides are alike as long as the plate stands one focal length, ${focalLength}, before the lens. But it stands ${plateDistance} before it. The size of the pattern goes with ${math`B = f + z - d\,z/f`}, where ${math`f`} is the focal length and ${math`d`} the distance from the plate to the lens. On which side of the focus, two ${term('Rayleigh lengths', 'rayleigh-length')} from it, is the spot smaller and brighter now?`,
  options: sides,
  from: { peak: peakFluence, length: rayleighLength },
  answer: ({ length }, ask) => brighterSide(ask, lengthsAway * length),
  errors: [
    {
      id: 'alike',
      reason: prose`That holds with the plate one focal length before the lens. Elsewhere the lens shows the plate at another distance, and the pattern grows a little on one side of the focus and shrinks on the other.`,
      answer: ({ length }, ask) =>
        otherThan(
          brighterSide(ask, lengthsAway * length),
          brighterSide(ask, lengthsAway * length, { 'lens.distanceMode': 'focal' }),
        ),
    },
    {
      id: 'sign',
      reason: prose`It is the other side. Take ${math`B = f + z - d\,z/f`} and put in a positive ${math`z`}, behind the focus, and see whether ${math`B`} grows or shrinks.`,
      answer: ({ length }, ask) => {
        const side = brighterSide(ask, lengthsAway * length);
        return otherThan(side, swapped[side]);
      },
    },
  ],
  reveals: [axisFigure],
  explanation: prose`The scale of the pattern goes with ${math`B = f + z - d\,z/f`}. With the plate nearer to the lens than one focal length it is larger behind the focus and smaller before it; with the plate further away it is the other way round. The difference is nothing in the focus and grows over the first Rayleigh lengths. Further out the profile itself changes from side to side, and the other side may be the brighter one.`,
});

const same = numberTask({
  id: 'same-plate',
  stage: 'explain',
  set: (drawn) => ({
    'plate.raised': 'ring',
    'plate.designPhase': drawn['plate.designPhase'],
    'lens.distanceMode': 'focal',
  }),
  question: prose`Back to the plate with the raised ring: the light around the middle comes ${stepPhase} late. A whole wave more or less makes no difference to light. So another plate does exactly the same, one with a raised **middle**. By how much must its middle delay the light, counted between 0 and 1 wave?`,
  unit: 'rad',
  display: 'waves',
  within: 0.02,
  from: { phase: stepPhase },
  answer: ({ phase }) => wave - phase,
  errors: [
    {
      id: 'same-delay',
      reason: prose`With the same delay in the middle the two sides of the focus are swapped. Think of the middle as being early when the ring is late, and then add a whole wave.`,
      answer: ({ phase }) => phase,
    },
    {
      id: 'half-wave',
      reason: prose`That adds up to half a wave. It is the whole wave that makes no difference.`,
      answer: ({ phase }) => Math.PI - phase,
    },
    {
      id: 'early',
      reason: prose`That is right in itself: the middle is early. But it was asked as a delay between 0 and 1 wave; add a whole wave.`,
      answer: ({ phase }) => -phase,
    },
  ],
  explanation: prose`When the ring is late the middle is early by as much, and early by that much is late by the rest of a whole wave. For half a wave the rest is half a wave again: that is why its two sides are alike, and why it does not matter then which part is raised.`,
});

/** Which side of the focus. */
export const sideOfFocus: Lesson = {
  id: 'side-of-focus',
  title: 'Which side of the focus',
  about:
    'You can say on which side of the focus a spot stands, and what swaps the sides or makes them differ.',
  minutes: 8,
  draw: (random) => ({
    'plate.stop': 'open',
    'laser.pulseEnergy': 2e-6,
    'plate.designPhase': wave * drawStepped(random, 0.43, 0.46, 0.01),
    'expander.magnification': drawStepped(random, 1.85, 2.05, 0.05),
    'lens.focalLength': drawOne(random, [80e-3, 100e-3, 125e-3, 160e-3]),
    // Where the plate stands in the third task.
    'lens.typedPlateDistance': drawOne(random, [0.04, 0.02, 0.5, 0.8, 1.2]),
  }),
  tasks: [nearest, brightest, distance, same],
};
