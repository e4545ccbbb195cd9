import { passesAfter, sheetThickness } from '../lib/design/grooveInputs.ts';
import { plainSheet, sheet } from '../lib/design/sheet.ts';
import type { Block } from './document.ts';
import { prose } from './prose.ts';
import { sheetFigure } from './sheetFigures.ts';
import { bestPlainSheetSaid, plainSheetSaid, sheetBesideSaid, sheetSaid } from './sheetSentences.ts';

/** A thin metal sheet cut along the line. */
export const sheetBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'sheet',
    prose: prose`
      ## Through a thin sheet

      ${sheetSaid} ${sheetBesideSaid} ${plainSheetSaid}

      ${bestPlainSheetSaid}
    `,
  },
  { kind: 'controls', id: 'sheet-controls', heading: 'Sheet', inputs: [sheetThickness, passesAfter] },
  sheetFigure,
  {
    kind: 'table',
    id: 'sheet-table',
    table: {
      caption: 'Cut through the sheet',
      columns: ['', 'with the plate', 'plate taken out'],
      rows: [
        ['passes until it opens', sheet.passes, plainSheet.passes],
        ['width of the cut (kerf) in the near face', sheet.entryKerf, plainSheet.entryKerf],
        ['width of the cut (kerf) in the far face', sheet.exitKerf, plainSheet.exitKerf],
        ['depth cut beside it', sheet.besideDepth, plainSheet.besideDepth],
        ['taper: angle of the sides against the upright', sheet.taper, plainSheet.taper],
        ['time to cut a length, all passes', sheet.timePerLength, plainSheet.timePerLength],
      ],
    },
  },
  {
    kind: 'caution',
    id: 'sheet-left-out',
    prose: prose`**Metal only.** The sheet takes up the light at its surface. Glass and other clear sheets do not: they absorb by the strength of the light inside the volume, and are damaged there and on the far face, so that none of these numbers holds for them. Left out for metal: melt and raised edges (burr) on the far face, what bends or falls out of a thin sheet, and what the light meets behind it once it is through: keep reflecting things away from there.`,
  },
];
