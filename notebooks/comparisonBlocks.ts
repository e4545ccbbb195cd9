import { bestShaped } from '../lib/design/comparison.ts';
import { largestModulation, leastInside } from '../lib/design/comparisonInputs.ts';
import * as parts from '../lib/design/comparisonParts.ts';
import { light, workpieceZ } from '../lib/design/focus.ts';
import { pulseEnergy, repetitionRate } from '../lib/design/laser.ts';
import { maxPower, maxPulseEnergy, maxRepetitionRate } from '../lib/design/laserLimits.ts';
import { energySource } from '../lib/design/losses.ts';
import { pulsesHigh, pulsesLow, windowHigh, windowLow } from '../lib/design/rippleWindow.ts';
import { lineSpacing, passes, scanSpeed } from '../lib/design/scanInputs.ts';
import { maxSpeed } from '../lib/design/scannerInputs.ts';
import { planeOfDefocus } from '../lib/optics/light.ts';
import {
  bestBelowThresholdSaid,
  comparisonSaid,
  energyPerAreaSaid,
  practiceSaid,
  spotSizeSaid,
} from './comparisonSentences.ts';
import type { Block } from './document.ts';
import { prose, sets } from './prose.ts';
import { peakInWindowSaid } from './rippleWindowSentences.ts';

const takeOver = sets(
  'Set plane, energy, line spacing, speed and repetition rate so, with the focus as large as it is today',
  ({ best: { defocus, today }, light }) => ({
    [workpieceZ.id]: planeOfDefocus(light, defocus),
    [energySource.id]: 'typed',
    [pulseEnergy.id]: today.pulseEnergy,
    [lineSpacing.id]: today.lineSpacing,
    [scanSpeed.id]: today.speed,
    [repetitionRate.id]: today.repetitionRate,
    [passes.id]: 1,
    'laser.pulsesPerBurst': 1,
    'scan.hatchAngle': 0,
  }),
  { best: bestShaped, light },
);

/** Each beam at its own best, for the same window and evenness. */
export const comparisonBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'comparison',
    prose: prose`
      ## Shaped against plain, each at its own best

      Scanning both beams alike favours the one that the settings were made for. Here each gets its own plane, spot size, pulse energy, pulse spacing, line spacing and speed, found by search, so that the field of ripples is done soonest in one pass of single pulses, within what scanner and laser can do. Both must keep the same window, the fluences and numbers of pulses between which ripples grow, the same part of the field inside it, and the same evenness. Heat is not counted: look at it for what you choose. How the field stands today has no part in it: ${peakInWindowSaid}

      ${comparisonSaid} ${energyPerAreaSaid} ${bestBelowThresholdSaid}
    `,
  },
  {
    kind: 'controls',
    id: 'comparison-controls',
    heading: 'What both must keep',
    inputs: [
      windowLow,
      windowHigh,
      pulsesLow,
      pulsesHigh,
      leastInside,
      largestModulation,
      maxPower,
      maxPulseEnergy,
      maxRepetitionRate,
      maxSpeed,
    ],
  },
  {
    kind: 'table',
    id: 'comparison-table',
    table: {
      caption: 'Each beam at its own best',
      columns: ['', 'with the plate', 'plate taken out'],
      rows: [
        [
          'distance behind the focus, in Rayleigh lengths of that focus',
          parts.bestDefocus,
          parts.unshapedBestDefocus,
        ],
        ['diameter of the spot', parts.bestDiameter, parts.unshapedBestDiameter],
        ['peak fluence of a pulse', parts.bestPeakFluence, parts.unshapedBestPeakFluence],
        ['pulse energy', parts.bestPulseEnergy, parts.unshapedBestPulseEnergy],
        ['pulse spacing', parts.bestPulseSpacing, parts.unshapedBestPulseSpacing],
        ['line spacing', parts.bestLineSpacing, parts.unshapedBestLineSpacing],
        ['scan speed', parts.bestSpeed, parts.unshapedBestSpeed],
        ['repetition rate', parts.bestRepetitionRate, parts.unshapedBestRepetitionRate],
        ['average power', parts.bestPower, parts.unshapedBestPower],
        ['part of the field inside the window', parts.bestInside, parts.unshapedBestInside],
        ['modulation of the accumulated fluence', parts.bestModulation, parts.unshapedBestModulation],
        ['laser energy per area', parts.bestEnergyPerArea, parts.unshapedBestEnergyPerArea],
        ['area processing rate', parts.bestAreaRate, parts.unshapedBestAreaRate],
        ['time for the field', parts.bestFieldTime, parts.unshapedBestFieldTime],
      ],
    },
  },
  {
    kind: 'prose',
    id: 'comparison-said',
    prose: prose`
      ${spotSizeSaid} ${takeOver}.

      ${practiceSaid}
    `,
  },
];
