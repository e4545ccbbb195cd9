import { fieldWidth, tilt, zSpread } from '../../lib/design/depthInUse.ts';
import { depthTolerance } from '../../lib/design/depthOfFocus.ts';
import { rayleighLength, workpieceZ } from '../../lib/design/focus.ts';
import { unshapedPeakFluence } from '../../lib/design/unshaped.ts';
import { math, prose, term } from '../prose.ts';
import { tiltedSurfaceFigure, waistFigure } from './depthAndTiltFigures.ts';
import { choiceTask } from './lesson.ts';

/** Where a field leaves the depth first, by how far the surface moves in its middle and at its two edges. */
function leaves(middle: number, near: number, far: number): 'alike' | 'middle' | 'far' | 'both' {
  const least = 1.05 * middle;
  if (near > least && far > least) return 'both';
  if (far > least) return 'far';
  return middle > 1.05 * Math.max(near, far) ? 'middle' : 'alike';
}

export const edges = choiceTask({
  id: 'edges',
  stage: 'predict',
  question: prose`
    The plateau keeps its fluence only over a certain distance along ${math`z`}, the direction of the beam: the **${term('depth of focus')}**. The workpiece is set up so that the middle of the field lies in the middle of this depth, but it is tilted a little. Where does it leave the depth of focus first?
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
    {
      id: 'middle-for-edges',
      reason: prose`The surface turns about the middle of the field, so the tilt moves nothing there. Look where it moves most.`,
      answer: ({ spread }, ask) => {
        const still = ask({ set: { [tilt.id]: 0 } }).spread / 2;
        return leaves(spread / 2, still, still);
      },
    },
  ],
  explanation: prose`
    The tilt turns the surface about the middle of the field: one edge comes nearer, the other goes away, each by half of the whole. So a large field asks for a flat set-up much more than a small one.
  `,
});

/** The nearest of a few parts of the peak. */
function part(value: number): 'same' | 'seventy' | 'half' | 'quarter' {
  if (value > 0.9) return 'same';
  if (value > 0.6) return 'seventy';
  return value > 0.35 ? 'half' : 'quarter';
}

export const rayleigh = choiceTask({
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
    1.41 in the diameter is 2 in the area, so half the peak is left. A process with a narrow window feels that long before. So ask of every depth of focus: what may change in it, and by how much? Here it was the fluence on the plateau, by ${depthTolerance}, against its mean in the focus.
  `,
});
