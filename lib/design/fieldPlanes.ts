import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import type { Stretch } from '../optics/depthInUse.ts';
import { Problem } from '../problem.ts';
import { checkField, type FieldSize } from '../process/fieldChecks.ts';
import {
  depthTaken,
  fieldSurface,
  heightAt,
  isFlat,
  rangeOver,
  steadyWithin,
  worstCase,
} from '../process/fieldSurface.ts';
import { shownDepth, shownPlaces } from './alongBeam.ts';
import { fieldCurvature, fieldWidth, heightError, thermalShift, tilt, tiltDirection } from './depthInUse.ts';
import { planeDepth } from './depthOfFocus.ts';
import { workpieceZ } from './focus.ts';
import { asked } from './marks.ts';
import { fieldHeight } from './scannerInputs.ts';

export const field = derived({
  id: 'scan.field',
  name: 'field, checked',
  symbol: 'F\\times G',
  unit: { width: 'm', height: 'm' },
  about:
    'Width and height of the field, its middle on the axis of the lens, once both are at least as long as the spot is wide, 2√(2A_eff/π).',
  from: { width: fieldWidth, height: fieldHeight, spot: asked },
  compute: ({ width, height, spot }): FieldSize => {
    checkField({ width, height }, spot);
    return { width, height };
  },
  shownAs: ({ width, height }) =>
    `${formatReadable(width, 'm', 'mm', 3)} × ${formatReadable(height, 'm', 'mm', 3)}`,
  formula: 'F,\\ G\\ge 2\\sqrt{2A_\\text{eff}/\\pi}',
  source: 'definition',
});

export const surface = derived({
  id: 'workpiece.fieldSurface',
  name: 'surface against the focus',
  symbol: '\\text{surface}',
  unit: { z: 'm', slopeX: '1', slopeY: '1', bend: '1/m' },
  about:
    'Position of the workpiece in the middle of the field, its slopes along the width and the height, and the curvature of the field: the curvature typed is how much further off the focus lies at half the width of the field, and grows with the square of the distance from the axis.',
  from: { z: workpieceZ, tilt, direction: tiltDirection, sag: fieldCurvature, width: fieldWidth },
  compute: ({ z, ...rest }) => fieldSurface(z, rest),
  shownAs: ({ z }) => `z = ${shownPlaces([z])[0]} in the middle`,
  formula: 'z+\\tan\\alpha\\,(x\\cos\\beta+y\\sin\\beta)-s\\,\\frac{x^2+y^2}{(F/2)^2}',
  source: 'definition',
});

/** What takes depth without moving over the field. */
export const unsteady = { height: heightError, shift: thermalShift };

export const zMet = derived({
  id: 'workpiece.zMet',
  name: 'planes met over the field',
  symbol: 'z_\\text{c}, z_\\text{d}',
  unit: { from: 'm', to: 'm' },
  about:
    'Nearest and furthest position against the focus that the surface takes anywhere on the field, corners included, with height error and thermal shift at their worst. The planes reached over the field differ: they take tilt and curvature along the width alone.',
  from: { surface, field, ...unsteady },
  compute: ({ surface, field, ...unsteady }): Stretch => worstCase(rangeOver(surface, field), unsteady),
  shownAs: ({ from, to }) => shownPlaces(from === to ? [from] : [from, to]).join(' to '),
  formula:
    '\\min_{F\\times G}\\text{surface}-h-\\{0,\\delta\\},\\ \\max_{F\\times G}\\text{surface}+h-\\{0,\\delta\\}',
  source: 'definition',
});

export const zMetSpread = derived({
  id: 'workpiece.zMetSpread',
  name: 'spread in z over the field, corners included',
  symbol: '\\Delta z_\\text{G}',
  unit: 'm',
  display: 'um',
  about:
    'Distance along z from the nearest to the furthest position that the surface takes on the field, corners included: to be compared with the whole depth of focus.',
  from: { met: zMet },
  compute: ({ met }) => met.to - met.from,
  shownAs: (length) => shownDepth(length),
  formula: 'z_\\text{d}-z_\\text{c}',
  source: 'definition',
});

export const zWidthSpread = derived({
  id: 'workpiece.zWidthSpread',
  name: 'spread in z along the width of the field',
  symbol: '\\Delta z_\\text{W}',
  unit: 'm',
  display: 'um',
  about:
    'Distance along z from the nearest to the furthest position that the surface takes along the width of the field, through its middle, corners not included. The spread in z over the field adds the worst of tilt and of curvature, which need not lie in the same place.',
  from: { surface, field, ...unsteady },
  compute: ({ surface, field, ...unsteady }) => {
    const { from, to } = worstCase(rangeOver(surface, { width: field.width, height: 0 }), unsteady);
    return to - from;
  },
  shownAs: (length) => shownDepth(length),
  formula: '\\max_{y=0}\\text{surface}-\\min_{y=0}\\text{surface}+2h+|\\delta|',
  source: 'definition',
});

/** Columns and rows of the map along the longer side. */
const finest = 97;

export const fieldPlanes = derived({
  id: 'workpiece.fieldPlanes',
  name: 'planes over the field',
  symbol: 'z(x,y)',
  unit: { columns: 'none', rows: 'none', z: 'm', room: 'm' },
  about:
    'Position of the surface against the focus over the field, row by row from its lower edge, and the room that is left between the worst case there, of height error and thermal shift, and the nearer end of the depth of focus: below 0 where the profile leaves its tolerance. None where the surface stands in one plane: there is nothing to map.',
  from: { surface, field, depth: planeDepth, ...unsteady },
  compute: ({ surface, field, depth, ...unsteady }) => {
    if (isFlat(surface))
      throw new Problem(
        'absent',
        'The surface stands in one plane over the whole field: there is nothing to map. Give a tilt or a field curvature.',
        { input: tilt.id },
      );
    const steps = (length: number, other: number) =>
      Math.max(9, Math.round(finest * Math.min(1, length / other)));
    const columns = steps(field.width, field.height);
    const rows = steps(field.height, field.width);
    const z = new Float64Array(columns * rows);
    const limits = steadyWithin(depth, unsteady);
    for (let i = 0; i < z.length; i++) {
      const x = field.width * ((i % columns) / (columns - 1) - 0.5);
      const y = field.height * (Math.floor(i / columns) / (rows - 1) - 0.5);
      z[i] = heightAt(surface, x, y);
    }
    return { columns, rows, z, room: z.map((at) => Math.min(at - limits.from, limits.to - at)) };
  },
  shownAs: ({ columns, rows }) => `${columns} × ${rows} places`,
  formula: '\\text{surface}(x,y)',
  source: 'definition',
});

export const depthUse = derived({
  id: 'workpiece.depthTaken',
  name: 'what each cause takes of the depth',
  symbol: '\\Delta z_i',
  unit: { tilt: 'm', curvature: 'm', height: 'm', shift: 'm' },
  about:
    'Distance along z over the field, corners included, that tilt, field curvature, height error and thermal shift each take by themselves. Tilt and curvature share some of it, so that the sum may be more than the spread.',
  from: { surface, field, ...unsteady },
  compute: ({ surface, field, ...unsteady }) => depthTaken(surface, field, unsteady),
  shownAs: (taken) =>
    Object.entries(taken)
      .map(([cause, length]) => `${cause} ${shownDepth(length)}`)
      .join(', '),
  formula: '\\Delta\\,\\text{surface},\\ 2h,\\ |\\delta|',
  source: 'definition',
});
