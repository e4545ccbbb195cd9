import { plateBeamDiameter } from '../../lib/design/expander.ts';
import { focusRadius, light, rayleighLength, unshapedPeak, workpieceZ } from '../../lib/design/focus.ts';
import { wavelength } from '../../lib/design/laser.ts';
import { focalLength } from '../../lib/design/lens.ts';
import { usedBeamPropagationRatio } from '../../lib/design/rawBeam.ts';
import { dip, peak } from '../../lib/design/spot.ts';
import { unshapedSpotPeak } from '../../lib/design/unshaped.ts';
import { peakOf } from '../../lib/optics/radialProfile.ts';
import { perSquareCentimetre } from '../columns.ts';
import { math, prose, term } from '../prose.ts';
import { hollow, perfect } from './beamQualityChoice.ts';
import { drawOne, drawStepped } from './draws.ts';
import { diameterOverHalfWidth } from './gaussianWidths.ts';
import { type Lesson, markTask, numberTask } from './lesson.ts';
import { perfectProfile, spotAndPerfectFigure } from './spotAcross.ts';
import { bothWaistsFigure, perfectWaistFigure } from './waistFigures.ts';

/** Full width at half maximum of a Gaussian over its 1/e² radius. */
const fullWidth = 2 / diameterOverHalfWidth;

const radius = numberTask({
  id: 'radius',
  stage: 'predict',
  question: prose`A beam of ${plateBeamDiameter} 1/e² diameter and ${wavelength} wavelength meets a lens of focal length ${focalLength}, without a plate. Were it a perfect Gaussian, its focus would be as narrow as light allows, as in the chart: with ${math`w`} the 1/e² radius at the lens, the focus has the 1/e² radius ${math`w_0=\lambda f/(\pi w)`}. No real beam is perfect: **M²** says how many times wider its focus is. Here M² is ${usedBeamPropagationRatio}. What is the 1/e² radius of the real focus?`,
  shows: [perfectWaistFigure],
  unit: 'm',
  display: 'um',
  within: 0.015,
  from: { radius: focusRadius, ratio: usedBeamPropagationRatio, beam: plateBeamDiameter },
  answer: ({ radius, ratio }) => radius * ratio,
  errors: [
    {
      id: 'left-out',
      reason: prose`That is the focus of a perfect beam. The real one is M² times as wide.`,
      answer: ({ radius }) => radius,
    },
    {
      id: 'twice',
      reason: prose`M² was put in twice. The 2 belongs to its name already: multiply by the number once.`,
      answer: ({ radius, ratio }) => radius * ratio ** 2,
    },
    {
      id: 'root',
      reason: prose`The root of M² was taken. The number called M² is itself the factor by which the focus is wider.`,
      answer: ({ radius, ratio }) => radius * Math.sqrt(ratio),
    },
    {
      id: 'diameter',
      reason: prose`That is the diameter of the focus. Its radius is half of it.`,
      answer: ({ radius, ratio }) => 2 * radius * ratio,
    },
    {
      id: 'half-maximum',
      reason: prose`That is the full width at half maximum (FWHM) of the real focus, 1.18 times its 1/e² radius. The radius was asked for.`,
      // An M² near 1.18 leads to the same number when it is put in twice.
      answer: ({ radius, ratio }) =>
        Math.abs(ratio / fullWidth - 1) < 0.05 ? undefined : fullWidth * radius * ratio,
    },
    {
      id: 'diameter-for-radius',
      reason: prose`The diameter of the beam was put in for its radius ${math`w`}. Take half of it.`,
      answer: ({ ratio, beam }, ask) => ask({ pins: { 'plate.beamDiameter': 2 * beam } }).radius * ratio,
    },
  ],
  explanation: prose`The perfect focus has ${focusRadius}, the real one ${usedBeamPropagationRatio} times that. Wherever this page writes ${math`w_0`}, it is the perfect one, without M².`,
});

const length = numberTask({
  id: 'rayleigh',
  stage: 'predict',
  question: prose`The distance from the focus at which a beam is 1.41 times as wide as in it is called its **${term('Rayleigh length')}**. For the perfect beam it is ${math`z_R=\pi w_0^2/\lambda`}, here ${rayleighLength}. At the lens the real beam, with ${term('M²', 'propagation-ratio')} of ${usedBeamPropagationRatio}, is as wide as the perfect one, and so it opens behind the focus under the same angle. How long is its Rayleigh length?`,
  unit: 'm',
  display: 'um',
  within: 0.015,
  from: { length: rayleighLength, ratio: usedBeamPropagationRatio },
  answer: ({ length, ratio }) => length * ratio,
  errors: [
    {
      id: 'left-out',
      reason: prose`That is the Rayleigh length of the perfect beam. The real focus is wider and opens under the same angle, so it stays narrow for longer.`,
      answer: ({ length }) => length,
    },
    {
      id: 'divided',
      reason: prose`A beam of higher M² has a shorter Rayleigh length when its **focus** is as wide. Here it is as wide at the **lens**, and its focus is wider.`,
      answer: ({ length, ratio }) => length / ratio,
    },
    {
      id: 'twice',
      reason: prose`The wider focus was put into the formula of the perfect beam. In the formula of a real beam M² also stands below the line: one of the two factors goes.`,
      answer: ({ length, ratio }) => length * ratio ** 2,
    },
    {
      id: 'both-sides',
      reason: prose`That is the length from one side of the focus to the other, often called the depth of focus. The Rayleigh length counts one side.`,
      answer: ({ length, ratio }) => 2 * length * ratio,
    },
  ],
  reveals: [bothWaistsFigure],
  explanation: prose`The focus is M² times as wide and opens under the same angle, so it takes M² times the distance to grow by 1.41.`,
});

