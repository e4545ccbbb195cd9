import { shownDepth } from '../lib/design/alongBeam.ts';
import {
  allowedTilt,
  fieldCurvature,
  fieldWidth,
  heightError,
  survives,
  thermalShift,
  tilt,
  zSpread,
} from '../lib/design/depthInUse.ts';
import { depthEnds, depthOfFocus, depthTolerance, planeDepth } from '../lib/design/depthOfFocus.ts';
import { kind } from '../lib/design/spot.ts';
import { formatQuantity } from '../lib/graph/units.ts';
import { furthestDefocus } from '../lib/optics/roundSpot.ts';
import { phrase, says } from './prose.ts';

/** How deep the plane is where the workpiece stands; a peaked spot has no plateau, but a disc around its peak. */
export const depthOfFocusSaid = says(
  { depth: planeDepth, tolerance: depthTolerance, kind },
  ({ depth: { deviation, cut }, tolerance, kind }) => {
    const over = kind === 'peaked' ? 'over the disc out to 95\u202f% of its peak' : 'over the plateau';
    if (deviation > tolerance)
      return phrase`Where the workpiece stands the fluence departs by up to ${formatQuantity(deviation, '1', '%', 3)} from its mean ${over}, more than the tolerance of ${depthTolerance}: this plane has no depth of focus.`;
    const keeps =
      kind === 'peaked'
        ? phrase`The spot is peaked and has no plateau. On the disc out to 95\u202f% of its peak the fluence stays within ${depthTolerance} of its mean from ${depthEnds}`
        : phrase`The plateau keeps its fluence within ${depthTolerance} of its mean from ${depthEnds}`;
    if (cut)
      return phrase`${keeps}, as far as profiles are computed (${String(furthestDefocus)} Rayleigh lengths from the focus): it is at least ${depthOfFocus} deep.`;
    return phrase`${keeps}: the plane is ${depthOfFocus} deep.`;
  },
  [depthEnds, depthOfFocus],
);

/** What takes most of the depth, and what to do about it. */
function largestCause({
  field,
  tilt,
  height,
  sag,
  shift,
}: Readonly<Record<'field' | 'tilt' | 'height' | 'sag' | 'shift', number>>): string {
  const causes: readonly (readonly [number, string])[] = [
    [field * Math.tan(tilt), 'Most of it is the tilt: level the part or take a smaller field'],
    [2 * height, 'Most of it is the height error: set the height better or follow it'],
    [Math.abs(sag), 'Most of it is the curvature of the field: take a smaller field'],
    [Math.abs(shift), 'Most of it is the thermal shift: let the optics warm up before setting the height'],
  ];
  return causes.reduce((a, b) => (b[0] > a[0] ? b : a))[1];
}

/** Whether the plane survives what moves the surface over the field. */
export const depthInUseSaid = says(
  {
    survives,
    spread: zSpread,
    field: fieldWidth,
    tilt,
    height: heightError,
    sag: fieldCurvature,
    shift: thermalShift,
  },
  ({ survives: { verdict, room, move }, spread, ...causes }) => {
    if (verdict === 'no depth')
      return phrase`There is no depth of focus here at the tolerance asked for, so no tilt and no height error is allowed: choose a flatter plane or a larger tolerance.`;
    const way = move > 0 ? 'away from the lens' : 'towards the lens';
    if (spread === 0)
      return phrase`Nothing moves the surface over the field of ${fieldWidth}. The depth of focus of ${depthOfFocus} would allow a tilt of ${allowedTilt}.`;
    const compare = phrase`Over the field of ${fieldWidth} the surface takes positions ${zSpread} apart against the focus; the plane is ${depthOfFocus} deep`;
    switch (verdict) {
      case 'survives':
        return phrase`${compare}. It survives, with ${shownDepth(room)} to spare.`;
      case 'survives when moved':
        return phrase`${compare}. It survives when the workpiece is moved by ${shownDepth(Math.abs(move))} ${way}, to the middle of the depth; where it stands, part of the field is out of focus.`;
      case 'does not survive':
        return phrase`${compare}. It does not survive: ${shownDepth(-room)} are lacking. ${largestCause(causes)}, or choose a deeper plane.`;
    }
  },
  [depthOfFocus, allowedTilt],
);
