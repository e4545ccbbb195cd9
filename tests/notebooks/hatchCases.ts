import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

/** A small field written fast: 100 lines of 1 mm at 1 m/s, each with 0.2 ms for turning round. */
const fast: Values = {
  'scan.fieldWidth': 1e-3,
  'scan.fieldHeight': 1e-3,
  'scan.lineSpacing': 10e-6,
  'scan.speed': 1,
};
const inside: Values = { 'scan.turnRound': 'inside' };
/** A part that stands whatever heat there is. */
const cool: Values = { 'heat.riseLimit': 1e4 };
const first = (value: (id: string) => number) =>
  (value('scan.limits') as unknown as { kind: string; speed: number; rate: number }[]).map(
    ({ kind }) => kind,
  );
const limit = (kind: string, speed: number) => ({ kind, speed, rate: speed * 6e-6 });
const order = (...kinds: readonly (readonly [kind: string, speed: number])[]): Values => ({
  'scan.limits': kinds.map(([kind, speed]) => limit(kind, speed)),
});

/** Cases of the sentences about field, lines and limits. */
export const hatchCases: readonly Case[] = [
  {
    says: 'scanFieldSaid',
    text: /^A field of 10\smm × 10\smm takes 333\.4\ss, nearly all of it with the laser on\. That is an area processing rate of 0\.3\smm²\/s\.$/,
    truth: (value) => value('scan.duty') > 0.99,
  },
  {
    says: 'scanFieldSaid',
    design: { ...fast, 'scan.passes': 3 },
    text: /takes 360\sms in 3 passes, 83\.33\s% of it with the laser on\. That is an area processing rate of 2\.78\smm²\/s\.$/,
    truth: (value) => Math.abs(value('scan.duty') - 1 / 1.2) < 1e-9,
  },
  {
    says: 'turnSaid',
    design: { 'scan.directions': 'one', 'scan.lineDelay': 1e-4 },
    text: /^The scanner turns beyond the edge with the laser off, for which it goes 125\snm further at each end of a line \(overscan\)\. All lines run the same way, .* Each line waits 100\sµs besides\.$/,
    truth: (value) => Math.abs(value('scan.overscan') - 0.05 ** 2 / 2e4) < 1e-15,
  },
  {
    says: 'turnSaid',
    design: { ...fast, ...inside },
    text: /with the laser on: within 50\sµm of both ends it is slower, and pulses crowd there\.$/,
    truth: (value) => 2 * value('scan.overscan') < value('scan.fieldWidth'),
  },
  {
    says: 'turnSaid',
    design: { ...fast, ...inside, 'scan.acceleration': 500 },
    text: /too short for it to reach the speed at all: pulses lie closer than 5\sµm everywhere\.$/,
    truth: (value) => 2 * value('scan.overscan') > value('scan.fieldWidth'),
  },
  {
    says: 'pulsesSaid',
    text: /^At 0\.05\sm\/s and 200\skHz pulses land 0\.25\sµm apart: the spot covers 125 pulses \(60\.4 with the plate taken out\) and 5\.2 lines\. All together, each place gets on average as much as 255 pulses at full peak\.$/,
    truth: (value) => Math.abs(value('scan.pulsesPerSpot') * value('scan.pulseSpacing') - 31.2e-6) < 1e-7,
  },
  {
    says: 'pulsesSaid',
    design: { 'scan.lineSpacing': 50e-6, 'scan.passes': 2, 'laser.pulsesPerBurst': 2 },
    text: /and the lines, 50\sµm apart, leave gaps, 4 pulses in each of these places\. All/,
    truth: (value) => value('scan.linesPerSpot') < 1 && value('scan.pulsesInPlace') === 4,
  },
  {
    says: 'pulsesSaid',
    design: { 'scan.speed': 4, 'laser.repetitionRate': 20e3 },
    text: /land 200\sµm apart, further than the spot is wide: along the line they stand alone\.$/,
    truth: (value) => value('scan.pulsesPerSpot') < 1,
  },
  { says: 'burstSaid', text: /^$/, truth: (value) => value('laser.burstPulses') === 1 },
  {
    says: 'plainRunsSaid',
    text: /^With the plate taken out, the field is scanned alike at the same peak fluence: the pulse energy of 20\sµJ is then lowered to 4\.684\sµJ, and the average power is 936\.8\smW instead of 4\sW\.$/,
    // What the power brings to the area is what accumulates there, P/(v Δy), less what the stop takes.
    truth: (value) => {
      const cell = value('scan.speed') * value('scan.lineSpacing');
      const [power, left] = [value('unshaped.laser.averagePower'), value('unshaped.scan.accumulatedFluence')];
      return Math.abs((left * cell) / power / (1 - Math.exp(-2 * 1.4 ** 2)) - 1) < 3e-3;
    },
  },
  {
    says: 'plainRunsSaid',
    design: { 'ripples.unshapedRuns': 'energy' },
    text: /^With the plate taken out, .* with the same pulse energy, 20\sµJ: the peak fluence is then .* instead of .*\.$/,
    truth: (value) => value('unshaped.laser.pulseEnergy') === value('laser.usedPulseEnergy'),
  },
  {
    says: 'plainRunsSaid',
    pins: { 'unshaped.laser.pulseEnergy': 25e-6 },
    text: /20\sµJ is then raised to 25\sµJ/,
    truth: (value) => value('unshaped.laser.averagePower') > value('laser.averagePower'),
  },
  {
    says: 'plainRunsSaid',
    pins: { 'unshaped.laser.pulseEnergy': 20e-6 },
    text: /alike at the same peak fluence, which takes the same pulse energy in this plane\.$/,
    truth: (value) => value('unshaped.laser.averagePower') === value('laser.averagePower'),
  },
  {
    says: 'burstSaid',
    design: { 'laser.pulsesPerBurst': 4 },
    text: /^4 pulses of each burst land in one place, 20\sns apart; .* are those of single pulses\.$/,
    truth: (value) => value('laser.burstPulses') === 4,
  },
  {
    says: 'burstSaid',
    design: { 'laser.pulsesPerBurst': 4, 'laser.burstSpacing': 1e-6 },
    text: /single pulses\. The burst lasts longer than a tenth of the time to the next one/,
    truth: (value) => 3 * value('laser.burstSpacing') > 0.1 / value('laser.repetitionRate'),
  },
  {
    says: 'limitSaid',
    design: cool,
    text: /the highest average power of the laser, and with it the highest repetition rate of the laser: reached at 0\.25\sm\/s, 1\.5\smm²\/s\. More power would help.* If both were lifted, the next would be the temperature rise that is allowed, at 1\.8\sm\/s, 10\.1\smm²\/s\. Today’s speed is 20\s% of it\.$/,
    truth: (value) => Math.abs(value('scan.fastestSpeed') - value('scan.pulseSpacing') * 1e6) < 1e-9,
  },
  {
    says: 'limitSaid',
    design: { ...cool, 'laser.pulseEnergy': 1e-6 },
    text: /field is the highest repetition rate of the laser: reached at .* A larger spot with its pulses further apart .* If that were lifted, the next would be the highest speed of the scanner, at/,
    truth: (value) => first(value)[0] === 'repetition rate' && first(value)[1] === 'scanner speed',
  },
  {
    says: 'limitSaid',
    design: { ...cool, 'scan.maxSpeed': 0.05 },
    text: /field is the highest speed of the scanner: .* Lines further apart.* Today’s speed is there\.$/,
    truth: (value) => first(value)[0] === 'scanner speed',
  },
  {
    says: 'limitSaid',
    design: { ...cool, 'scan.acceleration': 0.1 },
    text: /field is the acceleration of the scanner: .* Longer lines would help.* Today’s speed is beyond that: slower would be done sooner\.$/,
    truth: (value) => first(value)[0] === 'acceleration' && value('scan.speed') > value('scan.fastestSpeed'),
  },
  {
    says: 'limitSaid',
    pins: order(['power', 0.2], ['repetition rate', 1], ['acceleration', 3]),
    text: /Heat is not among these: it limits nothing within reach, or is not worked out, as said under Heat\.$/,
    truth: (value) => value('scan.fastestSpeed') > 0,
  },
  {
    says: 'limitSaid',
    pins: order(['heat', 0.02], ['power', 0.2], ['acceleration', 3]),
    text: /field is the temperature rise that is allowed: .* Less heat to the same area.* Today’s speed is beyond that: the part gets hotter than allowed\.$/,
    truth: (value) => value('scan.speed') > value('scan.fastestSpeed'),
  },
  {
    says: 'limitSaid',
    design: { ...cool, ...inside, 'scan.acceleration': 0.1 },
    text: /field is the acceleration of the scanner: .* Today’s speed is beyond that, and the lines are too short to reach it\.( Heat.*)?$/,
    truth: (value) =>
      first(value)[0] === 'acceleration' && 2 * value('scan.overscan') > value('scan.fieldWidth'),
  },
];
