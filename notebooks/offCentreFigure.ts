import { defocus } from '../lib/design/focus.ts';
import { offCentre, offsetTried } from '../lib/design/offCentre.ts';
import { formatQuantity } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { largest } from './columns.ts';
import { type FigureSpec, figure } from './document.ts';

const percent = (value: number) => formatQuantity(value < 1e-6 ? 0 : value, '1', '%', 2);

/** The spot of a beam that stands a little beside the middle of the plate, at the workpiece and in the focus. */
export const offCentreFigure = figure({
  id: 'off-centre',
  from: { offCentre, offset: offsetTried, defocus },
  view: ({ offCentre, offset, defocus }): FigureSpec => {
    const { place, centred, here, focus, hereImbalance, focusImbalance } = offCentre;
    const reach = place.at(-1)!;
    return {
      title: 'A beam a little beside the middle of the plate',
      x: {
        label: 'distance from the axis, along the offset',
        unit: '1/e² radii of the unshaped focus',
        domain: [0 - reach, reach],
      },
      y: {
        label: 'irradiance',
        unit: 'of the unshaped, unclipped focus',
        domain: [0, niceEnd(largest(centred, here, focus))],
      },
      series: [
        { label: 'at the workpiece', role: 'main', x: place, y: here },
        { label: 'at the workpiece, beam in the middle', role: 'reference', x: place, y: centred },
        { label: 'in the focus', role: 'second', x: place, y: focus },
      ],
      summary: `With the beam ${percent(offset)} of its 1/e² radius beside the middle, the two sides differ in height by ${percent(hereImbalance)} at the workpiece, ${formatQuantity(defocus, '1', '1', 3)} Rayleigh lengths from the focus, and by ${percent(focusImbalance)} in the focus. Coherent light.`,
    };
  },
});
