import { derived } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import { formatReadable } from '../graph/units.ts';
import { type Light, planeOfDefocus } from '../optics/light.ts';
import { spotAt } from '../optics/spot.ts';
import { withPhaseScaled } from '../optics/variants.ts';
import type { LayerPlan } from '../process/engravingMaps.ts';
import type { EngravingBeam } from '../process/engravingPlanes.ts';
import { burstPulses } from './burst.ts';
import { focusRadius, light, rayleighLength, unshapedPeak, workpieceZ } from './focus.ts';
import { cuttingLaw } from './grooveLaw.ts';
import { spotDiameter, unshapedSpotDiameter } from './pulsesOnPlace.ts';
import { unshapedUnit } from './rippleWindow.ts';
import { lineSpacing, pulseSpacing } from './scanInputs.ts';
import { hatchAngle } from './scannerInputs.ts';

export const layerPlan = derived({
  id: 'engraving.layerPlan',
  name: 'how a layer is written',
  symbol: '(d, p, \\Delta y, \\theta)',
  unit: 'none',
  about: 'Law of removal, spacing of pulses and lines, pulses in each place and turn from layer to layer.',
  from: {
    law: cuttingLaw,
    along: pulseSpacing,
    across: lineSpacing,
    pulses: burstPulses,
    turn: hatchAngle,
  },
  compute: ({ law, turn, ...lattice }): LayerPlan => ({ law, lattice, turn }),
  shownAs: ({ lattice: { along, across } }) =>
    `pulses ${formatReadable(along, 'm', 'um', 3)} apart on lines ${formatReadable(across, 'm', 'um', 3)} apart`,
  formula: '(d(F, N), p, \\Delta y, n_\\text{b}, \\theta_\\text{hatch})',
  source: 'definition',
});

/** Rayleigh lengths from the focus up to which spots are computed, a hair less. */
const furthestDefocus = 12 * (1 - 1e-9);
/** The grid resolves this part of the spot on the fresh surface, should the floor come nearer to the focus. */
const finestPart = 0.25;

/** The furthest plane in which a light has a spot, m: undefined, without end, where the light turns back before. */
function furthestOf(light: Light, z: number): number | undefined {
  const plane = planeOfDefocus(light, furthestDefocus);
  return plane > z ? plane : undefined;
}

/** One of the two beams that engrave: shaped, or with the plate taken out. */
export interface EngravingParts {
  readonly before: '' | 'unshaped.';
  readonly words: string;
  readonly mark: string;
  readonly beam: Derived<EngravingBeam>;
  readonly diameter: Derived<number>;
}

function beamOf(
  { before, words, mark }: Pick<EngravingParts, 'before' | 'words' | 'mark'>,
  unit: Derived<number>,
  diameter: Derived<number>,
) {
  return derived({
    id: `${before}engraving.beam`,
    name: `beam that engraves${words}`,
    symbol: `I${mark}(x, y, z)`,
    unit: 'none',
    about: `Spots from the fresh surface into the depth, with the fluence of relative irradiance 1${words === '' ? '' : ': plate taken out, at the same peak or the same energy'}.`,
    from: { light, z: workpieceZ, rayleigh: rayleighLength, w0: focusRadius, unit, diameter },
    compute: ({ light, z, rayleigh, w0, unit, diameter }): EngravingBeam => {
      const seen = before === '' ? light : withPhaseScaled(light, 0);
      const finest = Math.max(2 * w0, finestPart * diameter);
      const furthest = furthestOf(seen, z);
      const beam = { spotAt: (plane: number) => spotAt(seen, plane), plane: z, rayleigh, finest, unit };
      return furthest === undefined ? beam : { ...beam, furthest };
    },
    shownAs: ({ plane }) => `from z = ${formatReadable(plane, 'm', 'mm', 4)} on`,
    formula: '(f/B)^2\\,|U(\\varrho,\\zeta)|^2 \\ast \\text{blur}(M^2)',
    source: 'collins1970',
  });
}

const shapedNames = { before: '', words: '', mark: '' } as const;
const plainNames = { before: 'unshaped.', words: ' without the step', mark: '_\\text{u}' } as const;

export const engravingBeam = beamOf(shapedNames, unshapedPeak, spotDiameter);
export const unshapedEngravingBeam = beamOf(plainNames, unshapedUnit, unshapedSpotDiameter);

export const shapedEngraving: EngravingParts = {
  ...shapedNames,
  beam: engravingBeam,
  diameter: spotDiameter,
};
export const unshapedEngraving: EngravingParts = {
  ...plainNames,
  beam: unshapedEngravingBeam,
  diameter: unshapedSpotDiameter,
};
