import { micrographNamed } from '../design/micrographFiles.ts';
import type { Values } from './designOutcomes.ts';
import {
  changed,
  close,
  degree,
  drawnAt,
  find,
  inA,
  inB,
  nm,
  unscaledA,
  unscaledB,
  type Value,
} from './micrographDesigns.ts';
import type { Case } from './sentenceCases.ts';

const ofPeriod = (period: number, uncertainty: number): Values => ({
  'micrograph.period': period * nm,
  'micrograph.periodUncertainty': uncertainty * nm,
});
const againstPrediction: readonly Case[] = [
  {
    says: 'againstExpected',
    design: inA('fine'),
    // 0.70 to 0.95 of 1030 nm is 721 to 978.5 nm.
    text: /^The period of micrograph A, 899\.8\snm ± 0\.41\snm, lies inside the periods to be expected, 721\snm to 979\snm\. An error of the scale comes on top\.$/,
    truth: (value) => value('micrograph.period') > 721 * nm && value('micrograph.period') < 978.5 * nm,
  },
  {
    says: 'againstExpected',
    design: inA('fine'),
    pins: ofPeriod(990, 6),
    text: /is longer than the periods to be expected, 721\snm to 979\snm, though 979\snm lies within twice its uncertainty\./,
    truth: () => 990 - 978.5 < 2 * 6,
  },
  {
    says: 'againstExpected',
    design: inA('fine'),
    pins: ofPeriod(700, 6),
    text: /is shorter than the periods to be expected, 721\snm to 979\snm\. An/,
    truth: () => 721 - 700 > 2 * 6,
  },
  {
    says: 'againstExpected',
    design: inA('fine'),
    pins: ofPeriod(400, 6),
    text: /is below half of the wavelength: another mechanism makes such ripples, and they are not set against/,
    truth: (value) => 400 * nm < value('laser.wavelength') / 2,
  },
  {
    says: 'againstExpected',
    design: { ...inA('fine'), 'workpiece.incidence': Math.PI / 6 },
    pins: ofPeriod(1900, 6),
    // Bare light at 30°: 2060 nm with it, 70 to 95 % of which is 1442 to 1957 nm; 687 nm against it.
    text: /lies inside what would be expected of the wave that runs with the light, and not in the range of the wave against it, 481\snm to 652\snm\./,
    truth: () => 1900 > 0.7 * 2060 && 1900 < 0.95 * 2060,
  },
  {
    says: 'otherAgainstExpected',
    design: inB('even', 120 * nm),
    text: /^The period of micrograph B, 1174\snm ± 15\snm, is longer than/,
    truth: (value) => value('otherMicrograph.period') > 978.5 * nm,
  },
  {
    says: 'againstDirection',
    design: inA('fine'),
    text: /^The direction of the scan in micrograph A stands at 0°, as it does until it is set: then the ridges would run at 32\.68° ± 0\.035° to it\. Set it .* before you hold them against the predicted 90°\.$/,
    truth: (value) => value('micrograph.scanAngle') === 0,
  },
  {
    says: 'againstDirection',
    design: { ...inA('fine'), 'micrograph.scanAngle': 1e-9 },
    text: /^If the scan ran at .* in micrograph A, as typed, the ridges run at 32\.68° ± 0\.035° to it, which is 57° from the predicted 90°, more than twice its uncertainty: look first at how the workpiece lay/,
    truth: (value) =>
      close(value('micrograph.ridgesToScan') / degree, drawnAt - 90, 0.1) &&
      close(value('ripples.direction') / degree, 90, 1e-9),
  },
  {
    says: 'againstDirection',
    design: { ...inA('even'), 'micrograph.scanAngle': (drawnAt - 180) * degree },
    text: /^If the scan ran at −57\.3° in .* the ridges run at 87\.37° ± 1\.4° to it, which agrees with the predicted 90° within twice its uncertainty\.$/,
    truth: (value) =>
      close(value('micrograph.ridgesToScan'), Math.PI / 2, 2 * value('micrograph.directionUncertainty')),
  },
  {
    says: 'againstDirection',
    design: { ...inA('fine'), 'laser.polarisation': 'circular' },
    text: /the ridges run at 32\.68° ± 0\.035° to it; for this polarisation no one direction is predicted\.$/,
    truth: (value) => Number.isNaN(value('ripples.direction')),
  },
  {
    says: 'otherAgainstDirection',
    design: inB('fine'),
    text: /^The direction of the scan in micrograph B stands at 0°/,
    truth: (value) => value('otherMicrograph.scanAngle') === 0,
  },
];

const apart = (value: Value) => Math.abs(value('micrograph.period') - value('otherMicrograph.period'));
const together = (value: Value) =>
  2 * Math.hypot(value('micrograph.periodUncertainty'), value('otherMicrograph.periodUncertainty'));

const comparisons: readonly Case[] = [
  {
    says: 'micrographsCompared',
    design: { ...inA('fine'), ...inB('even') },
    text: /^The periods agree within twice their combined uncertainty\. Their directions in the pictures agree within twice their combined uncertainty\. The half-width is 2\.59° in A and 4\.59° in B, with the same smoothing\.$/,
    truth: (value) => apart(value) < together(value),
  },
  {
    says: 'micrographsCompared',
    design: { ...inA('fine'), ...inB('even', 100 * nm), 'otherMicrograph.scanAngle': 0.5 },
    text: /^The periods differ by more than twice their combined uncertainty: that of B is 8\.7\s% longer\. Their directions against the scan, as typed, lie 31\.3° apart, more than .* with the same smoothing in pixels, which is the same length only where the scales are alike\.$/,
    truth: (value) =>
      apart(value) > together(value) &&
      close(value('otherMicrograph.period') / value('micrograph.period'), 1.087, 1e-3),
  },
  {
    says: 'micrographsCompared',
    design: { ...unscaledA('fine'), ...unscaledB('wandering') },
    text: /^If both were taken at the same magnification, the periods differ by more than .* that of B is 16\s% shorter\./,
    truth: (value) =>
      close(value('otherMicrograph.periodPixels') / value('micrograph.periodPixels'), 0.84, 5e-3),
  },
  {
    says: 'micrographsCompared',
    design: { ...inA('fine'), ...unscaledB('even') },
    text: /^The periods cannot be compared before the scale of micrograph B is said\./,
    truth: (value) => Number.isNaN(value('otherMicrograph.period')),
  },
  {
    says: 'micrographsCompared',
    design: { ...inA('noise'), ...inB('even') },
    text: /^Only micrograph B shows ripples, so there is nothing to compare\.$/,
    truth: (value) => Number.isNaN(value('micrograph.period')),
  },
  {
    says: 'micrographsCompared',
    design: {
      'micrograph.picture': find('noise'),
      'otherMicrograph.picture': micrographNamed('blank', { amplitude: 0, noise: 0 }),
    },
    text: /^Neither micrograph shows ripples\.$/,
    truth: (value) => Number.isNaN(value('otherMicrograph.periodPixels')),
  },
  {
    says: 'micrographsCompared',
    design: { ...inA('even'), ...inB('fine') },
    pins: changed('even', ({ orientation }) => ({ orientation: { ...orientation, halfWidth: undefined } })),
    text: /^The periods agree .* agree within twice their combined uncertainty\.$/,
    truth: (value) => Number.isNaN(value('micrograph.halfWidth')),
  },
];

/** Cases of what is said of micrographs beside the prediction, and of two beside each other. */
export const micrographComparedCases: readonly Case[] = [...againstPrediction, ...comparisons];
