import { readFileSync } from 'node:fs';
import { readFileAsPatch } from '../../notebooks/measuredFiles.ts';
import type { Case } from './sentenceCases.ts';

const path = new URL('../../data/measured/rain-gauge-spots.csv', import.meta.url);
/** The invented table of the rain-gauge funnel: made for 0.21 J/cm²; the mark in row 18 is spoilt. */
const table = readFileAsPatch('threshold.spotTable', readFileSync(path), 'rain-gauge-spots.csv');
const funnel = {
  'laser.beamDiameter': 2.5e-3,
  'laser.beamPropagationRatio': 1.15,
  'expander.magnification': 3,
  'plate.stepDiameter': 8e-3,
  'plate.apertureDiameter': 12e-3,
  'lens.focalLength': 160e-3,
  ...table,
};
const leftOut = [{ 'threshold.leftOutRow': 18, 'threshold.leftOutReason': 'outlier' }];
export const cleaned = { ...funnel, 'threshold.leftOut': leftOut };
export const withOutlier = funnel;

const madeFor = 2100;
/** True where the stated interval of the fit in use holds the threshold that the table was made for. */
const holds = (value: (id: string) => number) =>
  Math.abs(value('threshold.fittedFluence') - madeFor) < 2.2 * value('threshold.fittedUncertainty');
const fitWith = (more: object) => ({
  'threshold.chosenFit': {
    verdict: 'describes',
    reason: '',
    used: 12,
    unmarked: 0,
    thresholdFluence: 2000,
    uncertainties: { thresholdFluence: 50 },
    intervals: { thresholdFluence: [1890, 2110] },
    ...more,
  },
});
const two = (gaussian: readonly [number, string], profile: readonly [number, string]) => ({
  'threshold.gaussianFit': { thresholdFluence: gaussian[0], verdict: gaussian[1] },
  'threshold.profileFit': { thresholdFluence: profile[0], verdict: profile[1] },
});

export const fitCases: readonly Case[] = [
  {
    says: 'fitSaid',
    design: cleaned,
    text: /^19 marks and 2 places without a mark, taken as those of the predicted profile, give a threshold of 0\.208\sJ\/cm² .* with 95\s% it lies between 0\.202\sJ\/cm² and 0\.214\sJ\/cm², if the model is right\.$/,
    truth: holds,
  },
  {
    says: 'fitSaid',
    design: { ...cleaned, 'threshold.fitModel': 'gaussian' },
    text: /taken as those of a Gaussian without the plate, give/,
    truth: (value) => value('threshold.fittedFluence') === value('threshold.gaussianFluence'),
  },
  {
    says: 'fitSaid',
    design: { ...cleaned, 'threshold.fitModel': 'profileAndPlane' },
    text: /taken as those of the predicted profile with its plane free, give/,
    truth: holds,
  },
  {
    says: 'fitSaid',
    design: cleaned,
    pins: fitWith({}),
    text: /^12 marks, taken as/,
    truth: () => true,
  },
  {
    says: 'fitSaid',
    design: cleaned,
    pins: fitWith({ unmarked: 1 }),
    text: /^12 marks and 1 place without a mark, taken as/,
    truth: () => true,
  },
  {
    says: 'fitVerdictSaid',
    design: cleaned,
    text: /^It describes the marks\. The marks lie off the model by 0\.93 times/,
    truth: holds,
  },
  {
    says: 'fitVerdictSaid',
    pins: fitWith({ doubt: 'The marks give 9 µm where 7 µm was expected.' }),
    text: /^It describes the marks, but not as the design has it\. The marks give 9\sµm where 7\sµm was expected\. Its threshold rests on the radius fitted, whatever the design says\.$/,
    truth: () => true,
  },
  {
    says: 'fitVerdictSaid',
    design: withOutlier,
    text: /^It does not describe the marks, so that its threshold and interval are not to be trusted\. The marks lie off/,
    truth: () => true,
  },
  {
    says: 'fitVerdictSaid',
    pins: fitWith({ verdict: 'too few', reason: '2 different energies cannot tell.' }),
    text: /^Whether it describes the marks cannot be told\. 2 different energies cannot tell\.$/,
    truth: () => true,
  },
  {
    says: 'gaussianInsteadSaid',
    design: cleaned,
    text: /would give 0\.209\sJ\/cm², nearly what the predicted profile gives \(0\.208\sJ\/cm²\); but a Gaussian does not describe them\. D² against ln E is no straight line behind a plate\.$/,
    truth: (value) =>
      Math.abs(value('threshold.gaussianFluence') / value('threshold.profileFluence') - 1) < 0.05,
  },
  {
    says: 'gaussianInsteadSaid',
    pins: two([3000, 'does not describe'], [2000, 'does not describe']),
    text: /0\.3\sJ\/cm², 1\.5 times what the predicted profile gives \(0\.2\sJ\/cm²\); but .* The predicted profile does not either\.$/,
    truth: () => true,
  },
  {
    says: 'gaussianInsteadSaid',
    pins: two([3000, 'describes'], [2000, 'does not describe']),
    text: /The marks look like those of a Gaussian: was the plate in when they were made\?$/,
    truth: () => true,
  },
  {
    says: 'gaussianInsteadSaid',
    pins: two([3000, 'describes'], [2000, 'too few']),
    text: /These marks alone cannot tell the two apart; what was in the beam decides\.$/,
    truth: () => true,
  },
];