const highest = markTask({
  id: 'highest',
  stage: 'observe',
  question: prose`The chart shows both spots. How high does the fluence of **this beam** rise? Mark the height of its highest value along the upright axis.`,
  figure: spotAndPerfectFigure,
  along: 'y',
  within: 0.02,
  from: { peak, dip, unshapedPeak, light, z: workpieceZ },
  answer: ({ peak, unshapedPeak }) => peak.irradiance * unshapedPeak * perSquareCentimetre,
  errors: [
    {
      id: 'perfect-beam',
      reason: prose`That is the highest value of the perfect beam, the other curve.`,
      answer: ({ light, z, unshapedPeak }) =>
        peakOf(perfectProfile(light, z)).irradiance * unshapedPeak * perSquareCentimetre,
    },
    {
      id: 'on-axis',
      reason: prose`That is the fluence on the axis, in the dip. The highest value lies beside it.`,
      // Where there is no dip, the axis is the highest place.
      answer: ({ peak, dip, unshapedPeak }) =>
        dip < 0.1 ? undefined : peak.irradiance * (1 - dip) * unshapedPeak * perSquareCentimetre,
    },
    {
      id: 'half',
      reason: prose`That is half of the highest value, where widths are read. Go up to the top of the curve.`,
      answer: ({ peak, unshapedPeak }) => (peak.irradiance / 2) * unshapedPeak * perSquareCentimetre,
    },
  ],
  explanation: prose`The blur takes light from where it is brightest and spreads it, outside the edge and into the dip where there is one: the peak is lower than a perfect beam’s.`,
});

const without = numberTask({
  id: 'without-plate',
  stage: 'explain',
  question: prose`The plate is taken out again. A pulse has the same energy in both beams. How high is the peak fluence in the focus of this beam, with M² of ${usedBeamPropagationRatio}, as a part of that of the perfect one?`,
  unit: '1',
  display: '%',
  within: 0.02,
  from: { part: unshapedSpotPeak, ratio: usedBeamPropagationRatio },
  answer: ({ part }) => part.irradiance,
  errors: [
    {
      id: 'once',
      reason: prose`The focus is M² times as wide, but in both directions: the same energy lies on an area that is M² times M² as large.`,
      answer: ({ ratio }) => 1 / ratio,
    },
    {
      id: 'root',
      reason: prose`The root of M² was taken. M² is itself the factor by which the focus is wider, and the area grows with the square of it.`,
      answer: ({ ratio }) => 1 / Math.sqrt(ratio),
    },
    {
      id: 'width',
      reason: prose`That is M² itself, and more than the perfect beam has. A wider spot of the same energy has less fluence: ask how much more area it lies on, and turn that over.`,
      answer: ({ ratio }) => ratio,
    },
    {
      id: 'left-out',
      reason: prose`That is the perfect beam. The same energy on a wider spot gives less fluence.`,
      answer: (_, ask) => ask(perfect).part.irradiance,
    },
    {
      id: 'twice',
      reason: prose`The area was squared once more. The radius grows by M², the area by the square of that, and that is all.`,
      answer: ({ ratio }) => ratio ** -4,
    },
    {
      id: 'upside-down',
      reason: prose`That is more than the perfect beam has. A wider spot of the same energy has less fluence: turn the fraction over.`,
      answer: ({ part }) => 1 / part.irradiance,
    },
  ],
  explanation: prose`The radius grows by M² and the area by its square, so the peak falls to one over the square of M².`,
});

/** Step ratios of a ring, more often, and of a spot without a dip. */
const ratios: readonly [Span, ...Span[]] = [
  [0.9, 1.15],
  [0.9, 1.15],
  [1.4, 1.6],
];
type Span = readonly [low: number, high: number];

/** What M² does. */
export const beamQuality: Lesson = {
  id: 'beam-quality',
  title: 'Beam quality, M²',
  about: 'You can put M² into a focus, its length, its peak and a shaped spot, each once.',
  minutes: 8,
  draw: (random) => {
    const magnification = drawStepped(random, 1.6, 2.4, 0.1);
    const raw = 5e-3;
    const [low, high] = drawOne(random, ratios);
    const ratio = random.between(low, high);
    return {
      'plate.stop': 'open',
      'laser.wavelength': drawOne(random, [1.03e-6, 1.064e-6, 800e-9, 515e-9]),
      'laser.beamPropagationRatio': drawStepped(random, 1.15, 1.6, 0.05),
      'laser.pulseEnergy': drawStepped(random, 1e-6, 6e-6, 5e-7),
      'expander.magnification': magnification,
      'plate.stepDiameter': Number((raw * magnification * ratio).toFixed(4)),
      'lens.focalLength': drawOne(random, [100e-3, 125e-3, 160e-3, 200e-3]),
    };
  },
  tasks: [radius, length, hollow, highest, without],
};
