import { depthTolerance } from '../lib/design/depthOfFocus.ts';
import { searchedRange } from '../lib/design/family.ts';
import { mapScale } from '../lib/design/familyMap.ts';
import { defocus, workpieceZ } from '../lib/design/focus.ts';
import { dip, kind, peakFluence, profile, width } from '../lib/design/spot.ts';
import { stripStep } from '../lib/design/strip.ts';
import { largestDip, leastContrast, planeGoal } from '../lib/design/usablePlanes.ts';
import type { StepwellDocument } from './document.ts';
import { profileFigure } from './matchingFigures.ts';
import { prose } from './prose.ts';
import { stripFigure } from './stripFigure.ts';
import { axisCurveFigure, mapFigure, spotPictureFigure } from './throughFocusFigures.ts';
import { planesTable } from './usablePlanesTable.ts';

/** The second document: every profile that the plate gives, and the plane for the job. */
export const throughFocus: StepwellDocument = {
  id: 'through-focus',
  title: 'Through the focus',
  element: 'workpiece',
  lead: prose`Behind the lens the plate makes a whole family of spots: flat-tops, rings and peaked ones follow one another along the axis. The workpiece picks one of them by where it stands.`,
  result: { quantity: profile, missing: 'This design has no spot.' },
  blocks: [
    {
      kind: 'prose',
      id: 'here',
      prose: prose`
        ## Where the workpiece stands

        The workpiece is at ${workpieceZ}, ${defocus} Rayleigh lengths from the focus. The spot there is ${kind}, ${width} wide, with a dip of ${dip} and a peak fluence of ${peakFluence} per pulse.
      `,
    },
    mapFigure,
    { kind: 'controls', id: 'plane-controls', heading: 'Move the workpiece', inputs: [workpieceZ, mapScale] },
    profileFigure,
    spotPictureFigure,
    {
      kind: 'prose',
      id: 'planes',
      prose: prose`
        ## Planes to choose from
      `,
    },
    {
      kind: 'controls',
      id: 'search-controls',
      heading: 'What the plane is for',
      inputs: [planeGoal, searchedRange, depthTolerance, largestDip, leastContrast],
    },
    planesTable,
    axisCurveFigure,
    stripFigure,
    { kind: 'controls', id: 'strip-controls', heading: 'Side by side', inputs: [stripStep] },
  ],
};
