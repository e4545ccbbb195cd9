import { sheetThickness } from '../lib/design/grooveInputs.ts';
import { plainSheetCut, sheetCut } from '../lib/design/sheet.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import type { CutSheet } from '../lib/process/sheet.ts';
import { type FigureSpec, figure, type SeriesSpec } from './document.ts';
import { angleText, lengthText } from './shortTexts.ts';

/** Level out to the ends of the axis. */
function section(
  label: string,
  role: SeriesSpec['role'],
  half: number,
  { y }: CutSheet,
  depth: Float64Array,
): SeriesSpec {
  const x = y.map((one) => 1e6 * one);
  const height = depth.map((one) => -1e6 * one || 0);
  const beyond = x.at(-1)! < half;
  return {
    label,
    role,
    x: beyond ? Float64Array.of(-half, ...x, half) : x,
    y: beyond ? Float64Array.of(0, ...height, 0) : height,
  };
}

/** The place furthest out from which anything is removed, m: rings beside the kerf belong to the picture. */
const reachOf = ({ y, depth }: CutSheet) =>
  y.reduce((most, place, i) => (depth[i]! > 0 ? Math.max(most, Math.abs(place)) : most), 0);

/** The cut when it opens and in the end, with the plate and without. */
export const sheetFigure = figure({
  id: 'sheet-section',
  from: { cut: sheetCut, plain: plainSheetCut, thickness: sheetThickness },
  view: ({ cut, plain, thickness }): FigureSpec => {
    const half = niceEnd(1.02e6 * Math.max(reachOf(cut), reachOf(plain)));
    const deep = 1e6 * thickness;
    return {
      title: 'Cut through the sheet',
      x: { label: 'place across the line', unit: 'µm', domain: [-half, half] },
      y: { label: 'height above the near face', unit: 'µm', domain: [-1.1 * deep, 0.06 * deep] },
      series: [
        section('with the plate, when it opens', 'second', half, cut, cut.opening),
        section('with the plate, after all passes', 'main', half, cut, cut.depth),
        section('plate taken out, after all its passes', 'reference', half, plain, plain.depth),
      ],
      marks: [{ kind: 'horizontal', y: -deep, label: 'far face', role: 'reference' }],
      summary: `With the plate the sheet of ${lengthText(thickness)} is through after ${cut.passes} ${cut.passes === 1 ? 'pass' : 'passes'}; after ${cut.allPasses} it is open ${lengthText(cut.entryKerf)} in front and ${lengthText(cut.exitKerf)} behind, a taper of ${angleText(cut.taper)}. Without the plate ${plain.passes} and ${plain.allPasses} passes leave ${lengthText(plain.entryKerf)} and ${lengthText(plain.exitKerf)}, ${angleText(plain.taper)}. Melt and burr are not in it.`,
    };
  },
});
