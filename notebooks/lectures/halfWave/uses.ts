import type { LectureStep } from '../../../lib/graph/studies.ts';
import { flatPlane, moves, nearlyFlatPlane, numbers, onTable, says, shows } from './design.ts';

const flat = { 'workpiece.z': flatPlane };

/** What the flat spot is good for, what it is not, and what it asks of the table. */
export const useSteps: readonly LectureStep[] = [
  {
    id: 'removal',
    title: 'How much does a flat spot remove?',
    minutes: 2,
    sets: onTable({ ...flat, 'removal.branches': 'one', 'removal.depthPerPulse': 20e-9 }),
    pieces: [
      says(
        'Depth grows with the logarithm of the fluence over its threshold. A perfect disc of light removes 1.36 times as much per energy as a Gaussian, each at its own best.',
      ),
      numbers(
        'Volume removed, each beam at its best energy',
        'removal.gain',
        'removal.bestVolumePerEnergy',
        'removal.gaussianBest',
        'removal.flatTopBest',
        'spot.energyInHalf',
      ),
    ],
    ask: {
      question:
        'Each beam at its own best energy: how much more than a Gaussian does our flat spot remove per energy?',
      options: ['About the same', 'About a third more', 'Twice as much'],
      from: 1,
    },
    notes: `**Right:** About the same. Volume is not what a flat spot gains: the ratio is {removal.gain}. Only {spot.energyInHalf} of the energy lies above half the peak; the rest is edge and halo, and the halo warms the part without removing anything.

**Watch for:** a comparison at equal pulse energy can show any ratio one likes. Each beam must stand at its own best.

**If asked** where the third of the perfect disc went: into that halo. A step with a hard edge always throws light outward.`,
  },
  {
    id: 'window',
    title: 'What it does gain: evenness',
    minutes: 2,
    sets: onTable({ ...flat, 'window.lowFluence': 2000, 'window.highFluence': 2600 }),
    pieces: [
      says(
        'Some structures need a fluence between two bounds, here {window.lowFluence} and {window.highFluence}, and nothing above. Per energy the flat spot covers {window.gain} times the area of a Gaussian.',
      ),
      {
        kind: 'chart',
        over: { id: 'window.highFluence', unit: 'J/m^2', from: 2200, to: 6000, count: 39, by: 'steps' },
        ids: ['window.gain'],
      },
    ],
    notes: `Here is what the effort is for. The narrower the window, the more a Gaussian wastes: its top must stay below the upper bound, and then little of it is above the lower one. At a ratio of 1.3 between the bounds the gain is {window.gain}; in a wide window it is little more than 1.2.

**Watch for:** ripples are the usual case, and they ask for many pulses on a place. The window of one pulse is not that of a scanned field: lines overlap, and overlap evens out a Gaussian too.

**If asked** for the time on the machine: it follows the area per energy only while energy is what limits.`,
  },
  {
    id: 'depth',
    title: 'How much a plane forgives',
    minutes: 1,
    sets: onTable({ 'plate.stop': 'round' }),
    pieces: [
      says(
        'A part is never quite level. Depth of focus: the whole way, from end to end, on which the fluence all over the plateau stays within {focus.depthTolerance} of its mean.',
      ),
      {
        kind: 'chart',
        over: { id: 'workpiece.z', unit: 'm', from: -80e-6, to: 80e-6, count: 41, by: 'steps' },
        ids: ['spot.dip'],
      },
      numbers('In the focus, behind the stop', 'spot.depthOfFocus', 'spot.dip'),
    ],
    ask: {
      question: 'The flat plane of the open plate is about 4\u202fµm deep. And the focus behind the stop?',
      options: ['About a fifth of that', 'About the same', 'Nearly twenty times that'],
      from: 1,
    },
    notes: `**Right:** Nearly twenty times that. The focus behind the stop is {spot.depthOfFocus} deep, from end to end. Its shape does change on that way: the dip falls from 5.1\u202f% in the middle to 1.3\u202f% at the ends, as the chart shows, but the fluence of the plateau stays within {focus.depthTolerance}. The flat plane of the open plate forgives less, since its profile is just passing through.

**Watch for:** the same fluence within 5\u202f% is asked here. Whoever only asks for a mark has far more room.

**If asked** about tilt: a field 10 mm wide that is off by 1 mrad spans 10 µm.`,
  },
  {
    id: 'alignment',
    title: 'Align where you can see it',
    minutes: 1,
    sets: onTable({ 'workpiece.z': nearlyFlatPlane }),
    pieces: [
      says(
        'The beam stands 0.25\u202fmm beside the middle of the step: a twentieth of its radius. A camera looks for it.',
      ),
      shows('through-focus', 'off-centre'),
    ],
    ask: {
      question: 'Where does the camera show that one side is higher than the other?',
      options: ['In the focus', 'In a plane beside the focus', 'In both'],
      from: 1,
    },
    notes: `**Right:** In a plane beside the focus. Here the two sides differ by {explain.offCentreHere}; in the focus by {explain.offCentreFocus}. With phases of nothing and half a wave the field at the plate is real, and the focal spot of a real field looks the same turned by half a turn.

**Watch for:** people centre the plate in the focus until it looks right, and it always looks right.

**If asked** which plane: on the slope between ring and flat spot, where a little offset shows most, at low power, camera behind wedge and attenuators.`,
  },
  {
    id: 'safety',
    title: 'Before the plate comes out',
    minutes: 1,
    sets: onTable(flat),
    pieces: [
      says(
        '**Taking the plate out raises the peak {safety.plateOutFactor} times here at the same energy, 5.66 times in the plain focus.** Shutter closed first, least energy, eyewear for the wavelength. Class 4 laser: the laser safety officer decides. Nothing here says that anything is safe.',
      ),
      shows('matching', 'profile', 'One pulse, 0.058\u202fmm behind the focus: with the plate and without'),
      numbers(
        'One pulse, peak fluence: with the plate here, without it here, and the most there is, in the focus',
        'spot.peakFluence',
        'unshaped.spot.peakFluence',
        'focus.unshapedPeakFluence',
      ),
    ],
    notes: `Do not hurry over this one. The plate spreads the light; whoever takes it out to compare, or to align, has the plain peak of {unshaped.spot.peakFluence} on the part, on the camera, on whatever stands there; in the focus itself it is {focus.unshapedPeakFluence}, the most there is. First the energy down, then the plate out.

**Watch for:** the same holds for walking along the beam: other planes have other peaks.

**If asked** for the rules: IEC 60825-1, IEC TR 60825-14, ISO 11553-1, and whatever is posted at the door. Ultrashort pulses on metal can make X-rays, and fine dust; shielding and extraction are matters for those who are responsible for them.`,
  },
  {
    id: 'summary',
    title: 'What to take home',
    minutes: 2,
    sets: onTable({ 'focus.stripStep': 0.22 }),
    pieces: [
      says(
        `- Half a wave: the whole beam less twice its middle.
- In the focus a ring, beside it a flat spot.
- Judge by the dip, not by a level axis.
- Step, beam and stop decide together.
- Evenness is gained, not volume.`,
      ),
      shows('through-focus', 'strip'),
      moves('Your question', 'expander.magnification', 'plate.designPhase', 'plate.stop'),
    ],
    notes: `Let the room ask, and answer with the controls: what does a smaller beam do, a step of 0.4 waves, a stop? Each question is one move of a slider.

If nobody asks, ask yourself: “What would I order, plate or beam, if my spot must be 30 µm wide?” Width goes with wavelength and focal length over the step; the shape goes with the ratios. So keep the ratios and change the lens.

**Watch for:** time. Two minutes for the list, and whatever is left for questions.`,
  },
];
