import { thermalShift } from '../lib/design/depthInUse.ts';
import { scaledPower } from '../lib/design/scaleUp.ts';
import { damageMargin, damageThreshold } from '../lib/design/scaleUpInputs.ts';
import {
  absorbedPower,
  plateFluence,
  plateLoad,
  scaledBIntegral,
  spotsOfPlate,
} from '../lib/design/scaleUpPlate.ts';
import { shotEnergy, wholeSpots } from '../lib/design/scaleUpWork.ts';
import { formatNumber } from '../lib/graph/units.ts';
import { phrase, says } from './prose.ts';

/** Fluence on the plate against its threshold. */
export const plateDamageSaid = says(
  {
    energy: shotEnergy,
    fluence: plateFluence,
    load: plateLoad,
    threshold: damageThreshold,
    margin: damageMargin,
    most: spotsOfPlate,
    spots: wholeSpots,
  },
  ({ load, margin, most, spots }) => {
    const start = phrase`One pulse for all spots has ${shotEnergy}, and a peak fluence of ${plateFluence} where it meets the plate.`;
    const bears =
      most === 0
        ? ' With its margin the plate bears the pulse of not even one spot.'
        : most < spots
          ? ` With its margin the plate bears ${most === 1 ? 'one spot' : `${most} spots`}.`
          : ` With its margin the plate bears up to ${most} spots, as far as this goes.`;
    if (load > margin)
      return phrase`${start} That is above the damage threshold of ${damageThreshold}: the plate would be damaged. Take a wider beam or fewer spots.${bears}`;
    if (load > 1)
      return phrase`${start} That is below the damage threshold of ${damageThreshold}, but not ${damageMargin} times below it: the margin is not kept. Take a wider beam or fewer spots.${bears}`;
    return phrase`${start} The damage threshold of ${damageThreshold} lies ${formatNumber(margin / load, 3)} times higher: the margin of ${damageMargin} is kept.${bears}`;
  },
);

/** Nonlinear phase in the plate. */
export const scaledBIntegralSaid = says({ b: scaledBIntegral }, ({ b }) =>
  b < 1
    ? phrase`The B-integral in the plate, the phase that the light itself adds in the glass at the peak of a pulse, is ${scaledBIntegral}; it matters from about 1 rad on (common practice).`
    : phrase`The B-integral in the plate, the phase that the light itself adds in the glass at the peak of a pulse, is ${scaledBIntegral}: from about 1 rad on the pulse changes its shape and the beam its focus (common practice). Take a thinner plate or a wider beam.`,
);

/** Mean power in optics. */
export const opticsHeatSaid = says(
  { power: scaledPower, heat: absorbedPower, shift: thermalShift },
  ({ shift }) => {
    const entered =
      shift === 0
        ? 'None is entered yet: measure where the focus lies cold and after some minutes at full power; the difference is the thermal focus shift.'
        : phrase`You entered a shift of ${thermalShift}; measure it again at the full power of the larger laser.`;
    return phrase`Of ${scaledPower} each optic turns ${absorbedPower} into heat. A plate or lens that is warmer in its middle is a weak lens, and the focus moves while the machine warms up; how far is not worked out here. ${entered}`;
  },
);
