import { designs } from '../../data/designs/make.ts';
import { makeMeasured } from '../../data/measured/make.ts';
import type { LevelledSection } from '../../lib/measured/sectionLevel.ts';
import type { SectionFit } from '../../lib/process/sectionFit.ts';
import { readFileAsPatch } from '../../notebooks/measuredFiles.ts';
import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

const name = 'cold-plate-section.csv';
/** The invented groove of the cold-plate channels: 5 passes, 16 nm and 0.41 J/cm² against 20 nm and 0.353 J/cm² of today. */
const groove: Values = {
  ...designs['cold-plate-channels.json']!.patch,
  ...readFileAsPatch('groove.sectionFile', makeMeasured()[name]!, name),
};
const sectionOf = (value: (id: string) => number) =>
  value('groove.measuredSection') as unknown as LevelledSection;
const fitOf = (value: (id: string) => number) => value('groove.sectionFit') as unknown as SectionFit;

const levelled = (more: Partial<LevelledSection>): Values => ({
  'groove.measuredSection': {
    position: new Float64Array(200),
    depth: new Float64Array(200),
    noise: 50e-9,
    tilt: 0.01,
    sides: [
      [-30e-6, -12e-6],
      [13e-6, 31e-6],
    ],
    downwards: false,
    wayFrom: 'groove',
    above: 0,
    rim: 0,
    missing: 0,
    ...more,
  },
});
const shapes = (depth: number, width: number, computed: number, computedWidth: number): Values => ({
  'groove.measuredDepth': depth * 1e-6,
  'groove.measuredTopWidth': width * 1e-6,
  'groove.sectionTodayDepth': computed * 1e-6,
  'groove.sectionTodayTopWidth': computedWidth * 1e-6,
});
const fitted = (more: Partial<SectionFit>): Values => ({
  'groove.sectionFit': {
    depthPerPulse: { value: 20e-9, uncertainty: 0.2e-9 },
    threshold: { value: 2000, uncertainty: 30 },
    correlation: 0.9,
    centre: { value: 0, uncertainty: 1e-8 },
    reducedChiSquare: 1,
    residual: 50e-9,
    inflation: 1,
    correlationLength: 0,
    used: 190,
    inside: 90,
    above: 0,
    fitted: { y: new Float64Array(0), depth: new Float64Array(0) },
    ...more,
  },
});
const always = () => true;

