import type { LectureStep } from '../../../lib/graph/studies.ts';
import { flatPlane, levelPlane, moves, numbers, onTable, says, shows, spotProfile } from './design.ts';

/** Through the focus: where it is flat, and how one tells. */
export const planeSteps: readonly LectureStep[] = [
  {
    id: 'where-flat',
    title: 'Where is it flat?',
    minutes: 3,
    sets: onTable({ 'focus.stripStep': 0.22 }),
    pieces: [
      says(
        'Beside the focus the two waves fall out of step: each spreads at its own rate. A camera moved along the beam sees one profile turn into the next.',
      ),
      shows('through-focus', 'strip'),
    ],
    ask: {
      question:
        'The Rayleigh length is {focus.rayleighLength}. Where does the camera find a flat spot nearest to the focus?',
      options: [
        'In the focus itself',
        'On either side of it, less than half a Rayleigh length away',
        'Behind it only, one Rayleigh length away',
        'Nowhere: there are only rings and peaks',
      ],
      from: 1,
    },
    notes: `Nine planes, {focus.stripStep} Rayleigh lengths apart. In the middle the ring, two planes out on either side the flat spot, and the outermost ones are peaked.

**Right:** On either side of it, less than half a Rayleigh length away. With half a wave and one focal length between plate and lens both sides are alike.

**Watch for:** the profiles are drawn at true height. The flat spot is not dimmer than the ring by much; the light moves, it does not vanish.

**If asked** why: away from the focus the wave of the whole beam turns its phase faster than the broad one of the middle. The two no longer cancel on the axis, and the hole fills up.

**If asked** for more flat planes: there is another pair far out, at nearly five Rayleigh lengths, wider and much dimmer. The nearest pair is the one we want.`,
  },
  {
    id: 'level',
    title: 'Level in the middle: is that flat?',
    minutes: 2,
    sets: onTable({ 'workpiece.z': levelPlane }),
    pieces: [
      says(
        'A textbook looks for the plane where the profile has no curvature on the axis. Here it is, {workpiece.z} behind the focus: {focus.defocus} Rayleigh lengths.',
      ),
      spotProfile('The fluence where the axis is level'),
      numbers('In this plane', 'spot.kind', 'spot.dip', 'spot.areaRatio'),
    ],
    ask: {
      question: 'On the axis the profile is exactly level. What kind of spot is it?',
      options: [
        'A flat spot: level is what flat means',
        'A ring with a broad, level floor',
        'A peak with a level top',
      ],
      from: 1,
    },
    notes: `**Right:** A ring with a broad, level floor. The curvature is nothing, yet the next term of the series lifts the profile outward; the dip is still {spot.dip}.

**Watch for:** no curvature says something about one point, and the workpiece is not a point.

**If asked** what to look for instead: the dip, the steepness of the edge, the area above nine tenths of the peak over that above half of it. That last one, the plateau ratio, is {spot.areaRatio} here; a Gaussian has 0.152 and a perfect disc 1.`,
  },
  {
    id: 'flat',
    title: 'Ask for the dip instead',
    minutes: 1,
    sets: onTable({ 'workpiece.z': flatPlane }),
    pieces: [
      says(
        'Level on the axis, at 0.0476\u202fmm, it was still a ring. Ten micrometres further, at 0.058\u202fmm, the dip has closed. Where the workpiece stands now the dip is {spot.dip} and the plateau ratio {spot.areaRatio}; a Gaussian has 0.152.',
      ),
      spotProfile('The fluence where the workpiece stands'),
      moves('Move the workpiece', 'workpiece.z'),
    ],
    notes: `Move the workpiece by hand. At 0.045\u202fmm the ring is open again, with a dip of more than a fifth; at 0.07\u202fmm a peak has grown. Then press R to put it back to 0.058\u202fmm.

This is the answer to the title: half a wave makes the middle count twice against the whole, and a little defocus lets the hole fill just so far.

**Watch for:** how little it takes. From the level plane to the flat one it is some ten micrometres; we come back to that.

**If asked** how flat: at 0.058\u202fmm the fluence over the plateau stays within 3.5\u202f% of its mean.`,
  },
];
