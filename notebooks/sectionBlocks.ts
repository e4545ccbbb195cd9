import { removalDepth } from '../lib/design/depthLaw.ts';
import { measuredSection, sectionPlaces } from '../lib/design/measuredSection.ts';
import { sectionFile, sectionPasses } from '../lib/design/sectionFile.ts';
import { sectionFit } from '../lib/design/sectionFit.ts';
import {
  fittedDepth,
  fittedTopWidth,
  fittedWallAngle,
  measuredDepth,
  measuredTopWidth,
  measuredWallAngle,
  todaysDepth,
  todaysTopWidth,
  todaysWallAngle,
} from '../lib/design/sectionResults.ts';
import { thresholdSource, typedThreshold, typedUncertainty } from '../lib/design/threshold.ts';
import type { Block } from './document.ts';
import { prose, sets } from './prose.ts';
import { sectionDeviationFigure, sectionFigure } from './sectionFigures.ts';
import {
  sectionAgainstSaid,
  sectionFitSaid,
  sectionReadSaid,
  sectionRimSaid,
  sectionScatterSaid,
  sectionTogetherSaid,
  sectionVerdictSaid,
} from './sectionSentences.ts';

const takeOver = sets(
  'Take the fitted values over',
  ({ fit: { depthPerPulse, threshold } }) => ({
    [removalDepth.id]: depthPerPulse.value,
    [thresholdSource.id]: 'typed',
    [typedThreshold.id]: threshold.value,
    [typedUncertainty.id]: threshold.uncertainty,
  }),
  { fit: sectionFit },
);

/** A measured cross-section laid over the computed groove, and what it says of threshold and depth per pulse. */
export const sectionBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'section',
    prose: prose`
      ## A measured groove laid over

      Give a cross-section of a groove of your own, from a profilometer or a microscope: a table of places and heights with a heading such as *x (µm); height (nm)*, or with the units in a line of their own. Lines above it, missing points, further columns and a tilted sample do no harm, and heights may count upwards or downwards. Unworked surface is needed on both sides. Set energy, speed and plane to those the groove was made with, and say how many passes it had.
    `,
  },
  {
    kind: 'controls',
    id: 'section-controls',
    heading: 'Measured groove',
    inputs: [sectionFile, sectionPasses],
  },
  {
    kind: 'prose',
    id: 'section-said',
    // Not the groove in it: where none is found, the reason is said here.
    needs: [sectionPlaces],
    prose: prose`
      ${sectionReadSaid} ${sectionRimSaid}

      ${sectionAgainstSaid}
    `,
  },
  {
    kind: 'table',
    id: 'section-table',
    needs: [measuredSection],
    table: {
      caption: 'The measured groove against the computed one',
      columns: ['', 'measured', 'computed with the values of today', 'computed with the fitted values'],
      rows: [
        ['depth', measuredDepth, todaysDepth, fittedDepth],
        ['width at the top', measuredTopWidth, todaysTopWidth, fittedTopWidth],
        ['wall angle', measuredWallAngle, todaysWallAngle, fittedWallAngle],
      ],
    },
  },
  sectionFigure,
  {
    kind: 'prose',
    id: 'section-fit',
    needs: [measuredSection],
    prose: prose`
      ### Threshold and depth per pulse from it

      ${sectionFitSaid} ${sectionTogetherSaid}

      ${sectionVerdictSaid} ${sectionScatterSaid}

      ${takeOver}: they become the depth per pulse and the typed threshold of the design, with its uncertainty.
    `,
  },
  sectionDeviationFigure,
];