/** Cases of the sentences about a measured groove. */
export const sectionCases: readonly Case[] = [
  {
    says: 'sectionReadSaid',
    design: groove,
    text: /^“cold-plate-section\.csv” gives 283 places across the groove, and 18 without a height are left out\. Its values are taken to count upwards, since the groove lies where they are smaller\. The surface .* from 15\.9\sµm to 31\.3\sµm to the left of the middle of the groove and from 15\.9\sµm to 28\.7\sµm to the right of it; .* tilted by 0\.6[0-9]°, and scatters about the line by 62\snm,/,
    truth: (value) => {
      const { position, missing, downwards, tilt } = sectionOf(value);
      return position.length === 283 && missing === 18 && !downwards && Math.abs(tilt - 0.012) < 0.002;
    },
  },
  {
    says: 'sectionReadSaid',
    design: groove,
    pins: levelled({ downwards: true }),
    text: /gives 200 places across the groove\. Its values are taken to count downwards, since the groove lies where they are larger\. .* from 12\sµm to 30\sµm to the left .* from 13\sµm to 31\sµm to the right/,
    truth: always,
  },
  {
    says: 'sectionReadSaid',
    design: groove,
    pins: levelled({ missing: 1, wayFrom: 'header' }),
    text: /groove, and one without a height is left out\. As much of it lies above the surface as below; that its values count upwards is taken from its heading\./,
    truth: always,
  },
  {
    says: 'sectionReadSaid',
    design: groove,
    pins: levelled({ downwards: true, wayFrom: 'header' }),
    text: /that its values count downwards is taken from its heading\./,
    truth: always,
  },
  { says: 'sectionRimSaid', pins: levelled({}), text: /^$/, truth: (value) => sectionOf(value).above === 0 },
  {
    says: 'sectionRimSaid',
    design: groove,
    text: /^14 places lie above the surface by more than three times the noise, up to 0\.77\sµm: a rim, recast melt or dust\. .* leaves them out\.$/,
    truth: (value) => {
      const { depth, noise } = sectionOf(value);
      return depth.filter((d) => d < -3 * noise).length === 14;
    },
  },
  {
    says: 'sectionRimSaid',
    pins: levelled({ above: 1, rim: 2e-7 }),
    text: /^One place lies above .* leaves it out\.$/,
    truth: (value) => sectionOf(value).above === 1,
  },
  {
    says: 'sectionAgainstSaid',
    design: groove,
    text: /^The measured groove is 17\.\d\sµm deep and 26\.\d\sµm wide at the top\. With 5 passes .* the model cuts one that is 23\.\d\sµm deep, 34\s% deeper than measured, and 26\.\d\sµm wide, about as wide as measured\.$/,
    truth: (value) => value('groove.sectionTodayDepth') > 1.33 * value('groove.measuredDepth'),
  },
  {
    says: 'sectionAgainstSaid',
    design: { 'groove.sectionPasses': 1 },
    pins: shapes(10, 20, 7, 15),
    text: /With 1 pass in .* 30\s% shallower than measured, and 15\sµm wide, 25\s% narrower than measured\.$/,
    truth: always,
  },
  {
    says: 'sectionAgainstSaid',
    pins: shapes(10, 20, 31, 42),
    text: /With 10 passes .* 3\.1 times as deep as measured, and 42\sµm wide, 2\.1 times as wide as measured\.$/,
    truth: always,
  },
  {
    says: 'sectionAgainstSaid',
    pins: shapes(10, 20, 10.1, 25),
    text: /about as deep as measured, and 25\sµm wide, 25\s% wider than measured\.$/,
    truth: always,
  },
  {
    says: 'sectionFitSaid',
    design: groove,
    text: /^Of 269 places that are fitted 116 lie inside the groove\. The computed groove of 5 passes comes nearest to them with a depth per pulse of 16\snm, standard uncertainty 0\.073\snm, and a threshold of 0\.41\d\sJ\/cm², standard uncertainty 0\.0034\sJ\/cm²\. The threshold is that of one pulse and is held for every further one, as the incubation exponent of 1 says: with another exponent the same groove gives another threshold\.$/,
    truth: (value) => {
      const { depthPerPulse, threshold } = fitOf(value);
      const near = (found: { value: number; uncertainty: number }, made: number) =>
        Math.abs(found.value - made) < 3 * found.uncertainty;
      return near(depthPerPulse, 16e-9) && near(threshold, 4100);
    },
  },
  {
    says: 'sectionFitSaid',
    design: { 'groove.sectionPasses': 1, 'threshold.incubationExponent': 0.85 },
    pins: fitted({}),
    text: /The computed groove of 1 pass comes .* depth per pulse of 20\snm, .* The threshold is that of the first pulse on a place; how it changes with the pulses, by the incubation exponent of 0\.85, is held as it is: with another/,
    truth: (value) => value('threshold.incubationExponent') === 0.85,
  },
  {
    says: 'sectionFitSaid',
    design: { 'removal.branches': 'two' },
    pins: fitted({}),
    text: /another threshold\. The values are those of the first line of removal; the second is held too\.$/,
    truth: (value) => (value('removal.branches') as unknown as string) === 'two',
  },
  {
    says: 'sectionScatterSaid',
    design: groove,
    text: /^The uncertainties come from the scatter of the places about the fitted groove\. Neighbouring places deviate alike over about 0\.38\sµm, so that .* made 2 times as large for it\.$/,
    truth: (value) => fitOf(value).inflation > 3.5 && fitOf(value).inflation < 4.5,
  },
  {
    says: 'sectionScatterSaid',
    pins: fitted({}),
    text: /groove; neighbouring places deviate nearly independently of each other\.$/,
    truth: always,
  },
  {
    says: 'sectionScatterSaid',
    pins: fitted({ inflation: 4 }),
    text: /Neighbouring places deviate alike, so that they tell less than their number, and the uncertainties are made 2 times/,
    truth: always,
  },
  {
    says: 'sectionVerdictSaid',
    design: groove,
    text: /^Inside the groove measured and fitted depth differ by 60\snm \(root mean square\), no more than the noise of the surface lets expect \(reduced χ² 0\.97, about 1 where a model fits\): the model describes it\.$/,
    truth: (value) => fitOf(value).reducedChiSquare < 2 && fitOf(value).reducedChiSquare > 0.3,
  },
  {
    says: 'sectionVerdictSaid',
    pins: { ...levelled({}), ...fitted({ reducedChiSquare: 25, residual: 250e-9 }) },
    text: /differ by 250\snm \(root mean square\), 5 times the noise of the surface \(reduced χ² 25, about 1 where a model fits\)\. So the model does not describe it to the noise: .* a wrong setting they do not\.$/,
    truth: always,
  },
  {
    says: 'sectionVerdictSaid',
    pins: { ...levelled({}), ...fitted({ reducedChiSquare: 0.1, residual: 15e-9 }) },
    text: /differ by 15\snm \(root mean square\), less than the surface beside it scatters \(reduced χ² 0\.1, about 1 where a model fits\): something lies or was cut beside/,
    truth: always,
  },
  {
    says: 'sectionTogetherSaid',
    design: groove,
    text: /^The two are hard to tell apart: a larger depth per pulse with a higher threshold cuts nearly the same groove \(correlation 0\.95[5-9]\)\./,
    truth: (value) => fitOf(value).correlation > 0.95,
  },
  {
    says: 'sectionTogetherSaid',
    pins: fitted({}),
    text: /^The errors of the two values go together with a correlation of 0\.9; the uncertainties above count that\.$/,
    truth: always,
  },
];
