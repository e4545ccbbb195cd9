import { defocus, light, workpieceZ } from '../lib/design/focus.ts';
import { distanceMode, focalLength } from '../lib/design/lens.ts';
import { wantedBeamDiameter, wantedFocalLength, wantedWidth } from '../lib/design/wish.ts';
import { planeOfDefocus } from '../lib/optics/light.ts';
import type { Block } from './document.ts';
import { prose, sets } from './prose.ts';

/** The lens that gives the width wanted, and the workpiece as many Rayleigh lengths from its focus as from today's. */
const takeThatLens = sets(
  'Take that lens, and move the workpiece with it',
  ({ f, light, defocus, mode }) => ({
    [focalLength.id]: f,
    [workpieceZ.id]: planeOfDefocus(
      { ...light, focalLength: f, plateDistance: mode === 'focal' ? f : light.plateDistance },
      defocus,
    ),
  }),
  { f: wantedFocalLength, light, defocus, mode: distanceMode },
);

/** Lens or beam for the width that a spot should have. */
export const wishBlocks: readonly Block[] = [
  {
    kind: 'controls',
    id: 'wish-controls',
    heading: 'A spot of a given width',
    inputs: [wantedWidth],
  },
  {
    kind: 'prose',
    id: 'wish',
    prose: prose`For a spot ${wantedWidth} wide, as many Rayleigh lengths from the focus as now, take a lens of ${wantedFocalLength} with everything else kept, or a beam of ${wantedBeamDiameter} at the plate with step and stop scaled alike. ${takeThatLens}.`,
  },
];
