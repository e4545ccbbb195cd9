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
  neighbourHeat,
} from '../lib/design/scaleUpHeat.ts';
import { spotDistance } from '../lib/design/scaleUpInputs.ts';
import { wholeSpots } from '../lib/design/scaleUpWork.ts';
import { lineSpacing } from '../lib/design/scanInputs.ts';
import { hottestRateIfThere } from '../lib/design/scanLimits.ts';
import { formatReadable } from '../lib/graph/units.ts';
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
  {
    spots: wholeSpots,
    distance: spotDistance,
    length: diffusionLength,
    dwell: dwellTime,
    more: neighbourHeat,
    hottest: hottestRateIfThere,
  },
  ({ spots, distance, length, hottest }) => {
    const spread = phrase`A spot rests over a place for ${dwellTime}, the time in which it moves by its own diameter; heat spreads by ${diffusionLength} meanwhile.`;
    if (spots === 1) return phrase`${spread} There is one spot, and no neighbour to warm it.`;
    if (distance > length)
      return phrase`${spread} The spots stand ${spotDistance} apart, further than that. By the time they have passed, the others have added ${neighbourHeat} to what the middle one leaves itself.`;
    const limit =
      hottest === null
        ? 'How much hotter the part becomes is not worked out.'
        : 'The limit of heat is that of one spot alone, and is reached sooner than stated here.';
    return phrase`${spread} The spots stand only ${spotDistance} apart: they heat one another, the others adding ${neighbourHeat} to what the middle one leaves itself. ${limit}`;
  },
);

/** Where heat of a spot stands among the limits. */
export const spotHeatSaid = says(
  { hottest: hottestRateIfThere, rate: scaledRepetitionRate },
  ({ hottest, rate }) => {
    if (hottest === null)
      return 'Heat is not among the limits: for one spot it limits nothing within reach of today’s laser, or is not worked out, as said under Throughput.';
    const at = formatReadable(hottest, 'Hz', 'kHz', 3);
    return rate > hottest * (1 - 1e-6)
      ? phrase`One spot alone warms the surface to the rise that is allowed at ${at}, and no spot is written faster than that.`
      : phrase`One spot alone warms the surface to the rise that is allowed at ${at}; it is written at ${scaledRepetitionRate}, ${percentText(rate / hottest, 2)} of that.`;
  },
);

/** The field as a whole. */
export const fieldHeatSaid = says(
  { heat: heatPerArea, away: carriedPerArea, share: heatShare, limit: riseLimit },
  ({ share }) => {
    const start = phrase`All spots together leave ${heatPerArea} of heat, mean over the field while it is written. ${carriedPerArea} would bring the middle of the field to the ${riseLimit} allowed in that time, as conduction into a wide plate of this thickness carries no more away.`;
    return share > 1
      ? phrase`${start} The whole field becomes too warm, however far the spots stand apart: ${heatShare} times too much. The area per hour does not count that.`
      : phrase`${start} That leaves room: it is ${percentText(share, 2)} of it.`;
  },
);
