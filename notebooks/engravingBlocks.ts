import { engravedDepth, unshapedEngravedDepth } from '../lib/design/engraving.ts';
import { engravingUnevenness } from '../lib/design/engravingBest.ts';
import {
  contrast,
  highestToLowest,
  roughness,
  slope,
  unshapedContrast,
  unshapedHighestToLowest,
  unshapedRoughness,
  unshapedSlope,
} from '../lib/design/engravingFloor.ts';
import {
  engravingPlan,
  planLayers,
  planMassRate,
  planTime,
  planVolume,
  planVolumeRate,
} from '../lib/design/engravingPlan.ts';
import { engravingLayers, wantedDepth } from '../lib/design/grooveInputs.ts';
import { unshapedRuns } from '../lib/design/rippleWindow.ts';
import { lineSpacing, pulseSpacing, scanSpeed } from '../lib/design/scanInputs.ts';
import { hatchAngle } from '../lib/design/scannerInputs.ts';
import type { Block } from './document.ts';
import { depthByLayerFigure, floorFigure, turnsTable } from './engravingFigures.ts';
import {
  engravedDepthSaid,
  engravingBestSaid,
  engravingPlanSaid,
  floorPlaneSaid,
  floorSaid,
  floorSlopeSaid,
  fumeKindSaid,
  fumeSaid,
  plainEngravingSaid,
  plainFloorSaid,
  turnsSaid,
} from './engravingSentences.ts';
import { prose, sets } from './prose.ts';

const takePlan = sets(
  'Take as many layers as the plan needs',
  ({ plan }) => ({ [engravingLayers.id]: plan.layers }),
  { plan: engravingPlan },
);

/** A field engraved layer by layer. */
export const engravingBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'engraving',
    prose: prose`
      ## Engraving a field

      To engrave, the whole field is gone over again and again; each time is a **layer**. Pulses land ${pulseSpacing} apart on lines ${lineSpacing} apart, and every one removes a depth that grows with the logarithm of its fluence over the threshold. ${engravedDepthSaid} ${floorPlaneSaid} ${plainEngravingSaid}
    `,
  },
  {
    kind: 'controls',
    id: 'engraving-controls',
    heading: 'Layers',
    inputs: [engravingLayers, hatchAngle, lineSpacing, scanSpeed, wantedDepth, unshapedRuns],
  },
  depthByLayerFigure,
  {
    kind: 'prose',
    id: 'engraving-floor-said',
    prose: prose`
      ### The floor

      Where pulses overlap unevenly, the floor keeps their pattern. ${floorSaid} ${floorSlopeSaid} ${plainFloorSaid}
    `,
  },
  floorFigure,
  {
    kind: 'prose',
    id: 'engraving-left-out',
    prose: prose`
      **What the model leaves out.** Melt and its recast rims, debris, material that settles again, cones that grow under many pulses, and the heat of the pulses before. They often make a real floor rougher than overlap alone does (common practice, no source). In the model every layer meets a flat floor, as deep as the mean of all before it; lines begin one below the other and are written one after another, all the same way; pulses count on a place from a fixed fluence on, and lower its threshold as the incubation exponent says (incubation: earlier pulses make a surface easier to mark).
    `,
  },
  {
    kind: 'table',
    id: 'engraving-table',
    table: {
      caption: 'The floor after all layers',
      columns: ['', 'with the plate', 'plate taken out'],
      rows: [
        ['mean depth', engravedDepth, unshapedEngravedDepth],
        ['roughness Sq, root mean square', roughness, unshapedRoughness],
        ['highest to lowest point', highestToLowest, unshapedHighestToLowest],
        ['contrast: highest less lowest depth, over their sum', contrast, unshapedContrast],
        ['steepest slope, height over width', slope, unshapedSlope],
      ],
    },
  },
  {
    kind: 'prose',
    id: 'engraving-turns-said',
    prose: prose`
      ### Turning the hatch

      The hatch is the set of lines that fills the field. If every layer is written along the same lines, their pattern only grows. Turned from layer to layer, layers no longer lie pattern upon pattern; after a turn of 90° or 45°, though, the directions soon come back, while after 67° they do so only after 180 layers. ${turnsSaid}
    `,
  },
  turnsTable,
  {
    kind: 'prose',
    id: 'engraving-plan-said',
    prose: prose`
      ### A plan for the depth wanted

      ${engravingPlanSaid} ${takePlan}.
    `,
  },
  {
    kind: 'table',
    id: 'engraving-plan-table',
    table: {
      caption: 'Plan for the depth wanted',
      columns: ['', 'value'],
      rows: [
        ['depth wanted', wantedDepth],
        ['layers', planLayers],
        ['time for the field', planTime],
        ['volume removed', planVolume],
        ['volume per time', planVolumeRate],
        ['mass removed per time', planMassRate],
      ],
    },
    needs: [planLayers, planTime],
  },
  {
    kind: 'caution',
    id: 'engraving-fume',
    prose: prose`**Fume.** ${fumeSaid} ${fumeKindSaid}`,
  },
  {
    kind: 'prose',
    id: 'engraving-best-said',
    prose: prose`
      ### The plain beam at its own best

      Engraved with the settings of the plate, the plain beam need not be at its best. Its best peak fluence is the one at which the first layer removes most per energy; where earlier pulses do not lower the threshold, that is the best peak of a single crater. Its lines may lie as far apart as leaves the first layer no more uneven than with the plate, ${engravingUnevenness} (root mean square over mean), or than a thousandth where that is more. Pulses stay as far apart as they are, and a stop, where there is one, stays in. ${engravingBestSaid} At equal average power, what removes more per energy also removes more per time.
    `,
  },
];
