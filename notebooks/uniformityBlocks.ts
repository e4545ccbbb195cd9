import { largestModulation } from '../lib/design/comparisonInputs.ts';
import { lineSpacing, scanSpeed } from '../lib/design/scanInputs.ts';
import {
  alongModulation,
  modulation,
  unshapedAlongModulation,
  unshapedModulation,
} from '../lib/design/uniformity.ts';
import { evenSpacing } from '../lib/design/uniformityCharts.ts';
import type { Block } from './document.ts';
import { prose, sets } from './prose.ts';
import { acrossLinesFigure, lineProfileFigure, modulationFigure } from './uniformityFigures.ts';
import {
  closerLinesSaid,
  evenerSaid,
  evenSaid,
  lineAgainstPulseSaid,
  noneBelowSaid,
} from './uniformitySentences.ts';

const toTheMinimum = sets('Set the lines to the minimum', ({ spacing }) => ({ [lineSpacing.id]: spacing }), {
  spacing: evenSpacing,
});

/** How even a scanned field is. */
export const uniformityBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'uniformity',
    prose: prose`
      ## How even the field is

      Where lines overlap, the fluence that a place gathers from all pulses, its **accumulated fluence**, rises and falls from line to line. The **modulation** is the highest less the lowest over their sum: 0 % is even, and at 100 % nothing is left between the lines. ${evenSaid}
    `,
  },
  {
    kind: 'controls',
    id: 'uniformity-controls',
    heading: 'Lines',
    inputs: [lineSpacing, scanSpeed, largestModulation],
  },
  acrossLinesFigure,
  {
    kind: 'table',
    id: 'uniformity-table',
    table: {
      caption: 'Modulation of the accumulated fluence',
      columns: ['', 'with the plate', 'plate taken out'],
      rows: [
        ['across the lines', modulation, unshapedModulation],
        ['along them, from the spacing of the pulses', alongModulation, unshapedAlongModulation],
      ],
    },
  },
  {
    kind: 'prose',
    id: 'uniformity-spacing',
    prose: prose`
      ### Which line spacing

      Closer lines are not always more even. A spot can be thought of as made of waves of many periods. Where it holds none of the period of the lines, they leave almost no pattern; with closer lines it comes back. ${noneBelowSaid}
    `,
  },
  modulationFigure,
  {
    kind: 'prose',
    id: 'closer-lines',
    prose: prose`${closerLinesSaid}`,
  },
  { kind: 'prose', id: 'evener', prose: prose`${evenerSaid}` },
  { kind: 'prose', id: 'evener-link', prose: prose`${toTheMinimum}: ${evenSpacing}.`, needs: [evenSpacing] },
  {
    kind: 'prose',
    id: 'line-window',
    prose: prose`
      ### One pulse, one line, one field

      A line adds up the pulse along its way, so that each place gets what lies in one cut through the spot: long in the middle, short at the edge. The part of a pulse between two fluences, its **window**, is therefore not the part of a line between two accumulated fluences. A round flat-top leaves a rounded line, since a cut through a disc, a chord, is shorter towards its edge; a ring, with less in its middle, can level it.

      ${lineAgainstPulseSaid}
    `,
  },
  lineProfileFigure,
];
