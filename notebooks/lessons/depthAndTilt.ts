import { allowedTilt, fieldWidth, heightError, tilt, zSpread } from '../../lib/design/depthInUse.ts';
import { depthEnds, depthOfFocus, depthTolerance } from '../../lib/design/depthOfFocus.ts';
import { rayleighLength, workpieceZ } from '../../lib/design/focus.ts';
import { unshapedPeakFluence } from '../../lib/design/unshaped.ts';
import type { Random } from '../../lib/numerics/random.ts';
import { micro } from '../columns.ts';
import { math, prose } from '../prose.ts';
import { departureFigure, tiltedSurfaceFigure, waistFigure } from './depthAndTiltFigures.ts';
import { choiceTask, type Lesson, markTask, numberTask } from './lesson.ts';
import { rounded } from './rounded.ts';

/** Depth of the stopped, matched focus in Rayleigh lengths, both sides, at 5 %: 2 × 0.312. */
const depthInLengths = 0.62;

/** A matched plate with a stop, in focus, over a field that is tilted by part of what the depth allows. */
function draw(random: Random) {
  const beamRadius = rounded(random.between(4e-3, 5.5e-3), 2);
  const focalLength = rounded(random.between(0.08, 0.15), 2);
  const depth = (depthInLengths * 1.03e-6 * focalLength ** 2) / (Math.PI * beamRadius ** 2);
  const field = 1e-3 * Math.round(random.between(6, 20));
  return {
    'laser.beamDiameter': beamRadius,
    'plate.stepDiameter': 2 * beamRadius,
    'plate.apertureDiameter': 2.8 * beamRadius,
    'lens.focalLength': focalLength,
    'scan.fieldWidth': field,
    'workpiece.tilt': rounded((random.between(0.45, 0.7) * depth) / field, 2),
    'workpiece.heightError': rounded(random.between(0.09, 0.14) * depth, 2),
  };
}

/** Where a field leaves the depth first, by how far the surface moves in its middle and at its two edges. */
function leaves(middle: number, near: number, far: number): 'alike' | 'middle' | 'far' | 'both' {
  const least = 1.05 * middle;
  if (near > least && far > least) return 'both';
  if (far > least) return 'far';
  return middle > 1.05 * Math.max(near, far) ? 'middle' : 'alike';
}

const edges = choiceTask({
  id: 'edges',
  stage: 'predict',
  question: prose`
    The flat-top is even only over a certain distance along ${math`z`}, the direction of the beam: the **depth of focus**. The workpiece is set up so that the middle of the field lies in the middle of this depth, but it is tilted a little. Where does the spot lose its shape first?
  `,
  reveals: [tiltedSurfaceFigure],
  from: { spread: zSpread, field: fieldWidth, tilt },
  options: {
    middle: 'In the middle of the field',
    far: 'At the edge that lies further from the lens, not at the other',
    both: 'At both edges, the nearer and the further one',
    alike: 'Everywhere alike',
  },
  answer: ({ spread }, ask) => {
    const middle = ask({ set: { [tilt.id]: 0 } }).spread / 2;
    return leaves(middle, spread / 2, spread / 2);
  },
  errors: [
    {
      id: 'behind-alone',
      reason: prose`A plane can lie too near to the lens as well as too far from it. The depth ends on both sides, and the tilt takes one edge to each.`,
      answer: ({ spread }, ask) => {
        const middle = ask({ set: { [tilt.id]: 0 } }).spread / 2;
        return leaves(middle, middle, spread / 2);
      },
    },
    {
      id: 'tilt-as-height',
      reason: prose`So it would be if the whole workpiece lay too high. A tilt turns it about the middle: there nothing moves, and the more the further out.`,
      answer: ({ spread }) => leaves(spread / 2, spread / 2, spread / 2),
    },
  ],
  explanation: prose`
    The tilt turns the surface about the middle of the field: one edge comes nearer, the other goes away, each by half of the whole. So a large field asks for a flat set-up much more than a small one.
  `,
});

const spread = numberTask({
  id: 'spread',
  stage: 'observe',
  question: prose`
    The field is ${fieldWidth} wide and the workpiece tilted by ${tilt}; a milliradian lifts the surface by 1 µm on each millimetre. Its height is known to ± ${heightError}. Over what distance along ${math`z`}, from the nearest to the furthest place, may the surface lie **in all**?
  `,
  shows: [tiltedSurfaceFigure],
  from: { spread: zSpread, height: heightError },
  unit: 'm',
  display: 'um',
  within: 0.04,
  answer: ({ spread }) => spread,
  errors: [
    {
      id: 'half',
      reason: prose`That is how far it goes to one side of the middle. In all it is twice as much: to the nearer side and to the further one.`,
      answer: ({ spread }) => spread / 2,
    },
    {
      id: 'height-once',
      reason: prose`The height error goes either way, that is what ± says. So it counts twice in all.`,
      answer: ({ spread, height }) => spread - height,
    },
    {
      id: 'height-left-out',
      reason: prose`That is the tilt alone. The height error comes on top, to both sides.`,
      answer: (_values, ask) => ask({ set: { [heightError.id]: 0 } }).spread,
    },
  ],
  explanation: prose`
    Field width times the tangent of the tilt, and twice the height error: ${zSpread}. This has to be held against the **whole** depth of focus. Compare whole with whole or half with half: mixing them is a factor of two.
  `,
});

