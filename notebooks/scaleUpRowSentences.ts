import { hatch } from '../lib/design/hatch.ts';
import { pulseDuration } from '../lib/design/laser.ts';
import { averagePower } from '../lib/design/losses.ts';
import { spotDiameter } from '../lib/design/pulsesOnPlace.ts';
import { xRayIrradiance } from '../lib/design/safety.ts';
import { scaledPower } from '../lib/design/scaleUp.ts';
import { fieldOverlap, splitterEfficiency, spotDistance } from '../lib/design/scaleUpInputs.ts';
import { outermostSpot, splitterSmear } from '../lib/design/scaleUpSplitter.ts';
import { mostSpots, wholeSpots } from '../lib/design/scaleUpWork.ts';
import { phrase, says } from './prose.ts';
import { percentText } from './shortTexts.ts';

/** More spots than stand in the field; nothing where they do. */
export const tooManySaid = says(
  { spots: wholeSpots, most: mostSpots, distance: spotDistance },
  ({ spots, most }) =>
    spots <= most.height
      ? ''
      : phrase`But no more than ${most.height === 1 ? 'one spot stands' : `${most.height} stand`} in the height of the field ${spotDistance} apart: the outer ones write beside it, which no place in these numbers gains from. Take fewer, set them closer, or write a higher field.`,
);

/** What happens where fields meet. */
export const seamSaid = says({ overlap: fieldOverlap }, ({ overlap }) =>
  overlap > 0
    ? phrase`Neighbouring fields share stripes of ${fieldOverlap}, the seams: places in them get the pulses of both fields, twice as many, and at the corners of four. Whether a seam shows is for a trial to tell.`
    : 'Neighbouring fields share no stripe: where the stage is a little off, a gap stays or a stripe is written twice.',
);

/** Lines that turn, and the row of spots with them. */
export const turningRowSaid = says({ hatch, spots: wholeSpots }, ({ hatch, spots }) =>
  spots === 1 || hatch.passes === 1 || hatch.angle === 0
    ? ''
    : 'As the lines turn from pass to pass, the row of spots must turn with them, and the splitter must stand in a mount that does so. Spots cannot be switched one by one: on lines at an angle to the field some write beside its edge, and a scan is as long as the longest line in it, which is not counted here.',
);

/** A smear of this part of the spot's diameter is worth a word of warning. */
const muchSmear = 0.1;

/** What a splitter does besides; nothing with one spot. */
export const splitterSaid = says(
  {
    spots: wholeSpots,
    efficiency: splitterEfficiency,
    out: outermostSpot,
    smear: splitterSmear,
    diameter: spotDiameter,
    tau: pulseDuration,
  },
  ({ spots, efficiency, smear, diameter }) => {
    if (spots === 1) return '';
    const rest =
      efficiency < 1
        ? phrase` ${splitterEfficiency} of the energy goes into the wanted spots; the other ${percentText(1 - efficiency)} goes straight on (the zeroth order) and into spots further out, which can leave marks of their own: block them, or look for them.`
        : '';
    const part = percentText(smear / diameter, 2);
    const drawn =
      smear > muchSmear * diameter
        ? ', so that its spot is no longer like the middle one: set the spots closer, or take a splitter of mirrors or wedges, which does not do that'
        : '';
    return phrase`The splitter is a plate or a set of mirrors that makes several beams of one.${rest} Its spots are never quite equal: ask its maker by how much (common practice). A diffractive splitter, one with a fine relief, bends each colour by another angle, and a pulse of ${pulseDuration} has many: the outermost spot, ${outermostSpot} from the middle of the row, is drawn out by ${splitterSmear} or more, ${part} of its diameter${drawn}.`;
  },
);

/** X-rays come with mean power too. */
export const xRayPowerSaid = says(
  { power: scaledPower, today: averagePower, published: xRayIrradiance },
  () =>
    phrase`What is said of X-rays and of peak irradiance is worked out for one pulse of today’s energy. Their dose grows with the pulses per second as well, and they come below ${xRayIrradiance} too at high mean power or in bursts: here the laser gives ${scaledPower} while it writes, where it gives ${averagePower} as it is set today, and every spot is a source. Settings found as best have peak fluences of their own. Nothing here is an all-clear: shielding and dose are a matter for radiation protection, before the larger laser is switched on.`,
  [],
  phrase`What is said of X-rays and of peak irradiance is worked out for one pulse of today’s energy. Their dose grows with mean power and pulses per second, and they come below ${xRayIrradiance} too. Nothing here is an all-clear: shielding and dose are a matter for radiation protection, before the larger laser is switched on.`,
);
