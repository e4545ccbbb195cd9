import { sheetThickness } from '../lib/design/grooveInputs.ts';
import { plainSheet, plainSheetCut, sheet, sheetCut } from '../lib/design/sheet.ts';
import { formatNumber } from '../lib/graph/units.ts';
import { phrase, says } from './prose.ts';

/** When the sheet is through, and what the cut looks like. */
export const sheetSaid = says(
  { cut: sheetCut, thickness: sheetThickness },
  ({ cut: { passes, allPasses, exitKerf, entryKerf } }) => {
    const through = phrase`The sheet of ${sheetThickness} is through after ${passes === 1 ? 'one pass' : phrase`${sheet.passes} passes`}`;
    const sides =
      exitKerf === 0
        ? phrase`the far face is open along a thread only, and the near one ${sheet.entryKerf} wide`
        : exitKerf < 0.5 * entryKerf
          ? phrase`the far face is open ${sheet.exitKerf} wide, less than half of the near one (${sheet.entryKerf})`
          : phrase`the far face is open ${sheet.exitKerf} wide, the near one ${sheet.entryKerf}`;
    return allPasses === passes
      ? phrase`${through}: ${sides}. Further passes would widen the exit.`
      : phrase`${through}; after ${String(allPasses - passes)} more ${sides}. The sides lean by ${sheet.taper}.`;
  },
  [sheetThickness, sheet.passes, sheet.entryKerf, sheet.exitKerf, sheet.taper],
);

/** The plain beam beside it. */
export const plainSheetSaid = says(
  { cut: sheetCut, plain: plainSheetCut },
  ({ cut, plain }) => {
    const ratio = plain.allPasses / cut.allPasses;
    const passes =
      ratio > 1.05
        ? phrase`takes ${formatNumber(ratio, 3)} times the time`
        : ratio < 0.95
          ? phrase`takes ${formatNumber(ratio, 3)} of the time`
          : phrase`takes about as long`;
    const lean = plain.taper - cut.taper;
    const taper =
      Math.abs(lean) < Math.PI / 180
        ? phrase`and its sides lean alike (${plainSheet.taper})`
        : lean > 0
          ? phrase`and its sides lean more (${plainSheet.taper})`
          : phrase`and its sides lean less (${plainSheet.taper})`;
    return phrase`Without the plate, in its focus, the beam ${passes} ${taper}; its cut is ${plainSheet.entryKerf} wide in front.`;
  },
  [plainSheet.taper, plainSheet.entryKerf],
);
