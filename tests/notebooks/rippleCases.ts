import type { Case } from './sentenceCases.ts';

const degree = Math.PI / 180;
const tilted = { 'workpiece.incidence': 30 * degree };
const polarised = (angle: number) => ({ 'laser.polarisationAngle': angle * degree });
const within = (value: number, nm: number) => Math.abs(value - nm * 1e-9) < 0.05e-9;
const bound = (value: (id: string) => number) => Boolean(value('ripples.boundWave'));
const spread = (value: (id: string) => number) =>
  value('ripples.spread') as unknown as { periods: Float64Array; bound: boolean[] };
const held = (value: (id: string) => number) => spread(value).bound.filter((is) => is).length;
const direction = (value: (id: string) => number) => value('ripples.direction') / degree;

/** Cases of the sentences about period and direction of ripples. */
export const rippleCases: readonly Case[] = [
  {
    says: 'periodSaid',
    text: /^The model gives a period of 1026\snm\. Measured ones are mostly shorter: expect 721\snm to 979\snm/,
    // 1026.2 nm: physics §7, n and k of Karlsson and Ribbing 1982.
    truth: (value) => within(value('ripples.period'), 1026.2) && bound(value),
  },
  {
    says: 'periodSaid',
    design: tilted,
    text: /a period of 685\snm from the wave that runs against the light, and 2045\snm from the one with it\. At normal incidence in air measured periods are mostly shorter; carried over to this tilt or ambient, where that has not been shown, it would be 481\snm to 652\snm\.$/,
    truth: (value) => within(value('ripples.period'), 685.0) && within(value('ripples.longPeriod'), 2044.9),
  },
  {
    says: 'periodSaid',
    design: { 'workpiece.incidence': 75 * degree },
    pins: { 'ripples.periods': { short: 520e-9, long: null } },
    text: /a period of 520\snm from the wave that runs against the light; with it none can run\. At normal/,
    truth: (value) => Number.isNaN(value('ripples.longPeriod')),
  },
  {
    says: 'periodSaid',
    design: { 'workpiece.material': 'silicon' },
    text: /^No wave is bound .*: the formula’s [\d.]+\snm is a number near the wavelength and predicts nothing\./,
    truth: (value) => !bound(value),
  },
  {
    says: 'periodSaid',
    design: { 'workpiece.material': 'silicon', ...tilted },
    text: /the formula’s .*predicts nothing\. Ripples may come all the same, since the pulses themselves change the surface\.$/,
    truth: (value) => !bound(value) && value('workpiece.incidence') > 0,
  },
  {
    says: 'periodSaid',
    design: { 'ripples.constantsSource': 'typed', 'ripples.typedIndex': 0.01, 'ripples.typedExtinction': 0 },
    text: /the formula’s [\d.× ⁰¹²³⁴⁵⁶⁷⁸⁹]+\s.m predicts nothing\./,
    truth: (value) => !bound(value) && value('ripples.period') > 1e-5,
  },
  {
    says: 'directionSaid',
    text: /^The ridges run across the scan, at 90° to it\.$/,
    truth: (value) => Math.abs(direction(value) - 90) < 1e-9,
  },
  {
    says: 'directionSaid',
    design: polarised(90),
    text: /^The ridges run along the scan, at (0|180)°\.$/,
    truth: (value) => direction(value) < 1e-9 || direction(value) > 180 - 1e-9,
  },
  {
    says: 'directionSaid',
    design: polarised(30),
    text: /^The ridges run at 120° to the scan, counter-clockwise\.$/,
    truth: (value) => Math.abs(direction(value) - 120) < 1e-9,
  },
  {
    says: 'directionSaid',
    design: { 'laser.polarisation': 'radial' },
    text: /^There is no one direction with this polarisation/,
    truth: (value) => Number.isNaN(direction(value)),
  },
  {
    says: 'constantsSaid',
    text: /^Here n \+ ik = .*, measured on stainless steel, austenitic\. Samples differ: the 2 samples of stainless steel give 10\d\d\snm to 10\d\d\snm, and each of them holds a bound wave\.$/,
    truth: (value) => held(value) === 2,
  },
  {
    says: 'constantsSaid',
    design: { 'workpiece.material': 'titanium' },
    text: /and \d of them holds? a bound wave and the others none: here the sample decides\.$/,
    // Titanium at 1030 nm: bound with Johnson and Christy, not with the film of Palm (physics §7).
    truth: (value) => held(value) > 0 && held(value) < spread(value).bound.length,
  },
  {
    says: 'constantsSaid',
    design: { 'workpiece.material': 'silicon' },
    text: /and none of them holds a bound wave\.$/,
    truth: (value) => held(value) === 0 && spread(value).bound.length > 1,
  },
  {
    says: 'constantsSaid',
    design: { 'workpiece.material': 'copper', 'ripples.constantsSource': 'typed' },
    text: /^Here n \+ ik = 2\.80 \+ 4\.80i, as typed\.$/,
    truth: (value) => spread(value).bound.length === 1,
  },
  {
    says: 'tiltSaid',
    text: /^The beam falls straight onto the workpiece\. Tilted, the surface would get/,
    truth: (value) => value('workpiece.incidence') === 0,
  },
  {
    says: 'tiltSaid',
    design: tilted,
    text: /^Tilted by 30°, the surface gets 86\.6\s% of the fluence over a footprint 1\.15 times as long\.$/,
    truth: (value) => Math.abs(Math.cos(value('workpiece.incidence')) - 0.866) < 1e-3,
  },
  {
    says: 'tiltSaid',
    design: { ...tilted, 'workpiece.material': 'copper' },
    text: /times as long\. On copper the plain model deviates strongly at such angles \(Y\. Fuentes-Edfuf/,
    truth: (value) => value('workpiece.incidence') > 20 * degree,
  },
  {
    says: 'constantsSaid',
    design: { 'ripples.constantsSource': 'titaniumMash' },
    text: /measured on titanium.*: not the material of the workpiece, which is stainless steel\. Samples differ/,
    truth: (value) => spread(value).bound.length === 2,
  },
  {
    says: 'constantsSaid',
    pins: {
      'ripples.spread': { samples: ['a', 'b'], periods: Float64Array.of(1e-6, 1e-6), bound: [true, true] },
    },
    text: /The 2 samples of stainless steel agree on 1000\snm, and each of them holds a bound wave\.$/,
    truth: (value) => spread(value).periods[0] === spread(value).periods[1],
  },
  {
    says: 'bothPolarisationsSaid',
    design: tilted,
    text: /^$/,
    truth: (value) => value('workpiece.incidence') > 0,
  },
  {
    says: 'bothPolarisationsSaid',
    design: { ...tilted, 'laser.polarisation': 'circular' },
    text: /^With this polarisation the field turns through both: the period above is that of s, and p would give 685\snm and 2045\snm\.$/,
    // 685.0 and 2044.9 nm for p, 1183.5 nm for s: physics §7.
    truth: (value) => within(value('ripples.period'), 1183.5),
  },
  {
    says: 'bothPolarisationsSaid',
    design: {
      'laser.polarisation': 'radial',
      'workpiece.incidence': 75 * degree,
      'ripples.constantsSource': 'typed',
      'ripples.typedIndex': 0.6,
      'ripples.typedExtinction': 0.1,
    },
    text: /and p would give [\d.]+\snm\.$/,
    truth: (value) =>
      Math.sin(75 * degree) > (value('ripples.surfaceWave') as unknown as { index: number }).index,
  },
];
