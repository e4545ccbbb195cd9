import {
  convergence,
  modelError,
  peakIrradianceOnWorkpiece,
  unshapedPeakIrradiance,
} from '../lib/design/limits.ts';
import { xRayIrradiance } from '../lib/design/safety.ts';
import { xRayNearness } from '../lib/process/xRays.ts';
import type { Block } from './document.ts';
import { phrase, prose, says } from './prose.ts';

/** Where the paraxial model no longer holds for this lens and beam; nothing where it does. */
export const paraxialSaid = says(
  { convergence, modelError },
  ({ convergence: sine, modelError: error }) => {
    if (sine >= 1)
      return phrase`No lens focuses like this: half the beam over the focal length is ${convergence}. Take a longer focal length or a smaller beam; the numbers here are what the paraxial model gives all the same.`;
    if (error >= 0.02)
      return phrase`The edge of the beam converges steeply, at a sine of ${convergence}. The model here holds for small angles and leaves out the direction of the field (paraxial and scalar); its irradiances may be off by about ${modelError} (estimated).`;
    return '';
  },
  [],
  'How steeply the beam converges cannot be worked out for this design. The model here is paraxial and scalar: behind a short lens and a wide beam its numbers are off.',
);

/** The irradiances that X-rays are judged by; the caution stands whether or not they can be worked out. */
export const irradiancesSaid = says(
  { peakIrradianceOnWorkpiece, unshapedPeakIrradiance },
  () =>
    phrase`Peak irradiance on the workpiece, the highest power per area at any place and moment of a pulse: ${peakIrradianceOnWorkpiece} with the plate, ${unshapedPeakIrradiance} without it.`,
  [],
  'The peak irradiance on the workpiece, with the plate or without it, cannot be worked out for this design.',
);

/** The irradiance on the workpiece against the lowest at which X-rays were published. */
export const xRaysSaid = says(
  { shaped: peakIrradianceOnWorkpiece, plain: unshapedPeakIrradiance, published: xRayIrradiance },
  ({ shaped, plain, published }) => {
    const [withPlate, without] = [shaped >= published, plain >= published];
    const where = withPlate ? 'With the plate it lies' : 'Without the plate it lies';
    const other = xRayNearness(Math.min(shaped, plain) / published);
    const lower = shaped < plain ? 'with the plate' : 'without the plate';
    const close =
      other === 'close' ? ` And ${lower} it lies just below that, by less than a factor of two.` : '';
    if (withPlate || without)
      return phrase`${withPlate && without ? 'Both lie' : where} above the ${xRayIrradiance} from which on X-rays of ultrashort pulses on metal have been studied: speak with radiation protection about shielding and dose before the first pulse.${close}`;
    const nearness = xRayNearness(Math.max(shaped, plain) / published);
    if (nearness === 'close' || nearness === 'near')
      return phrase`The higher of the two lies ${nearness === 'close' ? 'just below, by less than a factor of two,' : 'within a factor of a hundred below'} the ${xRayIrradiance} from which on X-rays of ultrashort pulses on metal have been studied. Bursts, high mean power, hot spots and a better focus bring them all the same: speak with radiation protection before the first pulse.`;
    return phrase`That is further than a factor of a hundred below the ${xRayIrradiance} from which on X-rays of ultrashort pulses on metal have been studied, which is no all-clear.`;
  },
  [],
  phrase`X-rays of ultrashort pulses on metal have been studied from ${xRayIrradiance} on, and bursts, high mean power or hot spots bring them below it too. How near this design comes is not known, which is no all-clear: speak with radiation protection about shielding and dose before the first pulse.`,
);

/** Limits of the model and of safety that belong to the spot; they stay where no profile can be computed. */
export const limitBlocks: readonly Block[] = [
  { kind: 'prose', id: 'paraxial', prose: prose`${paraxialSaid}` },
  {
    kind: 'caution',
    id: 'x-rays',
    prose: prose`**X-rays.** ${irradiancesSaid} ${xRaysSaid} (J. Schille et al., Materials 14, 4537 (2021), abstract; H. Legall et al., Appl. Phys. A 124, 407 (2018), memory.)`,
  },
];
