import { burstPulses, burstSpacing } from '../lib/design/burst.ts';
import { fieldWidth } from '../lib/design/depthInUse.ts';
import { duty, fieldTime, hatch, motion, overscanLength, scanAreaRate } from '../lib/design/hatch.ts';
import { repetitionRate } from '../lib/design/laser.ts';
import { averagePower, usedPulseEnergy } from '../lib/design/losses.ts';
import {
  accumulatedPulses,
  linesPerSpot,
  pulsesPerSpot,
  unshapedPulsesPerSpot,
} from '../lib/design/pulsesOnPlace.ts';
import { lineSpacing, passes, pulseSpacing, pulsesInPlace, scanSpeed } from '../lib/design/scanInputs.ts';
import { fastestAreaRate, fastestSpeed, limits } from '../lib/design/scanLimits.ts';
import { fieldHeight, lineDelay } from '../lib/design/scannerInputs.ts';
import { peakFluence } from '../lib/design/spot.ts';
import { unshapedPeakFluence } from '../lib/design/unshaped.ts';
import { unshapedAveragePower, unshapedPulseEnergy } from '../lib/design/unshapedEnergy.ts';
import type { LimitKind } from '../lib/process/scanLimits.ts';
import type { ScanMotion } from '../lib/process/scanTime.ts';
import { limitHelp, limitWords } from './limitWords.ts';
import { energyChange, plainRuns } from './plainRuns.ts';
import { type Phrase, phrase, says } from './prose.ts';
import { percentText, rateText, speedText } from './shortTexts.ts';

/** Speeds that differ by less than this part are met together. */
const together = 1e-3;

/** What the field takes. */
export const scanFieldSaid = says(
  { hatch, time: fieldTime, duty, rate: scanAreaRate, width: fieldWidth, height: fieldHeight, passes },
  ({ hatch, duty: part }) => {
    const often = hatch.passes === 1 ? '' : ` in ${hatch.passes} passes`;
    const written =
      part > 0.99 ? 'nearly all of it with the laser on' : phrase`${duty} of it with the laser on`;
    return phrase`A field of ${fieldWidth} × ${fieldHeight} takes ${fieldTime}${often}, ${written}. That is an area processing rate of ${scanAreaRate}.`;
  },
);

/** What turning round costs, and where it is done. */
export const turnSaid = says(
  { motion, overscan: overscanLength, width: fieldWidth, delay: lineDelay, p: pulseSpacing },
  ({ motion, overscan, width, delay }) => {
    const waits = delay > 0 ? phrase` Each line waits ${lineDelay} besides.` : '';
    const back =
      motion.directions === 'one'
        ? ' All lines run the same way, so that the way back is lost, at the highest speed of the scanner.'
        : '';
    if (motion.turnRound === 'inside')
      return 2 * overscan > width
        ? phrase`The scanner turns at the edge with the laser on, and the lines are too short for it to reach the speed at all: pulses lie closer than ${pulseSpacing} everywhere.${back}${waits}`
        : phrase`The scanner turns at the edge with the laser on: within ${overscanLength} of both ends it is slower, and pulses crowd there.${back}${waits}`;
    return phrase`The scanner turns beyond the edge with the laser off, for which it goes ${overscanLength} further at each end of a line (overscan).${back}${waits}`;
  },
);

/** Pulses per spot, and why the accumulated fluence is another number. */
export const pulsesSaid = says(
  {
    p: pulseSpacing,
    pps: pulsesPerSpot,
    plain: unshapedPulsesPerSpot,
    lps: linesPerSpot,
    n: pulsesInPlace,
    all: accumulatedPulses,
    speed: scanSpeed,
    rate: repetitionRate,
    spacing: lineSpacing,
  },
  ({ pps, n, lps }) => {
    if (pps < 1)
      return phrase`At ${scanSpeed} and ${repetitionRate} pulses land ${pulseSpacing} apart, further than the spot is wide: along the line they stand alone.`;
    const lines =
      lps < 1
        ? phrase`, and the lines, ${lineSpacing} apart, leave gaps`
        : phrase` and ${linesPerSpot} lines`;
    const more = n > 1 ? phrase`, ${pulsesInPlace} pulses in each of these places` : '';
    return phrase`At ${scanSpeed} and ${repetitionRate} pulses land ${pulseSpacing} apart: the spot covers ${pulsesPerSpot} pulses (${unshapedPulsesPerSpot} with the plate taken out)${lines}${more}. All together, each place gets on average as much as ${accumulatedPulses} pulses at full peak.`;
  },
);

