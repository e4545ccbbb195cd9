import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

const cold: Values = { 'scaleUp.heat': null, 'scaleUp.todayHeat': null };
const spots = (count: number): Values => ({ 'scaleUp.spots': count });
const best = (rate: number, more: Values = {}) => ({
  speed: 1,
  repetitionRate: 1e5,
  power: 10,
  fieldTime: 1,
  writingTime: 0.9,
  rate,
  energyPerArea: 1e5,
  limit: 'power',
  next: 'stitching',
  pulseEnergy: 1e-5,
  pulseSpacing: 5e-6,
  lineSpacing: 5e-5,
  diameter: 1e-4,
  size: 1,
  ...more,
});
const both = (shaped: object, unshaped: object): Values => ({
  'scaleUp.best': shaped,
  'unshaped.scaleUp.best': unshaped,
});
const bests = (value: (id: string) => number) => value('scaleUp.timeGain');

/** What Throughput finds, with as much of it as is read here. */
const found = (fieldTime: number, scale: number) => ({ fieldTime, scale });
const throughput: Values = {
  'comparison.shaped': found(0.3, 10),
  'comparison.unshaped': found(0.6, 20),
};

/** Cases of the sentences about the two beams at their best, and about spots in a row. */
export const scaleUpBestCases: readonly Case[] = [
  {
    says: 'scaledBestSaid',
    pins: { ...cold, ...both(best(4e-5), best(2e-5)) },
    text: /^With the settings that are best for today’s machine the larger one brings 0\.144\sm²\/h with the plate \(6\.94\sh for a square metre\) and 0\.072\sm²\/h with the plate taken out \(13\.9\sh\)\. The plate is worth a factor of 2 in time\. What limits both is the average power of the larger laser\.$/,
    truth: (value) => bests(value) === 2,
  },
  {
    says: 'scaledBestSaid',
    pins: { ...cold, ...both(best(1e-5, { limit: 'stitching' }), best(2e-5)) },
    text: /The plain beam is the faster one: the plate has 0\.5 of its rate\. What limits the shaped beam is the move from field to field; the plain one, the average power of the larger laser\.$/,
    truth: (value) => bests(value) < 1,
  },
  {
    says: 'scaledBestSaid',
    pins: { ...cold, ...both(best(1e-5, { size: 0.5 }), best(1e-5)) },
    text: /In time the plate gains nothing\. .* they are made smaller, down to 50\s% of their size\.$/,
    truth: (value) => bests(value) === 1,
  },
  {
    says: 'scaledBestSaid',
    pins: { ...cold, ...both(best(1e-5, { diameter: 3e-4 }), best(1e-5)) },
    text: /Spots of 300\sµm and 100\sµm do not stand side by side 200\sµm apart: they need more room\.$/,
    truth: (value) => value('scaleUp.bestDiameter') > value('scaleUp.spotDistance'),
  },
  {
    // 9.98 mm × 9.98 mm in 0.3 s and 0.3 s: 166 mm²/s.
    says: 'scaledGainSaid',
    pins: { ...cold, ...throughput, ...both(best(4e-5), best(2e-5, { fieldTime: 1.5 })) },
    text: /^Under Throughput the plate is worth a factor of 2 for one field .* each field costs the move of 0\.3\ss besides, .* without moves it would be 1\.5\. .* one spot would bring 0\.598\sm²\/h, the same moves counted\.$/,
    truth: (value) => Math.abs(value('scaleUp.todayBestRate') - 9.98e-3 ** 2 / 0.6) < 1e-12,
  },
  {
    says: 'scaledGainSaid',
    design: { 'scaleUp.moveTime': 0 },
    pins: { ...cold, ...throughput, ...both(best(4e-5), best(2e-5, { fieldTime: 1.5 })) },
    text: /today’s machine; here fields follow one another at once, and it is 1\.5\./,
    truth: (value) => value('scaleUp.moveTime') === 0,
  },
  {
    // 4 · 10 µJ/0.8, and lenses of 10 and 20 times 100 mm.
    says: 'scaledOpticsSaid',
    pins: { ...cold, ...throughput, ...both(best(4e-5), best(2e-5)) },
    text: /take a lens of 1000\smm with the plate and of 2000\smm without it, where today’s has 100\smm, .* hold 50\sµJ with the plate, where the recipe has 100\sµJ\. With it, too, the margin of the plate would be kept\.$/,
    truth: (value) => value('plate.damageShare') < 1,
  },
  {
    says: 'scaledOpticsSaid',
    design: { 'plate.damageThreshold': 10 },
    pins: { ...cold, ...throughput, ...both(best(4e-5, { pulseEnergy: 1e-4 }), best(2e-5)) },
    text: /hold 500\sµJ .* With it the margin of the plate would not be kept\.$/,
    truth: (value) => value('plate.damageShare') < 1,
  },
  { says: 'tooManySaid', text: /^$/, truth: (value) => value('scaleUp.wholeSpots') === 4 },
  {
    // 10 mm at 3 mm hold three.
    says: 'tooManySaid',
    design: { 'scaleUp.spotDistance': 3e-3 },
    text: /^But no more than 3 stand in the height of the field 3000\sµm apart: the outer ones write beside it/,
    truth: (value) => value('scaleUp.wholeSpots') > 3,
  },
  {
    says: 'tooManySaid',
    design: { 'scaleUp.spotDistance': 8e-3 },
    text: /^But no more than one spot stands in/,
    truth: (value) => value('scaleUp.wholeSpots') > 1,
  },
  {
    says: 'seamSaid',
    text: /share stripes of 20\sµm, the seams: .* both fields, twice as many, and at the corners of four\./,
    truth: (value) => value('scaleUp.fieldOverlap') > 0,
  },
  {
    says: 'seamSaid',
    design: { 'scaleUp.fieldOverlap': 0 },
    text: /^Neighbouring fields share no stripe: .* a gap stays/,
    truth: (value) => value('scaleUp.fieldOverlap') === 0,
  },
  { says: 'turningRowSaid', text: /^$/, truth: (value) => value('scan.passes') === 1 },
  {
    says: 'turningRowSaid',
    design: { 'scan.passes': 2, 'scan.hatchAngle': Math.PI / 2 },
    text: /^As the lines turn from pass to pass, the row of spots must turn with them/,
    truth: (value) => value('scaleUp.wholeSpots') === 4,
  },
  { says: 'splitterSaid', design: spots(1), text: /^$/, truth: (value) => value('scaleUp.wholeSpots') === 1 },
  {
    // 300 µm · 0.4413 · 1.03 µm/(2.998e8 m/s · 250 fs) = 1.82 µm.
    says: 'splitterSaid',
    text: /80\s% of the energy goes into the wanted spots; the other 20\s% goes .*, and a pulse of 250\sfs has many: the outermost spot, 300\sµm from the middle of the row, is drawn out by 1\.8\sµm or more, 5\.8\s% of its diameter\.$/,
    truth: (value) => Math.abs(value('scaleUp.splitterSmear') - 1.819e-6) < 1e-9,
  },
  {
    // 5 mm from the axis: 30 µm, as wide as the spot.
    says: 'splitterSaid',
    design: { 'scaleUp.spots': 11, 'scaleUp.spotDistance': 1e-3, 'scaleUp.splitterEfficiency': 1 },
    text: /^The splitter is .* of one\. Its spots .* 5000\sµm from the middle of the row, is drawn out by 30\sµm or more, 97\s% of its diameter, so that its spot is no longer like the middle one/,
    truth: (value) => value('scaleUp.splitterSmear') > 0.1 * value('scan.spotDiameter'),
  },
  {
    says: 'xRayPowerSaid',
    pins: cold,
    text: /below 8 × 10¹²\sW\/cm² too at high mean power or in bursts: here the laser gives 100\sW while it writes, where it gives 4\sW as it is set today/,
    truth: (value) => Math.abs(value('laser.averagePower') - 4) < 1e-9,
  },
  {
    says: 'xRayPowerSaid',
    design: { 'scaleUp.maxPulseEnergy': 1e-6 },
    text: /below 8 × 10¹²\sW\/cm² too\. Nothing here is an all-clear/,
    truth: (value) => Number.isNaN(value('scaleUp.power')),
  },
];
