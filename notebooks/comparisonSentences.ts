import { bestShaped, bestUnshaped, energyGain, timeGain } from '../lib/design/comparison.ts';
import { largestModulation, leastInside } from '../lib/design/comparisonInputs.ts';
import {
  bestAreaRate,
  bestDiameter,
  bestEnergyPerArea,
  bestFieldTime,
  bestFocalLength,
  bestPeakFluence,
  unshapedBestAreaRate,
  unshapedBestDiameter,
  unshapedBestEnergyPerArea,
  unshapedBestFieldTime,
  unshapedBestFocalLength,
  unshapedBestPeakFluence,
} from '../lib/design/comparisonParts.ts';
import { pulsesLow } from '../lib/design/rippleWindow.ts';
import { thresholdAtN } from '../lib/design/threshold.ts';
import { formatNumber, formatReadable } from '../lib/graph/units.ts';
import { limitWords } from './limitWords.ts';
import { type Phrase, phrase, says } from './prose.ts';
import { rateText, timeText } from './shortTexts.ts';

/** Gains nearer to 1 than this are none: the search itself finds the rate to some 2 %. */
const noGain = 0.03;

/** Which beam is done sooner, each at its own best, and what limits each. */
export const comparisonSaid = says(
  {
    shaped: bestShaped,
    unshaped: bestUnshaped,
    gain: timeGain,
    time: bestFieldTime,
    plainTime: unshapedBestFieldTime,
    rate: bestAreaRate,
    plainRate: unshapedBestAreaRate,
    least: leastInside,
    modulation: largestModulation,
  },
  ({ shaped, unshaped, gain }): Phrase => {
    const start = phrase`With ${leastInside} of the field inside the window and a modulation of at most ${largestModulation}, the field takes ${bestFieldTime} with the plate (${bestAreaRate}) and ${unshapedBestFieldTime} with the plate taken out (${unshapedBestAreaRate}), each at its own best.`;
    const verdict =
      gain > 1 + noGain
        ? phrase` The plate is worth a factor of ${timeGain} in time.`
        : gain < 1 - noGain
          ? phrase` The plain beam is the faster one: the plate has ${timeGain} of its rate.`
          : ' In time the plate gains nothing.';
    const limits =
      shaped.limit === unshaped.limit
        ? phrase` Both are limited by ${limitWords[shaped.limit]}.`
        : phrase` The shaped beam is limited by ${limitWords[shaped.limit]}, the plain one by ${limitWords[unshaped.limit]}.`;
    return [start, verdict, limits].flat();
  },
);

/** Best peaks that mark nothing by the design's own threshold; nothing where both lie above it. */
export const bestBelowThresholdSaid = says(
  { shaped: bestPeakFluence, plain: unshapedBestPeakFluence, threshold: thresholdAtN },
  ({ shaped, plain, threshold }) => {
    const nothing = phrase`below the threshold of ${thresholdAtN}: by these numbers no pulse marks there. Window and threshold do not go together: measure both on the same surface.`;
    if (shaped < threshold && plain < threshold)
      return phrase`The best peaks, ${bestPeakFluence} with the plate and ${unshapedBestPeakFluence} without it, lie ${nothing}`;
    if (shaped < threshold) return phrase`The best peak with the plate, ${bestPeakFluence}, lies ${nothing}`;
    if (plain < threshold)
      return phrase`The best peak without the plate, ${unshapedBestPeakFluence}, lies ${nothing}`;
    return '';
  },
);

/** Energy to the area. */
export const energyPerAreaSaid = says(
  { shaped: bestEnergyPerArea, plain: unshapedBestEnergyPerArea, gain: energyGain },
  ({ gain }) =>
    gain > 1 + noGain
      ? phrase`The laser spends ${bestEnergyPerArea} of field with the plate and ${unshapedBestEnergyPerArea} without it, ${energyGain} times as much.`
      : phrase`The laser spends ${bestEnergyPerArea} of field with the plate and ${unshapedBestEnergyPerArea} without it: in energy the plate gains ${gain < 1 - noGain ? 'less than nothing' : 'nothing'}.`,
);

/** What the best spots need, against the spots of today. */
export const spotSizeSaid = says(
  {
    shaped: bestShaped,
    unshaped: bestUnshaped,
    diameter: bestDiameter,
    plain: unshapedBestDiameter,
    lens: bestFocalLength,
    plainLens: unshapedBestFocalLength,
  },
  ({ shaped, unshaped }) => {
    const size =
      shaped.scale > 1.1
        ? phrase`${formatNumber(shaped.scale, 3)} times as large as today’s`
        : shaped.scale < 0.9
          ? phrase`${formatNumber(shaped.scale, 3)} of today’s`
          : 'about as large as today’s';
    const today = (best: typeof shaped) =>
      `${rateText(best.today.rate)}, limited by ${limitWords[best.today.limit]}`;
    return phrase`The best spot with the plate measures ${bestDiameter}, ${size}: a lens of ${bestFocalLength} would make it, or a beam made narrower behind the plate; without the plate it measures ${unshapedBestDiameter} (${unshapedBestFocalLength}). A larger spot is never slower, as long as the pulse energy reaches; given here is the smallest that comes within one per cent. The same patterns made with the focus as large as it is today would reach ${today(shaped)}, with the plate, and ${today(unshaped)}, without it.`;
  },
);

/** Field and times that common practice names: 10 mm × 10 mm. */
const practice = { area: 1e-4, shaped: 30, unshaped: 60 };

/** Beside what common practice reports. */
export const practiceSaid = says(
  { shaped: bestShaped, unshaped: bestUnshaped, gain: timeGain, pulses: pulsesLow },
  ({ shaped, unshaped, gain }) => {
    const near =
      gain > 2.4
        ? 'more than that'
        : gain >= 1.6
          ? 'near to that'
          : gain > 1 + noGain
            ? 'less than that'
            : 'no gain at all';
    const time = (best: typeof shaped) => timeText(practice.area / best.rate);
    const power = (best: typeof shaped, seconds: number) =>
      formatReadable((best.energyPerArea * practice.area) / seconds, 'W', 'auto:W', 3);
    return phrase`Common practice (no source) names 30 s for a rippled field of 10 mm × 10 mm with the plate and about 60 s without it, a factor of two. Here the factor is ${timeGain}, ${near}; the times for such a field would be ${time(shaped)} and ${time(unshaped)}. Those follow from the power that the laser has and from the ${pulsesLow} pulses that are taken to be enough for a place: 30 s with the plate would need ${power(shaped, practice.shaped)} of the laser, 60 s without it ${power(unshaped, practice.unshaped)}. Where a surface needs more pulses, time and power grow with them.`;
  },
);
