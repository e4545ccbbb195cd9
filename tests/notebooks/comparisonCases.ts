import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

/** A best setting with this rate, in mm²/s, whose energy per area goes with it. */
const best = (rate: number, energyPerArea: number, limit = 'power', scale = 4) => ({
  defocus: 0.3,
  scale,
  diameter: 1e-4,
  peakFluence: 2600,
  pulseEnergy: 1e-5,
  pulseSpacing: 5e-6,
  lineSpacing: 5e-5,
  speed: 1,
  repetitionRate: 2e5,
  power: 10,
  limit,
  rate: rate * 1e-6,
  fieldTime: 100 / rate,
  inside: 0.9,
  modulation: 0.1,
  energyPerArea,
  today: {
    pulseEnergy: 1e-6,
    pulseSpacing: 1e-6,
    lineSpacing: 1e-5,
    speed: 1,
    repetitionRate: 1e6,
    limit: 'repetition rate',
    rate: 1e-5,
  },
});
const both = (shaped: ReturnType<typeof best>, unshaped: ReturnType<typeof best>): Values => ({
  'comparison.shaped': shaped,
  'comparison.unshaped': unshaped,
});
const gain = (value: (id: string) => number) => value('scan.timeGain');
const twice = both(best(200, 5e4), best(100, 1e5));
const half = both(best(100, 1e5), best(200, 5e4, 'scanner speed'));
const alike = both(best(100, 1e5, 'power', 1), best(100, 1e5));

/** Cases of the sentences about the fair comparison. */
export const comparisonCases: readonly Case[] = [
  {
    says: 'comparisonSaid',
    pins: twice,
    text: /^With 90\s% of the field inside the window and a modulation of at most 10\s%, the field takes 500\sms with the plate \(200\smm²\/s\) and 1\ss with the plate taken out \(100\smm²\/s\), each at its own best\. The plate is worth a factor of 2 in time\. Both are limited by the highest average power of the laser\.$/,
    truth: (value) => Math.abs(gain(value) - 2) < 1e-9,
  },
  {
    says: 'comparisonSaid',
    pins: half,
    text: /The plain beam is the faster one: the plate has 0\.5 of its rate\. The shaped beam is limited by the highest average power of the laser, the plain one by the highest speed of the scanner\.$/,
    truth: (value) => gain(value) < 1,
  },
  {
    says: 'comparisonSaid',
    pins: alike,
    text: /In time the plate gains nothing\. Both/,
    truth: (value) => gain(value) === 1,
  },
  {
    says: 'energyPerAreaSaid',
    pins: twice,
    text: /^The laser spends 5\sJ\/cm² of field with the plate and 10\sJ\/cm² without it, 2 times as much\.$/,
    truth: (value) => Math.abs(value('comparison.energyGain') - 2) < 1e-9,
  },
  {
    says: 'energyPerAreaSaid',
    pins: half,
    text: /in energy the plate gains less than nothing\.$/,
    truth: (value) => value('comparison.energyGain') < 1,
  },
  {
    says: 'energyPerAreaSaid',
    pins: alike,
    text: /in energy the plate gains nothing\.$/,
    truth: (value) => value('comparison.energyGain') === 1,
  },
  {
    says: 'spotSizeSaid',
    pins: twice,
    text: /^The best spot with the plate measures 100\sµm, 4 times as large as today’s: a lens of 400\smm would make it.* would reach 10\smm²\/s, limited by the highest repetition rate of the laser, with the plate, and 10\smm²\/s/,
    truth: (value) => Math.abs(value('comparison.focalLength') - 4 * value('lens.focalLength')) < 1e-12,
  },
  {
    says: 'spotSizeSaid',
    pins: alike,
    text: /measures 100\sµm, about as large as today’s: a lens of 100\smm/,
    truth: (value) => value('comparison.focalLength') === value('lens.focalLength'),
  },
  {
    says: 'spotSizeSaid',
    pins: both(best(200, 5e4, 'power', 0.5), best(100, 1e5)),
    text: /measures 100\sµm, 0\.5 of today’s: a lens of 50\smm/,
    truth: (value) => value('comparison.focalLength') < value('lens.focalLength'),
  },
  {
    says: 'practiceSaid',
    pins: twice,
    text: /Here the factor is 2, near to that; the times for such a field would be 500\sms and 1\ss\. Those follow from .* the 10 pulses .* need 167\smW of the laser, 60 s without it 167\smW\./,
    truth: (value) => gain(value) >= 1.6 && gain(value) <= 2.4,
  },
  {
    says: 'practiceSaid',
    pins: both(best(300, 5e4), best(100, 1e5)),
    text: /the factor is 3, more than that;/,
    truth: (value) => gain(value) > 2.4,
  },
  {
    says: 'practiceSaid',
    pins: both(best(130, 5e4), best(100, 1e5)),
    text: /the factor is 1\.3, less than that;/,
    truth: (value) => gain(value) > 1.03 && gain(value) < 1.6,
  },
  {
    says: 'practiceSaid',
    pins: alike,
    text: /the factor is 1, no gain at all;/,
    truth: (value) => gain(value) < 1.03,
  },
  {
    says: 'bestBelowThresholdSaid',
    pins: {
      'comparison.peakFluence': 2600,
      'unshaped.comparison.peakFluence': 2600,
      'threshold.fluenceAtN': 3530,
    },
    text: /^The best peaks, 0\.26\sJ\/cm² with the plate and 0\.26\sJ\/cm² without it, lie below the threshold of 0\.353\sJ\/cm²: by these numbers no pulse marks there\. /,
    truth: (value) => value('comparison.peakFluence') < 3530,
  },
  {
    says: 'bestBelowThresholdSaid',
    pins: {
      'comparison.peakFluence': 2600,
      'unshaped.comparison.peakFluence': 4000,
      'threshold.fluenceAtN': 3530,
    },
    text: /^The best peak with the plate, 0\.26\sJ\/cm², lies below the threshold/,
    truth: (value) => value('unshaped.comparison.peakFluence') > 3530,
  },
  {
    says: 'bestBelowThresholdSaid',
    pins: {
      'comparison.peakFluence': 4000,
      'unshaped.comparison.peakFluence': 2600,
      'threshold.fluenceAtN': 3530,
    },
    text: /^The best peak without the plate, 0\.26\sJ\/cm², lies below the threshold/,
    truth: (value) => value('comparison.peakFluence') > 3530,
  },
  {
    says: 'bestBelowThresholdSaid',
    pins: {
      'comparison.peakFluence': 4000,
      'unshaped.comparison.peakFluence': 4000,
      'threshold.fluenceAtN': 3530,
    },
    text: /^$/,
    truth: (value) => value('comparison.peakFluence') > 3530,
  },
];
