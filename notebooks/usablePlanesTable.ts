import { shownDepth } from '../lib/design/alongBeam.ts';
import { fieldWidth } from '../lib/design/depthInUse.ts';
import { depthTolerance } from '../lib/design/depthOfFocus.ts';
import { searchedRange } from '../lib/design/family.ts';
import { unshapedPeak, workpieceZ } from '../lib/design/focus.ts';
import { planeGoal, usablePlanes } from '../lib/design/usablePlanes.ts';
import type { ValueOf } from '../lib/graph/quantity.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { formatReadable, withUnit } from '../lib/graph/units.ts';
import type { ChoiceRow, ChoicesSpec } from './choicesSpec.ts';
import { choices } from './document.ts';
import { uses } from './kindUses.ts';

type Plane = ValueOf<typeof usablePlanes>[number];

/** A flat-top by dip and plateau ratio whose fluence leaves the tolerance on its plateau: three crests of a height, say. */
function isUneven({ kind, depth }: Plane): boolean {
  return kind === 'flat-top' && depth === 0;
}

function unevenSaid({ deviation }: Plane): string {
  return `A flat-top by its dip and plateau ratio alone: on its plateau the fluence departs by ${formatReadable(deviation, '1', '%', 2)} from its mean, more than the tolerance. Look at its profile before using it as one.`;
}

/** Planes nearer together than a nanometre are one. */
const samePlace = 1e-9;

/** The planes found for what the person asks, to choose from. */
export const planesTable = choices({
  id: 'planes-table',
  from: {
    planes: usablePlanes,
    z: workpieceZ,
    goal: planeGoal,
    range: searchedRange,
    tolerance: depthTolerance,
    field: fieldWidth,
    unshapedPeak,
  },
  view: ({ planes, z, goal, range, tolerance, field, unshapedPeak }): ChoicesSpec => {
    const nearest = nearestTo(planes, z);
    const place = placesOf(planes);
    const alongBeam = [...planes].sort((a, b) => a.z - b.z);
    const rows = planes.map((plane) => ({
      ...rowOf(plane, place(plane.z), plane === nearest, unshapedPeak, field),
      key: alongBeam.indexOf(plane),
    }));
    const searched = `within ${formatReadable(range, '1', '1', 3)} Rayleigh ${range === 1 ? 'length' : 'lengths'} of the focus`;
    return {
      caption:
        goal === 'all'
          ? `Planes ${searched}, along z`
          : `Planes ${searched}: ${planeGoal.options[goal]}, best first`,
      columns: ['z', 'kind', 'dip', 'width', 'peak fluence', 'depth of focus', 'tilt allowed'],
      rows,
      summary: `${countSaid(planes)} Depth of focus: how far along z the fluence on the plateau stays within ±${shownValue(depthTolerance, { value: tolerance })} of its mean${withoutPlateau(planes)}. Tilt allowed: what that depth alone would allow over a field of ${shownValue(fieldWidth, { value: field })}, nothing else moving.`,
      hint: 'Choosing a plane moves the workpiece there.',
    };
  },
});

function nearestTo(planes: readonly Plane[], z: number): Plane | undefined {
  return planes.find((plane) => Math.abs(plane.z - z) <= samePlace);
}

function countSaid(planes: readonly Plane[]): string {
  return planes.length === 1 ? 'One plane was found.' : `${planes.length} planes were found.`;
}

/** A peaked spot has no plateau: what its depth is of. */
function withoutPlateau(planes: readonly Plane[]): string {
  const peaked = planes.some(({ kind }) => kind === 'peaked');
  return peaked ? '; of a peaked spot, which has no plateau, on the disc out to 95\u202f% of its peak' : '';
}