const end = markTask({
  id: 'end',
  stage: 'observe',
  question: prose`
    How deep is the focus? The curve says how far the fluence on the plateau departs from even, plane by plane, and ${depthTolerance} is let pass. Mark the end of the depth of focus **behind** the focus, where ${math`z`} is above 0.
  `,
  figure: departureFigure,
  along: 'x',
  within: 0.02,
  from: { ends: depthEnds, length: rayleighLength, z: workpieceZ },
  answer: ({ ends }) => micro * ends.to,
  errors: [
    {
      id: 'other-end',
      reason: prose`That is the end before the focus, on the side of the lens: there ${math`z`} is below 0.`,
      answer: ({ ends }) => micro * ends.from,
    },
    {
      id: 'rayleigh-length',
      reason: prose`That is the Rayleigh length, a measure of the plain beam. The plateau is lost much earlier: look for where the curve crosses the line.`,
      answer: ({ length }) => micro * length,
    },
    {
      id: 'workpiece',
      reason: prose`There the workpiece stands, in the middle of the depth. Its end is where the curve crosses the line of the tolerance.`,
      answer: ({ z }) => micro * z,
    },
  ],
  explanation: prose`
    The ends lie at ${depthEnds}, so the focus is ${depthOfFocus} deep **in all**, from end to end. Other papers state it as ± half of that: read which one is meant.
  `,
});

const allowed = numberTask({
  id: 'allowed-tilt',
  stage: 'observe',
  question: prose`
    The depth of focus is ${depthOfFocus} in all, and the height error of ± ${heightError} takes its part of it. What is the largest tilt that the field, ${fieldWidth} wide, may have?
  `,
  shows: [tiltedSurfaceFigure, departureFigure],
  from: { tilt: allowedTilt, depth: depthOfFocus, field: fieldWidth, height: heightError },
  unit: 'rad',
  display: 'mrad',
  within: 0.04,
  answer: ({ tilt }) => tilt,
  errors: [
    {
      id: 'half-field',
      reason: prose`You have divided the whole depth by half the field. From edge to edge the surface rises over the whole field: whole by whole.`,
      answer: ({ depth, field, height }) => Math.atan((depth - 2 * height) / (field / 2)),
    },
    {
      id: 'half-depth',
      reason: prose`You have held half the depth against the whole field. The whole depth is there for the whole field.`,
      answer: ({ depth, field, height }) => Math.atan((depth / 2 - 2 * height) / field),
    },
    {
      id: 'height-left-out',
      reason: prose`The height error is left out. It uses up part of the depth before any tilt does: take it away first, to both sides.`,
      answer: (_values, ask) => ask({ set: { [heightError.id]: 0 } }).tilt,
    },
    {
      id: 'height-once',
      reason: prose`The height error goes either way, ±, so it takes twice its value from the depth.`,
      answer: ({ depth, field, height }) => Math.atan((depth - height) / field),
    },
  ],
  explanation: prose`
    What the height error leaves of the depth, over the width of the field: ${allowedTilt}. Half the field may be tilted twice as much. So large fields are cut into smaller ones, or the workpiece is levelled first.
  `,
});

/** The nearest of a few parts of the peak. */
function part(value: number): 'same' | 'seventy' | 'half' | 'quarter' {
  if (value > 0.9) return 'same';
  if (value > 0.6) return 'seventy';
  return value > 0.35 ? 'half' : 'quarter';
}

const rayleigh = choiceTask({
  id: 'rayleigh',
  stage: 'explain',
  set: { 'plate.stop': 'open' },
  question: prose`
    For the **plain** beam, without plate and stop, data sheets call twice the **Rayleigh length** ${math`z_R`} the depth of focus. At its ends the 1/e² diameter is 1.41 times that of the focus. What is left there of the peak fluence?
  `,
  shows: [waistFigure],
  from: { peak: unshapedPeakFluence, length: rayleighLength },
  options: {
    same: 'Nearly all of it, as the word depth of focus says',
    seventy: 'About 70 %',
    half: 'About half',
    quarter: 'About a quarter',
  },
  answer: ({ peak, length }, ask) => part(ask({ set: { [workpieceZ.id]: length } }).peak / peak),
  errors: [
    {
      id: 'still-in-focus',
      reason: prose`The word promises more than it says. The spot is 1.41 times as wide there, and the same energy is spread over that.`,
      answer: ({ peak }) => part(peak / peak),
    },
    {
      id: 'width-for-area',
      reason: prose`You have divided by the width, 1.41. The energy is spread over the **area**, which grows with the square of the width.`,
      answer: ({ peak, length }, ask) =>
        part(Math.sqrt(ask({ set: { [workpieceZ.id]: length } }).peak / peak)),
    },
    {
      id: 'square-twice',
      reason: prose`That is the square taken once too often: 1.41 in the diameter is 2 in the area, and the peak falls by just that.`,
      answer: ({ peak, length }, ask) => part((ask({ set: { [workpieceZ.id]: length } }).peak / peak) ** 2),
    },
  ],
  explanation: prose`
    1.41 in the diameter is 2 in the area, so half the peak is left. A process with a narrow window feels that long before. So ask of every depth of focus: what may change in it, and by how much? Here it was the evenness of the plateau, by ${depthTolerance}.
  `,
});

export const depthAndTilt: Lesson = {
  id: 'depth-and-tilt',
  title: 'Depth of focus and tilt',
  about:
    'Work out how far a surface strays from the focus over a field, and how much tilt the depth of focus allows.',
  minutes: 8,
  draw,
  tasks: [edges, spread, end, allowed, rayleigh],
};
