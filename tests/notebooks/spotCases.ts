import { type MeasuredProfile, profileOfPicture } from '../../lib/design/profileFile.ts';
import type { NamedFocusCaustic } from '../../lib/measured/causticTable.ts';
import { valueAt } from '../../lib/numerics/panelledFunction.ts';
import type { Light } from '../../lib/optics/light.ts';
import { roundProfileAt } from '../../lib/optics/roundSpot.ts';
import { spotRadiusAt } from '../../lib/optics/spotRadius.ts';
import { images } from '../design/files.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

const initial = outcomesOf();
const light = (initial('focus.light') as { value: Light }).value;
const unshapedPeak = (initial('focus.unshapedPeakFluence') as { value: number }).value;
const predicted = roundProfileAt(light, 0);

/** The profile predicted in the focus as a measured line, its places stretched and its values changed. */
function line(stretch: number, change: (x: number) => number = () => 1, fluence = false): MeasuredProfile {
  const position = Array.from({ length: 101 }, (_, i) => (i - 50) * 0.5e-6 * stretch);
  const value = position.map(
    (x) => change(Math.abs(x) / stretch) * unshapedPeak * valueAt(predicted, Math.abs(x) / stretch),
  );
  const [given, counts] = fluence ? [value, []] : [[], value];
  return { name: 'line.csv', axis: 'line', position, fluence: given, counts, image: null };
}

const measured = (file: MeasuredProfile, more: Values = {}): Values => ({
  'spot.measuredProfile': file,
  ...more,
});
const picture = (name: string) => profileOfPicture(images.find((one) => one.name === name)!);
/** A beam of some 26 pixels, as pixels of this pitch on the workpiece. */
const pitch = (metres: number) => ({ 'spot.measuredPixelPitch': metres });
const radial: MeasuredProfile = {
  ...line(1),
  axis: 'radius',
  position: line(1).position.slice(50),
  counts: line(1).counts.slice(50),
};

/** 1 + a e^{−(r/3 µm)²}: raises or lowers the middle alone. */
const middle = (part: number) => (r: number) => 1 + part * Math.exp(-((r / 3e-6) ** 2));
const ratio = (value: (id: string) => number) =>
  value('spot.measuredWidth') / value('spot.predictedWidth') - 1;
const deeper = (value: (id: string) => number) => value('spot.measuredDip') - value('spot.predictedDip');

/** Radii predicted for the initial design at these places, `factor` times as large, in one of their meanings. */
function caustic(
  meaning: 'moment' | 'gaussian' | 'half',
  factor: number,
  z: readonly number[] = [-1e-4, 0, 1e-4],
): Values {
  const diameter = z.map(
    (place) => 2 * factor * spotRadiusAt(light, Math.max(-1e-3, Math.min(1e-3, place)), meaning),
  );
  const table: NamedFocusCaustic = { name: 'focus.csv', z: [...z], diameter, diameterY: [] };
  return { 'focus.measuredCaustic': table, 'focus.measuredCausticMeaning': meaning };
}