/** z in mm, to a thousandth of the farthest place and no coarser than the rows are apart, so that all read alike. */
function placesOf(planes: readonly Plane[]): (z: number) => string {
  const sorted = planes.map(({ z }) => z * 1e3).sort((a, b) => a - b);
  const gaps = sorted.slice(1).map((z, i) => z - sorted[i]!);
  const farthest = sorted.reduce((most, z) => Math.max(most, Math.abs(z)), 1e-3);
  const finest = Math.min(farthest / 100, ...gaps.filter((gap) => gap > 1e-6));
  const onlyFocus = sorted.every((z) => Math.abs(z) < 1e-6);
  const decimals = onlyFocus ? 0 : Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(finest))));
  return (z) => {
    const shown = (z * 1e3).toFixed(decimals).replace('-', '\u2212');
    return withUnit(/^\u22120\.?0*$/.test(shown) ? shown.slice(1) : shown, 'mm');
  };
}

function rowOf(plane: Plane, place: string, chosen: boolean, unshapedPeak: number, field: number): ChoiceRow {
  const depth = plane.depth > 0 ? shownDepth(plane.depth, 2) : 'none';
  return {
    name: place,
    does: `Move the workpiece to ${place}`,
    cells: [
      isUneven(plane) ? `${plane.kind}, uneven` : plane.kind,
      dipSaid(plane.dip),
      formatReadable(plane.width, 'm', 'um', 3),
      formatReadable(plane.relativePeak * unshapedPeak, 'J/m^2', 'J/cm^2', 3),
      depth,
      plane.depth > 0 ? formatReadable(plane.allowedTilt, 'rad', 'mrad', 2) : 'none',
    ],
    more: restOf(plane, field),
    about: `${isUneven(plane) ? unevenSaid(plane) : `${uses[plane.kind]} (Common practice, no source.)`}${plane.zeroCurvature ? ' A plane without curvature on the axis (coherent light) lies in this stretch.' : ''}`,
    patch: { [workpieceZ.id]: plane.z },
    chosen,
  };
}

/** A dip that only rounding would lift to where a flat-top ends is said to lie below it. */
function dipSaid(dip: number): string {
  const limit = formatReadable(0.05, '1', '%', 3);
  const shown = formatReadable(dip < 5e-4 ? 0 : dip, '1', '%', 3);
  return shown === limit && dip < 0.05 ? `below ${limit}` : shown;
}

function restOf(plane: Plane, field: number): ChoiceRow['more'] {
  const number = (value: number, unit: string, shown: string, digits = 3) =>
    formatReadable(value, unit, shown, digits);
  return [
    ['from the focus', `${number(plane.defocus, '1', '1')} Rayleigh lengths`],
    [
      'edge, 90 to 10\u202f% of the peak',
      plane.edgeWidth === undefined ? 'does not fall to a tenth' : number(plane.edgeWidth, 'm', 'um'),
    ],
    ['plateau ratio, area above 0.9 over area above 0.5', number(plane.areaRatio, '1', '1')],
    ['energy above half the peak, of the transmitted', number(plane.energyInHalf, '1', '%')],
    ['peak against the unshaped, unclipped focus of M² = 1', number(plane.relativePeak, '1', '%')],
    ...(plane.dip >= 5e-4
      ? ([
          ['diameter of the crest', number(plane.ringDiameter, 'm', 'um')],
          ['width of the crest at half maximum', number(plane.ringWidth, 'm', 'um')],
        ] as const)
      : []),
    [
      'fluence stays within the tolerance',
      plane.depth > 0
        ? `from z = ${number(plane.depthFrom, 'm', 'mm', 4)} to ${number(plane.depthTo, 'm', 'mm', 4)}; a part may tilt by ${number(plane.allowedTilt, 'rad', 'mrad', 2)} over ${number(field, 'm', 'mm')}`
        : `nowhere: on ${plane.kind === 'peaked' ? 'the disc out to 95\u202f% of the peak' : 'the plateau'} it departs by ${number(plane.deviation, '1', '%', 2)} in the plane itself`,
    ],
  ];
}
