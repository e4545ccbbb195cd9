import type { LectureStep } from '../../../lib/graph/studies.ts';
import { numbers, onTable, says, shows } from './design.ts';

/** Two waves, and what half a wave makes of them. */
export const waveSteps: readonly LectureStep[] = [
  {
    id: 'middle-alone',
    title: 'Two waves in the focus',
    minutes: 2,
    sets: onTable(),
    pieces: [
      says(
        'Take the beam apart: the light through the middle of the plate, and the light around it. In the focus their amplitudes add up, crest on crest or crest on trough.',
      ),
      shows('matching', 'two-waves'),
    ],
    ask: {
      question:
        'Cover the plate around the step, so that only the middle of the beam is left. Against that of the whole beam, its focus is …',
      options: ['narrower and higher', 'wider and lower', 'just as wide, only lower'],
      from: 1,
    },
    notes: `This is the plain focus once more: a smaller patch of light at the lens.

**Right:** wider and lower. On the axis the middle alone gives {explain.centreAmplitude} of the amplitude of the whole beam, and it falls off more slowly to the side.

**Watch for:** energy is not amplitude. {explain.centreEnergy} of the energy goes through the middle and only {explain.centreAmplitude} of the amplitude on the axis comes from it: light far out is weak, but there is much room for it.

**If asked** about the ripples of the middle’s wave: its edge is sharp, and a sharp edge at the lens rings in the focus.`,
  },
  {
    id: 'axis',
    title: 'What is left on the axis?',
    minutes: 2,
    sets: onTable(),
    pieces: [
      says(
        'Half a wave later, the crests of the middle are troughs. Beam and step are equally wide; on the axis each of the two waves arrives all together.',
      ),
      shows('matching', 'amplitudes'),
      numbers(
        'On the axis in the focus',
        'explain.centreAmplitude',
        'explain.outerAmplitude',
        'explain.axisIrradianceInFocus',
      ),
    ],
    ask: {
      question: 'How bright is the middle now, against the same beam without a step?',
      options: ['Dark: the two cancel', 'About 7\u202f%', 'About a quarter', 'As bright as before'],
      from: 1,
    },
    notes: `Give them half a minute with paper: $1 - e^{-1}$ comes through the middle, $e^{-1}$ from around it.

**Right:** About 7\u202f%. The two together are $e^{-1} - (1 - e^{-1}) = 2/e - 1 = -0.26$ of the amplitude without a step, and the irradiance is the square: {explain.axisIrradianceInFocus}.

**Watch for:** “about a quarter” is the amplitude without its square. “Dark” would need a step a little smaller than the beam: a step ratio of {match.darkRatio}.

**If asked** what the chart says at other phases: at a whole wave everything is back; in between the middle of the focus can be set to any brightness from the least to the full one.`,
  },
  {
    id: 'turned',
    title: 'The middle counts twice',
    minutes: 2,
    sets: onTable(),
    pieces: [
      says(
        'On the axis and beside it: what the middle added is now taken away, so it counts twice: $U = U_\\text{all} - 2\\,U_\\text{centre}$. For any phase $U = U_\\text{all} - {(1-e^{i\\varphi})}\\,U_\\text{centre}$.',
      ),
      shows('matching', 'two-waves-left'),
    ],
    notes: `Go through the chart slowly: the high narrow curve is the whole beam, the broad one twice the middle, and the thick curve their difference. The irradiance is its square. Where the broad one overtakes the narrow one the sign turns; the eye sees only the square.

**Watch for:** “taken away” is not “absorbed”. No energy is lost; it lands elsewhere in the focal plane.

**If asked** why twice: one time because the middle is missing from the sum, and once more because it now works against it.

**If asked** for other phases: the chart shows the part in step with the whole beam; at half a wave there is no other.`,
  },
  {
    id: 'ring',
    title: 'In the focus stands a ring',
    minutes: 1,
    sets: onTable(),
    pieces: [
      says(
        'The light stands around a darker middle: a ring, {spot.ringDiameter} from crest to crest, with a dip of {spot.dip}. Its peak is {spot.relativePeak} of that of the plain focus. For a ring we are done. For a flat spot we are not.',
      ),
      shows('matching', 'profile', 'The fluence in the focus'),
    ],
    notes: `A ring is useful in itself: along a scanned line it evens out what a round spot leaves uneven. The dip is one less the fluence on the axis over the highest fluence, here {spot.dip}. Against the plain focus the axis is dark; against the ring around it, it is only darker.

**Watch for:** many expect the best spot in the focus itself, because the plain beam is best there. The next question is about just that.

**If asked** about the width: {spot.width} is the diameter of a disc with the area that lies above half the peak, the same measure for rings, flat spots and Gaussians.`,
  },
];
