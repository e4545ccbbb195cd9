import { lineNumber } from '../lib/design/hatch.ts';
import { riseLimit } from '../lib/design/heatInputs.ts';
import { spotDiameter } from '../lib/design/pulsesOnPlace.ts';
import { scaledRepetitionRate, scans } from '../lib/design/scaleUp.ts';
import {
  carriedPerArea,
  diffusionLength,
  dwellTime,
  heatPerArea,
  heatShare,
} from '../lib/design/scaleUpHeat.ts';
import { heatIfThere } from '../lib/design/scaleUpHeatLimit.ts';
import { spotDistance } from '../lib/design/scaleUpInputs.ts';
import { allSpotsRise, beforeRise, besideRise, ownPartRise } from '../lib/design/scaleUpRise.ts';
import { wholeSpots, work } from '../lib/design/scaleUpWork.ts';
import { lineSpacing } from '../lib/design/scanInputs.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { crowdsAtTurns } from '../lib/process/heatRate.ts';
import { motionAt, type ScaledWork } from '../lib/process/scaleUp.ts';
import { spotsHeatRate } from '../lib/process/scaleUpHeat.ts';
import { strideOf } from '../lib/process/spotScans.ts';
import { phrase, says } from './prose.ts';
import { lengthText, percentText } from './shortTexts.ts';

/** Whether the spots stand where their lines fit together; nothing with one spot, or where they do. */
export const distanceSaid = says(
  {
    spots: wholeSpots,
    distance: spotDistance,
    spacing: lineSpacing,
    diameter: spotDiameter,
    lines: lineNumber,
    scans,
  },
  ({ spots, distance, spacing, diameter, lines: count, scans }) => {
    if (spots === 1) return '';
    const lines = Math.floor(distance / spacing + 1e-9);
    const over = distance - lines * spacing;
    const fits = over < 0.02 * spacing;
    const fit = fits
      ? ''
      : phrase` At ${spotDistance} they do not, with lines ${lineSpacing} apart: ${lines === 0 ? '' : `${lengthText(lines * spacing, 4)} or `}${lengthText((lines + 1) * spacing, 4)} would do.`;
    const close =
      distance < diameter
        ? phrase` Spots of ${spotDiameter} overlap at that distance, and light of neighbours interferes: set them further apart.`
        : '';
    const stride = strideOf({ distance }, spacing);
    const fewest = Math.ceil(count / spots);
    const more =
      scans > fewest
        ? ` Counted as ${stride} ${stride === 1 ? 'line' : 'lines'}, the distance leaves too few lines at the end of the field for all spots, some of which then write beside it: the first pass takes ${scans} scans, where ${fewest} would do if the height of the field were a whole number of times ${lengthText(spots * stride * spacing, 4)}.`
        : '';
    return phrase`So that their lines fall between one another, the spots must stand a whole number of lines apart.${fit}${more}${close}`;
  },
);

/** What neighbours do to one another while they pass. */
export const neighboursSaid = says(
  { spots: wholeSpots, distance: spotDistance, length: diffusionLength, dwell: dwellTime },
  ({ spots, distance, length }) => {
    const spread = phrase`A spot takes ${dwellTime} to pass over a place, moving by its own diameter; heat spreads by ${diffusionLength} meanwhile.`;
    if (spots === 1) return phrase`${spread} There is one spot, and no neighbour to warm it.`;
    if (distance > length) return phrase`${spread} The spots stand ${spotDistance} apart, further than that.`;
    return phrase`${spread} The spots stand only ${spotDistance} apart: they heat one another while they pass.`;
  },
);

/** Rises of all spots against what is allowed, in K. */
export const spotHeatSaid = says(
  {
    spots: wholeSpots,
    rate: scaledRepetitionRate,
    limit: riseLimit,
    own: ownPartRise,
    beside: besideRise,
    before: beforeRise,
    all: allSpotsRise,
  },
  ({ spots }) =>
    spots === 1
      ? phrase`At ${scaledRepetitionRate} the lines of the spot warm the hottest place by ${allSpotsRise} just before a pulse; ${riseLimit} are allowed.`
      : phrase`At ${scaledRepetitionRate} a spot’s own lines warm the hottest place by ${ownPartRise} just before a pulse, as if it wrote the field alone. The spots beside it in the same scan add ${besideRise}, and all that the others wrote before adds ${beforeRise}: ${allSpotsRise} together, of the ${riseLimit} that are allowed.`,
);

/** Whether pulses would crowd at the turns at the highest repetition rate, so that heat is not worked out. */
const crowding = (work: ScaledWork) =>
  crowdsAtTurns(
    { ...work.recipe, motion: motionAt(work, work.machine.maxSpeed) },
    work.machine.maxRepetitionRate,
  );

/** Where heat of all spots stands among the limits. */
export const heatLimitSaid = says({ work, rate: scaledRepetitionRate }, ({ work, rate }) => {
  if (work.heat === null)
    return `Heat is not among the limits of the larger machine, as ${crowding(work) ? 'the larger scanner turns with the laser on, where pulses would crowd at the ends of the lines: turn outside the field with the laser off' : 'it is not worked out here'}.`;
  const hottest = spotsHeatRate(work, work.heat);
  const who = work.machine.spots === 1 ? 'one spot' : `${work.machine.spots} spots`;
  if (hottest === undefined)
    return `Even at ${formatReadable(work.heat.own.rates[0]!, 'Hz', 'kHz', 3)}, the highest repetition rate of the larger laser, the rise would stay below what is allowed with ${who}: heat does not limit ${work.machine.spots === 1 ? 'it' : 'them'}.`;
  return rate > hottest * (1 - 1e-6)
    ? 'More is not allowed, and no faster is written.'
    : `The rise that is allowed would be reached at ${formatReadable(hottest, 'Hz', 'kHz', 3)} with ${who}.`;
});

/** The field as a whole. */
export const fieldHeatSaid = says(
  { heat: heatPerArea, away: carriedPerArea, share: heatShare, limit: riseLimit, counted: heatIfThere },
  ({ share, counted }) => {
    const start = phrase`Averaged over the field while it is written, all spots together leave ${heatPerArea} of heat. With ${carriedPerArea} its middle would reach the ${riseLimit} allowed by the end, since a wide part of this thickness carries no more away:`;
    if (share <= 1)
      return phrase`${start} the mean is ${percentText(share, 2)} of that. Places under a spot and beside lines just written are warmer than the mean.`;
    const counts = counted === null ? ' The area per hour does not count that.' : '';
    return phrase`${start} the whole field becomes too warm, however far the spots stand apart, ${heatShare} times too much.${counts}`;
  },
);