/** At which energy the column of the plain beam is written. */
export const plainRunsSaid = says(
  {
    ...plainRuns,
    power: averagePower,
    plainPower: unshapedAveragePower,
    peak: peakFluence,
    plainPeak: unshapedPeakFluence,
  },
  (values) => {
    const change = energyChange(values);
    if (values.runs === 'energy')
      return phrase`With the plate taken out, the field is scanned alike with the same pulse energy, ${usedPulseEnergy}: the peak fluence is then ${unshapedPeakFluence} instead of ${peakFluence}.`;
    const alike = 'With the plate taken out, the field is scanned alike at the same peak fluence';
    return change === 'unchanged at'
      ? phrase`${alike}, which takes the same pulse energy in this plane.`
      : phrase`${alike}: the pulse energy of ${usedPulseEnergy} is then ${change} ${unshapedPulseEnergy}, and the average power is ${unshapedAveragePower} instead of ${averagePower}.`;
  },
);

/** Bursts; nothing without them. */
export const burstSaid = says(
  { burst: burstPulses, spacing: burstSpacing, rate: repetitionRate },
  ({ burst, spacing, rate }) => {
    if (burst < 2) return '';
    const long = (burst - 1) * spacing > 0.1 / rate;
    return phrase`${burstPulses} pulses of each burst land in one place, ${burstSpacing} apart; energy, power and accumulated fluence count them all. How pulses that close act on one another, through heat, plasma and incubation, is not in this model: its thresholds are those of single pulses.${long ? ' The burst lasts longer than a tenth of the time to the next one, so that it is hardly a burst.' : ''}`;
  },
);

/** What limits the field, and what would next. */
export const limitSaid = says(
  { limits, motion, fastest: fastestSpeed, rate: fastestAreaRate, p: pulseSpacing, spacing: lineSpacing },
  ({ limits, motion }): Phrase => {
    const [first, next] = limits as [(typeof limits)[0], (typeof limits)[0]];
    const both = next.speed <= first.speed * (1 + together);
    const what = both
      ? `${limitWords[first.kind]}, and with it ${limitWords[next.kind]}`
      : limitWords[first.kind];
    const then = both ? limits[2]! : next;
    const heat = limits.some(({ kind }) => kind === 'heat')
      ? ''
      : ' Heat is not among these: it limits nothing within reach, or is not worked out, as said under Heat.';
    const after = both ? 'If both were lifted' : 'If that were lifted';
    return phrase`With pulses ${pulseSpacing} and lines ${lineSpacing} apart, what limits the field is ${what}: reached at ${fastestSpeed}, ${fastestAreaRate}. ${limitHelp[first.kind]} ${after}, the next would be ${limitWords[then.kind]}, at ${speedText(then.speed)}, ${rateText(then.rate)}. ${todayAgainst(motion, first.speed, first.kind)}${heat}`;
  },
);

/** Today’s speed against the first limit. */
function todayAgainst({ speed, turnRound }: ScanMotion, limit: number, kind: LimitKind): Phrase {
  if (speed > limit * (1 + together)) {
    if (kind === 'heat') return 'Today’s speed is beyond that: the part gets hotter than allowed.';
    return turnRound === 'inside'
      ? 'Today’s speed is beyond that, and the lines are too short to reach it.'
      : 'Today’s speed is beyond that: slower would be done sooner.';
  }
  if (speed > limit * (1 - 0.02)) return 'Today’s speed is there.';
  return `Today’s speed is ${percentText(speed / limit, 2)} of it.`;
}
