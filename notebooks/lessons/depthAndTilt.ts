import { allowedTilt, fieldWidth, heightError, tilt, zSpread } from '../../lib/design/depthInUse.ts';
import { depthEnds, depthOfFocus, depthTolerance } from '../../lib/design/depthOfFocus.ts';
import { rayleighLength, workpieceZ } from '../../lib/design/focus.ts';
import type { Random } from '../../lib/numerics/random.ts';
import { micro } from '../columns.ts';
import { math, prose } from '../prose.ts';
import { edges, rayleigh } from './depthAndTiltChoices.ts';
import { departureFigure, tiltedSurfaceFigure } from './depthAndTiltFigures.ts';
import { type Lesson, markTask, numberTask } from './lesson.ts';
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
    How deep is the focus? The curve says how far the fluence anywhere on the plateau departs, plane by plane, from its mean in the focus, and ${depthTolerance} is let pass. Mark the end of the depth of focus **behind** the focus, where ${math`z`} is above 0.
  `,
  figure: departureFigure,
  along: 'x',
  // No more than 5 % of the depth: the axis is 2.3 Rayleigh lengths long, the depth 0.62.
  within: 0.013,
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
      answer: ({ depth, field, height }) => Math.atan((depth / 2 - height) / field),
    },
    {
      id: 'half-depth-alone',
      reason: prose`Two things at once: half the depth was held against the whole field, and the height error is left out. Take the whole depth, and the height error from it to both sides.`,
      answer: ({ depth, field }) => Math.atan(depth / 2 / field),
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

export const depthAndTilt: Lesson = {
  id: 'depth-and-tilt',
  title: 'Depth of focus and tilt',
  about:
    'You can work out how far a surface strays from the focus over a field, and how much tilt the depth of focus allows.',
  minutes: 8,
  draw,
  tasks: [edges, spread, end, allowed, rayleigh],
};
