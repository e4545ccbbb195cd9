import {
  heatRise,
  lineRise,
  maxHeatRate,
  unshapedHeatRise,
  unshapedLineRise,
  unshapedMaxHeatRate,
} from '../lib/design/heat.ts';
import {
  fieldRise,
  plateRise,
  pointRise,
  profileRise,
  spotRise,
  staticRise,
  unshapedFieldRise,
  unshapedPlateRise,
  unshapedPointRise,
  unshapedProfileRise,
  unshapedSpotRise,
  unshapedStaticRise,
  unshapedWarmThrough,
  warmThrough,
} from '../lib/design/heatEstimates.ts';
import {
  absorptanceSource,
  residualFraction,
  riseLimit,
  thermalSource,
  thickness,
  typedAbsorptance,
  typedConductivity,
  typedDensity,
  typedSpecificHeat,
} from '../lib/design/heatInputs.ts';
import { conductivity, density, diffusivity, specificHeat } from '../lib/design/heatMaterial.ts';
import { material } from '../lib/design/material.ts';
import type { Block } from './document.ts';
import { firstLineFigure, lineByLineFigure, variationsTable } from './heatFigures.ts';
import {
  absorbedSaid,
  fieldRiseSaid,
  heatProfileSaid,
  perPulseSaid,
  plainRiseSaid,
  pointSaid,
  rateSaid,
  riseSaid,
  thicknessSaid,
} from './heatSentences.ts';
import { prose } from './prose.ts';

/** How warm the surface is when the next pulse comes, and what changes it. */
export const heatBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'heat',
    prose: prose`
      ## Heat

      Not all that is absorbed leaves with what is removed: a part stays as **residual heat**, spreads, and is still there when the next pulse comes, or the next line. Too much of it colours, softens or warps the part and changes the ripples; how much is too much is to be found by trial, and set as the limit below.

      ${absorbedSaid} ${perPulseSaid}

      ${riseSaid} ${rateSaid} ${plainRiseSaid}
    `,
  },
  {
    kind: 'controls',
    id: 'heat-controls',
    heading: 'Heat and workpiece',
    inputs: [material, thickness, residualFraction, riseLimit, absorptanceSource, thermalSource],
  },
  {
    kind: 'controls',
    id: 'heat-typed-absorptance',
    heading: 'Absorptance as typed',
    when: { choice: absorptanceSource, is: 'typed' },
    inputs: [typedAbsorptance],
  },
  {
    kind: 'controls',
    id: 'heat-typed-values',
    heading: 'Thermal values as typed',
    when: { choice: thermalSource, is: 'typed' },
    inputs: [typedConductivity, typedDensity, typedSpecificHeat],
  },
  {
    kind: 'prose',
    id: 'heat-values',
    prose: prose`Conductivity ${conductivity}, density ${density}, specific heat ${specificHeat}, together a **diffusivity** χ of ${diffusivity}: how fast heat spreads. In the table *f* is the repetition rate, *t* the time since the start and *d* the thickness; a half-space is a part so thick that heat never comes to its back. Values kept for materials are handbook values near 20 °C (memory); they change as the part warms, and alloys differ.`,
  },
  {
    kind: 'table',
    id: 'heat-estimates',
    table: {
      caption: 'Estimates of the rise just before the next pulse, and when each holds',
      columns: ['estimate', 'with the plate', 'plate taken out', 'holds where'],
      rows: [
        [
          'point, endlessly many pulses',
          pointRise,
          unshapedPointRise,
          'the spot is small against √(8χ/f) and stands still; else it overestimates by far',
        ],
        [
          'spot standing still, 50 pulses',
          staticRise,
          unshapedStaticRise,
          'the spot does stand still, and heat has not reached the back: t ≪ d²/χ',
        ],
        [
          'moving spot, end of a line, where the next pulse comes',
          spotRise,
          unshapedSpotRise,
          'for the line being written, no line before; the hottest place lies behind where pulses are apart',
        ],
        [
          'moving spot, its own profile, hottest place',
          profileRise,
          unshapedProfileRise,
          'at its hottest place; the profile counts while heat has spread less than the spot. It may pass all together below, which takes the spot as a Gaussian: your limit is held against that',
        ],
        ['left by earlier lines', lineRise, unshapedLineRise, 'all lines before, at the hottest place'],
        [
          'all together, hottest state and place',
          heatRise,
          unshapedHeatRise,
          'back insulated, part wide, no losses from the surface',
        ],
        [
          'field heated evenly, half-space',
          fieldRise,
          unshapedFieldRise,
          'field time ≪ d²/χ; no pulse or line stands out',
        ],
        [
          'field heated evenly, wide plate',
          plateRise,
          unshapedPlateRise,
          'part much wider than the field, insulated',
        ],
        [
          'all heat stays below the field',
          warmThrough,
          unshapedWarmThrough,
          'field time ≫ d²/χ, part no larger than the field, no losses: an upper bound for its mean',
        ],
        [
          'repetition rate at your limit',
          maxHeatRate,
          unshapedMaxHeatRate,
          'both spacings held, speed rises with it',
        ],
      ],
    },
  },
  {
    kind: 'prose',
    id: 'heat-estimates-said',
    prose: prose`
      The point limit is quoted often, and overestimates badly where the spot is no point: on steel, with 50 pulses that leave 1.5 µJ each at 1 MHz in a spot of 15 µm radius, it gives 5404 K where the spot gives 1594 K. ${pointSaid} ${heatProfileSaid}

      ${fieldRiseSaid} ${thicknessSaid}

      A large surface that is heated evenly passes heat into the depth only. The number of pulses that it may then take before a limit is passed falls with the square of the average power (R. Weber et al., Opt. Express 25, 3966 (2017), abstract).
    `,
  },
  firstLineFigure,
  lineByLineFigure,
  variationsTable,
  {
    kind: 'caution',
    id: 'heat-caution',
    prose: prose`**Hot parts.** These are rises of the surface just before the next pulse; right after each pulse it is far hotter. Tempering colours, softening of hardened steel and warping begin at temperatures that depend on the alloy and the time: try it on a spare part. Parts stay hot after the laser is off; hot metal, dust and fume can burn or catch fire, and fine particles of titanium, aluminium or magnesium can ignite in air. Extraction, fire watch and handling follow your local rules, and your laser safety officer decides. With bursts, what close pulses do to the threshold (incubation) is not validated here: only their heat is added up.`,
  },
];
