import { thermalShift } from '../lib/design/depthInUse.ts';
import { usedPulseEnergy } from '../lib/design/losses.ts';
import { spotDiameter } from '../lib/design/pulsesOnPlace.ts';
import {
  areaPerHour,
  energyPerSquareMetre,
  scaledRepetitionRate,
  scaledSpeed,
  scaleLimit,
  timePerSquareMetre,
} from '../lib/design/scaleUp.ts';
import * as best from '../lib/design/scaleUpBest.ts';
import { carriedPerArea, diffusionLength, heatPerArea } from '../lib/design/scaleUpHeat.ts';
import * as inputs from '../lib/design/scaleUpInputs.ts';
import {
  absorbedPower,
  plateFluence,
  plateKeeps,
  scaledBIntegral,
  spotsOfPlate,
} from '../lib/design/scaleUpPlate.ts';
import { allSpotsRise, beforeRise, besideRise, ownPartRise } from '../lib/design/scaleUpRise.ts';
import { spotsForTarget } from '../lib/design/scaleUpTarget.ts';
import { shotEnergy } from '../lib/design/scaleUpWork.ts';
import type { Block } from './document.ts';
import { prose, sets } from './prose.ts';
import { ceilingsFigure, spotsFigure, stepsFigure } from './scaleUpFigures.ts';
import {
  distanceSaid,
  fieldHeatSaid,
  heatLimitSaid,
  neighboursSaid,
  spotHeatSaid,
} from './scaleUpHeatSentences.ts';
import {
  opticsHeatSaid,
  plateDamageSaid,
  scaledBestSaid,
  scaledBIntegralSaid,
} from './scaleUpPlateSentences.ts';
import {
  heldSaid,
  scaledPracticeSaid,
  scaledSaid,
  scaledTodaySaid,
  scaleLimitSaid,
  spotsForTargetSaid,
  stepsSaid,
  targetSaid,
} from './scaleUpSentences.ts';

const takeSpots = sets(
  'Use as many spots as the target needs',
  ({ spots }) => ({ [inputs.spots.id]: spots }),
  { spots: spotsForTarget },
);

/** From today's field to square metres. */
export const scaleUpBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'scale-up',
    prose: prose`
      ## The recipe, and the machine

      ${heldSaid}

      ${scaledSaid} ${scaledTodaySaid} ${scaledPracticeSaid}
    `,
  },
  {
    kind: 'controls',
    id: 'scale-up-controls',
    heading: 'The larger machine',
    inputs: [
      inputs.targetRate,
      inputs.spots,
      inputs.largeMaxPower,
      inputs.largeMaxPulseEnergy,
      inputs.largeMaxRepetitionRate,
      inputs.largeMaxSpeed,
      inputs.largeAcceleration,
      inputs.splitterEfficiency,
      inputs.spotDistance,
      inputs.moveTime,
      inputs.fieldOverlap,
    ],
  },
  {
    kind: 'prose',
    id: 'scale-up-limits',
    prose: prose`
      ## What limits it

      ${scaleLimitSaid} ${targetSaid}

      ${spotsForTargetSaid} ${takeSpots}.
    `,
  },
  ceilingsFigure,
  spotsFigure,
  {
    kind: 'prose',
    id: 'scale-up-way',
    prose: prose`
      ## Step by step

      A larger machine is bought in parts. Here each part is added to those before it, beginning with today’s laser and scanner: the power of the larger laser first, then its repetition rate, then the scanner with its speed and acceleration, and at last all spots. What a part brings depends on what limited the work before it. ${stepsSaid}
    `,
  },
  stepsFigure,
  {
    kind: 'prose',
    id: 'scale-up-heat',
    prose: prose`
      ## Spots side by side, and heat

      ${distanceSaid} ${neighboursSaid} ${spotHeatSaid} ${heatLimitSaid}

      ${fieldHeatSaid}
    `,
  },
  {
    kind: 'prose',
    id: 'scale-up-best',
    prose: prose`
      ## Shaped against plain, each at its own best

      The recipe above is today’s, good or not. Under Throughput each beam gets a setting of its own, found by search, with which a field of ripples is done soonest. Here both settings are written by the same larger machine with the same number of spots, in one pass of single pulses, heat not counted. ${scaledBestSaid}
    `,
  },
  {
    kind: 'table',
    id: 'scale-up-table',
    table: {
      caption: 'On the larger machine',
      columns: ['', 'today’s settings', 'with the plate, at its best', 'plate taken out, at its best'],
      rows: [
        ['what limits', scaleLimit, best.scaledShapedLimit, best.scaledUnshapedLimit],
        ['area per hour', areaPerHour, best.scaledShapedRate, best.scaledUnshapedRate],
        ['time for a square metre', timePerSquareMetre, best.scaledShapedTime, best.scaledUnshapedTime],
        [
          'laser energy for a square metre',
          energyPerSquareMetre,
          best.scaledShapedEnergy,
          best.scaledUnshapedEnergy,
        ],
        ['diameter of each spot', spotDiameter, best.scaledShapedDiameter, best.scaledUnshapedDiameter],
        ['pulse energy of a spot', usedPulseEnergy, best.scaledShapedPulse, best.scaledUnshapedPulse],
        ['scan speed', scaledSpeed, best.scaledShapedSpeed, best.scaledUnshapedSpeed],
        ['repetition rate', scaledRepetitionRate, best.scaledShapedRepetition, best.scaledUnshapedRepetition],
      ],
    },
  },
  {
    kind: 'prose',
    id: 'scale-up-plate',
    prose: prose`
      ## What it does to plate and optics

      ${plateDamageSaid} ${scaledBIntegralSaid} A damage threshold belongs to one wavelength, pulse duration and number of pulses, and is found by test (ISO 21254, memory); a hot spot in the beam or dust on the plate brings it down.

      ${opticsHeatSaid}
    `,
  },
  {
    kind: 'controls',
    id: 'plate-damage-controls',
    heading: 'Plate and optics',
    inputs: [inputs.damageThreshold, inputs.damageMargin, inputs.opticsAbsorption, thermalShift],
  },
  {
    kind: 'table',
    id: 'scale-up-loads',
    table: {
      caption: 'What more power does',
      columns: ['', 'value'],
      rows: [
        ['energy of one pulse for all spots', shotEnergy],
        ['peak fluence on the plate', plateFluence],
        ['margin of the plate kept', plateKeeps],
        ['most spots that the plate bears', spotsOfPlate],
        ['B-integral in the plate', scaledBIntegral],
        ['heat in one optic', absorbedPower],
        ['way of heat while a spot passes', diffusionLength],
        ['rise by a spot’s own lines', ownPartRise],
        ['rise by the other spots in the same scan', besideRise],
        ['rise by earlier lines of the other spots', beforeRise],
        ['highest rise with all spots', allSpotsRise],
        ['mean heat into the field', heatPerArea],
        ['mean heat that conduction carries away', carriedPerArea],
      ],
    },
  },
  {
    kind: 'caution',
    id: 'scale-up-fume',
    prose: prose`**Fume.** Whatever is removed goes into the air, and a square metre sets free as many times more than a field as it is larger: fine particles, with chromium and nickel from stainless steel. Extraction at the place and filters for nanoparticles belong to the machine, and so does their change; who works beside it is a matter for occupational safety.`,
  },
];
