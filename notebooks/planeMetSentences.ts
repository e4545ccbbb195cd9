import { shownDepth } from '../lib/design/alongBeam.ts';
import { fieldWidth, zSpread } from '../lib/design/depthInUse.ts';
import { depthOfFocus } from '../lib/design/depthOfFocus.ts';
import { depthUse, field, surface, zMetSpread, zWidthSpread } from '../lib/design/fieldPlanes.ts';
import { workpieceZ } from '../lib/design/focus.ts';
import { deepestDipMet, highestPeakMet, lowestPeakMet } from '../lib/design/planesMet.ts';
import { dip, peakFluence } from '../lib/design/spot.ts';
import {
  allowedFieldTilt,
  allowedHeightError,
  fieldInTolerance,
  usableField,
  usableFieldMoved,
  usableFields,
} from '../lib/design/usableField.ts';
import { isFlat } from '../lib/process/fieldSurface.ts';
import { phrase, says } from './prose.ts';

const moveText = (move: number) =>
  `${shownDepth(Math.abs(move))} ${move > 0 ? 'away from the lens' : 'towards the lens'}`;

/** The largest usable field against the one wanted. */
export const usableFieldSaid = says(
  { fields: usableFields, width: fieldWidth, inside: fieldInTolerance },
  ({ fields: { set, moved, move }, width, inside }) => {
    if (moved === 0)
      return phrase`Height error and thermal shift alone take more than the depth of focus of ${depthOfFocus}: no field, however small, keeps the tolerance for sure.`;
    if (set === null)
      return phrase`Neither tilt nor field curvature moves the surface over the field: the depth of focus sets no limit to its size; the scan lens does.`;
    if (set >= width)
      return phrase`The profile keeps its tolerance over the whole field of ${fieldWidth}, and would over one of ${usableField} of the same shape.`;
    const part = phrase`Where the workpiece stands, ${fieldInTolerance} of the field keeps the tolerance for sure`;
    const alone =
      set > 0
        ? phrase`${part}; a field without any fault may be ${usableField} wide.`
        : phrase`${part}${inside > 0 ? ', and its middle does not: no field about the middle does' : ''}.`;
    if (moved === null)
      return phrase`${alone} Move it by ${moveText(move)}, to the middle of the depth: then the depth sets no limit to the field.`;
    if (moved >= width)
      return phrase`${alone} Move it by ${moveText(move)}, to the middle of the depth: then the whole field keeps it, and one of up to ${usableFieldMoved} would.`;
    return phrase`${alone} Moving it helps, but not enough for a field of ${fieldWidth}: the largest is then ${usableFieldMoved} wide.`;
  },
  [depthOfFocus, usableField, usableFieldMoved],
);

/** What takes most of the depth, and what helps. */
export const depthCauseSaid = says(
  {
    taken: depthUse,
    fields: usableFields,
    width: fieldWidth,
    spread: zMetSpread,
    tilt: allowedFieldTilt,
    height: allowedHeightError,
  },
  ({ taken, fields: { moved }, width, spread, tilt: slope, height }) => {
    if (spread === 0)
      return phrase`Nothing takes any of the depth of ${depthOfFocus}: it would allow a tilt of ${allowedFieldTilt}, or a height error of ±${allowedHeightError}.`;
    const most = Math.max(...Object.values(taken));
    const of = (what: string) =>
      phrase`Of the depth of ${depthOfFocus} the surface takes ${zMetSpread} over the field, most of it through ${what}, which alone takes ${shownDepth(most)}.`;
    const fits = moved === null || moved >= width;
    if (taken.tilt === most) {
      const remedy =
        slope > 0
          ? phrase`Level the part to ${allowedFieldTilt} or better, take a smaller field, or a longer lens.`
          : 'Levelling the part is not enough by itself: take a smaller field as well, or a longer lens.';
      return phrase`${of('the tilt')}${fits ? '' : phrase` ${remedy}`}`;
    }
    if (taken.curvature === most)
      return phrase`${of('the curvature of the field')}${fits ? '' : ' Take a smaller field, a scan lens with a flatter field, or a longer lens.'}`;
    if (taken.height === most) {
      const remedy =
        height > 0
          ? phrase`Hold the height to ±${allowedHeightError}, follow it with the z axis, or take a longer lens.`
          : 'Holding the height is not enough by itself: follow it with the z axis and take a smaller field, or a longer lens.';
      return phrase`${of('the height error')}${fits ? '' : phrase` ${remedy}`}`;
    }
    return phrase`${of('the thermal shift of the focus')}${fits ? '' : ' Let the optics warm up before the height is set, or take a longer lens.'}`;
  },
  [depthOfFocus],
);

/** Why this is not the spread of the page on the depth of focus; nothing where it is. */
export const cornersSaid = says(
  { met: zMetSpread, along: zWidthSpread, spread: zSpread },
  ({ met, along, spread }) => {
    const less = (one: number, other: number) => one < other - 1e-6 * spread;
    if (!less(met, spread) && !less(spread, met)) return '';
    const together = 'tilt and curvature are not at their worst in the same place';
    if (less(met, spread))
      return phrase`The field takes ${zMetSpread} along z, less than the ${zSpread} of all causes at their worst together: ${together}.`;
    const corners = phrase`With its corners the field takes ${zMetSpread} along z, where along the width alone, through the middle, it would take ${zWidthSpread}`;
    return less(along, spread)
      ? phrase`${corners}: less than the ${zSpread} of all causes at their worst together.`
      : phrase`${corners}.`;
  },
);

/** Stands in place of the map where it would show one value. */
export const onePlaneSaid = says(
  { surface, field },
  ({ surface }) =>
    isFlat(surface)
      ? phrase`The surface stands at z = ${workpieceZ} all over the field, height error and thermal shift not counted: in one plane there is nothing to map. A tilt or a field curvature brings the map.`
      : '',
  [workpieceZ],
);

/** Changes of the peak below this are called none. */
const little = 5e-3;

/** What the profile becomes in the planes met. */
export const profilesMetSaid = says(
  { low: lowestPeakMet, high: highestPeakMet, deepest: deepestDipMet, dip },
  ({ low, high, deepest, dip: own }) => {
    const dips =
      deepest > own + little
        ? phrase` The axis lies up to ${deepestDipMet} below the peak, where it lies ${dip} below it in the plane set.`
        : '';
    if (low > 1 - little && high < 1 + little)
      return phrase`Over the field the peak fluence hardly departs from the ${peakFluence} of the plane set.${dips}`;
    const first = 'Where the surface leaves the plane set, the peak fluence';
    if (low > 1 - little)
      return phrase`${first} rises, to ${highestPeakMet} of the ${peakFluence} there at most: what was set below a limit may be above it elsewhere on the field.${dips}`;
    if (high < 1 + little)
      return phrase`${first} falls, to ${lowestPeakMet} of the ${peakFluence} there at the worst.${dips}`;
    return phrase`${first} goes from ${lowestPeakMet} to ${highestPeakMet} of the ${peakFluence} there.${dips}`;
  },
  [peakFluence],
);
