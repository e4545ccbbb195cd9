import { fieldTime } from '../lib/design/hatch.ts';
import {
  farAbove,
  heatRise,
  hottestState,
  lineRise,
  maxHeatRate,
  ownRise,
  unshapedHeatRise,
} from '../lib/design/heat.ts';
import {
  briefPointRise,
  fieldRise,
  plateRise,
  profileRise,
  spotRise,
  staticRise,
  warmThrough,
} from '../lib/design/heatEstimates.ts';
import { absorptanceSource, residualFraction, riseLimit, thickness } from '../lib/design/heatInputs.ts';
import { absorptance, diffusivity } from '../lib/design/heatMaterial.ts';
import { heatInput, perPulse, unshapedPerPulse } from '../lib/design/heatPulses.ts';
import { heatedScan, scanSettings } from '../lib/design/heatScan.ts';
import { repetitionRate } from '../lib/design/laser.ts';
import { maxRepetitionRate } from '../lib/design/laserLimits.ts';
import { material } from '../lib/design/material.ts';
import { hottestRateIfThere } from '../lib/design/scanLimits.ts';
import { formatNumber } from '../lib/graph/units.ts';
import { crowdsAtTurns } from '../lib/process/heatRate.ts';
import { plainRuns, plainRunsWords } from './plainRuns.ts';
import { phrase, says } from './prose.ts';
import { lengthText, percentText, timeText } from './shortTexts.ts';

/** Parts of a rise that differ by less than this are called alike. */
const alike = 0.02;

/** A rate that differs by less than this from today’s is called close to it. */
const nearly = 0.05;

/** Where the absorbed part comes from. */
export const absorbedSaid = says(
  { source: absorptanceSource },
  ({ source }) =>
    source === 'typed'
      ? phrase`The surface absorbs ${absorptance} of the light, as typed.`
      : phrase`A cold, flat, bare surface absorbs ${absorptance} of the light at normal incidence, from its optical constants; ripples, oxide and heat raise that, so that it is a lowest value for a surface that is being structured.`,
  [absorptance],
);

/** How warm the hottest place gets against the limit, and where that is. */
export const riseSaid = says(
  { rise: heatRise, limit: riseLimit, hottest: hottestState, field: heatedScan },
  ({ rise, limit, hottest, field }) => {
    const place = hottest.pulse / Math.max(1, field.pulses - 1);
    const along =
      place < 0.02
        ? 'near the beginning of a line'
        : place > 0.98
          ? 'at the end of a line'
          : `${percentText(place, 2)} along a line`;
    const most =
      hottest.lines < alike * rise
        ? 'nearly all of it from the line being written'
        : hottest.own < alike * rise
          ? 'nearly all of it left by earlier lines'
          : phrase`${ownRise} from the line being written and ${lineRise} left by earlier lines`;
    const what = phrase`Just before the next pulse the hottest place of the surface is ${heatRise} warmer than at the start, in the hottest state, ${along}: ${most}.`;
    return rise <= limit
      ? phrase`${what} That keeps to the limit of ${riseLimit}.`
      : phrase`${what} That passes the limit of ${riseLimit}.`;
  },
  [ownRise, lineRise],
);

/** At which repetition rate the limit is met. */
export const rateSaid = says(
  {
    rise: heatRise,
    rate: hottestRateIfThere,
    now: repetitionRate,
    highest: maxRepetitionRate,
    settings: scanSettings,
  },
  ({ rate, now, highest, settings }) => {
    const held = 'With pulse energy and both spacings held';
    if (rate === null)
      return crowdsAtTurns(settings, Math.max(farAbove * highest, now))
        ? `${held}, the rate at which the limit is met is not worked out: the scan speed rises with the rate, and pulses would crowd where the scanner turns with the laser on.`
        : phrase`${held}, heat does not limit the field up to the highest rate of the laser, ${maxRepetitionRate}.`;
    if (Math.abs(rate / now - 1) < nearly)
      return phrase`${held}, the limit is met at ${maxHeatRate}, close to today’s rate.`;
    return rate < now
      ? phrase`${held}, the limit is met at ${maxHeatRate}, below the ${repetitionRate} now; the scan speed goes with the rate.`
      : phrase`${held}, the limit is met at ${maxHeatRate}, ${formatNumber(rate / now, 2)} times the rate now; the scan speed goes with it.`;
  },
  [maxHeatRate],
  '',
);