export const spotCases: readonly Case[] = [
  {
    says: 'spotNumbersSaid',
    design: measured(line(1, middle(0.01))),
    text: /^Measured, the spot is 19\.5\d?\sµm wide with a dip of 4\.\d+\s% on the axis; predicted at z\s=\s0\smm are 19\.52\sµm and 5\.07\s%\. Over .* differ by 0\.\d+\s% of/,
    truth: (value) => Math.abs(ratio(value)) < 0.005 && value('spot.measuredDeviation') < 0.01,
  },
  {
    says: 'spotAgreementSaid',
    design: measured(line(1)),
    text: /^The widths agree to 5\s% and the dips to 5 percentage points\.$/,
    truth: (value) => Math.abs(ratio(value)) <= 0.05 && Math.abs(deeper(value)) <= 0.05,
  },
  {
    says: 'spotAgreementSaid',
    design: measured(line(1.2)),
    text: /^The measured spot is 20\s% wider than predicted: .* at the unit of the places, and at the beam/,
    truth: (value) => Math.abs(ratio(value) - 0.2) < 0.005,
  },
  {
    says: 'spotAgreementSaid',
    design: measured(line(0.8)),
    text: /^The measured spot is 20\s% narrower than predicted/,
    truth: (value) => Math.abs(ratio(value) + 0.2) < 0.005,
  },
  {
    says: 'spotAgreementSaid',
    design: measured(picture('round'), pitch(3e-6)),
    text: /^The measured spot is \d+\s% wider than predicted: .* at the pixel pitch, and/,
    // Drawn with radii of 13 and 12.4 pixels, of which 1.177 are the width above half the peak.
    truth: (value) =>
      Math.abs(value('spot.measuredWidth') / (1.1774 * Math.sqrt(13 * 12.4) * 3e-6) - 1) < 0.02 &&
      ratio(value) > 0.05,
  },
  {
    says: 'spotAgreementSaid',
    design: measured(line(1, middle(-0.3))),
    text: /^The widths agree to 5\s%, but the measured dip is 2\d percentage points deeper than predicted/,
    truth: (value) => Math.abs(ratio(value)) <= 0.05 && deeper(value) > 0.2,
  },
  {
    says: 'spotAgreementSaid',
    design: measured(line(1)),
    pins: { 'spot.predictedDip': 0.2 },
    text: /^The widths agree to 5\s%, but the measured dip is 15 percentage points shallower than predicted/,
    truth: (value) => Math.abs(ratio(value)) <= 0.05 && deeper(value) < -0.05,
  },
  {
    says: 'spotScaleSaid',
    design: measured(line(1)),
    text: /^The measured profile is scaled to the energy predicted within the 25\sµm that it reaches to; its peak is then 5\.1\d*\sJ\/cm² where 5\.1\d+\sJ\/cm² is predicted\.$/,
    truth: (value) =>
      Math.abs(value('spot.measuredPeakFluence') / value('spot.predictedPeakFluence') - 1) < 0.002,
  },
  {
    says: 'spotScaleSaid',
    design: measured(line(1.2), { 'spot.measuredScaling': 'peak' }),
    text: /^The measured profile is scaled to the predicted peak of 5\.1\d+\sJ\/cm²; this tells nothing of the energy\.$/,
    truth: (value) =>
      Math.abs(value('spot.measuredPeakFluence') / value('spot.predictedPeakFluence') - 1) < 1e-12,
  },
  {
    says: 'spotScaleSaid',
    design: measured(
      line(1, () => 0.5, true),
      { 'spot.measuredScaling': 'measured' },
    ),
    text: /^The fluence is the table’s own: its peak is 2\.5\d*\sJ\/cm² where 5\.1\d+\sJ\/cm² is predicted\.$/,
    truth: (value) =>
      Math.abs(value('spot.measuredPeakFluence') / value('spot.predictedPeakFluence') - 0.5) < 0.002,
  },
  {
    says: 'spotFoldedSaid',
    design: measured(line(1)),
    text: /^The line is laid about its middle/,
    truth: () => line(1).axis === 'line',
  },
  {
    says: 'spotFoldedSaid',
    design: measured(radial),
    text: /^The radii are drawn on both sides of the axis\.$/,
    truth: () => radial.position[0]! < 1e-12,
  },
  {
    says: 'spotFoldedSaid',
    design: measured(picture('round'), pitch(0.4e-6)),
    text: /^The picture is averaged around its centroid, .* pixels of 0\.4\sµm on the workpiece; the band/,
    truth: (value) => value('spot.measuredPixelPitch') === 0.4e-6,
  },
  {
    says: 'spotWarning',
    design: measured(picture('round')),
    text: /^$/,
    truth: () => Math.max(...images[0]!.samples) < 4095,
  },
  {
    says: 'spotWarning',
    design: measured(picture('saturated')),
    text: /^\d+ pixels stand at the full scale of 4095 counts/,
    truth: () => images.find(({ name }) => name === 'saturated')!.samples.includes(4095 as never),
  },
  {
    says: 'focusCausticSaid',
    design: caustic('moment', 1.01),
    text: /^On average the measured radii agree with the predicted ones to 1\s%; one by one they differ by 1\s% .* Compared are second-moment radii, .* nothing is converted/,
    truth: (value) => Math.abs(value('focus.measuredCausticExcess') - 0.01) < 1e-6,
  },
  {
    says: 'focusCausticSaid',
    design: caustic('gaussian', 1.08),
    text: /^On average the measured radii are 8\s% larger than predicted; .* Compared are the outermost radii at 1\/e² of the peak;/,
    truth: (value) => Math.abs(value('focus.measuredCausticExcess') - 0.08) < 1e-6,
  },
  {
    says: 'focusCausticSaid',
    design: caustic('half', 0.9),
    text: /^On average the measured radii are 10\s% smaller than predicted; .* Compared are the outermost radii at half the peak;/,
    truth: (value) => Math.abs(value('focus.measuredCausticExcess') + 0.1) < 1e-6,
  },
  {
    says: 'focusCausticPlacesSaid',
    design: caustic('moment', 1),
    text: /^All 3 places are compared\.$/,
    truth: (value) => Math.abs(value('focus.measuredCausticExcess')) < 1e-6,
  },
  {
    says: 'focusCausticPlacesSaid',
    design: caustic('moment', 1, [-0.02, -1e-4, 0, 1e-4]),
    text: /^Of 4 places 3 are compared: those within twelve Rayleigh lengths of the focus, and no more than 25/,
    truth: (value) => 0.02 / value('focus.rayleighLength') > 12 && 1e-4 / value('focus.rayleighLength') < 12,
  },
];
