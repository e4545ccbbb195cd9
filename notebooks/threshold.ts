import { pulseEnergy, repetitionRate } from '../lib/design/laser.ts';
import { energySource, opticsTransmission, plateTransmission, typedPower } from '../lib/design/losses.ts';
import {
  effectiveArea,
  markArea,
  markDiameter,
  markInnerDiameter,
  meanFluence,
  unshapedEffectiveArea,
  unshapedMarkArea,
  unshapedMarkDiameter,
  unshapedMarkInnerDiameter,
  unshapedMeanFluence,
} from '../lib/design/marks.ts';
import { material } from '../lib/design/material.ts';
import { peakFluence } from '../lib/design/spot.ts';
import {
  incubationExponent,
  pulsesOnPlace,
  thresholdAtN,
  thresholdFloor,
  thresholdSource,
  typedThreshold,
  typedUncertainty,
} from '../lib/design/threshold.ts';
import { fluenceScale } from '../lib/design/thresholdChart.ts';
import { unshapedPeakFluence } from '../lib/design/unshaped.ts';
import { couponBlocks } from './couponBlocks.ts';
import type { StepwellDocument } from './document.ts';
import { fitBlocks } from './fitBlocks.ts';
import { handbookTable } from './handbookTable.ts';
import { ladderBlocks } from './ladderBlocks.ts';
import { markBlocks } from './markBlocks.ts';
import { markPictureBlocks } from './markPictureBlocks.ts';
import { math, prose, sets, term } from './prose.ts';
import { pulseCautions } from './pulseCautions.ts';
import { removalBlocks } from './removalBlocks.ts';
import { spotTableBlocks } from './spotRowsBlocks.ts';
import { incubationFigure, thresholdProfileFigure } from './thresholdFigures.ts';
import {
  aboveThresholdSaid,
  conditionsSaid,
  effectiveAreaSaid,
  energySaid,
  incubationSaid,
  peakAndMeanSaid,
  stopPartSaid,
  thresholdDoubtSaid,
  thresholdSaid,
} from './thresholdSentences.ts';

/** The third document: from pulse energy to the mark that a pulse leaves, and to a threshold of one's own. */
export const threshold: StepwellDocument = {
  id: 'threshold',
  title: 'Fluence and threshold',
  short: 'Threshold',
  lead: prose`A pulse marks the surface where its ${term('fluence')} lies above a ${term('threshold')}, and nowhere else. This page follows the energy of one pulse to the workpiece, sets it against the threshold, and draws the mark that the plate will leave.`,
  result: { quantity: markArea, missing: 'No mark can be predicted for this design.' },
  blocks: [
    {
      kind: 'prose',
      id: 'one-pulse',
      prose: prose`
        ## What one pulse puts down

        ${energySaid} ${stopPartSaid} What the surface feels is energy per area, the **fluence**, and it differs from place to place in the spot: highest at its **${term('peak', 'peak-fluence')}**, ${peakFluence} with the plate where the workpiece stands, and falling to nothing outside.

        Where the fluence lies above the **threshold**, ${thresholdAtN}, the surface is marked. ${aboveThresholdSaid}
      `,
    },
    thresholdProfileFigure,
    {
      kind: 'controls',
      id: 'energy-controls',
      heading: 'Energy of a pulse and losses on the way',
      inputs: [
        energySource,
        pulseEnergy,
        typedPower,
        repetitionRate,
        opticsTransmission,
        plateTransmission,
        fluenceScale,
      ],
    },
    {
      kind: 'prose',
      id: 'peak-and-mean',
      prose: prose`
        One number cannot say how much a spot puts down, and three are in use. The **peak fluence** is that of the brightest place. The **mean over the mark** leaves out what is not marked, so it moves with energy and threshold. ${peakAndMeanSaid} The **${term('effective area')}** is the energy over the peak fluence: the area that would take all of it with that fluence throughout. ${effectiveAreaSaid}

        For a Gaussian of 1/e² radius ${math`w`} the effective area is ${math`\pi w^2/2`}, half its 1/e² circle. So whoever divides the energy by the area of that circle gets **half the peak fluence**: ask which of the two a published number is, and whether its radius is taken at 1/e² or at 1/e. Here fluences are peak values of one pulse and incident, which means that the light that is reflected counts too, unless they say otherwise; a threshold is a fluence at a place.
      `,
    },
    {
      kind: 'table',
      id: 'fluence-table',
      table: {
        caption: 'One pulse where the workpiece stands',
        columns: ['', 'with the plate', 'plate taken out'],
        rows: [
          ['peak fluence', peakFluence, unshapedPeakFluence],
          ['mean fluence over the mark', meanFluence, unshapedMeanFluence],
          ['effective area', effectiveArea, unshapedEffectiveArea],
          ['area marked', markArea, unshapedMarkArea],
          ['diameter of the mark', markDiameter, unshapedMarkDiameter],
          ['diameter of its unmarked centre', markInnerDiameter, unshapedMarkInnerDiameter],
        ],
      },
    },
    {
      kind: 'prose',
      id: 'threshold',
      prose: prose`
        ## The threshold

        ${thresholdSaid}${thresholdDoubtSaid} A ${term('standard uncertainty')} is the spread, one standard deviation, within which the true value is taken to lie. A threshold depends on the surface and its finish, wavelength, pulse duration, how many pulses fall on a place and how fast, and on what is called a mark.
      `,
    },
    {
      kind: 'controls',
      id: 'threshold-controls',
      heading: 'Which threshold counts',
      inputs: [material, thresholdSource, typedThreshold, typedUncertainty],
    },
    {
      kind: 'caution',
      id: 'conditions',
      when: { choice: thresholdSource, is: 'handbook' },
      prose: prose`${conditionsSaid}`,
    },
    handbookTable,
    {
      kind: 'prose',
      id: 'pulses',
      prose: prose`
        Pulses that fall on the same place prepare it for one another: the threshold of each falls with their number, which is called incubation. Often it follows a power of their number *N*, ${math`F_\text{th}\,N^{S-1}`} with the incubation exponent *S*, down to a floor ${math`F_\infty`}, the threshold of endless pulses, below which no number of them leaves a mark. ${incubationSaid} Marks of three numbers of pulses or more in the table of measured spots below give your own. Try ${sets('a hundred pulses with S = 0.85', { 'threshold.pulses': 100, 'threshold.incubationExponent': 0.85 })}, or go back to ${sets('one pulse', { 'threshold.pulses': 1 })}.
      `,
    },
    incubationFigure,
    {
      kind: 'controls',
      id: 'pulses-controls',
      heading: 'Several pulses on a place',
      inputs: [pulsesOnPlace, incubationExponent, thresholdFloor],
    },
    ...markBlocks,
    ...removalBlocks,
    ...pulseCautions,
    ...markPictureBlocks,
    ...spotTableBlocks,
    ...fitBlocks,
    ...ladderBlocks,
    ...couponBlocks,
  ],
};
