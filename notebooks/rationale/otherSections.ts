import { pulsesPerBurst } from '../../lib/design/burst.ts';
import { fieldWidth } from '../../lib/design/depthInUse.ts';
import { fieldTime, lineNumber, overscanLength } from '../../lib/design/hatch.ts';
import { conductivity, density, diffusivity, specificHeat } from '../../lib/design/heatMaterial.ts';
import { repetitionRate } from '../../lib/design/laser.ts';
import { averagePower, usedPulseEnergy } from '../../lib/design/losses.ts';
import { lineSpacing, passes, pulseSpacing, scanSpeed } from '../../lib/design/scanInputs.ts';
import { directions, fieldHeight, hatchAngle, interlacing } from '../../lib/design/scannerInputs.ts';
import {
  bestBelowThresholdSaid,
  comparisonSaid,
  energyPerAreaSaid,
  practiceSaid,
} from '../comparisonSentences.ts';
import { depthInUseSaid, depthOfFocusSaid } from '../depthSentences.ts';
import type { Block } from '../document.ts';
import { familyOrderSaid } from '../familyRuleSentences.ts';
import { goodForSaid, usablePlanesSaid } from '../familySentences.ts';
import { limitSaid, scanFieldSaid, turnSaid } from '../hatchSentences.ts';
import {
  absorbedSaid,
  fieldRiseSaid,
  perPulseSaid,
  plainRiseSaid,
  rateSaid,
  riseSaid,
  thicknessSaid,
} from '../heatSentences.ts';
import { matching } from '../matching.ts';
import { prose } from '../prose.ts';
import { peakInWindowSaid } from '../rippleWindowSentences.ts';
import { throughFocus } from '../throughFocus.ts';
import { throughput } from '../throughput.ts';
import { asProse, blocksOf, type Section } from './section.ts';

const said = (id: string, text: ReturnType<typeof prose>): Block => ({ kind: 'prose', id, prose: text });

/** What was measured of the beam; each block stands there while the design takes something from it. */
export const measuredBeamBlocks: readonly Block[] = blocksOf(
  matching,
  'measured',
  'measured-warning',
  'measured-notes',
  'beam-image',
  'caustic',
  'caustic-judged',
  'caustic-figure',
);

/** The plate against the plain beam, each at its own best. */
export const plateSection: Section = {
  id: 'with-plate',
  heading: 'With the plate or without it',
  level: 2,
  blocks: [
    said(
      'with-plate-said',
      prose`
        Scanned alike, the beam that the settings were made for has the advantage. Here the beam with the plate and the plain one each get their own plane, spot size, pulse energy, pulse spacing, line spacing and speed, found by search, so that a field of ripples is done soonest in one pass of single pulses, within what scanner and laser can do. Heat is not counted.

        ${peakInWindowSaid} How the field stands today has no part in the comparison.

        ${comparisonSaid} ${energyPerAreaSaid} ${bestBelowThresholdSaid} ${practiceSaid}
      `,
    ),
    ...blocksOf(throughput, 'comparison-table'),
  ],
};

/** Which planes there are, and how deep they are. */
export const planesSection: Section = {
  id: 'planes',
  heading: 'Usable planes and their depth',
  level: 1,
  blocks: [
    said('planes-said', prose`${usablePlanesSaid} ${familyOrderSaid}`),
    ...blocksOf(throughFocus, 'map', 'planes-table'),
    said(
      'depth-said',
      prose`
        ${goodForSaid}

        ${depthOfFocusSaid} ${depthInUseSaid}
      `,
    ),
    ...blocksOf(throughFocus, 'depth-table', 'strip'),
    ...blocksOf(throughput, 'usable-field', 'field-planes'),
    ...blocksOf(throughFocus, 'measured-spot-warning').map(asProse),
    ...blocksOf(throughFocus, 'measured-spot-figure', 'measured-profiles', 'measured-profiles-figures'),
    ...blocksOf(throughFocus, 'focus-caustic-figure'),
  ],
};

/** What is set on laser and scanner. */
const settingsTable: Block = {
  kind: 'table',
  id: 'settings',
  table: {
    caption: 'Settings of laser and scanner',
    columns: ['', 'value'],
    rows: [
      ['pulse energy', usedPulseEnergy],
      ['repetition rate', repetitionRate],
      ['average power', averagePower],
      ['pulses per burst', pulsesPerBurst],
      ['scan speed', scanSpeed],
      ['pulse spacing', pulseSpacing],
      ['line spacing', lineSpacing],
      ['lines of the first pass', lineNumber],
      ['passes', passes],
      ['turn of the hatch from pass to pass', hatchAngle],
      ['interlacing', interlacing],
      ['direction of the lines', directions],
      ['overscan', overscanLength],
      ['width of the field', fieldWidth],
      ['height of the field', fieldHeight],
      ['time for the field', fieldTime],
    ],
  },
};

/** Field, time and heat. */
export const processSection: Section = {
  id: 'process',
  heading: 'Process settings',
  level: 1,
  blocks: [
    said(
      'process-said',
      prose`
        Each pulse has ${usedPulseEnergy}, the average power is ${averagePower}. ${scanFieldSaid} ${turnSaid}

        ${limitSaid}
      `,
    ),
    settingsTable,
    ...blocksOf(throughput, 'rate-by-speed'),
    said(
      'heat-said',
      prose`
        ${absorbedSaid} ${perPulseSaid} ${riseSaid} ${rateSaid} ${plainRiseSaid}

        The surface is taken with a conductivity of ${conductivity}, a density of ${density} and a specific heat of ${specificHeat}, together a diffusivity χ of ${diffusivity}. In the table f is the repetition rate, t the time since the start and d the thickness; a half-space is a part so thick that heat never comes to its back.

        ${fieldRiseSaid} ${thicknessSaid}
      `,
    ),
    ...blocksOf(throughput, 'heat-estimates', 'heat-line-by-line'),
  ],
};
