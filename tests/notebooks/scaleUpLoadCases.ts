import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

const cold: Values = { 'scaleUp.heat': null, 'scaleUp.todayHeat': null };
/** One spot comes to the 200 K allowed at that rate, or to half of it where not reached; pulses leave next to nothing else. */
const hot = (rate: number, reached = true): Values => {
  const own = { rates: [rate, rate / 2], rises: reached ? [200, 100] : [100, 50], reached };
  const input = { energy: 1e-20, radius: 15e-6, diffusivity: 3.75e-6, heatCapacity: 4e6, thickness: 1e-3 };
  const table = { input, own, limit: 200 };
  return { 'scaleUp.heatTable': table, 'scaleUp.todayHeatTable': table };
};
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
    truth: (value) => value('scaleUp.wholeSpots') === 1,
  },
  {
    // 31.2 µm at 0.25 m/s are 125 µs, in which heat of steel goes √(4 · 3.75e-6 · 125e-6) m = 43 µm.
    says: 'neighboursSaid',
    pins: cold,
    text: /^A spot takes 125\sµs to pass over a place, .* heat spreads by 43\.3\sµm meanwhile\. The spots stand 200\sµm apart, further than that\.$/,
    truth: (value) =>
      Math.abs(value('scaleUp.diffusionLength') - Math.sqrt(4 * 3.75e-6 * value('scaleUp.dwellTime'))) <
      1e-12,
  },
  {
    says: 'neighboursSaid',
    design: apart(36e-6),
    pins: cold,
    text: /The spots stand only 36\sµm apart: they heat one another while they pass\.$/,
    truth: (value) => value('scaleUp.diffusionLength') > 36e-6,
  },
  {
    says: 'spotHeatSaid',
    design: spots(1),
    pins: hot(1e5),
    text: /^At 100\skHz the lines of the spot warm the hottest place by 200\sK just before a pulse; 200\sK are allowed\.$/,
    truth: (value) => Math.abs(value('scaleUp.allSpotsRise') - 200) < 1e-6,
  },
  {
    // The initial field, which heat limits: the three parts together are the 200 K allowed.
    says: 'spotHeatSaid',
    text: /^At \d+\.?\d*\skHz a spot’s own lines warm the hottest place by 1\d\d\sK .* in the same scan add \d+\.?\d*\sK, and all that the others wrote before adds \d+\.?\d*\sK: 200\sK together, of the 200\sK that are allowed\.$/,
    truth: (value) =>
      Math.abs(value('scaleUp.ownRise') + value('scaleUp.besideRise') + value('scaleUp.beforeRise') - 200) <
        1e-5 && value('scaleUp.beforeRise') > 10,
  },
  {
    says: 'heatLimitSaid',
    pins: cold,
    text: /^Heat is not among the limits of the larger machine, as it is not worked out here\.$/,
    truth: (value) => value('scaleUp.heat') === null,
  },
  {
    says: 'heatLimitSaid',
    design: { 'scan.turnRound': 'inside', 'scaleUp.acceleration': 10 },
    text: /as the larger scanner turns with the laser on, where pulses would crowd at the ends of the lines: turn outside the field with the laser off\.$/,
    truth: (value) => Number.isNaN(value('scaleUp.heatRate')) && value('scaleUp.heat') === null,
  },
  {
    says: 'heatLimitSaid',
    pins: hot(1e5),
    text: /^More is not allowed, and no faster is written\.$/,
    truth: (value) =>
      value('scaleUp.repetitionRate') === value('scaleUp.heatRate') &&
      Math.abs(value('scaleUp.allSpotsRise') - 200) < 1e-6,
  },
  {
    says: 'heatLimitSaid',
    design: spots(1),
    pins: hot(4e6),
    text: /^The rise that is allowed would be reached at 4000\skHz with one spot\.$/,
    truth: (value) => value('scaleUp.allSpotsRise') < 101 && value('scaleUp.repetitionRate') === 2e6,
  },
  {
    says: 'heatLimitSaid',
    pins: hot(2e6, false),
    text: /^Even at 2000\skHz, the highest repetition rate of the larger laser, the rise would stay below what is allowed with 4 spots: heat does not limit them\.$/,
    truth: (value) => Number.isNaN(value('scaleUp.heatRate')),
  },
  {
    says: 'fieldHeatSaid',
    pins: { ...cold, 'scaleUp.heatPerArea': 2e4, 'scaleUp.carriedPerArea': 1e4 },
    text: /^Averaged over the field .* all spots together leave 2\sW\/cm² of heat\. With 1\sW\/cm² its middle would reach the 200\sK allowed .* the whole field becomes too warm, .*, 2 times too much\. The area per hour does not count that\.$/,
    truth: (value) => value('scaleUp.heatShare') === 2,
  },
  {
    says: 'fieldHeatSaid',
    pins: { ...hot(1e5), 'scaleUp.heatPerArea': 2e4, 'scaleUp.carriedPerArea': 1e4 },
    text: /the whole field becomes too warm, .*, 2 times too much\.$/,
    truth: (value) => value('scaleUp.heatShare') === 2,
  },
  {
    says: 'fieldHeatSaid',
    pins: { ...cold, 'scaleUp.heatPerArea': 1e4, 'scaleUp.carriedPerArea': 4e4 },
    text: /the mean is 25\s% of that\. Places under a spot and beside lines just written are warmer than the mean\.$/,
    truth: (value) => value('scaleUp.heatShare') === 0.25,
  },
  {
    // 100 µJ on w = 5 mm: 2 · 1e-4/(π · 25e-6) J/m² = 2.546 J/m².
    says: 'plateDamageSaid',
    text: /^One pulse for all spots has 100\sµJ, and a peak fluence of 2\.55 × 10⁻⁴\sJ\/cm² .* lies 1960 times higher: the margin of 3 is kept\. With its margin the plate bears up to 2617 spots, as far as this goes\.$/,
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
    text: /at the peak of a pulse, is 0\.0079\srad; it matters from about 1 rad on/,
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
