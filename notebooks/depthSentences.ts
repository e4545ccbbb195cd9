import { allowedTilt, fieldWidth, survives, zSpread } from '../lib/design/depthInUse.ts';
import { depthEnds, depthOfFocus, depthTolerance, planeDepth } from '../lib/design/depthOfFocus.ts';
import { formatQuantity, formatReadable } from '../lib/graph/units.ts';
import { furthestDefocus } from '../lib/optics/roundSpot.ts';
import { phrase, says } from './prose.ts';

const micrometres = (length: number): string => formatReadable(length, 'm', 'um', 3);

/** How deep the plane is where the workpiece stands. */
export const depthOfFocusSaid = says(
  { depth: planeDepth, tolerance: depthTolerance },
  ({ depth: { deviation, cut }, tolerance }) => {
    if (deviation > tolerance)
      return phrase`Where the workpiece stands the fluence departs by up to ${formatQuantity(deviation, '1', '%', 3)} from its mean over the plateau, more than the tolerance of ${depthTolerance}: this plane has no depth of focus.`;
    if (cut)
      return phrase`The plateau keeps its fluence within ${depthTolerance} of its mean from ${depthEnds}, as far as profiles are computed (${String(furthestDefocus)} Rayleigh lengths from the focus): it is at least ${depthOfFocus} deep.`;
    return phrase`The plateau keeps its fluence within ${depthTolerance} of its mean from ${depthEnds}: the plane is ${depthOfFocus} deep.`;
  },
  [depthEnds, depthOfFocus],
);

/** Whether the plane survives what moves the surface over the field. */
export const depthInUseSaid = says(
  { survives, spread: zSpread, field: fieldWidth },
  ({ survives: { verdict, room, move }, spread }) => {
    if (verdict === 'no depth')
      return phrase`There is no depth of focus here at the tolerance asked for, so no tilt and no height error is allowed: choose a flatter plane or a larger tolerance.`;
    const way = move > 0 ? 'away from the lens' : 'towards the lens';
    if (spread === 0)
      return phrase`Nothing moves the surface over the field of ${fieldWidth}. The depth of focus of ${depthOfFocus} would allow a tilt of ${allowedTilt}.`;
    const compare = phrase`Over the field of ${fieldWidth} the surface takes positions ${zSpread} apart against the focus; the plane is ${depthOfFocus} deep`;
    switch (verdict) {
      case 'survives':
        return phrase`${compare}. It survives, with ${micrometres(room)} to spare.`;
      case 'survives when moved':
        return phrase`${compare}. It survives when the workpiece is moved by ${micrometres(Math.abs(move))} ${way}, to the middle of the depth; where it stands, part of the field is out of focus.`;
      case 'does not survive':
        return phrase`${compare}. It does not survive: ${micrometres(-room)} are lacking. Level the part, take a smaller field, or choose a deeper plane.`;
    }
  },
  [depthOfFocus, allowedTilt],
);
