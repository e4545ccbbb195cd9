import { flatPlanes } from './halfWaveAnswers.ts';
import { about, type Claims, dipAt, percent, rounds, stands } from './halfWaveChecks.ts';
import { inStep } from './halfWaveStep.ts';

/** Of the steps from the stop onward. */
export const decidingClaims: Readonly<Record<string, Claims>> = {
  stop: {
    'Without the stop the dip of the ring in the focus is 64\u202f%': () =>
      percent(dipAt('stop', { 'plate.stop': 'open' }), '64'),
    'Nearly nothing: 5\u202f%': () => percent(dipAt('stop', {}), '5'),
    'Hardly less: 63\u202f%': () => !percent(dipAt('stop', {}), '63'),
    'About half of it: 32\u202f%': () => percent(dipAt('stop', { 'plate.stop': 'open' }) / 2, '32'),
    'Deeper still: 80\u202f%': () => dipAt('stop', {}) < 0.8,
    '63\u202f% is the dip less 2\u202f% of it': () =>
      percent(dipAt('stop', { 'plate.stop': 'open' }) * inStep('stop')('plate.transmission'), '63'),
    'are left of 0.368': () =>
      rounds(inStep('stop', { 'plate.stop': 'open' })('explain.outerAmplitude'), '0.368'),
    'The outermost light is 2\u202f%': () => percent(1 - inStep('stop')('plate.transmission'), '2'),
    'a seventh of the amplitude': () => {
      const value = inStep('stop');
      return about(1 - value('explain.centreAmplitude') - value('explain.outerAmplitude'), 1 / 7);
    },
  },
  'beam-size': {
    'The beam grows by 5\u202f%': () => inStep('beam-size')('sensitivity.change') === 0.05,
    'a beam 5\u202f% narrower': () => inStep('beam-size')('sensitivity.change') === 0.05,
    'The stop of  stays on': () =>
      inStep('beam-size')('plate.apertureDiameter') === inStep('stop')('plate.apertureDiameter') &&
      inStep('beam-size')<string>('plate.stop') === 'round',
    'The width hardly moves': () => {
      const value = inStep('beam-size');
      return about(value('sensitivity.widthWiderBeam'), value('spot.width'), 0.03);
    },
  },
  colour: {
    'is made for 1030\u202fnm': () =>
      about(inStep('colour', { 'laser.wavelength': 1030e-9 })('plate.stepPhase'), Math.PI, 1e-4),
    'Half the wavelength': () => about(inStep('colour')('laser.wavelength'), 1030e-9 / 2, 1e-12),
    'a little more than a whole wave': () => {
      const waves = inStep('colour')('plate.stepPhase') / (2 * Math.PI);
      return waves > 1 && waves < 1.05;
    },
    'The two curves nearly lie on each other': () =>
      about(inStep('colour')('safety.plateOutFactor'), 1, 0.01),
  },
  sides: {
    'no dip, then the ring, deepest behind the focus, then no dip again': () => {
      const places = Array.from({ length: 41 }, (_, i) => (i * 5 - 100) * 1e-6);
      const dips = places.map((z) => dipAt('sides', { 'workpiece.z': z }));
      const deepest = places[dips.indexOf(Math.max(...dips))]!;
      return dips[0]! < 1e-6 && dips.at(-1)! < 1e-6 && deepest > 0;
    },
    'The flat plane before the focus is near, the one behind it far': () => {
      const planes = flatPlanes('sides', 0.9);
      const near = planes.filter((zeta) => zeta < 0).map((zeta) => -zeta);
      const far = planes.filter((zeta) => zeta > 0);
      return near.length > 0 && far.length > 0 && Math.max(...near) < Math.min(...far);
    },
    'the picture is mirrored': () =>
      about(
        dipAt('sides', { 'plate.raised': 'ring', 'workpiece.z': -60e-6 }),
        dipAt('sides', { 'workpiece.z': 60e-6 }),
        1e-6,
      ),
    'it becomes symmetric': () => {
      const half = { 'plate.designPhase': Math.PI };
      return about(
        dipAt('sides', { ...half, 'workpiece.z': -3e-5 }),
        dipAt('sides', { ...half, 'workpiece.z': 3e-5 }),
        1e-6,
      );
    },
  },
  'real-beam': {
    'M² goes from 1 to 1.2': () => inStep('real-beam')('laser.usedBeamPropagationRatio') === 1,
    'a beam of M² above 1 is partly coherent': () => true,
    'falls to about 5\u202f% at M² = 1.2': () =>
      percent(dipAt('real-beam', { 'laser.beamPropagationRatio': 1.2 }), '5'),
    'The edge is blurred as well, and the peak falls': () => {
      const [one, more] = [inStep('real-beam'), inStep('real-beam', { 'laser.beamPropagationRatio': 1.2 })];
      return (
        more('spot.edgeWidth') > one('spot.edgeWidth') && more('spot.peakFluence') < one('spot.peakFluence')
      );
    },
    'where the perfect beam has a ring': () => inStep('real-beam')<string>('spot.kind') === 'ring',
  },
  removal: {
    'removes 1.36 times as much': () => {
      const value = inStep('removal');
      return rounds(value('removal.flatTopBest') / value('removal.gaussianBest'), '1.36');
    },
  },
  window: {
    'a ratio of 1.3 between the bounds': () => {
      const value = inStep('window');
      return about(value('window.highFluence') / value('window.lowFluence'), 1.3, 1e-9);
    },
    'little more than 1.2': () => {
      const gain = inStep('window', { 'window.highFluence': 6000 })('window.gain');
      return gain > 1.2 && gain < 1.25;
    },
  },
  depth: {
    'The flat plane of the open plate is about 4\u202fµm deep': () =>
      stands('flat', '0.058') && rounds(1e6 * inStep('flat')('spot.depthOfFocus'), '4'),
    'from 5.1\u202f% in the middle to 1.3\u202f% at the ends': () => {
      const { from, to } = inStep('depth')<{ from: number; to: number }>('spot.depthEnds');
      const [middle, ...ends] = [0, from, to].map((z) => dipAt('depth', { 'workpiece.z': z }));
      return rounds(100 * middle!, '5.1') && ends.every((dip) => rounds(100 * dip, '1.3'));
    },
    'the same fluence within 5\u202f%': () => inStep('depth')('focus.depthTolerance') === 0.05,
    'a field 10 mm wide that is off by 1 mrad spans 10 µm': () => about(10e-3 * 1e-3, 10e-6, 1e-9),
  },
  alignment: {
    'The beam stands 0.25\u202fmm beside': () => {
      const value = inStep('alignment');
      return about((value('explain.offsetTried') * value('plate.beamDiameter')) / 2, 0.25e-3, 1e-9);
    },
    'where a little offset shows most': () => {
      const shown = [30, 40, 46, 58, 65].map((z) =>
        inStep('alignment', { 'workpiece.z': z * 1e-6 })('explain.offCentreHere'),
      );
      return shown.every((value) => value < inStep('alignment')('explain.offCentreHere'));
    },
  },
  safety: {
    'Class 4 laser': () => true,
    '5.66 times in the plain focus': () => {
      const value = inStep('safety');
      return rounds(value('focus.unshapedPeakFluence') / value('spot.peakFluence'), '5.66');
    },
    '0.058\u202fmm behind the focus: with the plate and without': () => stands('safety', '0.058'),
    'the most there is': () => {
      const most = inStep('safety')('focus.unshapedPeakFluence');
      return [-60, -20, 0, 20, 58].every((z) => {
        const there = inStep('safety', { 'workpiece.z': z * 1e-6 });
        return there('unshaped.spot.peakFluence') <= most * (1 + 1e-9) && there('spot.peakFluence') < most;
      });
    },
    'other planes have other peaks': () =>
      inStep('safety', { 'workpiece.z': 0.2e-3 })('spot.peakFluence') >
      2 * inStep('safety')('spot.peakFluence'),
  },
  summary: {
    'a step of 0.4 waves': () => inStep('summary', { 'plate.designPhase': 0.8 * Math.PI })('spot.dip') >= 0,
    'if my spot must be 30 µm wide': () => {
      const wish = inStep('summary', { 'wish.spotWidth': 30e-6 });
      const there = inStep('summary', { 'lens.focalLength': wish('wish.focalLength') });
      return about(there('spot.width'), 30e-6, 1e-6);
    },
  },
};
