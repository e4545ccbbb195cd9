import { accumulatedFluence, unshapedAccumulatedFluence } from '../lib/design/accumulated.ts';
import { burstSpacing, pulsesPerBurst } from '../lib/design/burst.ts';
import { fieldWidth } from '../lib/design/depthInUse.ts';
import { lineNumber, lineTime } from '../lib/design/hatch.ts';
import { pulseEnergy, repetitionRate } from '../lib/design/laser.ts';
import { maxPower, maxPulseEnergy, maxRepetitionRate } from '../lib/design/laserLimits.ts';
import { averagePower, energySource, typedPower, usedPulseEnergy } from '../lib/design/losses.ts';
import {
  accumulatedPulses,
  linesPerSpot,
  pulsesPerSpot,
  spotDiameter,
  unshapedAccumulatedPulses,
  unshapedLinesPerSpot,
  unshapedPulsesPerSpot,
  unshapedSpotDiameter,
} from '../lib/design/pulsesOnPlace.ts';
import { lineSpacing, passes, pulseSpacing, scanSpeed } from '../lib/design/scanInputs.ts';
import { fastestSpeed } from '../lib/design/scanLimits.ts';
import {
  acceleration,
  directions,
  fieldHeight,
  hatchAngle,
  interlacing,
  lineDelay,
  maxSpeed,
  turnRound,
} from '../lib/design/scannerInputs.ts';
import { unshapedAveragePower, unshapedPulseEnergy } from '../lib/design/unshapedEnergy.ts';
import type { Block } from './document.ts';
import { rateByRepetitionFigure, rateBySpeedFigure } from './hatchFigures.ts';
import {
  burstSaid,
  limitSaid,
  plainRunsSaid,
  pulsesSaid,
  scanFieldSaid,
  turnSaid,
} from './hatchSentences.ts';
import { prose, sets } from './prose.ts';

const toTheLimit = sets(
  'Set speed and repetition rate to where it is reached',
  ({ speed, spacing, energy }) => ({
    [scanSpeed.id]: speed,
    [repetitionRate.id]: speed / spacing,
    // From a power the energy would change with the rate.
    [energySource.id]: 'typed',
    [pulseEnergy.id]: energy,
  }),
  { speed: fastestSpeed, spacing: pulseSpacing, energy: usedPulseEnergy },
);

/** The field and how long it takes. */
export const fieldBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'field',
    prose: prose`
      ## The field

      ${scanFieldSaid} ${turnSaid}
    `,
  },
  {
    kind: 'controls',
    id: 'hatch-controls',
    heading: 'Field and lines',
    inputs: [
      fieldWidth,
      fieldHeight,
      scanSpeed,
      repetitionRate,
      lineSpacing,
      passes,
      hatchAngle,
      interlacing,
      directions,
      turnRound,
      lineDelay,
      pulsesPerBurst,
      burstSpacing,
    ],
  },
];

/** Pulses on each place, and what limits the field. */
export const hatchBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'pulses',
    prose: prose`
      ## Pulses per spot, and accumulated fluence

      ${pulsesSaid} ${burstSaid} ${plainRunsSaid}

      The spot has no edge: its diameter here is the 1/e² diameter of the Gaussian that has the same peak fluence at the same energy, so the same effective area. Pulses per spot and accumulated fluence are two different counts. Pulses per spot, the spot’s diameter over the pulse spacing, says how many pulses of one line touch a place, near or far. The accumulated fluence adds up what each of them brings, of all lines and passes, in units of one full peak. A pulse that meets the place with its flank counts whole in the first and little in the second: on one line of a Gaussian of 1/e² radius *w* with pulses *p* apart, 2*w*/*p* pulses bring only √(π/2) *w*/*p* peaks to its middle, 1.6 times less; neighbouring lines then add theirs. State which of the two you mean.
    `,
  },
  {
    kind: 'table',
    id: 'pulses-table',
    table: {
      caption: 'Pulses and lines on each place',
      columns: ['', 'with the plate', 'plate taken out'],
      rows: [
        ['1/e² diameter of the Gaussian of the same effective area', spotDiameter, unshapedSpotDiameter],
        ['pulses per spot along a line', pulsesPerSpot, unshapedPulsesPerSpot],
        ['lines per spot', linesPerSpot, unshapedLinesPerSpot],
        [
          'mean accumulated fluence, in peak fluences of one pulse',
          accumulatedPulses,
          unshapedAccumulatedPulses,
        ],
        ['mean accumulated fluence, all pulses', accumulatedFluence, unshapedAccumulatedFluence],
        ['lines of the first pass', lineNumber, lineNumber],
        ['time from line to line', lineTime, lineTime],
        ['pulse energy', usedPulseEnergy, unshapedPulseEnergy],
        ['average power', averagePower, unshapedAveragePower],
      ],
    },
  },
  {
    kind: 'prose',
    id: 'limits',
    prose: prose`
      ## What limits it

      ${limitSaid} ${toTheLimit}.
    `,
  },
  {
    kind: 'controls',
    id: 'limit-controls',
    heading: 'What scanner and laser can do',
    inputs: [
      maxSpeed,
      acceleration,
      maxRepetitionRate,
      maxPower,
      maxPulseEnergy,
      energySource,
      pulseEnergy,
      typedPower,
    ],
  },
  rateBySpeedFigure,
  rateByRepetitionFigure,
];
