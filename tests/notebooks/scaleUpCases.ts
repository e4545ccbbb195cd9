import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

/** Without heat: the initial recipe, 20 µJ every 0.25 µm on lines 6 µm apart, 10 mm × 10 mm. */
const cold: Values = { 'scaleUp.heat': null, 'scaleUp.todayHeat': null };
/** Steel on which one spot comes to the 200 K allowed at 100 kHz; pulses leave next to nothing else. */
const hotToday = {
  input: { energy: 1e-20, radius: 15e-6, diffusivity: 3.75e-6, heatCapacity: 4e6, thickness: 1e-3 },
  own: { rates: [1e5, 5e4], rises: [200, 100], reached: true },
  limit: 200,
};
const at = (rate: number): Values => ({ 'scaleUp.areaPerHour': rate });
const spots = (count: number): Values => ({ 'scaleUp.spots': count });
const limited = (limit: string, next = 'power') => ({
  'scaleUp.field': {
    speed: 1,
    repetitionRate: 1e5,
    power: 10,
    fieldTime: 1,
    writingTime: 0.9,
    rate: 1e-5,
    energyPerArea: 1e5,
    limit,
    next,
  },
});
const step = (step: string, rate: number, limit = 'power') => ({ step, rate, limit });
const stepPins = (...rates: number[]) => ({
  'scaleUp.steps': ['today', 'fastest', 'power', 'repetition rate', 'scanner', 'spots'].map((name, i) =>
    step(name, rates[i]!, i === 0 ? 'settings' : 'power'),
  ),
});
const practice = 100e-6 / 30;
const gain = (value: (id: string) => number) =>
  value('scaleUp.areaPerHour') / value('scaleUp.todayAreaPerHour');
const limitText: Readonly<Record<string, RegExp>> = {
  power:
    /^What limits the larger machine is the average power of the larger laser\. Every spot takes its share/,
  'repetition rate': /is the repetition rate of the larger laser\. More spots help/,
  'scanner speed': /is the speed of the larger scanner\. More spots help, or a faster scanner/,
  acceleration: /is the acceleration of the larger scanner, .* Longer lines help/,
  heat: /is the temperature rise that is allowed\. The surface bears no more heat: all spots share/,
  stitching:
    /is the move from field to field\. Larger fields help.* the next would be the average power of the larger laser\.$/,
};

