import { burstPulses } from '../lib/design/burst.ts';
import { hatch, lineNumber } from '../lib/design/hatch.ts';
import { usedPulseEnergy } from '../lib/design/losses.ts';
import {
  areaPerHour,
  scaled,
  scaledFieldTime,
  scaledPower,
  scaledRepetitionRate,
  scaledSpeed,
  scans,
  timePerSquareMetre,
} from '../lib/design/scaleUp.ts';
import { moveTime, targetRate } from '../lib/design/scaleUpInputs.ts';
import { ceilings, missing, missingFactor, spotsTried } from '../lib/design/scaleUpTarget.ts';
import { steps, todayAreaPerHour, todayTimePerSquareMetre } from '../lib/design/scaleUpToday.ts';
import { mostSpots, wholeSpots } from '../lib/design/scaleUpWork.ts';
import { lineSpacing, passes, pulseSpacing } from '../lib/design/scanInputs.ts';
import { formatNumber, formatQuantity } from '../lib/graph/units.ts';
import type { StepRate } from '../lib/process/scaleUpSteps.ts';
import { type Phrase, phrase, says } from './prose.ts';
import { areaText, scaleLimitHelp, scaleLimitWords, stepWords } from './scaleUpWords.ts';
import { angleText, listed, ordinal, rateText } from './shortTexts.ts';

/** Rates that differ by less than this part are called alike. */
const alike = 0.03;

/** What is held. */
export const heldSaid = says(
  { hatch, burst: burstPulses, energy: usedPulseEnergy, p: pulseSpacing, spacing: lineSpacing, passes },
  ({ hatch, burst }) => {
    const often = hatch.passes === 1 ? '' : `, ${hatch.passes} passes`;
    const bursts = burst === 1 ? '' : phrase`, ${burstPulses} of them in each place at once`;
    const turned =
      hatch.passes > 1 && hatch.angle !== 0 ? `, turned by ${angleText(hatch.angle)} from pass to pass` : '';
    const rounds =
      hatch.interlacing > 1
        ? `, every ${ordinal(hatch.interlacing)} line first and those between after it`
        : '';
    return phrase`The recipe, what every place gets, is held: pulses of ${usedPulseEnergy} every ${pulseSpacing}${bursts}, lines ${lineSpacing} apart${often}${turned}${rounds}. Only how fast it is written may change.`;
  },
);

/** What the larger machine does with it. */
export const scaledSaid = says(
  {
    spots: wholeSpots,
    scans,
    lines: lineNumber,
    speed: scaledSpeed,
    rate: scaledRepetitionRate,
    power: scaledPower,
    time: scaledFieldTime,
    move: moveTime,
    area: areaPerHour,
    metre: timePerSquareMetre,
  },
  ({ spots, move, scans: count }) => {
    const lines =
      spots === 1
        ? phrase`With one spot the larger machine goes along each of ${lineNumber} lines`
        : phrase`${wholeSpots} spots side by side, which a splitter makes of the beam, write as many lines at a time, so that the larger machine scans ${count === 1 ? 'once' : phrase`${scans} times`} instead of ${lineNumber}`;
    const next =
      move === 0 ? ', and the next follows at once' : phrase`, and the move to the next ${moveTime}`;
    return phrase`${lines}, at ${scaledSpeed} and ${scaledRepetitionRate} with ${scaledPower} of the laser. A field takes ${scaledFieldTime}${next}. That is ${areaPerHour}: a square metre in ${timePerSquareMetre}.`;
  },
);

/** Against today. */
export const scaledTodaySaid = says(
  { rate: areaPerHour, today: todayAreaPerHour, metre: todayTimePerSquareMetre, steps },
  ({ rate, today, steps }) => {
    const gain = rate / today;
    const verdict =
      gain > 1 + alike
        ? `The larger machine is ${formatNumber(gain, 3)} times as fast.`
        : gain < 1 - alike
          ? `The larger machine is slower, at ${formatNumber(gain, 3)} of that.`
          : 'The larger machine is no faster.';
    const tooWarm =
      steps[1]!.limit === 'heat' && steps[1]!.rate < today * (1 - alike)
        ? ' Today’s field goes beyond the temperature rise that is allowed; the larger machine is held to it.'
        : '';
    return phrase`As the field is set today, one spot brings ${todayAreaPerHour}, ${todayTimePerSquareMetre} for a square metre. ${verdict}${tooWarm}`;
  },
);

/** Area and time that common practice names for a field. */
const practice = { area: 1e-4, time: 30 };

