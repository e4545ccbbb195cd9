import {
  convergence,
  modelError,
  peakIrradianceOnWorkpiece,
  unshapedPeakIrradiance,
} from '../lib/design/limits.ts';
import type { Block } from './document.ts';
import { phrase, prose, says } from './prose.ts';

/** Where the paraxial model no longer holds for this lens and beam; nothing where it does. */
export const paraxialSaid = says({ convergence, modelError }, ({ convergence: sine, modelError: error }) => {
  if (sine >= 1)
    return phrase`No lens focuses like this: half the beam over the focal length is ${convergence}. Take a longer focal length or a smaller beam; the numbers here are what the paraxial model gives all the same.`;
  if (error >= 0.02)
    return phrase`The edge of the beam converges steeply, at a sine of ${convergence}. The model here is paraxial and scalar; its irradiances may be off by about ${modelError} (estimated).`;
  return '';
});

/** Irradiance in W/m² above which ultrashort pulses on metal make X-rays: about 1e13 W/cm² (legall2018, memory). */
const xRays = 1e17;

/** The irradiance on the workpiece against that which makes X-rays. */
export const xRaysSaid = says(
  { shaped: peakIrradianceOnWorkpiece, plain: unshapedPeakIrradiance },
  ({ shaped, plain }) => {
    const where =
      shaped >= xRays && plain >= xRays
        ? 'Both lie'
        : shaped >= xRays
          ? 'With the plate it lies'
          : plain >= xRays
            ? 'Without the plate it lies'
            : '';
    if (where === '')
      return 'That is below the 10¹³ W/cm² or so from which ultrashort pulses on metal make X-rays, which is no all-clear: in a better focus, at high mean power and in bursts they come all the same.';
    return `${where} above the 10¹³ W/cm² or so from which ultrashort pulses on metal make X-rays: speak with radiation protection about shielding and dose before the first pulse.`;
  },
);

/** Limits of the model and of safety that belong to the spot; they stay where no profile can be computed. */
export const limitBlocks: readonly Block[] = [
  { kind: 'prose', id: 'paraxial', prose: prose`${paraxialSaid}` },
  {
    kind: 'caution',
    id: 'x-rays',
    prose: prose`**X-rays.** Peak irradiance on the workpiece, in time and space: ${peakIrradianceOnWorkpiece} with the plate, ${unshapedPeakIrradiance} without it. ${xRaysSaid} (H. Legall et al., Appl. Phys. A 124, 407 (2018), memory.)`,
  },
];
