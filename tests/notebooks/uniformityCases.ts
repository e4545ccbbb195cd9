import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

const wide: Values = { 'scan.lineSpacing': 14e-6 };
const both = (shaped: number, plain: number): Values => ({
  'scan.modulation': shaped,
  'unshaped.scan.modulation': plain,
});
const evener = (spacing: number, modulation: number): Values => ({
  'scan.evenerSpacing': { best: { spacing, modulation } },
  'scan.modulation': 0.1,
});
const best = (value: (id: string) => number) =>
  (value('scan.evenerSpacing') as unknown as { best: { spacing: number; modulation: number } | null }).best;
const upTo = (all: number) => ({ all, further: null, widest: all });
const allowed = (shaped: number, plain: number): Values => ({
  'scan.allowedSpacings': { shaped: upTo(shaped), plain: upTo(plain) },
});

/** A profile over 21 places from −1 to 1 as a function of the distance from the middle. */
const profile = (at: (distance: number) => number) =>
  Float64Array.from({ length: 21 }, (_, i) => at(Math.abs(i - 10) / 10));
const profiles = (line: (x: number) => number, pulse: (x: number) => number): Values => ({
  'scan.lineProfile': {
    y: profile((x) => x),
    shaped: profile(line),
    shapedPulse: profile(pulse),
    plain: profile(line),
    plainPulse: profile(pulse),
  },
});
const chord = (x: number) => Math.sqrt(1 - x * x);
const disc = (x: number) => (x < 0.95 ? 1 : 0);
const ring = (x: number) => (x > 0.4 && x < 0.95 ? 1 : 0.6);