/** Beside what common practice reports. */
export const scaledPracticeSaid = says({ rate: areaPerHour }, ({ rate }) => {
  const usual = practice.area / practice.time;
  const hours = formatQuantity(1 / usual, 's', 'h', 3);
  const against =
    rate > usual * (1 + alike)
      ? `the larger machine is ${formatNumber(rate / usual, 3)} times as fast`
      : rate < usual * (1 - alike)
        ? `the larger machine has ${formatNumber(rate / usual, 3)} of that rate`
        : 'the larger machine is about as fast';
  return `Common practice (no source) names ${practice.time} s for a rippled field of 10 mm × 10 mm: ${rateText(usual)}, at which a square metre takes ${hours}; ${against}.`;
});

/** What limits it, and what would next. */
export const scaleLimitSaid = says({ field: scaled }, ({ field: { limit, next } }) => {
  return `What limits the larger machine is ${scaleLimitWords[limit]}. ${scaleLimitHelp[limit]} If that were lifted, the next would be ${scaleLimitWords[next]}.`;
});

/** Whether the area wanted is met, and if not, which limits stand below it and by how much. */
export const targetSaid = says(
  { missing, factor: missingFactor, target: targetRate, rate: areaPerHour, ceilings },
  ({ missing: { factor, short }, ceilings }): Phrase => {
    if (factor <= 1)
      return phrase`The ${targetRate} wanted are met: ${areaPerHour} are reached. By itself, the lowest limit, ${scaleLimitWords[ceilings[0]!.kind]}, would allow ${areaText(ceilings[0]!.rate)}.`;
    const start = phrase`The ${targetRate} wanted are ${missingFactor} times what is reached.`;
    if (short.length === 0)
      return phrase`${start} No limit by itself stands below it: writing, turning and moving together take too long. Lowest is ${scaleLimitWords[ceilings[0]!.kind]}, which by itself would allow ${areaText(ceilings[0]!.rate)}.`;
    const each = short.map(
      ({ kind, factor: times }) =>
        `${scaleLimitWords[kind]}, which is too low by a factor of ${formatNumber(times, 3)}`,
    );
    const words = short.length === 1 ? 'one limit falls' : `${short.length} limits fall`;
    return phrase`${start} Even with everything else without limit, ${words} short of it: ${each.join('; ')}.`;
  },
);

/** How many spots the area wanted needs. */
export const spotsForTargetSaid = says(
  { tried: spotsTried, most: mostSpots, target: targetRate },
  ({ tried: { met, spots, rate, limit }, most }) => {
    const count = (n: number) => (n === 1 ? 'One spot' : `${n} spots`);
    const fewer = most.energy <= most.height;
    const bound = fewer
      ? `a pulse of the larger laser has energy for ${most.energy}`
      : `the height of the field has room for ${most.height}`;
    if (met)
      return phrase`${count(spots)} would do for ${targetRate}, then at ${areaText(rate)}; no more than ${String(most.all)} are possible, as ${bound}.`;
    return phrase`No number of spots brings ${targetRate}. No more than ${String(most.all)} are possible, as ${bound}; of these ${count(spots).toLowerCase()} would bring most, ${areaText(rate)}, and what stops it there is ${scaleLimitWords[limit]}.`;
  },
);

/** What each step brings: first what today’s machine has in it, then what is bought. */
export const stepsSaid = says({ steps }, ({ steps }): Phrase => {
  const gains = steps
    .slice(1)
    .map(({ step, rate }, i) => ({ words: stepWords[step], gain: rate / steps[i]!.rate }));
  const [own, ...bought] = gains as [(typeof gains)[number], ...typeof gains];
  const most = bought.reduce((best, one) => (one.gain > best.gain ? one : best));
  const none = bought.filter(({ gain }) => gain <= 1 + alike && gain >= 1 - alike).map(({ words }) => words);
  const less = bought
    .filter(({ gain }) => gain < 1 - alike)
    .map(({ words, gain }) => `${words} (${formatNumber(gain, 2)})`);
  const brings = most.gain > 1 + alike;
  const start = brings
    ? `Of what is bought, most comes from ${most.words}: a factor of ${formatNumber(most.gain, 3)}.`
    : 'Nothing that is bought brings anything.';
  const nothing = none.length > 0 && brings ? ` Nothing or next to nothing comes from ${listed(none)}.` : '';
  const slower = less.length > 0 ? ` It becomes slower with ${listed(less)}.` : '';
  return `${ownSaid(own.gain, steps[1]!.limit)}${start}${nothing}${slower}`;
});

/** What today’s machine does at its limits, over what is set. */
function ownSaid(gain: number, limit: StepRate['limit']): string {
  const of = formatNumber(gain, 3);
  if (gain > 1 + alike)
    return `With nothing bought, today’s machine at its fastest brings a factor of ${of}. `;
  if (gain >= 1 - alike) return '';
  return limit === 'heat'
    ? `Held to the temperature rise that is allowed, today’s machine has ${of} of the rate that is set. `
    : `Held to its limits, today’s machine has ${of} of the rate that is set. `;
}
