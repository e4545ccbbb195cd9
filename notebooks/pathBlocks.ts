import type { Block } from './document.ts';
import { edgeFigure, edgeMapFigure, pathFigure } from './pathFigures.ts';
import { edgeWidthSaid, pathOrderSaid, turnRoundSaid } from './pathSentences.ts';
import { prose } from './prose.ts';

/** The path of the spot to scale, and what the edges of the field get. */
export const pathBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'path-said',
    prose: prose`
      ### The path

      ${pathOrderSaid} The circle is the spot, with the diameter by which pulses per spot are counted below.
    `,
  },
  pathFigure,
];

/** What becomes of the accumulated fluence at the edges. */
export const edgeBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'edges-said',
    prose: prose`
      ## The edges of the field

      A spot that is centred on the edge lies half outside: the fluence that all pulses together bring falls off over the size of the spot. ${turnRoundSaid} ${edgeWidthSaid}
    `,
  },
  edgeFigure,
  edgeMapFigure,
];
