import { fieldCurvature, heightError, thermalShift, tilt, tiltDirection } from '../lib/design/depthInUse.ts';
import { depthOfFocus, depthTolerance } from '../lib/design/depthOfFocus.ts';
import { fieldPlanes, zMet } from '../lib/design/fieldPlanes.ts';
import { workpieceZ } from '../lib/design/focus.ts';
import { deepestDipMet, highestPeakMet, lowestPeakMet } from '../lib/design/planesMet.ts';
import {
  allowedFieldTilt,
  allowedHeightError,
  fieldInTolerance,
  usableField,
  usableFieldMoved,
} from '../lib/design/usableField.ts';
import type { Block } from './document.ts';
import { fieldPlanesFigure, profilesMetFigure } from './planeMetFigures.ts';
import {
  cornersSaid,
  depthCauseSaid,
  onePlaneSaid,
  profilesMetSaid,
  usableFieldSaid,
} from './planeMetSentences.ts';
import { prose } from './prose.ts';

/** Where the surface stands against the focus over the field, and what becomes of the profile there. */
export const planeMetBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'plane-met',
    prose: prose`
      ## The plane actually met

      The profile that was chosen exists in one plane, and near it for the length of its **depth of focus**: the stretch along the beam over which the fluence on its plateau keeps to the tolerance below. Over a field the surface does not stay there: the part is **tilted** or not flat, and the focus of the scan lens moves with the place (**field curvature**) and as the optics warm up (**thermal shift**). Where the surface does not stand in one plane, a map shows z, its position against the focus; the curvature to type is how much further off the focus lies at half the width of the field, and it grows with the square of the distance from the middle.
    `,
  },
  {
    kind: 'controls',
    id: 'plane-met-controls',
    heading: 'What moves the surface against the focus',
    inputs: [workpieceZ, tilt, tiltDirection, heightError, fieldCurvature, thermalShift, depthTolerance],
  },
  { kind: 'prose', id: 'one-plane', prose: prose`${onePlaneSaid}` },
  { ...fieldPlanesFigure, needs: [fieldPlanes] },
  {
    kind: 'prose',
    id: 'usable-field',
    prose: prose`${usableFieldSaid} ${depthCauseSaid} ${cornersSaid}`,
  },
  {
    kind: 'table',
    id: 'plane-met-table',
    table: {
      caption: 'Field and fixture',
      columns: ['', 'value'],
      rows: [
        ['depth of focus', depthOfFocus],
        ['range of z met over the field, corners included', zMet],
        ['part of the field within the tolerance', fieldInTolerance],
        ['width of the largest field', usableField],
        ['the same, workpiece moved to the best z', usableFieldMoved],
        ['tilt allowed over the field', allowedFieldTilt],
        ['height error allowed, ±', allowedHeightError],
      ],
    },
  },
  {
    kind: 'prose',
    id: 'longer-lens',
    prose: prose`Each allowance holds with the other causes as they are and the workpiece moved to the middle of the depth. A lens of twice the focal length makes the spot twice as wide and the depth four times as long, for the same beam and plate; the peak fluence falls to a quarter.`,
  },
  profilesMetFigure,
  {
    kind: 'prose',
    id: 'profiles-met-said',
    prose: prose`${profilesMetSaid} Lowest and highest peak met: ${lowestPeakMet} and ${highestPeakMet}; deepest dip: ${deepestDipMet}.`,
  },
];
