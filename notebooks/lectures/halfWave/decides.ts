import type { LectureStep } from '../../../lib/graph/studies.ts';
import { halfWave, levelPlane, moves, numbers, onTable, says, shows, spotProfile } from './design.ts';

const stopped = { 'plate.stop': 'round' };

/** What decides: stop, beam, phase, side and the quality of the beam. */
export const decidingSteps: readonly LectureStep[] = [
  {
    id: 'stop',
    title: 'A stop around the step',
    minutes: 2,
    sets: onTable(stopped),
    pieces: [
      says(
        'Every real plate ends somewhere. Give it a stop of {plate.apertureDiameter} around the step of {plate.stepDiameter}: {plate.transmission} of the energy still passes. We are back in the focus.',
      ),
      spotProfile('The fluence in the focus, behind the stop'),
      moves('Stop', 'plate.stop', 'plate.apertureDiameter'),
    ],
    ask: {
      question: 'Without the stop the dip of the ring in the focus is 64\u202f%. And behind it?',
      options: [
        'Hardly less: 63\u202f%',
        'About half of it: 32\u202f%',
        'Nearly nothing: 5\u202f%',
        'Deeper still: 80\u202f%',
      ],
      from: 1,
    },
    notes: `**Right:** Nearly nothing: 5\u202f%. The stop decides as much as the step. It cuts light around the step, and that was the weaker of the two amplitudes: {explain.outerAmplitude} are left of 0.368, against {explain.centreAmplitude} through the middle. The axis brightens.

**Watch for:** energy against amplitude again: 63\u202f% is the dip less 2\u202f% of it. The outermost light is 2\u202f% of the energy, and a seventh of the amplitude of the whole beam.

**If asked** which stop to take: switch it off and on, then narrow it towards the step. Whoever orders a plate orders its stop with it.`,
  },
  {
    id: 'beam-size',
    title: 'When the beam changes its size',
    minutes: 2,
    sets: onTable(stopped),
    pieces: [
      says(
        'The stop of {plate.apertureDiameter} stays on. The plate is made once; the beam comes from an expander that somebody turned. At the plate it is {plate.beamDiameter} wide.',
      ),
      shows('matching', 'beam-change'),
    ],
    ask: {
      question: 'The beam grows by 5\u202f%, and everything else stays. The dip in the focus …',
      options: ['gets deeper', 'stays as it is, to a percentage point', 'gets shallower'],
      from: 1,
    },
    notes: `**Right:** gets deeper. The size of the beam decides too. Behind the stop of {plate.apertureDiameter}, which stays from the step before, it goes from {spot.dip} to {sensitivity.dipWiderBeam}; with a beam 5\u202f% narrower it is {sensitivity.dipNarrowerBeam}. A wider beam sends more light around the step, the two amplitudes come nearer to each other, and they cancel better.

**Watch for:** a wider beam makes a narrower plain focus, so some expect everything to shrink. The width hardly moves; it is the balance of two waves that moves.

**If asked** how well one can measure a beam: a few per cent, if radius and diameter, and 1/e² and half maximum, are not mixed up. Exactly those few per cent matter here.`,
  },
  {
    id: 'colour',
    title: 'Half a wave is half a wave for one colour',
    minutes: 2,
    sets: onTable({ 'plate.source': 'made', 'plate.madeHeight': 1.14433e-6, 'laser.wavelength': 515e-9 }),
    pieces: [
      says(
        'The plate of {plate.stepHeight} is made for 1030\u202fnm. Now the laser is doubled in frequency, {laser.wavelength}, and the plate stays.',
      ),
      shows('matching', 'profile', 'The fluence in the focus, green light'),
      numbers('Behind the same plate', 'plate.stepPhase', 'spot.width', 'unshaped.spot.width'),
    ],
    ask: {
      question: 'What does the green light make of this plate?',
      options: ['The same ring, half as wide', 'A deeper ring', 'A plain focus, as if there were no step'],
      from: 1,
    },
    notes: `**Right:** A plain focus, as if there were no step. Half the wavelength makes twice the waves: the step is {plate.stepPhase} now, and a whole wave is no delay. The two curves nearly lie on each other.

**Watch for:** it is a little more than a whole wave, because glass slows green light more than infrared; the spot hardly notices.

**If asked** what this is good for: a green pilot beam of nearly half the wavelength shows nothing of the shape; one of another colour shows another shape. And whoever changes the laser needs another plate.`,
  },
  {
    id: 'sides',
    title: 'Not quite half a wave: the sides differ',
    minutes: 2,
    sets: onTable({ 'plate.designPhase': 0.9 * halfWave }),
    pieces: [
      says(
        'A step of {plate.stepPhase} makes the two sides of the focus unlike: the flat planes, where the dip closes, lie at different distances. Raise the ring instead of the middle and they change places.',
      ),
      {
        kind: 'chart',
        over: { id: 'workpiece.z', unit: 'm', from: -100e-6, to: 100e-6, count: 41, by: 'steps' },
        ids: ['spot.dip'],
      },
      moves('Step', 'plate.raised', 'plate.designPhase'),
    ],
    notes: `Follow the curve from left to right: no dip, then the ring, deepest behind the focus, then no dip again. The flat plane before the focus is near, the one behind it far.

Swap the raised part and the picture is mirrored: $I_\\varphi(\\varrho, \\zeta) = I_{-\\varphi}(\\varrho, -\\zeta)$. Set half a wave and it becomes symmetric.

**Watch for:** on a drawing “z positive” must be said: here it points away from the lens.

**If asked** whether one side is better: they differ in width and height, and in how much they forgive. One measures on which side one is. Turning the plate back to front changes nothing; a plate with its ring raised is another plate.`,
  },
  {
    id: 'real-beam',
    title: 'Real beams: M²',
    minutes: 2,
    sets: onTable({ 'workpiece.z': levelPlane }),
    pieces: [
      says(
        'No beam is a perfect Gaussian; M² says how far it is from one. We stand in the level plane, where the perfect beam has a ring.',
      ),
      {
        kind: 'chart',
        over: { id: 'laser.beamPropagationRatio', unit: '1', from: 1, to: 1.5, count: 26, by: 'steps' },
        ids: ['spot.dip'],
      },
    ],
    ask: {
      question: 'M² goes from 1 to 1.2. What happens to the dip of this ring?',
      options: ['It gets deeper', 'It stays as it is', 'It gets shallower'],
      from: 1,
    },
    notes: `**Right:** It gets shallower. In this model a beam of M² above 1 is partly coherent: its spot is the perfect one, blurred. The dip of {spot.dip} falls to about 5\u202f% at M² = 1.2.

**Watch for:** this does not say that bad beams are good. The edge is blurred as well, and the peak falls. Most of the M² of a femtosecond beam is aberration, which need not help at all.

**If asked** how to tell: measure the spot with a camera and lay it over the prediction.`,
  },
];
