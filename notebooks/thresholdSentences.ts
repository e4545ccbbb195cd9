import { repetitionRate } from '../lib/design/laser.ts';
import {
  energyAfter,
  energySource,
  opticsTransmission,
  plateTransmission,
  typedPower,
  usedPulseEnergy,
} from '../lib/design/losses.ts';
import {
  effectiveArea,
  markArea,
  meanFluence,
  unshapedEffectiveArea,
  unshapedMarkArea,
  unshapedMeanFluence,
} from '../lib/design/marks.ts';
import { handbookDifferences, handbookRange, material } from '../lib/design/material.ts';
import { stop, transmission } from '../lib/design/plate.ts';
import { peakFluence } from '../lib/design/spot.ts';
import {
  incubationExponent,
  pulsesOnPlace,
  thresholdAtN,
  thresholdFloor,
  thresholdFluence,
  thresholdSource,
  thresholdUncertainty,
} from '../lib/design/threshold.ts';
import { fitIfThere, handbookIfThere } from '../lib/design/thresholdDoubt.ts';
import { unshapedPeakFluence } from '../lib/design/unshaped.ts';
import { formatNumber, formatQuantity } from '../lib/graph/units.ts';
import { type Phrase, phrase, says } from './prose.ts';

/** Where the energy of a pulse comes from, and what is lost on the way. */
export const energySaid = says(
  {
    source: energySource,
    optics: opticsTransmission,
    plate: plateTransmission,
    energy: usedPulseEnergy,
    after: energyAfter,
  },
  ({ source, optics, plate }) => {
    const energy =
      source === 'power'
        ? phrase`An average power of ${typedPower} at ${repetitionRate} is ${usedPulseEnergy} a pulse, where every pulse is let through`
        : phrase`The pulse energy is ${usedPulseEnergy}`;
    if (optics === 1 && plate === 1)
      return phrase`${energy}. No losses on the way are named; if the energy was measured before the optics, what they take is not counted.`;
    return phrase`${energy}, of which ${energyAfter} are left behind the losses on the way, before the stop.`;
  },
  [typedPower, repetitionRate],
);

/** What the stop lets through. */
export const stopPartSaid = says({ stop, transmission }, ({ stop }) =>
  stop === 'open'
    ? 'No stop, an opening that cuts the edge of the beam, takes any of it.'
    : phrase`The stop, the opening that cuts the edge of the beam, lets ${transmission} of it through.`,
);

/** Effective areas with and without the plate, which turn into peaks. */
export const effectiveAreaSaid = says(
  { shaped: effectiveArea, plain: unshapedEffectiveArea },
  ({ shaped, plain }) => {
    const both = phrase`It is ${effectiveArea} with the plate and ${unshapedEffectiveArea} without it`;
    if (shaped > 1.02 * plain)
      return phrase`${both}: the plate spreads the same energy over ${formatNumber(shaped / plain, 2)} times the area, and so the peak is lower.`;
    if (shaped < plain / 1.02)
      return phrase`${both}: in this plane the plate gathers the energy on a smaller area than the unshaped beam has here.`;
    return phrase`${both}: in this plane the plate hardly changes it.`;
  },
);

/** Peak against mean over the mark, where there is a mark. */
export const peakAndMeanSaid = says(
  { mark: markArea, plainMark: unshapedMarkArea, peak: peakFluence, plainPeak: unshapedPeakFluence },
  ({ mark, plainMark }) => {
    if (mark > 0 && plainMark > 0)
      return phrase`Over the mark the mean is ${meanFluence} with the plate, at a peak of ${peakFluence}; without it ${unshapedMeanFluence}, at a peak of ${unshapedPeakFluence}.`;
    if (mark > 0)
      return phrase`Over the mark the mean is ${meanFluence} with the plate, at a peak of ${peakFluence}. Without the plate nothing is marked in this plane.`;
    if (plainMark > 0)
      return phrase`With the plate the peak of ${peakFluence} marks nothing, so that there is no mean over a mark; without it the mean is ${unshapedMeanFluence}, at a peak of ${unshapedPeakFluence}.`;
    return phrase`Neither the peak with the plate, ${peakFluence}, nor the one without it, ${unshapedPeakFluence}, marks anything here, so that there is no mean over a mark.`;
  },
  [meanFluence, unshapedMeanFluence],
);