/** Cases of the sentences about the larger machine: what it does and what limits it. */
export const scaleUpCases: readonly Case[] = [
  {
    says: 'heldSaid',
    text: /^The recipe, what every place gets, is held: pulses of 20\sµJ every 0\.25\sµm, lines 6\sµm apart\. Only how fast it is written may change/,
    truth: (value) => value('scan.passes') === 1,
  },
  {
    says: 'heldSaid',
    design: { 'scan.passes': 4 },
    text: /lines 6\sµm apart, 4 passes\./,
    truth: (value) => value('scan.passes') === 4,
  },
  {
    says: 'heldSaid',
    design: { 'scan.passes': 2, 'scan.hatchAngle': Math.PI / 2, 'scan.interlacing': 3 },
    text: /2 passes, turned by 90° from pass to pass, every third line first and those between after it\./,
    truth: (value) => value('scan.passes') === 2,
  },
  {
    says: 'heldSaid',
    design: { 'laser.pulsesPerBurst': 3 },
    text: /every 0\.25\sµm, 3 of them in each place at once, lines/,
    truth: (value) => value('laser.burstPulses') === 3,
  },
  {
    // 100 W are 1 MHz for 4 × 20 µJ/0.8, and 0.25 m/s; 12 groups of 4 · 33 lines and 83 more are 429 scans of 40.01 ms.
    says: 'scaledSaid',
    pins: cold,
    text: /^4 spots side by side.* scans 429 times instead of 1667, at 0\.25\sm\/s and 1000\skHz with 100\sW of the laser\. A field takes 17\.2\ss, and the move to the next 0\.3\ss\. That is 0\.0205\sm²\/h: a square metre in 48\.7\sh\.$/,
    truth: (value) => Math.abs(value('scaleUp.fieldTime') - 429 * (0.04 + 1e-5)) < 1e-9,
  },
  {
    says: 'scaledSaid',
    design: {
      'scan.fieldHeight': 0.6e-3,
      'scan.lineSpacing': 60e-6,
      'scaleUp.spotDistance': 60e-6,
      'scaleUp.spots': 10,
    },
    pins: cold,
    text: /^10 spots .* the larger machine scans once instead of 10, at/,
    truth: (value) => value('scaleUp.scans') === 1,
  },
  {
    says: 'scaledSaid',
    design: spots(1),
    pins: cold,
    text: /^With one spot the larger machine goes along each of 1667 lines/,
    truth: (value) => value('scaleUp.scans') === 1667,
  },
  {
    says: 'scaledSaid',
    design: { 'scaleUp.moveTime': 0 },
    pins: cold,
    text: /A field takes 17\.2\ss, and the next follows at once\./,
    truth: (value) => value('scaleUp.moveTime') === 0,
  },
  {
    says: 'scaledTodaySaid',
    pins: cold,
    text: /^As the field is set today, one spot brings 0\.00107\sm²\/h, 931\sh for a square metre\. The larger machine is 19\.1 times as fast\.$/,
    truth: (value) => gain(value) > 1.03,
  },
  {
    says: 'scaledTodaySaid',
    pins: { ...cold, ...at(1e-7) },
    text: /The larger machine is slower, at 0\.\d+ of that\.$/,
    truth: (value) => gain(value) < 0.97,
  },
  {
    says: 'scaledTodaySaid',
    pins: { ...cold, ...at(2.98e-7) },
    text: /The larger machine is no faster\.$/,
    truth: (value) => Math.abs(gain(value) - 1) < 0.03,
  },
  {
    says: 'scaledTodaySaid',
    pins: { 'scaleUp.todayHeatTable': hotToday, 'scaleUp.heatTable': hotToday },
    text: /times as fast\. Today’s field goes beyond the temperature rise that is allowed; the larger machine is held to it\.$/,
    truth: (value) => value('laser.repetitionRate') > hotToday.own.rates[0]!,
  },
  {
    says: 'scaledPracticeSaid',
    pins: at(10 * practice),
    text: /^Common practice \(no source\) names 30 s .*: 3\.33\smm²\/s, at which a square metre takes 83\.3\sh; the larger machine is 10 times as fast\.$/,
    truth: (value) => Math.abs(value('scaleUp.areaPerHour') / practice - 10) < 1e-9,
  },
  {
    says: 'scaledPracticeSaid',
    pins: at(0.25 * practice),
    text: /the larger machine has 0\.25 of that rate\.$/,
    truth: (value) => value('scaleUp.areaPerHour') < practice,
  },
  {
    says: 'scaledPracticeSaid',
    pins: at(practice),
    text: /the larger machine is about as fast\.$/,
    truth: (value) => Math.abs(value('scaleUp.timePerSquareMetre') / 3600 - 83.33) < 0.01,
  },
  ...Object.entries(limitText).map(
    ([limit, text]): Case => ({
      says: 'scaleLimitSaid',
      pins: limited(limit, limit === 'power' ? 'heat' : 'power'),
      text,
      truth: () => true,
    }),
  ),
  {
    says: 'targetSaid',
    design: { 'scaleUp.target': 0.01 / 3600 },
    pins: cold,
    text: /^The 0\.01\sm²\/h wanted are met: 0\.0205\sm²\/h are reached\. By itself, the lowest limit, the average power of the larger laser, would allow 0\.021\sm²\/h\.$/,
    truth: (value) => value('scaleUp.missingFactor') < 1,
  },
  {
    says: 'targetSaid',
    design: { 'scaleUp.target': 0.0208 / 3600 },
    pins: cold,
    text: /^The 0\.0208\sm²\/h wanted are 1\.01 times what is reached\. No limit by itself .* Lowest is the average power of the larger laser, which by itself would allow 0\.021\sm²\/h\.$/,
    truth: (value) => value('scaleUp.missingFactor') > 1,
  },
  {
    says: 'targetSaid',
    design: { 'scaleUp.target': 0.04 / 3600 },
    pins: cold,
    text: /Even with everything else without limit, one limit falls short of it: the average power of the larger laser, which is too low by a factor of 1\.91\.$/,
    truth: (value) => value('scaleUp.missingFactor') > 1.91,
  },
  {
    says: 'targetSaid',
    pins: cold,
    text: /^The 0\.1\sm²\/h wanted are 4\.87 times .* 2 limits fall short of it: the average power of the larger laser, which is too low by a factor of 4\.77; the repetition rate of the larger laser, which is too low by a factor of 2\.38\.$/,
    truth: (value) => value('scaleUp.missingFactor') > 4.77,
  },
  {
    says: 'spotsForTargetSaid',
    design: { 'scaleUp.target': 0.01 / 3600 },
    pins: cold,
    text: /^One spot would do for 0\.01\sm²\/h, then at 0\.0106\sm²\/h; no more than 20 are possible, as a pulse of the larger laser has energy for 20\.$/,
    truth: (value) => value('scaleUp.spotsForTarget') === 1,
  },
  {
    says: 'spotsForTargetSaid',
    design: { 'scaleUp.target': 0.02 / 3600, 'scaleUp.spotDistance': 1e-3 },
    pins: cold,
    text: /^2 spots would do for 0\.02\sm²\/h, then at 0\.0211\sm²\/h; no more than 10 are possible, as the height of the field has room for 10\.$/,
    truth: (value) => value('scaleUp.spotsForTarget') === 2,
  },
  {
    says: 'spotsForTargetSaid',
    pins: cold,
    text: /^No number of spots brings 0\.1\sm²\/h\. No more than 20 are possible, as a pulse of the larger laser has energy for 20; of these \d+ spots would bring most, 0\.02\d+\sm²\/h, and what stops it there is the average power of the larger laser\.$/,
    truth: (value) => Number.isNaN(value('scaleUp.spotsForTarget')),
  },
  {
    says: 'spotsForTargetSaid',
    design: { 'scaleUp.splitterEfficiency': 0.3 },
    pins: { ...cold, 'scaleUp.areaPerHour': 1e-6 },
    text: /of these one spot would bring most, 0\.0106\sm²\/h/,
    truth: (value) => Number.isNaN(value('scaleUp.spotsForTarget')),
  },
  {
    says: 'stepsSaid',
    pins: stepPins(1, 2, 2, 10, 10.1, 40),
    text: /^With nothing bought, today’s machine at its fastest brings a factor of 2\. Of what is bought, most comes from its repetition rate: a factor of 5\. Nothing or next to nothing comes from the power of the larger laser and the larger scanner\.$/,
    truth: () => true,
  },
  {
    says: 'stepsSaid',
    pins: stepPins(1, 1, 1, 1, 1, 1),
    text: /^Nothing that is bought brings anything\.$/,
    truth: () => true,
  },
  {
    says: 'stepsSaid',
    pins: stepPins(1, 0.5, 1, 2, 4, 3),
    text: /^Held to its limits, today’s machine has 0\.5 of the rate that is set\. Of what is bought, most comes from .*: a factor of 2\. It becomes slower with the further spots \(0\.75\)\.$/,
    truth: () => true,
  },
  {
    says: 'stepsSaid',
    pins: {
      'scaleUp.steps': [
        step('today', 1, 'settings'),
        step('fastest', 0.6, 'heat'),
        step('power', 0.6, 'heat'),
        step('repetition rate', 0.6, 'heat'),
        step('scanner', 0.6, 'heat'),
        step('spots', 2.4, 'heat'),
      ],
    },
    text: /^Held to the temperature rise that is allowed, today’s machine has 0\.6 of the rate that is set\. Of what is bought, most comes from the further spots: a factor of 4\./,
    truth: () => true,
  },
];