/** How the plain beam compares. */
export const plainRiseSaid = says(
  { shaped: heatRise, plain: unshapedHeatRise, ...plainRuns },
  ({ shaped, plain, ...runs }) => {
    const taken = phrase`With the plate taken out, scanned alike ${plainRunsWords(runs)}, it would be ${unshapedHeatRise}`;
    const heat = phrase`a pulse then leaves ${unshapedPerPulse} instead of ${perPulse}, in a spot of its own size`;
    if (plain < shaped * (1 - alike)) return phrase`${taken}, less: ${heat}.`;
    if (plain > shaped * (1 + alike)) return phrase`${taken}, more: ${heat}.`;
    return phrase`${taken}, much the same.`;
  },
  [perPulse, unshapedPerPulse],
);

/** Which of the estimates for one place holds: how far heat has gone between pulses against the spot. */
export const pointSaid = says(
  { heat: heatInput, rate: repetitionRate, point: briefPointRise, still: staticRise },
  ({ heat, rate, point, still }) => {
    const reach = Math.sqrt((8 * heat.diffusivity) / rate);
    const ratio = reach / heat.radius;
    const spread = phrase`Between two pulses heat spreads over ${lengthText(reach)}; the spot, taken as a Gaussian of the same effective area, has a 1/e² radius of ${lengthText(heat.radius)}.`;
    if (ratio > 3)
      return phrase`${spread} The spot is small against that, and the point estimate can be used: after 50 pulses in one place it gives ${briefPointRise}, the spot ${staticRise}.`;
    const over = formatNumber(point / still, 2);
    return phrase`${spread} The spot is no point: after 50 pulses in one place the point estimate gives ${briefPointRise}, ${over} times the ${staticRise} of the spot.`;
  },
);

/** What the true shape of the spot changes. */
export const heatProfileSaid = says({ own: spotRise, profile: profileRise }, ({ own, profile }) => {
  const difference = profile / own - 1;
  if (Math.abs(difference) < alike)
    return phrase`With the true profile of the spot the hottest place reaches ${profileRise}, hardly other than the ${spotRise} in the middle of the Gaussian of the same effective area: heat has spread so far that the shape hardly counts.`;
  return phrase`With the true profile of the spot the hottest place reaches ${profileRise}, ${percentText(Math.abs(difference), 2)} ${difference > 0 ? 'more' : 'less'} than the ${spotRise} in the middle of the Gaussian of the same effective area${difference > 0 ? ', because of the shape or because the hottest place lies behind the middle' : ''}.`;
});

/** Which bound of the field holds. */
export const thicknessSaid = says(
  { time: fieldTime, thickness, diffusivity },
  ({ time, thickness, diffusivity }) => {
    const through = thickness ** 2 / diffusivity;
    if (time < 0.1 * through)
      return phrase`The field is done in ${fieldTime}, long before heat is through the thickness (about ${timeText(through, 2)}): the part counts as endlessly thick (half-space).`;
    return phrase`Heat is through the thickness in about ${timeText(through, 2)} and the field takes ${fieldTime}: the part no longer counts as endlessly thick (half-space). The part as a whole warms by between ${plateRise}, if it is wide and heat flows aside, and ${warmThrough}, if it is no larger than the field; clamping and air take some of that away. The rise above counts it as wide; in a part no larger than the field it is higher by up to the difference of the two.`;
  },
  [plateRise, warmThrough],
);

/** What heat is left of a pulse. */
export const perPulseSaid = says(
  { absorbed: absorptance, source: absorptanceSource },
  ({ absorbed, source }) => {
    const left = phrase`Of what it absorbs ${residualFraction} stay as heat (20 to 40\u202f% for metals, common practice, no source): ${perPulse} a pulse.`;
    return source === 'constants' && absorbed < 0.1
      ? phrase`${left} Of ${material} so little is absorbed when it is bare that roughness and oxide decide.`
      : left;
  },
  [residualFraction, perPulse, material],
);

/** The mean warming of the field beside what stands out before the next pulse. */
export const fieldRiseSaid = says({ even: fieldRise, rise: heatRise }, ({ even, rise }) =>
  even < 0.1 * rise
    ? phrase`Spread evenly over field and time, the same heat would warm a thick part by ${fieldRise}: what counts here is what the last pulses and lines left.`
    : phrase`Spread evenly over field and time, the same heat would warm a thick part by ${fieldRise}, ${percentText(even / rise, 2)} of the rise before the next pulse: the field as a whole counts too.`,
);