/** The threshold in use and where it comes from. */
export const thresholdSaid = says(
  { source: thresholdSource, first: thresholdFluence, u: thresholdUncertainty },
  ({ source, u }) => {
    if (source === 'handbook')
      return phrase`For ${material} the handbook spans ${handbookRange}, the light that is reflected counted in: what has been published, and half as much again to either side, since surfaces, criteria and spots differ between laboratories. The middle of it, ${thresholdFluence}, is where to start, and no more than that: its standard uncertainty is ${thresholdUncertainty}.`;
    const known =
      u > 0 ? phrase`, with a standard uncertainty of ${thresholdUncertainty}` : ', and counts as exact';
    return source === 'typed'
      ? phrase`The threshold of one pulse is ${thresholdFluence} as typed${known}.`
      : phrase`The threshold of one pulse is ${thresholdFluence}, fitted to your measured spots${known}.`;
  },
  [material, handbookRange],
);

/** Thresholds this many times beyond the handbook's range are asked about. */
const farOff = 3;

/** What speaks against a threshold that is typed or fitted. */
export const thresholdDoubtSaid = says(
  { source: thresholdSource, first: thresholdFluence, fit: fitIfThere, handbook: handbookIfThere },
  ({ source, first, fit, handbook }) => {
    if (source === 'handbook') return '';
    const doubts: Phrase[] = [];
    if (source === 'fitted' && fit && fit.verdict !== 'describes')
      doubts.push(
        fit.verdict === 'too few'
          ? 'There are too few marks to tell whether the model that it was fitted with is right.'
          : 'The model that it was fitted with does not describe the marks: do not rely on it before that is mended.',
      );
    const factor = handbook ? Math.max(handbook.low / first, first / handbook.high) : 1;
    if (handbook && factor > farOff) {
      const side = first < handbook.low ? 'below' : 'above';
      doubts.push(
        phrase`It lies ${formatNumber(factor, 2)} times ${side} what the handbook spans for ${material}: check material, units, the energy on the workpiece, and the repetition rate where powers were given.`,
      );
    }
    return doubts.flatMap((doubt) => [' ', doubt].flat());
  },
  [material],
);

/** How the published conditions differ from the design's; nothing where they do not. */
export const conditionsSaid = says({ differences: handbookDifferences }, ({ differences }) =>
  differences.length === 0
    ? ''
    : `Other conditions: none of the published thresholds was measured as you work: ${differences.join('; ')}. They are not corrected for it. Measure your own threshold.`,
);

/** How far the peaks lie above the threshold. */
export const aboveThresholdSaid = says(
  { peak: peakFluence, plain: unshapedPeakFluence, threshold: thresholdAtN },
  ({ peak, plain, threshold }) => {
    const times = (fluence: number) => formatNumber(fluence / threshold, 2);
    const words = (fluence: number) =>
      fluence > threshold ? `${times(fluence)} times the threshold` : 'not above the threshold';
    return `The peak is ${words(peak)} with the plate, and ${words(plain)} without it.`;
  },
);

/** What several pulses on a place do to the threshold. */
export const incubationSaid = says(
  {
    N: pulsesOnPlace,
    S: incubationExponent,
    floor: thresholdFloor,
    first: thresholdFluence,
    now: thresholdAtN,
  },
  ({ N, S, floor, first, now }) => {
    const end =
      floor > 0
        ? phrase` It never comes below ${thresholdFloor}, whatever the number.`
        : ' No floor is set, so that the law goes on without end; no surface does. Trust it no further than the numbers of pulses that were measured.';
    if (N === 1) return phrase`Here one pulse falls on a place, and the threshold is that of one pulse.`;
    if (now === first)
      return phrase`With the exponent at ${incubationExponent} the threshold of ${pulsesOnPlace} pulses is that of one: ${thresholdAtN}.`;
    if (S > 1)
      return phrase`With an exponent above 1 the surface hardens: ${pulsesOnPlace} pulses on a place need ${thresholdAtN} each. Measure that before you rely on it.`;
    return phrase`Together ${pulsesOnPlace} pulses on a place mark it from ${thresholdAtN} each on, ${formatQuantity(now / first, '1', '%', 2)} of what one alone needs.${end}`;
  },
);
