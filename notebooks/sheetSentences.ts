import { sheetThickness } from '../lib/design/grooveInputs.ts';
import { plainSheet, plainSheetCut, sheet, sheetCut } from '../lib/design/sheet.ts';
import { bestPlainEnergyPerLength, bestPlainSheet, sheetEnergyPerLength } from '../lib/design/sheetBest.ts';
import { formatNumber } from '../lib/graph/units.ts';
import { phrase, says } from './prose.ts';
import { angleText, energyText, fluenceText, lengthText, percentText } from './shortTexts.ts';

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

/** What rings of the spot do to the near face. */
export const sheetBesideSaid = says(
  { cut: sheetCut, thickness: sheetThickness },
  ({ cut: { besideDepth }, thickness }) =>
    besideDepth > 0.02 * thickness
      ? phrase`Beside the cut, by rings of the spot and at the foot of the walls, up to ${sheet.besideDepth} are cut into the near face, ${percentText(besideDepth / thickness, 2)} of the thickness: less fluence would spare the face.`
      : '',
  [sheet.besideDepth],
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
    const thread =
      plain.exitKerf < 0.5 * plain.entryKerf
        ? ', less than half of that: more passes would widen it, so that angles are no fair comparison yet'
        : '';
    return phrase`Without the plate, in its focus, the beam ${passes} ${taper}; its cut is ${plainSheet.entryKerf} wide in front and ${plainSheet.exitKerf} behind${thread}.`;
  },
  [plainSheet.taper, plainSheet.entryKerf, plainSheet.exitKerf],
);

/** Energies that differ by less than this part are called alike: the best is found to 2 %. */
const alike = 0.03;

/** The plain beam with its energy and its focus where they are best for it. */
export const bestPlainSheetSaid = says(
  {
    best: bestPlainSheet,
    cut: sheetCut,
    shaped: sheetEnergyPerLength,
    plain: bestPlainEnergyPerLength,
    thickness: sheetThickness,
  },
  ({ best, cut, shaped, plain, thickness }) => {
    const place =
      best.focusDepth < 0.25 * thickness
        ? 'in the near face'
        : best.focusDepth < 0.75 * thickness
          ? 'in the middle of the sheet'
          : 'in the far face';
    const passes = best.passes === 1 ? 'one pass' : `${best.passes} passes`;
    const start = phrase`With the plate taken out, lens and pulse spacing as today, a cut takes least energy for its length at ${energyText(best.energy)}, a peak of ${fluenceText(best.peak)}, with the focus ${place}: the sheet is then through after ${passes}, with a cut ${lengthText(best.entryKerf)} wide in front and ${lengthText(best.exitKerf)} behind and sides that lean by ${angleText(best.taper)}. That is ${bestPlainEnergyPerLength}, against ${sheetEnergyPerLength} with the plate as it is set`;
    const wider = cut.exitKerf / best.exitKerf;
    const forThat =
      wider > 1.2
        ? ', for a cut that is wider behind'
        : wider < 1 / 1.2
          ? ', for a cut that is narrower behind'
          : '';
    if (shaped > plain * (1 + alike)) return phrase`${start}: the plate takes more${forThat}.`;
    if (shaped < plain * (1 - alike)) return phrase`${start}: the plate takes less${forThat}.`;
    return phrase`${start}: the plate takes as much${forThat}.`;
  },
);
