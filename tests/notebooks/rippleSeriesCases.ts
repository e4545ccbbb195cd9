import type { NamedRipples } from '../../lib/measured/rippleTable.ts';
import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

const nm = 1e-9;
const degree = Math.PI / 180;
const series = (
  setting: number[],
  periods: number[],
  against: NamedRipples['against'] = 'pulses',
): Values => ({
  'ripples.series': { name: 'own.csv', against, setting, period: periods.map((period) => period * nm) },
});
const wets = (angle: number) => ({ 'ripples.flatAngle': angle * degree });

/** Cases of the sentences about a series of one's own, and about what ripples are for. */
export const rippleSeriesCases: readonly Case[] = [
  {
    says: 'seriesSaid',
    design: series([5, 20, 80], [960, 930, 880]),
    // 0.70 to 0.95 of 1030 nm is 721 to 978.5 nm.
    text: /^Of 3 measured periods 3 lie inside what is expected\. At the most pulses the period is 8\.3\s% shorter than at the fewest\.$/,
    truth: () => Math.abs(880 / 960 - 1 + 0.083) < 1e-3,
  },
  {
    says: 'seriesSaid',
    design: series([80, 5, 9, 20], [1000, 960, 400, 700]),
    text: /^Of 4 measured periods 1 lies inside what is expected, 1 is shorter, 1 is longer, 1 is finer than half the wavelength, .*\. At the most pulses the period is 4\.2\s% longer than at the fewest, though it mostly falls/,
    truth: () => 1000 > 0.95 * 1030 && 700 < 0.7 * 1030 && 400 < 0.5 * 1030,
  },
  {
    says: 'seriesSaid',
    design: series([2000, 3000], [900, 930], 'fluence'),
    text: /At the highest fluence the period is 3\.3\s% longer than at the lowest\.$/,
    truth: () => true,
  },
  {
    says: 'seriesSaid',
    design: series([10, 100], [900, 901]),
    text: /At the most pulses the period is that at the fewest, within 1\s%\.$/,
    truth: () => true,
  },
  {
    says: 'seriesSaid',
    design: series([10], [900]),
    text: /^Of one measured period 1 lies inside what is expected\.$/,
    truth: () => true,
  },
  {
    says: 'seriesSaid',
    design: { ...series([10, 20], [1900, 600]), 'workpiece.incidence': 30 * degree },
    // Bare light at 30°: 1030/(1 − ½) = 2060 nm with it, 70 to 95 % of which is 1442 to 1957 nm; 687 nm against it.
    text: /^Of 2 measured periods 1 lies inside what is expected, 1 lies inside what would be expected of the wave that runs with the light\. What is expected is carried over from normal incidence in air .*, where it has not been shown\./,
    truth: (value) => Math.abs(value('workpiece.incidence') - 30 * degree) < 1e-12,
  },
  {
    says: 'seriesSaid',
    design: series([10, 20], [900, 959e3]),
    text: /1 is longer\. 1 is more than 5 times the wavelength: is the unit of the table right\?/,
    truth: (value) => 959e-6 > 5 * value('laser.wavelength'),
  },
  {
    says: 'seriesRowsSaid',
    design: series([1, 20], [960, 400]),
    text: /^One by one: 1 pulse: 960\snm, inside; 20 pulses: 400\snm, another mechanism\.$/,
    truth: () => true,
  },
  {
    says: 'seriesRowsSaid',
    design: series(
      Array.from({ length: 23 }, () => 2000),
      Array.from({ length: 23 }, () => 990),
      'fluence',
    ),
    text: /^One by one: 0\.2\sJ\/cm²: 990\snm, longer; .*; and 3 more\.$/,
    truth: () => true,
  },
  {
    says: 'wettingSaid',
    text: /^Ripples of 200\snm depth have 1\.09 times the flat area \(estimate\)\. With the valleys filled the contact angle falls by 1\.4°, from 75° to 73\.6° \(Wenzel, estimate\)/,
    truth: (value) => value('ripples.wenzelAngle') < value('ripples.flatAngle'),
  },
  {
    says: 'wettingSaid',
    design: { 'ripples.depth': 5e-9 },
    text: /times the flat area \(estimate\)\. That changes no contact angle: they are too shallow\.$/,
    truth: (value) => value('ripples.roughness') < 1.001,
  },
  ...[0, 90, 180].map(
    (angle): Case => ({
      says: 'wettingSaid',
      design: { ...wets(angle), 'ripples.depth': 20e-6 },
      text: new RegExp(`the contact angle stays at ${angle}° within 0\\.05° \\(Wenzel, estimate\\)\\.$`),
      truth: (value) => Math.abs(value('ripples.wenzelAngle') - angle * degree) < 0.05 * degree,
    }),
  ),
  {
    says: 'wettingSaid',
    design: wets(105),
    text: /The contact angle rises from 105° to 106° with the valleys filled .*, or to 129° with air .* does not run off by that alone\.$/,
    truth: (value) => value('ripples.cassieAngle') < 150 * degree,
  },
  {
    says: 'wettingSaid',
    design: { ...wets(115), 'ripples.solidFraction': 0.1 },
    text: /One of them is beyond 150°; whether drops roll off depends on how they cling/,
    truth: (value) => value('ripples.cassieAngle') > 150 * degree,
  },
];
