import type { Case } from './sentenceCases.ts';

const typed = (fluence: number, more = {}) => ({
  'threshold.source': 'typed',
  'threshold.typedFluence': fluence,
  ...more,
});
const pulses = (N: number, S: number, floor = 0) => ({
  'threshold.pulses': N,
  'threshold.incubationExponent': S,
  'threshold.floor': floor,
});
const near = (value: number, expected: number) => Math.abs(value / expected - 1) < 1e-3;

/** The lecture table in its focus: 20 µJ, peaks 5.12 and 21.9 J/cm²; handbook 0.144 J/cm². */
export const thresholdCases: readonly Case[] = [
  {
    says: 'energySaid',
    text: /^The pulse energy is 20\sµJ\. No losses on the way are named;/,
    truth: (value) => value('losses.energyAfter') === value('laser.pulseEnergy'),
  },
  {
    says: 'energySaid',
    design: { 'losses.opticsTransmission': 0.9, 'losses.plateTransmission': 0.95 },
    text: /^The pulse energy is 20\sµJ, of which 17\.1\sµJ are left behind the losses on the way, before the stop\.$/,
    truth: (value) => near(value('losses.energyAfter'), 20e-6 * 0.9 * 0.95),
  },
  {
    says: 'energySaid',
    design: { 'laser.energySource': 'power', 'laser.typedPower': 6 },
    text: /^An average power of 6\sW at 200\skHz is 30\sµJ a pulse, where every pulse is let through\. No losses/,
    truth: (value) => near(value('losses.energyAfter'), 30e-6),
  },
  {
    says: 'stopPartSaid',
    text: /^The stop, .* lets 98\.02\s% of it through\.$/,
    truth: (value) => near(value('plate.transmission'), 1 - Math.exp(-2 * 1.4 ** 2)),
  },
  {
    says: 'stopPartSaid',
    design: { 'plate.stop': 'open' },
    text: /^No stop, an opening that cuts the edge of the beam, takes any of it\.$/,
    truth: (value) => value('plate.transmission') === 1,
  },
  {
    says: 'effectiveAreaSaid',
    text: /^It is 382\.9\sµm² with the plate and 89\.69\sµm² without it: .* 4\.3 times the area/,
    truth: (value) => near(value('spot.effectiveArea') / value('unshaped.spot.effectiveArea'), 4.2695),
  },
  {
    says: 'effectiveAreaSaid',
    design: { 'workpiece.z': 0.55e-3 },
    text: /gathers the energy on a smaller area/,
    truth: (value) => value('spot.effectiveArea') < value('unshaped.spot.effectiveArea') / 1.02,
  },
  {
    says: 'effectiveAreaSaid',
    design: { 'plate.designPhase': 1e-6 },
    text: /hardly changes it\.$/,
    truth: (value) => near(value('spot.effectiveArea'), value('unshaped.spot.effectiveArea')),
  },
  {
    says: 'peakAndMeanSaid',
    text: /mean is 1\.535\sJ\/cm² with the plate, at a peak of 5\.119\sJ\/cm²; without it 5\.29\sJ\/cm², at a peak of 21\.86/,
    truth: (value) =>
      value('spot.meanFluence') < value('spot.peakFluence') &&
      value('unshaped.spot.meanFluence') < value('unshaped.spot.peakFluence'),
  },
  {
    says: 'peakAndMeanSaid',
    design: typed(1e5),
    text: /^With the plate the peak of 5\.119\sJ\/cm² marks nothing.* without it the mean is/,
    truth: (value) => value('spot.markArea') === 0 && value('unshaped.spot.markArea') > 0,
  },
  {
    says: 'peakAndMeanSaid',
    design: typed(1e6),
    text: /^Neither the peak with the plate, 5\.119\sJ\/cm², nor the one without it, 21\.86\sJ\/cm², marks anything/,
    truth: (value) => value('spot.markArea') === 0 && value('unshaped.spot.markArea') === 0,
  },
  {
    says: 'peakAndMeanSaid',
    design: { 'workpiece.z': 0.55e-3, ...typed(25e3) },
    text: /Without the plate nothing is marked in this plane\.$/,
    truth: (value) => value('spot.markArea') > 0 && value('unshaped.spot.markArea') === 0,
  },
  {
    says: 'thresholdSaid',
    text: /^For stainless steel the handbook spans 0\.087\sJ\/cm² to 0\.24\sJ\/cm².* 0\.144\sJ\/cm², is where to start.* 0\.042\sJ\/cm²\.$/,
    truth: (value) => near(value('threshold.fluence'), Math.sqrt((1300 / 1.5) * 1600 * 1.5)),
  },
  {
    says: 'thresholdSaid',
    design: typed(2500),
    text: /^The threshold of one pulse is 0\.25\sJ\/cm² as typed, and counts as exact\.$/,
    truth: (value) => value('threshold.fluence') === 2500,
  },
  {
    says: 'thresholdSaid',
    design: typed(2500, { 'threshold.typedUncertainty': 200 }),
    text: /as typed, with a standard uncertainty of 0\.02\sJ\/cm²\.$/,
    truth: (value) => value('threshold.uncertainty') === 200,
  },
  {
    says: 'thresholdSaid',
    design: { 'threshold.source': 'fitted' },
    pins: { 'threshold.fluence': 1900, 'threshold.uncertainty': 60 },
    text: /0\.19\sJ\/cm², fitted to your measured spots, with a standard uncertainty of 0\.006\sJ\/cm²\.$/,
    truth: () => true,
  },
  {
    says: 'thresholdDoubtSaid',
    text: /^$/,
    truth: () => true,
  },
  {
    says: 'thresholdDoubtSaid',
    design: { 'threshold.source': 'fitted' },
    pins: { 'threshold.fluence': 1900, 'threshold.chosenFit': { verdict: 'does not describe' } },
    text: /^ The model that it was fitted with does not describe the marks: do not rely on it before that is mended\.$/,
    truth: () => true,
  },
  {
    says: 'thresholdDoubtSaid',
    design: { 'threshold.source': 'fitted' },
    pins: { 'threshold.fluence': 12, 'threshold.chosenFit': { verdict: 'too few' } },
    text: /^ There are too few marks to tell .* is right\. It lies 72 times below what the handbook spans for stainless steel: check material/,
    truth: (value) => Math.abs(1300 / 1.5 / value('threshold.fluence') - 72.2) < 0.1,
  },
  {
    says: 'thresholdDoubtSaid',
    design: typed(5e5),
    text: /^ It lies 210 times above what the handbook spans/,
    truth: (value) => Math.abs(value('threshold.fluence') / 2400 - 208.3) < 0.1,
  },
  {
    says: 'thresholdDoubtSaid',
    design: { ...typed(5e5), 'workpiece.material': 'other' },
    text: /^$/,
    truth: () => true,
  },
  {
    says: 'conditionsSaid',
    text: /^Other conditions: none .* wavelength 775\snm and 800\snm there, 1030\snm here; .* Measure your own threshold\.$/,
    truth: () => true,
  },
  {
    says: 'conditionsSaid',
    pins: { 'threshold.handbookDifferences': [] },
    text: /^$/,
    truth: () => true,
  },
  {
    says: 'aboveThresholdSaid',
    text: /^The peak is 35 times the threshold with the plate, and 150 times the threshold without it\.$/,
    truth: (value) => near(value('spot.peakFluence') / value('threshold.fluenceAtN'), 35.49),
  },
  {
    says: 'aboveThresholdSaid',
    design: typed(1e5),
    text: /^The peak is not above the threshold with the plate, and 2\.2 times the threshold without it\.$/,
    truth: (value) => value('spot.peakFluence') < value('threshold.fluenceAtN'),
  },
  {
    says: 'aboveThresholdSaid',
    design: typed(1e6),
    text: /not above the threshold with the plate, and not above the threshold without it\.$/,
    truth: (value) => value('unshaped.spot.peakFluence') < value('threshold.fluenceAtN'),
  },
  {
    says: 'incubationSaid',
    text: /^Here one pulse falls on a place, and the threshold is that of one pulse\.$/,
    truth: (value) => value('threshold.fluenceAtN') === value('threshold.fluence'),
  },
  {
    says: 'incubationSaid',
    design: pulses(100, 1),
    text: /^With the exponent at 1 the threshold of 100 pulses is that of one: 0\.144/,
    truth: (value) => value('threshold.fluenceAtN') === value('threshold.fluence'),
  },
  {
    says: 'incubationSaid',
    design: pulses(100, 1.1),
    text: /hardens: 100 pulses on a place need 0\.22[89]\sJ\/cm² each/,
    truth: (value) => value('threshold.fluenceAtN') > value('threshold.fluence'),
  },
  {
    says: 'incubationSaid',
    design: pulses(100, 0.85),
    text: /mark it from 0\.0723\sJ\/cm² each on, 50\s% of what one alone needs\. No floor is set/,
    truth: (value) => near(value('threshold.fluenceAtN') / value('threshold.fluence'), 100 ** -0.15),
  },
  {
    says: 'incubationSaid',
    design: pulses(1e6, 0.7, 700),
    text: /It never comes below 0\.07\sJ\/cm², whatever the number\.$/,
    truth: (value) => value('threshold.fluenceAtN') > 700,
  },
];
