import { plateBeamDiameter } from '../../lib/design/expander.ts';
import { axisIrradianceInFocus } from '../../lib/design/explain.ts';
import { usedPulseEnergy } from '../../lib/design/losses.ts';
import { stepRatio, stopRatio } from '../../lib/design/match.ts';
import { apertureDiameter, transmission } from '../../lib/design/plate.ts';
import { dip, peak, profile } from '../../lib/design/spot.ts';
import { micro } from '../columns.ts';
import { profileFigure } from '../matchingFigures.ts';
import { math, prose, term } from '../prose.ts';
import { drawOne, drawStepped } from './draws.ts';
import { diameterOverHalfWidth } from './gaussianWidths.ts';
import { choiceTask, type Lesson, markTask, numberTask } from './lesson.ts';
import { otherThan } from './otherThan.ts';
import { fallenTo, spotAcrossFigure } from './spotAcross.ts';
import { beamInStopFigure, beamOnStopFigure } from './stopFigures.ts';

const passing = numberTask({
  id: 'passing',
  stage: 'predict',
  question: prose`Somewhere on its way the beam meets a round hole: the rim of the plate, the entrance of the scanner, a mount. The smallest of them is the **${term('stop')}**. Here the stop is ${apertureDiameter} wide and the beam ${plateBeamDiameter} (1/e² diameter). With ${math`R`} the radius of the stop and ${math`w`} the 1/e² radius of the beam, the part ${math`1-e^{-2R^2/w^2}`} of the energy passes, all that lies inside the stop. How much is that here?`,
  shows: [beamInStopFigure],
  unit: '1',
  display: '%',
  within: 0.015,
  from: { passing: transmission, beam: plateBeamDiameter, aperture: apertureDiameter },
  answer: ({ passing }) => passing,
  errors: [
    {
      id: 'one-over-e',
      reason: prose`That would pass if ${plateBeamDiameter} were the 1/e diameter. It is the 1/e² diameter: in the exponent stands twice the square of stop over beam.`,
      answer: ({ beam }, ask) => ask({ pins: { 'plate.beamDiameter': beam * Math.SQRT2 } }).passing,
    },
    {
      id: 'half-maximum',
      reason: prose`That would pass if ${plateBeamDiameter} were the full width at half maximum (FWHM). It is the 1/e² diameter, which is 1.7 times the FWHM of the same beam.`,
      answer: ({ beam }, ask) =>
        ask({ pins: { 'plate.beamDiameter': beam * diameterOverHalfWidth } }).passing,
    },
    {
      id: 'radius-for-diameter',
      reason: prose`The radius of the stop was compared with the diameter of the beam. Take both as radii, or both as diameters.`,
      answer: ({ aperture }, ask) => ask({ set: { 'plate.apertureDiameter': aperture / 2 } }).passing,
    },
    {
      id: 'diameter-for-radius',
      reason: prose`The diameter of the stop was compared with the radius of the beam. Take both as radii, or both as diameters.`,
      answer: ({ aperture }, ask) => ask({ set: { 'plate.apertureDiameter': aperture * 2 } }).passing,
    },
    {
      id: 'lost',
      reason: prose`That is the part that is held back. What passes is the rest.`,
      answer: ({ passing }) => 1 - passing,
    },
  ],
  explanation: prose`The **stop ratio** ${math`R/w`} is ${stopRatio}, and ${math`1-e^{-2R^2/w^2}`} of it gives ${transmission}. Through a stop as wide as the 1/e² diameter 86.5 % would pass.`,
});

const directions = {
  deeper: 'The dip gets deeper',
  same: 'Nearly nothing: the dip stays',
  shallower: 'The dip gets shallower, or goes',
} as const;

/** Dips nearer than this look alike. */
const alike = 0.03;

function direction(before: number, after: number): keyof typeof directions {
  if (Math.abs(after - before) < alike) return 'same';
  return after > before ? 'deeper' : 'shallower';
}

const closing = choiceTask({
  id: 'closing',
  stage: 'predict',
  set: { 'plate.stop': 'open' },
  question: prose`Now the plate is in, with a step ratio of ${stepRatio}, and no stop at all: the chart shows the spot in the focus. Its middle lies ${dip} below its highest fluence. Then the stop of before is put in; it takes away light that passes around the step, far out. What happens to the dip in the middle?`,
  shows: [profileFigure, beamOnStopFigure],
  options: directions,
  otherwise: {
    shallower: prose`So it is where the light through the step is the stronger part on the axis, at a step ratio above 0.83. Here the light around the step is stronger, and the stop takes from that: the two come nearer to balance, and cancel better.`,
  },
  from: { dip, axis: axisIrradianceInFocus, energy: usedPulseEnergy },
  answer: ({ dip }, ask) => direction(dip, ask({ set: { 'plate.stop': 'round' } }).dip),
  errors: [
    {
      id: 'little-light',
      reason: prose`The stop takes little of the energy, but all of it from around the step. On the axis the light through the step and the light around it work against each other, and there a small change on one side shows. Less light overall would indeed leave the shape as it is.`,
      answer: ({ dip, energy }, ask) => {
        const closed = direction(dip, ask({ set: { 'plate.stop': 'round' } }).dip);
        return otherThan(closed, direction(dip, ask({ set: { 'laser.pulseEnergy': energy * 0.9 } }).dip));
      },
    },
    {
      id: 'less-light',
      reason: prose`Without a step, less light would make the middle darker. Here two parts work against each other on the axis. When the stronger one is left alone the middle grows brighter; when the stronger one is cut, darker. Ask which of the two the stop takes from, and which is stronger.`,
      answer: ({ dip }, ask) => {
        const closed = direction(dip, ask({ set: { 'plate.stop': 'round' } }).dip);
        const pins = { 'plate.stepPhase': 0 };
        const open = ask({ pins }).axis;
        const cut = ask({ set: { 'plate.stop': 'round' }, pins }).axis;
        return otherThan(closed, direction(1 - open, 1 - cut));
      },
    },
  ],
  explanation: prose`The stop weakens the light around the step. Above a step ratio of 0.83 the light through the step is the stronger one without a stop: then the stop makes the middle brighter. Below it the light around the step is stronger, and the stop first brings the two nearer to balance: the middle gets darker. A stop decides as much as the step does.`,
});

