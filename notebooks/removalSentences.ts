import {
  highFluence,
  lowFluence,
  windowBestPeak,
  windowGain,
  windowGainAtTop,
} from '../lib/design/fluenceWindow.ts';
import { bestPeak, deepest, removalGain, unshapedDeepest, volume } from '../lib/design/removal.ts';
import { peakFluence } from '../lib/design/spot.ts';
import { pulsesOnPlace } from '../lib/design/threshold.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { phrase, says } from './prose.ts';

/** Gains nearer to 1 than this are none that anybody would measure. */
const noGain = 0.05;

/** What the pulses on a place remove. */
export const craterSaid = says(
  { volume, depth: deepest, plain: unshapedDeepest, N: pulsesOnPlace },
  ({ volume: removed, plain, N }) => {
    const pulses = N === 1 ? 'One pulse' : phrase`${pulsesOnPlace} pulses on a place`;
    if (removed === 0)
      return phrase`${pulses} with the plate ${N === 1 ? 'removes' : 'remove'} nothing here: the fluence is nowhere above the threshold.`;
    const without =
      plain > 0
        ? phrase`; without the plate it would be ${unshapedDeepest}`
        : '; without the plate there would be no crater here';
    return N === 1
      ? phrase`${pulses} with the plate removes ${volume} and digs ${deepest} deep where the fluence is highest${without}.`
      : phrase`${pulses} with the plate remove ${volume} each and dig ${deepest} deep together where the fluence is highest, if every pulse removes alike${without}.`;
  },
);

/** What the plate gains in removed volume per energy. */
export const removalGainSaid = says({ gain: removalGain, peak: bestPeak }, ({ gain }) => {
  const best = phrase`In this plane most volume per energy comes at a peak of ${bestPeak}. Each at its own best peak, the plate removes ${removalGain} times what a Gaussian does per energy`;
  if (gain > 1 + noGain)
    return phrase`${best}: a gain, and never more than the 1.36 of an ideal flat-top where there is one branch.`;
  if (gain < 1 - noGain) return phrase`${best}: it loses. Volume is no reason for this plate here.`;
  return phrase`${best}: next to nothing is gained. Volume is no reason for this plate.`;
});

/** Where today's peak lies against the window; the gains are for peaks chosen within it. */
export const todayInWindowSaid = says(
  { peak: peakFluence, low: lowFluence, high: highFluence },
  ({ peak, low, high }) => {
    const today = phrase`Today’s peak with the plate, ${peakFluence}, lies`;
    if (peak > high * (1 + 1e-9))
      return phrase`${today} above the upper bound: a pulse of today’s energy brings more than that to part of its spot.`;
    if (peak < low)
      return phrase`${today} below the lower bound: a pulse of today’s energy brings nothing into this window.`;
    return phrase`${today} within these bounds.`;
  },
);

/** What the plate gains in area within a window of fluence. */
export const windowGainSaid = says(
  { gain: windowGain, atTop: windowGainAtTop, peak: windowBestPeak, low: lowFluence, high: highFluence },
  ({ gain, atTop }) => {
    const covered = phrase`Between ${lowFluence} and ${highFluence}, nothing above, the plate covers ${windowGain} times the area per energy that a Gaussian does, each at its own best peak (${windowBestPeak} with the plate)`;
    const alike = shownValue(windowGain, { value: gain }) === shownValue(windowGainAtTop, { value: atTop });
    const at = alike ? phrase`as much` : phrase`${windowGainAtTop} times`;
    const top =
      atTop < gain * (1 - noGain)
        ? phrase` With both peaks at the upper bound it would be ${windowGainAtTop} times: the peak is better chosen than taken to the top.`
        : phrase` With both peaks at the upper bound it is ${at}.`;
    if (gain > 1 + noGain) return phrase`${covered}.${top}`;
    if (gain < 1 - noGain)
      return phrase`${covered}: here it loses. Choose another plane or a narrower window.`;
    return phrase`${covered}: next to nothing is gained here.`;
  },
);