/** Cases of the sentences about how even a field is. */
export const uniformityCases: readonly Case[] = [
  {
    says: 'evenSaid',
    text: /^Lines 6\sµm apart leave a modulation of less than 0\.01\s% across them, with the plate and without it: the field is even\. Along the lines the pulses, .* apart, leave next to nothing\.$/,
    truth: (value) => value('scan.modulation') < 1e-4 && value('scan.alongModulation') < 1e-3,
  },
  {
    says: 'evenSaid',
    design: wide,
    text: /^Lines 14\sµm apart leave a modulation of 9\.\d+\s% across them with the plate and of 50\.\d\s% with the plate taken out: the field is more even with the plate\./,
    truth: (value) => value('scan.modulation') < 0.9 * value('unshaped.scan.modulation'),
  },
  {
    says: 'evenSaid',
    pins: both(0.3, 0.1),
    text: /of 30\s% across them with the plate and of 10\s% .*: the field is less even with the plate\./,
    truth: (value) => value('scan.modulation') > 1.1 * value('unshaped.scan.modulation'),
  },
  {
    says: 'evenSaid',
    pins: both(0.2, 0.2),
    text: /: as even with either\./,
    truth: (value) => value('scan.modulation') === value('unshaped.scan.modulation'),
  },
  {
    says: 'evenSaid',
    pins: { ...both(0.00001, 0.2), 'scan.alongModulation': 0.02 },
    text: /of less than 0\.01\s% across them with the plate and of 20\s% .* Along the lines the pulses, .* apart, leave 2\s% besides\.$/,
    truth: (value) => value('scan.alongModulation') > 1e-3,
  },
  {
    says: 'evenSaid',
    design: { 'scan.passes': 2, 'scan.hatchAngle': Math.PI / 2 },
    text: /That is for one pass: turned passes lay their stripes over one another, and their sum is no less even\.$/,
    truth: (value) => value('scan.passes') > 1 && value('scan.hatchAngle') > 0,
  },
  {
    says: 'noneBelowSaid',
    text: /^Behind the stop the spot holds no detail finer than 7\.36\sµm\. Lines closer than that leave no modulation at all, whatever the plate and the plane; today’s are\.$/,
    truth: (value) =>
      value('scan.lineSpacing') < value('scan.noModulationBelow') && value('scan.modulation') === 0,
  },
  {
    says: 'noneBelowSaid',
    design: wide,
    text: /today’s are not\.$/,
    truth: (value) => value('scan.lineSpacing') > value('scan.noModulationBelow'),
  },
  {
    says: 'noneBelowSaid',
    design: { 'plate.stop': 'open', ...wide },
    text: /^Without a stop the spot holds ever finer detail, ever weaker: no range of line spacings leaves exactly nothing/,
    truth: (value) => value('scan.modulation') > 0,
  },
  {
    says: 'evenerSaid',
    text: /^With the plate the field is as even as lines can make it: across them less than 0\.01\s% of modulation is left\.$/,
    truth: (value) => value('scan.modulation') < 1e-4,
  },
  {
    says: 'evenerSaid',
    design: { 'scan.lineSpacing': 9e-6 },
    pins: { 'scan.modulation': 0.1, 'scan.evenerSpacing': { best: null } },
    text: /^Between half today’s line spacing and one and a half times it the modulation has no minimum\.$/,
    truth: (value) => best(value) === null,
  },
  {
    says: 'evenerSaid',
    pins: evener(6.01e-6, 0.09),
    text: /^Today’s line spacing lies in a minimum of the modulation: a little closer or a little further is less even\.$/,
    truth: (value) => Math.abs(best(value)!.spacing / value('scan.lineSpacing') - 1) < 0.01,
  },
  {
    says: 'evenerSaid',
    pins: evener(8e-6, 0.2),
    text: /^The best minimum .*, 20\s% at lines 8\sµm apart, is no more even than today’s\.$/,
    truth: (value) => best(value)!.modulation >= value('scan.modulation'),
  },
  {
    says: 'evenerSaid',
    design: { 'scan.lineSpacing': 9e-6 },
    text: /^The nearest minimum with wider lines is more even: lines 9\.56\d?\sµm apart leave less than 0\.01\s%, with 5\.9\s% fewer lines than today’s\. The mean accumulated fluence falls by as much\.$/,
    truth: (value) => best(value)!.spacing > 9e-6 && best(value)!.modulation < value('scan.modulation'),
  },
  {
    says: 'evenerSaid',
    design: wide,
    text: /^The nearest minimum with wider lines is more even: lines 16\.06\sµm apart leave 0\.753\s%, with 13\s% fewer lines than today’s\./,
    truth: (value) => best(value)!.spacing > 14e-6 && best(value)!.modulation < value('scan.modulation'),
  },
  {
    says: 'evenerSaid',
    pins: evener(5e-6, 0.01),
    text: /^Up to one and a half times today’s line spacing no minimum with wider lines is more even\. One with closer lines is: lines 5\sµm apart leave 1\s%, with 20\s% more lines than today’s\. The mean accumulated fluence rises by as much\.$/,
    truth: (value) => Math.abs(value('scan.lineSpacing') / best(value)!.spacing - 1.2) < 1e-9,
  },
  {
    says: 'closerLinesSaid',
    text: /^With the plate every line spacing up to 10\.8\sµm keeps the modulation at 10\s% or below, and wider ones from 1[34](\.\d)?\sµm to 17\.\d\sµm keep it as well\. With the plate taken out every one up to 9\.96\sµm does, and no wider one does\. The widest lines that keep it lie 17\.\d\sµm apart with the plate and 9\.96\sµm without it: the plain beam needs the closer lines, the shaped one lets them lie 7\d\s% further apart\.$/,
    truth: (value) => Math.abs(value('comparison.largestModulation') - 0.1) < 1e-9,
  },
  {
    says: 'closerLinesSaid',
    pins: allowed(8e-6, 10e-6),
    text: /: the shaped beam needs the closer lines, the plain one lets them lie 25\s% further apart\.$/,
    truth: () => true,
  },
  {
    says: 'closerLinesSaid',
    pins: allowed(8e-6, 8.1e-6),
    text: /: both need lines about as close\.$/,
    truth: () => true,
  },
  {
    says: 'lineAgainstPulseSaid',
    pins: profiles((x) => (x < 0.9 ? 1 : 0), ring),
    text: /^With the plate one pulse is a ring, 40\s% lower in its middle than at its highest; the line that it writes is level: its middle lies 0\s% below its highest\.$/,
    truth: () => true,
  },
  {
    says: 'lineAgainstPulseSaid',
    pins: profiles(ring, ring),
    text: /; the line that it writes keeps 40\s% of a dip in its middle\.$/,
    truth: () => true,
  },
  {
    says: 'lineAgainstPulseSaid',
    pins: profiles(chord, disc),
    text: /^With the plate one pulse stays above nine tenths of its highest over 100\s% of its width at half height, and the line that it writes over \d\d\s%: the line is rounder, as the chords of a disc are shorter towards its edge\.$/,
    truth: () => true,
  },
  {
    says: 'lineAgainstPulseSaid',
    pins: profiles(disc, chord),
    text: /: the line is flatter than the pulse\.$/,
    truth: () => true,
  },
  {
    says: 'lineAgainstPulseSaid',
    pins: profiles(disc, disc),
    text: /: as flat as one another\.$/,
    truth: () => true,
  },
];
