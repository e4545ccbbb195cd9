import { unshapedPeak } from '../lib/design/focus.ts';
import { slantedCut } from '../lib/design/rippleCharts.ts';
import { incidence } from '../lib/design/rippleInputs.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { largest, micro, perSquareCentimetre } from './columns.ts';
import { type FigureSpec, figure } from './document.ts';

/** Fluence along the tilted workpiece, cut at a slant through the focal family, and without the slant. */
export const slantedCutFigure = figure({
  id: 'slanted-cut',
  needs: [slantedCut],
  from: { cut: slantedCut, unit: unshapedPeak, incidence },
  view: ({ cut, unit, incidence }): FigureSpec => {
    const fluence = (values: Float64Array) => values.map((value) => value * unit * perSquareCentimetre);
    const [slanted, level] = [fluence(cut.slanted), fluence(cut.level)];
    const x = cut.place.map((s) => s * micro);
    const reach = x.at(-1)!;
    const [top, flat] = [largest(slanted), largest(level)];
    const show = (value: number) => formatReadable(value / perSquareCentimetre, 'J/m^2', 'J/cm^2', 3);
    return {
      title: 'Along the tilted workpiece, in the plane of incidence',
      x: { label: 'distance from the axis along the surface', unit: 'µm', domain: [-reach, reach] },
      y: {
        label: 'fluence per pulse on the surface',
        unit: 'J/cm²',
        domain: [0, niceEnd(1.05 * largest(slanted, level))],
      },
      series: [
        { label: 'cut at a slant', role: 'main', x, y: slanted },
        { label: 'as if in one plane', role: 'reference', x, y: level },
      ],
      summary: `Tilted by ${formatReadable(incidence, 'rad', 'deg', 3)} the surface lies nearer to the lens on the left and further away on the right, and meets another plane of the focal family at every place: the highest fluence is ${show(top)}, where ${show(flat)} would come of the plane of the axis alone. Both hold the factor cos θ.`,
    };
  },
});
