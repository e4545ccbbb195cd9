import {
  energyCount,
  firstZ,
  fullEnergy,
  highEnergy,
  lastZ,
  lowEnergy,
  mostPulses,
  pitchFactor,
  planeCount,
  pulseCount,
  repeats,
  setting,
} from '../lib/design/couponInputs.ts';
import { planeVerdicts } from '../lib/design/couponVerdict.ts';
import { couponFigure } from './couponFigure.ts';
import { couponRangeSaid, couponSettingSaid, couponSizeSaid } from './couponSentences.ts';
import type { Block } from './document.ts';
import { planeVerdictsSaid } from './planeVerdictSentences.ts';
import { prose } from './prose.ts';

/** A test coupon: what it is fired with, what it will look like, and the table to fill in. */
export const couponBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'coupon',
    prose: prose`
      ## A test coupon

      A coupon is a spare piece of the same surface, written full of trial spots: every energy in every plane, each several times: marks at known energies give the threshold, and marks of several planes show whether the light is where the prediction has it. Save the drawing as CSV: that is the table to take along, with empty columns for what the microscope shows. Filled in, it comes back above as the table of measured spots.
    `,
  },
  {
    kind: 'controls',
    id: 'coupon-controls',
    heading: 'Coupon',
    inputs: [
      lowEnergy,
      highEnergy,
      energyCount,
      firstZ,
      lastZ,
      planeCount,
      mostPulses,
      pulseCount,
      repeats,
      pitchFactor,
      setting,
      fullEnergy,
    ],
  },
  {
    kind: 'prose',
    id: 'coupon-said',
    prose: prose`${couponSizeSaid} ${couponRangeSaid} ${couponSettingSaid}`,
  },
  couponFigure,
  {
    kind: 'prose',
    id: 'coupon-verdicts',
    needs: [planeVerdicts],
    prose: prose`
      ### Plane by plane

      ${planeVerdictsSaid}
    `,
  },
];