const edge = markTask({
  id: 'edge',
  stage: 'observe',
  set: { 'plate.stop': 'round' },
  question: prose`This is the spot with the stop in place, from its axis outward. Mark the distance from the axis at which its fluence (the energy of one pulse on a small area, divided by that area) has fallen, outside, to half of its **highest** value.`,
  figure: spotAcrossFigure,
  along: 'x',
  within: 0.015,
  from: { profile, peak, dip },
  answer: ({ profile, peak }) => fallenTo(profile, peak.irradiance / 2, peak.radius) * micro,
  errors: [
    {
      id: 'half-of-axis',
      reason: prose`That is where the fluence has fallen to half of what it is on the axis. Here half of the highest value counts: look for the crest first.`,
      // A middle that is nearly as bright as the crest leads to the same place.
      answer: ({ profile, peak, dip }) =>
        dip < 0.3 ? undefined : fallenTo(profile, (peak.irradiance * (1 - dip)) / 2, peak.radius) * micro,
    },
    {
      id: 'one-over-e-squared',
      reason: prose`That is where the fluence has fallen to 1/e², or 13.5 %. That is used for Gaussian beams; half of the highest value lies further in.`,
      answer: ({ profile, peak }) => fallenTo(profile, peak.irradiance * Math.exp(-2), peak.radius) * micro,
    },
    {
      id: 'crest',
      reason: prose`That is where the fluence is highest. Follow the curve outward from there until it is down to half.`,
      answer: ({ peak }) => (peak.radius === 0 ? undefined : peak.radius * micro),
    },
  ],
  explanation: prose`Half of the highest value is a usual edge for spots that are not Gaussian: it does not depend on a faint halo outside.`,
});

const energy = numberTask({
  id: 'energy',
  stage: 'explain',
  question: prose`The energy of a pulse is measured before the stop: ${usedPulseEnergy}. The stop passes ${transmission} of it. Nothing else takes any. How much energy reaches the workpiece?`,
  unit: 'J',
  display: 'uJ',
  within: 0.015,
  from: { energy: usedPulseEnergy, passing: transmission },
  answer: ({ energy, passing }) => energy * passing,
  errors: [
    {
      id: 'before-the-stop',
      reason: prose`That is the energy before the stop. What the rim holds back never reaches the workpiece.`,
      answer: (_, ask) => {
        const { energy, passing } = ask({ set: { 'plate.stop': 'open' } });
        return energy * passing;
      },
    },
    {
      id: 'twice',
      reason: prose`The stop was counted twice. The pulse passes it once.`,
      answer: ({ energy, passing }) => energy * passing ** 2,
    },
    {
      id: 'lost',
      reason: prose`That is the energy that the rim of the stop takes, and is warmed by. Take it from the energy before.`,
      answer: ({ energy, passing }) => energy * (1 - passing),
    },
    {
      id: 'divided',
      reason: prose`That is more than was there before: the energy was divided by the part that passes. Multiply.`,
      answer: ({ energy, passing }) => energy / passing,
    },
  ],
  explanation: prose`The rim of the stop holds back the rest. Say with every energy where it was measured, before the stop or behind it.`,
});

interface Plates {
  /** Ends between which the step ratio and the stop ratio are drawn. */
  readonly ratio: readonly [number, number];
  readonly stopRatio: readonly [number, number];
}

/**
 * Step ratios on either side of √(ln 2) = 0.833, at which the light through the step and the light around it cancel
 * without a stop. The stop for those below is so wide that it does not cut more than would make them cancel.
 */
const plates: readonly [Plates, ...Plates[]] = [
  { ratio: [0.65, 0.71], stopRatio: [1.15, 1.21] },
  { ratio: [0.86, 0.98], stopRatio: [1.03, 1.2] },
];

/** What the stop does. */
export const stopLesson: Lesson = {
  id: 'stop',
  title: 'What the stop does',
  about:
    'You can tell how much of a pulse a stop passes, and why a little less light changes the middle of the spot a lot.',
  minutes: 8,
  draw: (random) => {
    const beam = drawStepped(random, 9e-3, 12e-3, 5e-4);
    const { ratio, stopRatio } = drawOne(random, plates);
    const stop = random.between(...stopRatio);
    return {
      'laser.beamDiameter': beam / 2,
      'expander.magnification': 2,
      'plate.apertureDiameter': toTenth(beam * stop),
      'plate.stepDiameter': toTenth(beam * random.between(...ratio)),
      'laser.pulseEnergy': drawStepped(random, 3e-6, 20e-6, 1e-6),
    };
  },
  tasks: [passing, closing, edge, energy],
};

/** To a tenth of a millimetre, as diameters are told. */
const toTenth = (length: number) => Number(length.toFixed(4));
