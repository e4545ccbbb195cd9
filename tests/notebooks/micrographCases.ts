import { irregularities } from '../../notebooks/micrographWords.ts';
import {
  changed,
  close,
  degree,
  drawnAt,
  found,
  inA,
  inB,
  nm,
  unscaledA,
  type Value,
} from './micrographDesigns.ts';
import type { Case } from './sentenceCases.ts';

const without = 'Rows 100 to 127 hold a caption and are left out.';
const captioned = changed('even', () => ({
  written: [{ first: 100, last: 127, kind: 'caption' }],
  notes: [without, 'The ripples stand out from other directions by 5.0 times only.'],
}));
const rippled: readonly Case[] = [
  {
    says: 'rippledSaid',
    design: inA('fine'),
    text: /^Micrograph A shows ripples 899\.8\snm ± 0\.41\snm apart\. Their wave vector, the direction in which they repeat, lies at 122\.7° ± 0\.035° in the picture, .* A second kind of ripples lies 360\.1\snm ± [\d.]+\snm apart, with its wave vector at 32\.7°\.$/,
    truth: (value) =>
      close(value('micrograph.period'), 900 * nm, 0.5 * nm) &&
      close(value('micrograph.direction') / degree, drawnAt, 0.1) &&
      close(value('micrograph.secondPeriod'), 360 * nm, 0.3 * nm) &&
      close(value('micrograph.secondDirection') / degree, drawnAt - 90, 0.1),
  },
  {
    says: 'rippledSaid',
    design: unscaledA('fine'),
    text: /^Micrograph A shows ripples 9\.998\spx ± 0\.0046\spx apart; how long a pixel is has not been said\. .* lies 4\.001\spx ± [\d.]+\spx apart/,
    truth: (value) =>
      Number.isNaN(value('micrograph.period')) && close(value('micrograph.periodPixels'), 10, 0.01),
  },
  {
    says: 'rippledSaid',
    design: inA('even'),
    text: /at right angles to it\. No second period stands out\.$/,
    truth: (value) => Number.isNaN(value('micrograph.secondPeriod')),
  },
  {
    says: 'rippledSaid',
    design: inA('noise'),
    text: /^No ripples were found in micrograph A\. Of what could repeat .* no direction stands out.*blur, or ridges too coarse for a region of this size\.$/,
    truth: (value) => Number.isNaN(value('micrograph.period')),
  },
  {
    says: 'rippledSaid',
    design: inA('even'),
    pins: captioned,
    text: /No second period stands out\. Rows 100 to 127 hold a caption and are left out\.$/,
    truth: (value) => found(value).written.length === 1,
  },
  {
    says: 'otherRippledSaid',
    design: inB('even'),
    text: /^Micrograph B shows ripples 880\.2\snm ± 11\snm apart/,
    truth: (value) => close(value('otherMicrograph.period'), 900 * nm, 2 * 11 * nm),
  },
  {
    says: 'micrographWarning',
    design: inA('even'),
    text: /^$/,
    truth: (value) => found(value).notes.length === 0,
  },
  {
    says: 'micrographWarning',
    design: inA('even'),
    pins: captioned,
    text: /^Micrograph A: The ripples stand out from other directions by 5\.0 times only\.$/,
    truth: (value) => found(value).notes.length === 2,
  },
  {
    says: 'otherMicrographWarning',
    design: { ...inB('even'), 'micrograph.smoothing': 4 },
    text: /^Micrograph B: The smoothing of 4 pixels blurs ridges of 9\.8 pixels: take a quarter of the period at most\.$/,
    truth: (value) => value('otherMicrograph.periodPixels') < 4 * 4,
  },
];

const reasons = (value: Value, prefix = 'micrograph') => irregularities(found(value, prefix)).length;

const regular: readonly Case[] = [
  {
    says: 'regularSaid',
    design: inA('even'),
    text: /^The local orientation, smoothed over 2\spx, has a half-width of 4\.59°; the ripples stay in step over at least 2\.3\sµm along the wave vector and at least 2\.3\sµm along the ridges; 0 of 36 cells .* This page calls a field regular where the half-width is at most 15°, at most 5\s% of the cells lie below 0\.5, and .* 2 periods or more and stand out in at least 80\s% of the picture: this one is\.$/,
    truth: (value) =>
      value('micrograph.halfWidth') < 15 * degree &&
      value('micrograph.coherenceAlong') > 2 * value('micrograph.period') &&
      found(value).orientation.regularity.values.every((cell) => cell >= 0.5),
  },
  {
    says: 'regularSaid',
    design: unscaledA('wandering'),
    text: /stay in step over 11\spx along the wave vector and 11\.7\spx along .* this one is not, for the phase that is lost sooner\.$/,
    truth: (value) => found(value).main!.coherenceAlong.length < 2 * value('micrograph.periodPixels'),
  },
  {
    says: 'regularSaid',
    design: inA('lines'),
    text: /8 of 36 cells of the map .* this one is not, for its weak cells\.$/,
    truth: (value) => found(value).orientation.regularity.values.filter((cell) => cell < 0.5).length === 8,
  },
  {
    says: 'regularSaid',
    design: inA('lines'),
    pins: changed('lines', ({ main, orientation }) => ({
      main: { ...main!, tileShare: 0.7 },
      orientation: { ...orientation, halfWidth: 0.5 },
    })),
    text: /this one is not, for its half-width, its weak cells and the parts in which the ripples do not stand out\.$/,
    truth: (value) => value('micrograph.halfWidth') > 15 * degree && found(value).main!.tileShare < 0.8,
  },
  {
    says: 'regularSaid',
    design: inA('even'),
    pins: changed('even', ({ orientation }) => ({ orientation: { ...orientation, halfWidth: undefined } })),
    text: /^The local orientation, smoothed over 2\spx, nowhere falls to half of its maximum; .* this one is not, for its half-width\.$/,
    truth: (value) => Number.isNaN(value('micrograph.halfWidth')) && reasons(value) === 1,
  },
  {
    says: 'regularSaid',
    design: inA('noise'),
    text: /^$/,
    truth: (value) => Number.isNaN(value('micrograph.period')),
  },
  {
    says: 'otherRegularSaid',
    design: inB('even'),
    text: /this one is\.$/,
    truth: (value) => reasons(value, 'otherMicrograph') === 0,
  },
];

/** Cases of what is said of one micrograph: ripples of 10 pixels, their wave vector at 1 rad towards y downwards. */
export const micrographCases: readonly Case[] = [...rippled, ...regular];
