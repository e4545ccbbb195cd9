import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

const cold: Values = { 'scan.hottestRate': null };
const spots = (count: number): Values => ({ 'scaleUp.spots': count });
const apart = (distance: number): Values => ({ 'scaleUp.spotDistance': distance });

/** Cases of the sentences about heat, plate and optics. */
export const scaleUpLoadCases: readonly Case[] = [
  {
    says: 'distanceSaid',
    design: spots(1),
    text: /^$/,
    truth: (value) => value('scaleUp.wholeSpots') === 1,
  },
  {
    says: 'distanceSaid',
    // 1667 lines are three groups of 4 · 139 less one.
    design: apart(139 * 6e-6),
    text: /^So that their lines fall between one another, the spots must stand a whole number of lines apart\.$/,
    truth: (value) => Math.abs(value('scaleUp.spotDistance') / value('scan.lineSpacing') - 139) < 1e-9,
  },
  {
    says: 'distanceSaid',
    text: /At 200\sµm they do not, with lines 6\sµm apart: 198\sµm or 204\sµm would do\./,
    truth: (value) => value('scaleUp.spotDistance') > value('scan.spotDiameter'),
  },
  {
    // Twelve groups of 4 · 33 lines, and 83 lines more: 12 · 33 + 33 scans.
    says: 'distanceSaid',
    design: apart(198e-6),
    text: /apart\. Counted as 33 lines, the distance leaves too few lines .* the first pass takes 429 scans, where 417 would do if the height of the field were a whole number of times 792\sµm\.$/,
    truth: (value) => value('scaleUp.scans') === 429,
  },
  {
    says: 'distanceSaid',
    design: apart(4e-6),
    text: /: 6\sµm would do\..* Spots of 31\.2\sµm overlap at that distance, and light of neighbours interferes/,
    truth: (value) => value('scaleUp.spotDistance') < value('scan.spotDiameter'),
  },
  {
    says: 'neighboursSaid',
    design: spots(1),
    pins: cold,
    text: /There is one spot, and no neighbour to warm it\.$/,
    truth: (value) => value('scaleUp.neighbourHeat') === 0,
  },
  {
    // 31.2 µm at 0.25 m/s are 125 µs, in which heat of steel goes √(4 · 3.75e-6 · 125e-6) m = 43 µm.
    says: 'neighboursSaid',
    pins: cold,
    text: /^A spot rests over a place for 125\sµs, .* heat spreads by 43\.3\sµm meanwhile\. The spots stand 200\sµm apart, further than that/,
    truth: (value) =>
      Math.abs(value('scaleUp.diffusionLength') - Math.sqrt(4 * 3.75e-6 * value('scaleUp.dwellTime'))) <
      1e-12,
  },
  {
    says: 'neighboursSaid',
    design: apart(36e-6),
    pins: cold,
    text: /The spots stand only 36\sµm apart: they heat one another, the others adding \d+\s% .* How much hotter the part becomes is not worked out\.$/,
    truth: (value) => value('scaleUp.neighbourHeat') > 0.3,
  },
  {
    says: 'neighboursSaid',
    design: apart(36e-6),
    pins: { 'scan.hottestRate': 2e6 },
    text: /The limit of heat is that of one spot alone, and is reached sooner than stated here\.$/,
    truth: (value) => value('scaleUp.diffusionLength') > 36e-6,
  },
  {
    says: 'spotHeatSaid',
    pins: cold,
    text: /^Heat is not among the limits/,
    truth: (value) => value('scan.hottestRate') === null,
  },
  {
    says: 'spotHeatSaid',
    pins: { 'scan.hottestRate': 1e5 },
    text: /^One spot alone warms .* at 100\skHz, and no spot is written faster than that\.$/,
    truth: (value) => Math.abs(value('scaleUp.repetitionRate') - 1e5) < 1e-3,
  },
  {
    says: 'spotHeatSaid',
    pins: { 'scan.hottestRate': 2e6 },
    text: /at 2000\skHz; it is written at 1000\skHz, 50\s% of that\.$/,
    truth: (value) => Math.abs(value('scaleUp.repetitionRate') - 1e6) < 1e-3,
  },
  {
    says: 'fieldHeatSaid',
    pins: { ...cold, 'scaleUp.heatPerArea': 2e4, 'scaleUp.carriedPerArea': 1e4 },
    text: /^All spots together leave 2\sW\/cm² of heat.* 1\sW\/cm² would bring .* 200\sK allowed .* The whole field becomes too warm, .*: 2 times too much\. The area per hour does not count that\.$/,
    truth: (value) => value('scaleUp.heatShare') === 2,
  },
  {
    says: 'fieldHeatSaid',
    pins: { ...cold, 'scaleUp.heatPerArea': 1e4, 'scaleUp.carriedPerArea': 4e4 },
    text: /That leaves room: it is 25\s% of it\.$/,
    truth: (value) => value('scaleUp.heatShare') === 0.25,
  },
  {
    // 100 µJ on w = 5 mm: 2 · 1e-4/(π · 25e-6) J/m² = 2.546 J/m².
    says: 'plateDamageSaid',
    text: /^One pulse for all spots has 100\sµJ, and 2\.55 × 10⁻⁴\sJ\/cm² .* lies 1960 times higher: the margin of 3 is kept\. With its margin the plate bears up to 2617 spots, as far as this goes\.$/,
    truth: (value) => Math.abs(value('plate.fluence') - 2e-4 / (Math.PI * 25e-6)) < 1e-12,
  },
  {
    says: 'plateDamageSaid',
    design: { 'plate.damageThreshold': 5 },
    text: /That is below the damage threshold of 5 × 10⁻⁴\sJ\/cm², but not 3 times below it: .* With its margin the plate bears 2 spots\.$/,
    truth: (value) => value('plate.fluence') < 5 && 3 * value('plate.fluence') > 5,
  },
  {
    says: 'plateDamageSaid',
    design: { 'plate.damageThreshold': 2 },
    text: /That is above the damage threshold of 2 × 10⁻⁴\sJ\/cm²: the plate would be damaged\. .* bears one spot\.$/,
    truth: (value) => value('plate.fluence') > 2,
  },
  {
    says: 'plateDamageSaid',
    design: { 'plate.damageThreshold': 1 },
    text: /With its margin the plate bears the pulse of not even one spot\.$/,
    truth: (value) => value('plate.mostSpots') === 0,
  },
  {
    says: 'scaledBIntegralSaid',
    text: /at the peak of a pulse, is 0\.0079\srad; it tells from about 1 rad on/,
    truth: (value) => value('scaleUp.bIntegral') < 1,
  },
  {
    says: 'scaledBIntegralSaid',
    pins: { 'scaleUp.bIntegral': 2 },
    text: /is 2\srad: from about 1 rad on the pulse changes its shape .* a wider beam\.$/,
    truth: (value) => value('scaleUp.bIntegral') > 1,
  },
  {
    says: 'opticsHeatSaid',
    pins: cold,
    text: /^Of 100\sW each optic turns 10\smW into heat\..* None is entered yet: measure/,
    truth: (value) => value('lens.thermalShift') === 0,
  },
  {
    says: 'opticsHeatSaid',
    design: { 'lens.thermalShift': 20e-6 },
    pins: cold,
    text: /You entered a shift of 20\sµm; measure it again/,
    truth: (value) => value('lens.thermalShift') > 0,
  },
];
