import { thermalShift } from '../lib/design/depthInUse.ts';
import { focalLength } from '../lib/design/lens.ts';
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
import { splitterSmear } from '../lib/design/scaleUpSplitter.ts';
import { spotsForTarget } from '../lib/design/scaleUpTarget.ts';
import { shotEnergy } from '../lib/design/scaleUpWork.ts';
import type { Block } from './document.ts';
import { prose, sets } from './prose.ts';
import { scaledBestSaid, scaledGainSaid, scaledOpticsSaid } from './scaleUpBestSentences.ts';
import { ceilingsFigure, spotsFigure, stepsFigure } from './scaleUpFigures.ts';
import {
  distanceSaid,
  fieldHeatSaid,
  heatLimitSaid,
  neighboursSaid,
  spotHeatSaid,
} from './scaleUpHeatSentences.ts';
import { opticsHeatSaid, plateDamageSaid, scaledBIntegralSaid } from './scaleUpPlateSentences.ts';
import { seamSaid, splitterSaid, tooManySaid, turningRowSaid, xRayPowerSaid } from './scaleUpRowSentences.ts';
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

      Today’s field, as it is set under [Throughput](#throughput), is what the larger machine is to write. ${heldSaid} ${turningRowSaid} ${seamSaid}

      ${scaledSaid} ${tooManySaid} ${scaledTodaySaid} ${scaledPracticeSaid}
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

      A larger machine is bought in parts. Here each part is added to those before it, beginning with today’s laser and scanner at the fastest that the recipe lets them be: the power of the larger laser first, then its repetition rate, then the scanner with its speed and acceleration, and at last the further spots. What a part brings depends on what limited the work before it. ${stepsSaid}
    `,
  },
  stepsFigure,
  {
    kind: 'prose',
    id: 'scale-up-heat',
    prose: prose`
      ## Spots side by side, and heat

      ${distanceSaid} ${splitterSaid}

      ${neighboursSaid} ${spotHeatSaid} ${heatLimitSaid}

      ${fieldHeatSaid}
    `,
  },
  {
    kind: 'prose',
    id: 'scale-up-best',
    prose: prose`
      ## Shaped against plain, with the best settings of today’s machine

      The recipe above is today’s, good or not. Under [Throughput](#throughput) the beam with the plate and the plain beam each get a setting of their own, found by search, with which a field of ripples is done soonest on today’s machine. Here both settings are written by the same larger machine with the same number of spots, in one pass of single pulses; a search for the larger machine itself might find faster ones. ${scaledBestSaid}

      ${scaledGainSaid}

      ${scaledOpticsSaid} Heat is not counted for these settings, so that they must not be set against today’s where heat limits that.
    `,
  },
  {
    kind: 'table',
    id: 'scale-up-table',
    table: {
      caption: 'On the larger machine',
      columns: [
        '',
        'today’s settings',
        'best with the plate today, on the larger machine',
        'best with the plate taken out, on the larger machine',
      ],
      rows: [
        ['heat', 'counted where it is known', 'not counted', 'not counted'],
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
        ['energy of one pulse for all spots', shotEnergy, best.scaledShapedShot, best.scaledUnshapedShot],
        ['focal length of the lens', focalLength, best.scaledShapedLens, best.scaledUnshapedLens],
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

      The pulse for all spots is taken to pass the plate before it is split. These numbers are those of today’s recipe with all spots. ${plateDamageSaid} ${scaledBIntegralSaid} A damage threshold, the fluence from which on glass or coating suffer, belongs to one wavelength, pulse duration and number of pulses, and is found by test (ISO 21254, memory); a hot spot in the beam or dust on the plate brings it down.

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
        ['phase that the pulse itself adds in the plate (B-integral)', scaledBIntegral],
        ['heat in one optic', absorbedPower],
        ['how far a diffractive splitter draws out the outermost spot', splitterSmear],
        ['how far heat spreads while a spot passes', diffusionLength],
        ['temperature rise by a spot’s own lines', ownPartRise],
        ['rise by the other spots in the same scan', besideRise],
        ['rise by earlier lines of the other spots', beforeRise],
        ['highest rise with all spots', allSpotsRise],
        ['mean heat into the field', heatPerArea],
        ['mean heat that would just reach the rise allowed', carriedPerArea],
      ],
    },
  },
  {
    kind: 'caution',
    id: 'scale-up-x-rays',
    prose: prose`**X-rays at high mean power.** ${xRayPowerSaid} (H. Legall et al., Appl. Phys. A 124, 407 (2018), memory.)`,
  },
  {
    kind: 'caution',
    id: 'scale-up-fume',
    prose: prose`**Fume.** Whatever is removed goes into the air, and a square metre sets free as many times more than a field as it is larger: fine particles, with chromium and nickel from stainless steel. Extraction at the place and filters for nanoparticles belong to the machine, and so does their change; who works beside it is a matter for occupational safety.`,
  },
];
