import { flatPlanes, halfRadius } from './halfWaveAnswers.ts';
import { about, type Claims, dipAt, percent, phaseOf, rounds, stands, zetaOf } from './halfWaveChecks.ts';
import { decidingClaims } from './halfWaveDecidingClaims.ts';
import { mapEnds } from './halfWaveMap.ts';
import { inStep } from './halfWaveStep.ts';

export const claims: Readonly<Record<string, Claims>> = {
  wish: {
    'Both curves carry the same pulse': () => inStep('wish')('plate.transmission') === 1,
    '0.058\u202fmm behind the focus: plain, and behind the plate': () => stands('wish', '0.058'),
    'Both are drawn in one plane, 0.058\u202fmm behind the focus, where the shaped one is flat': () =>
      stands('wish', '0.058') && inStep('wish')<string>('spot.kind') === 'flat-top',
    'in its own focus': () => {
      const focus = inStep('wish', { 'workpiece.z': 0 })('unshaped.spot.peakFluence');
      return about(inStep('wish')('focus.unshapedPeakFluence'), focus, 1e-6);
    },
    'for a Gaussian is half of the peak': () => {
      const value = inStep('wish');
      const mean = value('laser.pulseEnergy') / (Math.PI * value('focus.radius') ** 2);
      return about(mean / value('focus.unshapedPeakFluence'), 0.5, 1e-9);
    },
  },
  threshold: {
    'with a peak about five times lower': () => about(inStep('threshold')('safety.plateOutFactor'), 5, 0.1),
    'One pulse on one plane, 0.058\u202fmm behind the focus': () => stands('threshold', '0.058'),
    'in its own focus the plain mark would be 15.2\u202fµm wide, narrower still': () => {
      const focus = inStep('threshold', { 'workpiece.z': 0 })('unshaped.spot.markDiameter');
      return rounds(1e6 * focus, '15.2') && focus < inStep('threshold')('unshaped.spot.markDiameter');
    },
    'only while its plateau stays above the threshold': () => {
      const low = inStep('threshold', { 'laser.pulseEnergy': 0.77e-6 });
      return low('spot.markDiameter') < low('unshaped.spot.markDiameter');
    },
  },
  plate: {
    'much less than a hair': () => inStep('plate')('plate.stepHeight') < 5e-6,
    'its height times (n − 1) against air': () => {
      const value = inStep('plate');
      const delay = value('plate.stepHeight') * (value('plate.refractiveIndex') - 1);
      return about(delay / value('laser.wavelength'), 0.5, 1e-9);
    },
    'The beam is as wide as the step': () => about(inStep('plate')('match.stepRatio'), 1, 1e-12),
    'what is lost is about 7\u202f%': () => {
      const n = inStep('plate')('plate.refractiveIndex');
      return percent(2 * ((n - 1) / (n + 1)) ** 2, '7');
    },
  },
  'plain-focus': {
    'from 2 to 3': () =>
      inStep('plain-focus')('expander.magnification') === 2 &&
      inStep('plain-focus', { 'expander.magnification': 3 })('focus.radius') <
        inStep('plain-focus')('focus.radius'),
    'to 4.37\u202fµm, and open faster to either side': () => {
      const [two, three] = [inStep('plain-focus'), inStep('plain-focus', { 'expander.magnification': 3 })];
      const opening = (value: typeof two) => value('focus.radius') / value('focus.rayleighLength');
      return rounds(1e6 * three('focus.radius'), '4.37') && opening(three) > opening(two);
    },
    'the axes of the map stay as they are': () => mapEnds(2) === mapEnds(3),
    'it changes nothing': () => about(inStep('plain-focus')('spot.relativePeak'), 1, 1e-9),
    'the diameter is 1.41 times that of the waist': () => {
      const value = inStep('plain-focus', { 'workpiece.z': inStep('plain-focus')('focus.rayleighLength') });
      const [there, waist] = [value('unshaped.spot.width'), value('unshaped.focus.width')];
      return rounds(there / waist, '1.41');
    },
    'here are those of M² = 1': () => inStep('plain-focus')('laser.usedBeamPropagationRatio') === 1,
  },
  'middle-alone': {
    'falls off more slowly to the side': () => {
      const { radius, whole, centre } = inStep('middle-alone')<Record<string, Float64Array>>(
        'explain.amplitudeOverRadius',
      );
      return halfRadius(radius!, centre!) > 1.1 * halfRadius(radius!, whole!);
    },
    'of the amplitude of the whole beam': () => {
      const value = inStep('middle-alone');
      return about(value('explain.centreAmplitude') + value('explain.outerAmplitude'), 1, 1e-9);
    },
  },
  turned: {
    'what the middle added is now taken away': () => {
      const { taken, centre } = inStep('turned')<Record<string, Float64Array>>('explain.amplitudeOverRadius');
      return taken!.every((value, i) => Math.abs(value - 2 * centre![i]!) < 1e-9);
    },
    'at half a wave there is no other': () => {
      const { left, irradiance } = inStep('turned')<Record<string, Float64Array>>(
        'explain.amplitudeOverRadius',
      );
      return left!.every((value, i) => Math.abs(value ** 2 - irradiance![i]!) < 1e-12);
    },
    'Where the broad one overtakes the narrow one': () => {
      const { taken, whole } = inStep('turned')<Record<string, Float64Array>>('explain.amplitudeOverRadius');
      return taken![0]! > whole![0]!;
    },
  },
  axis: {
    'About 7\u202f%': () => percent(inStep('axis')('explain.axisIrradianceInFocus'), '7'),
    'a quarter” is the amplitude': () => {
      const value = inStep('axis');
      return about(value('explain.centreAmplitude') - value('explain.outerAmplitude'), 0.25, 0.06);
    },
    'a step a little smaller than the beam': () => {
      const dark = inStep('axis')('match.darkRatio');
      return dark > 0.8 && dark < 0.9;
    },
    'from the least to the full one': () => {
      const run = Array.from({ length: 11 }, (_, i) => phaseOf('axis', 0.5 + i / 20));
      return run.every((value, i) => i === 0 || value > run[i - 1]!) && about(run.at(-1)!, 1, 1e-9);
    },
  },
  ring: {
    'Against the plain focus the axis is dark': () =>
      inStep('ring')('explain.axisIrradianceInFocus') < 0.1 && inStep('ring')('spot.dip') < 0.7,
    'In the focus stands a ring': () => inStep('ring')<string>('spot.kind') === 'ring',
  },
  'where-flat': {
    'In the middle the ring': () => zetaOf('where-flat', 0)<string>('spot.kind') === 'ring',
    'two planes out on either side the flat spot': () =>
      [-0.44, 0.44].every((zeta) => zetaOf('where-flat', zeta)<string>('spot.kind') === 'flat-top'),
    'the outermost ones are peaked': () =>
      [-0.88, 0.88].every((zeta) => zetaOf('where-flat', zeta)<string>('spot.kind') === 'peaked'),
    'The nearest pair is the one': () => {
      const planes = flatPlanes('where-flat', 1.2).map(Math.abs);
      const stands = inStep('flat')('focus.defocus');
      return planes.some((zeta) => Math.abs(zeta - stands) < 0.01);
    },
    'both sides are alike': () =>
      about(
        dipAt('where-flat', { 'workpiece.z': -4e-5 }),
        dipAt('where-flat', { 'workpiece.z': 4e-5 }),
        1e-6,
      ),
    'not dimmer than the ring by much': () =>
      zetaOf('where-flat', 0.44)('spot.peakFluence') > 0.85 * zetaOf('where-flat', 0)('spot.peakFluence'),
    'turns its phase faster than the broad one': () => {
      // 1/(1+iζ) against (1 − e^{−(1+iζ)})/(1+iζ), the closed form on the axis for κ = 1.
      const zeta = 0.44;
      const [re, im] = [1 - Math.exp(-1) * Math.cos(zeta), Math.exp(-1) * Math.sin(zeta)];
      return Math.abs(Math.atan(zeta)) > Math.abs(Math.atan2(im, re) - Math.atan(zeta));
    },
    'at nearly five Rayleigh lengths, wider and much dimmer': () => {
      const [near, far] = [zetaOf('where-flat', 0.44), zetaOf('where-flat', 4.9)];
      const wider = far('spot.width') > 1.3 * near('spot.width');
      const dimmer = far('spot.peakFluence') < near('spot.peakFluence') / 3;
      return far<string>('spot.kind') === 'flat-top' && wider && dimmer;
    },
  },
  level: {
    'On the axis the profile is exactly level': () => {
      const planes = inStep('level')<Float64Array>('focus.zeroCurvaturePlanes');
      const z = inStep('level')('workpiece.z');
      return planes.some((plane) => Math.abs(plane - z) < 0.05e-6);
    },
    'a Gaussian has 0.152 and a perfect disc 1': () => rounds(Math.log(0.9) / Math.log(0.5), '0.152'),
    'lifts the profile outward': () => inStep('level')('spot.ringDiameter') > 5e-6,
  },
  flat: {
    'a Gaussian has 0.152': () => rounds(Math.log(0.9) / Math.log(0.5), '0.152'),
    'Level on the axis, at 0.0476\u202fmm, it was still a ring': () =>
      stands('level', '0.0476') && inStep('level')<string>('spot.kind') === 'ring',
    'Ten micrometres further, at 0.058\u202fmm, the dip has closed': () =>
      stands('flat', '0.058') &&
      about(inStep('flat')('workpiece.z') - inStep('level')('workpiece.z'), 10e-6, 0.05) &&
      dipAt('flat', {}) < 1e-6,
    'At 0.045\u202fmm the ring is open again, with a dip of more than a fifth': () => {
      const there = inStep('flat', { 'workpiece.z': 45e-6 });
      return there<string>('spot.kind') === 'ring' && there('spot.dip') > 0.2;
    },
    'at 0.07\u202fmm a peak has grown': () =>
      inStep('flat', { 'workpiece.z': 70e-6 })<string>('spot.kind') === 'peaked',
    'to put it back to 0.058\u202fmm': () => stands('flat', '0.058'),
    'at 0.058\u202fmm the fluence over the plateau stays within 3.5\u202f% of its mean': () =>
      stands('flat', '0.058') && rounds(100 * inStep('flat')('spot.unevenness'), '3.5'),
  },
  ...decidingClaims,
};
