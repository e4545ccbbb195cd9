import { derived } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import { formatReadable } from '../graph/units.ts';
import { Problem } from '../problem.ts';
import { type EngravedFloor, engravedFloor } from '../process/engravedFloor.ts';
import type { Engraved } from '../process/engraving.ts';
import { layerMaps } from '../process/engravingMaps.ts';
import type { FloorPatch } from '../process/floorMap.ts';
import { fieldWidth } from './depthInUse.ts';
import { depthAfterLayers, engravedLayers, unshapedEngravedLayers } from './engraving.ts';
import { type EngravingParts, layerPlan, shapedEngraving, unshapedEngraving } from './engravingParts.ts';
import { engravingLayers } from './grooveInputs.ts';
import { lineSpacing, pulseSpacing } from './scanInputs.ts';
import { fieldHeight } from './scannerInputs.ts';

/** Diameters of the spot, and cells, that a side of the patch holds at least; points each way. */
const [spots, cells, points] = [2.5, 3, 128];

/** The patch that stands for the floor: a quarter of the field to the right of and above its middle, where lines turn. */
export function patchOf(
  field: { readonly width: number; readonly height: number },
  spacings: readonly [number, number],
  diameter: number,
  count = points,
): FloorPatch {
  const side = Math.max(spots * diameter, ...spacings.map((spacing) => cells * spacing));
  return { x: field.width / 4, y: field.height / 4, side, points: count };
}

/** The floor that one of the two beams leaves. */
function floorOf({ before, words, mark, beam, diameter }: EngravingParts, layered: Derived<Engraved>) {
  return derived({
    id: `${before}engraving.floor`,
    name: `floor of the engraving${words}`,
    symbol: `d${mark}(x, y)`,
    unit: {
      patch: { x: 'm', y: 'm', side: 'm', points: '1' },
      depth: 'm',
      mean: 'm',
      rms: 'm',
      highestToLowest: 'm',
      slope: '1',
    },
    about: `Depth of the floor on a patch of a few spots, a quarter of the field from its middle, after all layers${words === '' ? '' : ', with the plate taken out'}.`,
    from: {
      beam,
      plan: layerPlan,
      layered,
      layers: engravingLayers,
      width: fieldWidth,
      height: fieldHeight,
      along: pulseSpacing,
      across: lineSpacing,
      diameter,
    },
    compute: (
      { beam, plan, layered, layers, width, height, along, across, diameter },
      report,
    ): EngravedFloor => {
      if (depthAfterLayers(layered, Math.round(layers)) === 0) throw nothingEngraved();
      const patch = patchOf({ width, height }, [along, across], diameter);
      return engravedFloor(layerMaps(beam, plan), layered, Math.round(layers), plan.turn, patch, report);
    },
    shownAs: ({ patch, rms }) =>
      `${formatReadable(patch.side, 'm', 'um', 3)} wide, roughness ${formatReadable(rms, 'm', 'nm', 3)}`,
    formula: '\\sum_l\\sum_i d_{N_i}(F_i(x_l, y_l))',
    source: 'search',
    heavy: 'picture',
  });
}

/** Numbers of a floor. */
function floorNumbers(
  { before, words, mark }: Pick<EngravingParts, 'before' | 'words' | 'mark'>,
  floor: Derived<EngravedFloor>,
) {
  const roughness = derived({
    id: `${before}engraving.roughness`,
    name: `roughness of the floor${words}`,
    symbol: `S_{q${mark === '' ? '' : ',\\text{u}'}}`,
    unit: 'm',
    display: 'auto:m',
    digits: 3,
    about:
      'Root mean square deviation of the floor from its mean depth, from overlap alone: Sq as in ISO 25178 (memory), over the patch, without filters.',
    from: { floor },
    compute: ({ floor }) => floor.rms,
    formula: '\\sqrt{\\overline{(d-\\bar d)^2}}',
    source: 'definition',
  });
  const highestToLowest = derived({
    id: `${before}engraving.highestToLowest`,
    name: `highest to lowest point of the floor${words}`,
    symbol: `S_{z${mark === '' ? '' : ',\\text{u}'}}`,
    unit: 'm',
    display: 'auto:m',
    digits: 3,
    about: 'From the highest to the lowest point of the floor, over the patch, without filters.',
    from: { floor },
    compute: ({ floor }) => floor.highestToLowest,
    formula: 'd_\\text{max}-d_\\text{min}',
    source: 'definition',
  });
  const contrast = derived({
    id: `${before}engraving.contrast`,
    name: `contrast of the floor${words}`,
    symbol: `m_{d${mark === '' ? '' : ',\\text{u}'}}`,
    unit: '1',
    display: '%',
    digits: 3,
    about:
      'Greatest depth less the least over their sum, on the patch: 0\u202f% is an even floor, 100\u202f% leaves the fresh surface standing between.',
    from: { floor },
    compute: ({ floor: { depth, highestToLowest } }) => {
      const low = depth.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY);
      if (low + highestToLowest > 0) return highestToLowest / (2 * low + highestToLowest);
      throw nothingEngraved();
    },
    formula: '\\frac{d_\\text{max}-d_\\text{min}}{d_\\text{max}+d_\\text{min}}',
    source: 'definition',
  });
  const slope = derived({
    id: `${before}engraving.slope`,
    name: `steepest slope of the floor${words}`,
    symbol: `\\tan\\alpha${mark}`,
    unit: '1',
    digits: 2,
    about:
      'Steepest slope between neighbouring points of the patch, as a tangent: the model lets light fall straight onto a flat floor.',
    from: { floor },
    compute: ({ floor }) => floor.slope,
    valid: ({ floor }) => (floor.slope > steep ? steepNote : undefined),
    formula: '\\max|\\nabla d|',
    source: 'definition',
  });
  return { roughness, highestToLowest, contrast, slope };
}

/** Slopes from which light no longer falls straight: a fluence lower by 4 %. */
const steep = 0.3;
const steepNote =
  'Slopes of the floor are steep enough to weaken the light by more than 4\u202f%, which is left out here.';

export function nothingEngraved(): Problem {
  return new Problem(
    'absent',
    'Nothing is engraved: no pulse reaches the threshold. Raise the pulse energy or move the workpiece.',
    { input: 'laser.pulseEnergy' },
  );
}

export const engravingFloor = floorOf(shapedEngraving, engravedLayers);
export const { roughness, highestToLowest, contrast, slope } = floorNumbers(shapedEngraving, engravingFloor);

export const unshapedEngravingFloor = floorOf(unshapedEngraving, unshapedEngravedLayers);
export const {
  roughness: unshapedRoughness,
  highestToLowest: unshapedHighestToLowest,
  contrast: unshapedContrast,
  slope: unshapedSlope,
} = floorNumbers(unshapedEngraving, unshapedEngravingFloor);
