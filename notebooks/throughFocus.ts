import {
  allowedTilt,
  fieldCurvature,
  fieldWidth,
  heightError,
  thermalShift,
  tilt,
  zReached,
  zSpread,
} from '../lib/design/depthInUse.ts';
import { depthEnds, depthOfFocus, depthTolerance } from '../lib/design/depthOfFocus.ts';
import { searchedRange } from '../lib/design/family.ts';
import { mapScale } from '../lib/design/familyMap.ts';
import { littleDifference } from '../lib/design/familyRule.ts';
import { defocus, focusRadius, rayleighLength, workpieceZ } from '../lib/design/focus.ts';
import { offCentreFocus, offCentreHere, offsetTried } from '../lib/design/offCentre.ts';
import { profile } from '../lib/design/spot.ts';
import { stripStep } from '../lib/design/strip.ts';
import { largestDip, leastContrast, planeGoal } from '../lib/design/usablePlanes.ts';
import { brightestPlace } from './brightestPlace.ts';
import { depthInUseSaid, depthOfFocusSaid } from './depthSentences.ts';
import type { StepwellDocument } from './document.ts';
import { dipRunSaid, familyOrderSaid, familyRuleSaid } from './familyRuleSentences.ts';
import { goodForSaid, usablePlanesSaid, zeroCurvatureSaid } from './familySentences.ts';
import { limitBlocks } from './limitSentences.ts';
import { profileFigure } from './matchingFigures.ts';
import { plateOutSaid, profileSaid } from './matchingSentences.ts';
import { focusCausticBlocks, measuredSpotBlocks } from './measuredSpotBlocks.ts';
import { offCentreFigure } from './offCentreFigure.ts';
import { leads, prose, term } from './prose.ts';
import { stripFigure } from './stripFigure.ts';
import { axisCurveFigure, mapFigure, spotPictureFigure } from './throughFocusFigures.ts';
import { planesTable } from './usablePlanesTable.ts';

/** The second document: every profile that the plate gives, and the plane for the job. */
export const throughFocus: StepwellDocument = {
  id: 'through-focus',
  title: 'Through the focus',
  short: 'Focus',
  element: 'workpiece',
  lead: prose`Behind the lens the plate makes a whole ${term('family of spots', 'family')}: flat-tops, rings and peaked ones follow one another along the beam. The workpiece picks one of them by where it stands.`,
  result: { quantity: profile, missing: 'This design has no spot.' },
  blocks: [
    {
      kind: 'prose',
      id: 'here',
      prose: prose`
        ## Where the workpiece stands

        Places along the beam are told by z, from the focal plane of the lens on, positive away from the lens. The workpiece stands at ${workpieceZ}, which is ${defocus} ${term('Rayleigh lengths', 'rayleigh-length')} from the focus (negative: on the side of the lens); over one Rayleigh length the focused beam without the plate grows √2 times as wide. ${profileSaid} Move it along the beam, or ${leads('choose from the planes found', 'planes-table')}.
      `,
    },
    mapFigure,
    { kind: 'controls', id: 'plane-controls', heading: 'Move the workpiece', inputs: [workpieceZ, mapScale] },
    profileFigure,
    spotPictureFigure,
    {
      kind: 'caution',
      id: 'plate-out',
      prose: prose`**Before the plate comes out or the workpiece moves.** ${plateOutSaid} Other planes have another peak fluence at the same energy: look at the list below before you go there.`,
    },
    ...limitBlocks,
    {
      kind: 'prose',
      id: 'planes',
      prose: prose`
        ## Planes to choose from

        Say what the plane is for, and how evenly the fluence must be kept: the **tolerance**, by which it may depart from its mean on the plateau, the level part of the spot. How far along z a plane keeps to it is its **depth of focus**. ${usablePlanesSaid}
      `,
    },
    {
      kind: 'controls',
      id: 'search-controls',
      heading: 'What is asked of the plane',
      inputs: [planeGoal, searchedRange, depthTolerance, largestDip, leastContrast],
    },
    planesTable,
    { kind: 'prose', id: 'good-for', prose: prose`${goodForSaid}` },
    {
      kind: 'prose',
      id: 'zero-curvature',
      prose: prose`Where a profile has no curvature on the axis its middle is level, which does not yet make it a flat-top. ${zeroCurvatureSaid}`,
    },
    {
      kind: 'prose',
      id: 'depth',
      prose: prose`
        ## How deep the plane is, and whether that is enough

        ${depthOfFocusSaid}

        A real part is tilted and of uneven height. Mirrors scan the spot over a **field**, and the focus of the lens behind them lies on a curved surface there. Warm optics focus elsewhere. ${depthInUseSaid}
      `,
    },
    {
      kind: 'controls',
      id: 'depth-controls',
      heading: 'What moves the surface against the focus',
      inputs: [fieldWidth, tilt, heightError, fieldCurvature, thermalShift],
    },
    {
      kind: 'table',
      id: 'depth-table',
      table: {
        caption: 'Depth where the workpiece stands',
        columns: ['', 'value'],
        rows: [
          ['depth of focus at the tolerance', depthOfFocus],
          ['from and to', depthEnds],
          ['positions against the focus, all causes at their worst', zReached],
          ['distance between them', zSpread],
          ['tilt that the depth leaves room for', allowedTilt],
        ],
      },
    },
    {
      kind: 'prose',
      id: 'family',
      prose: prose`
        ## The family, and the rule of thumb

        Without plate and stop the focus would have a 1/e² radius of ${focusRadius} and a Rayleigh length of ${rayleighLength}, both for a perfect Gaussian beam (M² = 1); ζ is the distance from the focus in Rayleigh lengths. ${familyOrderSaid}

        Common practice (no source) says: at least three flat-tops that differ a little in width and height, with rings of varying depth between. A flat-top counts here by its dip, the part by which the axis lies below the highest fluence, under 5 %, and its plateau ratio, the area above nine tenths of the highest fluence over that above half of it, more than 0.30. Whether its plateau is even, its depth of focus says. “A little” is taken here as a factor of up to ${littleDifference}, a choice of these pages. ${familyRuleSaid}

        ${dipRunSaid}
      `,
    },
    stripFigure,
    { kind: 'controls', id: 'strip-controls', heading: 'Planes side by side', inputs: [stripStep] },
    axisCurveFigure,
    brightestPlace,
    {
      kind: 'prose',
      id: 'off-centre-said',
      prose: prose`
        ## A beam beside the middle of the plate

        With a beam that stands ${offsetTried} of its 1/e² radius beside the middle of the plate, the two sides of the spot differ in height: by ${offCentreHere} where the workpiece stands, by ${offCentreFocus} in the focus of the unshaped beam. Behind a step of half a wave the focus shows nothing of it, and neither does a peaked spot far from it: centre the plate by what a camera sees where a ring is about to become a flat spot.
      `,
    },
    offCentreFigure,
    ...measuredSpotBlocks,
    ...focusCausticBlocks,
  ],
};
