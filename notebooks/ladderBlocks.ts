import { doubt, excess, expectedReading, ladderRows, stepPart } from '../lib/design/ladderInputs.ts';
import { ladderTable, measuredLadder } from '../lib/design/ladderMarks.ts';
import {
  ladderCount,
  ladderEnergy,
  ladderFirst,
  ladderLast,
  ladderReach,
  unshapedLadderCount,
  unshapedLadderEnergy,
  unshapedLadderFirst,
  unshapedLadderLast,
  unshapedLadderReach,
} from '../lib/design/ladderResults.ts';
import type { Block } from './document.ts';
import { ladderFigure } from './ladderFigure.ts';
import { ladderFitFigure } from './ladderFitFigure.ts';
import {
  ladderDirectionSaid,
  ladderLeftSaid,
  ladderTableSaid,
  ladderVerdictSaid,
  ladderZeroSaid,
} from './ladderFitSentences.ts';
import { ladderEnergySaid, ladderPlateOutSaid, ladderRowsSaid, ladderSidesSaid } from './ladderSentences.ts';
import { prose } from './prose.ts';

/** Finding z = 0: a row of marks along z, planned and measured. */
export const ladderBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'ladder',
    prose: prose`
      ## Finding z = 0

      Every prediction counts z from the focus, and the scale of a stage does not know where that is. A **focus ladder** finds it: single pulses in a row, the workpiece moved a little along z from each to the next, with so little energy that marks appear near the focus alone.

      ${ladderRowsSaid} ${ladderEnergySaid} ${ladderSidesSaid}
    `,
  },
  {
    kind: 'controls',
    id: 'ladder-controls',
    heading: 'Focus ladder',
    inputs: [ladderRows, stepPart, doubt, expectedReading, excess],
  },
  {
    kind: 'caution',
    id: 'ladder-plate-out',
    when: [
      { choice: ladderRows, is: 'both' },
      { choice: ladderRows, is: 'without' },
    ],
    prose: prose`**Before the row without the plate.** ${ladderPlateOutSaid}`,
  },
  {
    kind: 'table',
    id: 'ladder-rows',
    table: {
      caption: 'The two rows',
      columns: ['', 'with the plate', 'plate taken out'],
      rows: [
        ['pulse energy', ladderEnergy, unshapedLadderEnergy],
        ['marks in the row', ladderCount, unshapedLadderCount],
        ['first reading of z', ladderFirst, unshapedLadderFirst],
        ['last reading of z', ladderLast, unshapedLadderLast],
        ['marks expected to this distance from the focus', ladderReach, unshapedLadderReach],
      ],
    },
  },
  ladderFigure,
  {
    kind: 'prose',
    id: 'ladder-take-along',
    prose: prose`Save the drawing as CSV: that is the table to take along, with empty columns for what the microscope shows. Filled in, it comes back here. Any other table will do too: a heading with units and a row a mark, as in *z (mm); dx (µm); dy (µm)*; one diameter or the area is enough, columns *plate* (1 with it, 0 without it) and *energy (µJ)* may stand beside them, and a size of 0 says that no mark was seen.`,
  },
  { kind: 'controls', id: 'ladder-table', heading: 'Measured ladder', inputs: [ladderTable] },
  {
    kind: 'prose',
    id: 'ladder-said',
    needs: [measuredLadder],
    prose: prose`
      ${ladderTableSaid} ${ladderLeftSaid}

      ${ladderZeroSaid} ${ladderDirectionSaid}

      ${ladderVerdictSaid}
    `,
  },
  ladderFitFigure,
];
