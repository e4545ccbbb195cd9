import type { LectureStep } from '../../../lib/graph/studies.ts';
import { flatPlane, halfWave, moves, onTable, says, shows } from './design.ts';

/** What is wanted, and what there is: the plate and the plain focus. */
export const wishSteps: readonly LectureStep[] = [
  {
    id: 'wish',
    title: 'What the laboratory wants',
    minutes: 2,
    sets: onTable({ 'workpiece.z': flatPlane }),
    pieces: [
      says(
        'A focused laser beam is highest in the middle and fades outward. Many jobs want the same everywhere, or nothing in the middle. Both come from one glass plate with one shallow step.',
      ),
      shows('matching', 'profile', 'One pulse, 0.058\u202fmm behind the focus: plain, and behind the plate'),
    ],
    notes: `Begin with the picture and no formula. Both curves carry the same pulse, {laser.pulseEnergy}. Both are drawn in one plane, 0.058\u202fmm behind the focus, where the shaped one is flat. There the plain spot reaches {unshaped.spot.peakFluence}, in its own focus {focus.unshapedPeakFluence}; the shaped one has {spot.peakFluence} over a width of {spot.width}. In the next forty minutes the room will find out how a single step makes the one from the other, and what it costs.

**Watch for:** fluence here is the peak per pulse, incident; some will think of the mean, the pulse energy over πw², which for a Gaussian is half of the peak.

**If asked** where the energy of the high peak went: into the width, and into a faint halo that comes up towards the end.`,
  },
  {
    id: 'threshold',
    title: 'A threshold cuts the profile off',
    minutes: 2,
    sets: onTable({ 'workpiece.z': flatPlane, 'threshold.fluenceScale': 'logarithmic' }),
    pieces: [
      says(
        'A surface changes where the fluence of a pulse is above its threshold, here {threshold.fluence}. What lies above it by far is not used; what lies below it only warms.',
      ),
      shows('threshold', 'profile-threshold'),
    ],
    ask: {
      question:
        'One pulse on one plane, 0.058\u202fmm behind the focus: as the plain spot, or spread flat with a peak about five times lower. Which one leaves the wider mark?',
      options: ['The plain one, by its high peak', 'The flat one', 'Both marks are as wide'],
      from: 1,
    },
    notes: `Let the room decide before the curves appear.

**Right:** The flat one. Its mark is {spot.markDiameter} wide, that of the plain spot in the same plane {unshaped.spot.markDiameter}; in its own focus the plain mark would be 15.2\u202fµm wide, narrower still. The threshold takes no notice of height, only of where a curve crosses the line; the scale is logarithmic, so that both fit.

**Watch for:** the flat spot wins only while its plateau stays above the threshold. Just above it the mark is small and nervous; well above, its steep edge holds the width.

**If asked** about the threshold: {threshold.fluence} per pulse is an invented round number. Real ones are measured on the part, and fall with the number of pulses.`,
  },
  {
    id: 'plate',
    title: 'One step on a plate',
    minutes: 2,
    sets: onTable(),
    pieces: [
      says(
        'The middle of the plate, {plate.stepDiameter} wide, is higher by {plate.stepHeight}. Light through it comes out later by {plate.stepPhase}. The beam is as wide as the step: {explain.centreEnergy} of its energy goes through the middle.',
      ),
      shows('matching', 'beam-on-plate'),
    ],
    notes: `Show the step with your hands: a coin on a window, but only {plate.stepHeight} high, much less than a hair. Glass delays light by its height times (n − 1) against air; with n = {plate.refractiveIndex} that height is {plate.stepPhase} at {laser.wavelength}.

**Watch for:** beam widths here are 1/e² diameters. Equal diameters of beam and step are common practice, the natural first try.

**If asked** why not more steps: more rings can do more, and each needs its own alignment. One step already has everything that this hour is about.

**If asked** whether the step absorbs: no. It only delays; what is lost is about 7\u202f%, at the two surfaces, where they are uncoated.`,
  },
  {
    id: 'plain-focus',
    title: 'Without a step: the plain focus',
    minutes: 2,
    sets: onTable({ 'plate.designPhase': 2 * halfWave, 'focus.mapScale': 'linear' }),
    pieces: [
      says(
        'The lens gathers the beam into a 1/e² radius of {focus.radius}. It stays narrow for a Rayleigh length, {focus.rayleighLength}. A wider beam makes a narrower, higher focus. (The step is a whole wave here: it changes nothing.)',
      ),
      {
        kind: 'block',
        document: 'through-focus',
        block: 'map',
        title: 'The plain beam through its focus',
        x: [-0.25, 0.25],
        y: [-15, 15],
      },
      moves('Widen the beam', 'expander.magnification'),
    ],
    notes: `Everybody has met $w_0 = \\lambda f / (\\pi w)$; make them say it aloud: what is wide at the lens is narrow in the focus. Move the expander from 2 to 3 and let the room watch the waist shrink, from {focus.radius} to 4.37\u202fµm, and open faster to either side; then put it back. This one sentence is all that the next step needs.

**Watch for:** the axes of the map stay as they are, its colours do not: the brightest is always the highest fluence there is. $w_0$ and the Rayleigh length here are those of M² = 1. The depth of focus is often given as twice the Rayleigh length; there the diameter is 1.41 times that of the waist.

**If asked** about the whole wave: a delay of {plate.stepPhase} brings every crest back to where it was.`,
  },
];
