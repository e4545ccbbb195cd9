import { firstMicrograph, otherMicrograph } from '../../lib/design/micrographs.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import type { Block } from '../document.ts';
import {
  engravedDepthSaid,
  engravingBestSaid,
  engravingPlanSaid,
  floorPlaneSaid,
  floorSaid,
  floorSlopeSaid,
  plainFloorSaid,
  turnsSaid,
} from '../engravingSentences.ts';
import { grooves } from '../grooves.ts';
import { prose } from '../prose.ts';
import { directionSaid, periodSaid } from '../rippleSentences.ts';
import { ripples } from '../ripples.ts';
import {
  fieldSaid,
  gainsApartSaid,
  incubationInWindowSaid,
  peakInWindowSaid,
} from '../rippleWindowSentences.ts';
import { scaleUp } from '../scaleUp.ts';
import {
  distanceSaid,
  fieldHeatSaid,
  heatLimitSaid,
  neighboursSaid,
  spotHeatSaid,
} from '../scaleUpHeatSentences.ts';
import { opticsHeatSaid, plateDamageSaid, scaledBIntegralSaid } from '../scaleUpPlateSentences.ts';
import { seamSaid, splitterSaid, tooManySaid, turningRowSaid } from '../scaleUpRowSentences.ts';
import { heldSaid, scaledSaid, scaleLimitSaid, spotsForTargetSaid, targetSaid } from '../scaleUpSentences.ts';
import { asProse, blockOf, blocksOf, type Section } from './section.ts';

const said = (id: string, text: ReturnType<typeof prose>): Block => ({ kind: 'prose', id, prose: text });

/** What a micrograph tells; a warning about it is part of that. */
function micrograph(id: string, found: Quantity): Block[] {
  return [
    ...blocksOf(ripples, `${id}-warning`).map(asProse),
    { ...blockOf(ripples, `${id}-said`), needs: [found] },
    ...blocksOf(ripples, `${id}-expected`, `${id}-direction`),
  ];
}

const ripplesSection: Section = {
  id: 'use-ripples',
  heading: 'Ripples',
  level: 2,
  use: 'ripples',
  blocks: [
    said('ripples-said', prose`${periodSaid} ${directionSaid}`),
    ...blocksOf(ripples, 'ripple-table'),
    said('ripple-window-said', prose`${peakInWindowSaid} ${incubationInWindowSaid}`),
    said('ripple-field-said', prose`${fieldSaid} ${gainsApartSaid}`),
    ...blocksOf(ripples, 'field-table', 'gain-by-plane', 'series-said', 'series-figure'),
    ...micrograph('micrograph-a', firstMicrograph.found),
    ...micrograph('micrograph-b', otherMicrograph.found),
    ...blocksOf(ripples, 'micrographs-compared', 'micrograph-pictures', 'micrograph-orientation'),
  ],
};

const groovesSection: Section = {
  id: 'use-grooves',
  heading: 'Grooves',
  level: 2,
  use: 'grooves',
  blocks: blocksOf(
    grooves,
    'groove',
    'groove-section',
    'groove-side',
    'groove-table',
    'groove-equal',
    'groove-equal-table',
    'section-said',
    'section-figure',
    'section-table',
    'section-fit',
  ),
};

const engravingSection: Section = {
  id: 'use-engraving',
  heading: 'Engraving',
  level: 2,
  use: 'engraving',
  blocks: [
    said(
      'engraving-said',
      prose`
        ${engravedDepthSaid} ${floorPlaneSaid}

        ${floorSaid} ${floorSlopeSaid} ${plainFloorSaid} ${turnsSaid}

        ${engravingPlanSaid}

        ${engravingBestSaid}
      `,
    ),
    ...blocksOf(grooves, 'engraving-table', 'engraving-plan-table', 'engraving-left-out'),
  ],
};

const sheetSection: Section = {
  id: 'use-sheet',
  heading: 'Through a thin sheet',
  level: 2,
  use: 'sheet',
  blocks: blocksOf(grooves, 'sheet', 'sheet-table'),
};

const scaleUpSection: Section = {
  id: 'use-scale-up',
  heading: 'On a larger machine',
  level: 2,
  use: 'scaleUp',
  blocks: [
    said(
      'scale-up-said',
      prose`
        ${heldSaid} ${turningRowSaid} ${seamSaid}

        ${scaledSaid} ${tooManySaid}

        ${scaleLimitSaid} ${targetSaid} ${spotsForTargetSaid}

        ${distanceSaid} ${splitterSaid} ${neighboursSaid} ${spotHeatSaid} ${heatLimitSaid}

        ${fieldHeatSaid}

        ${plateDamageSaid} ${scaledBIntegralSaid} ${opticsHeatSaid}
      `,
    ),
    ...blocksOf(scaleUp, 'scale-up-ceilings', 'scale-up-table', 'scale-up-loads'),
  ],
};

/** What the design is used for; each stands there where that use counts. */
export const useSections: readonly Section[] = [
  ripplesSection,
  groovesSection,
  engravingSection,
  sheetSection,
  scaleUpSection,
];
