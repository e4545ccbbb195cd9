import { defocus } from '../lib/design/focus.ts';
import { offCentre, offsetTried } from '../lib/design/offCentre.ts';
import { formatQuantity } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { largest } from './columns.ts';
import { type FigureSpec, figure } from './document.ts';

const share = (value: number) => formatQuantity(value, '1', '1', 3);

/** How high either side of a profile rises, the higher first. */
function sidesSaid(place: Float64Array, values: Float64Array): string {
  const side = (sign: number) => largest(values.filter((_, i) => sign * place[i]! >= 0));
  const [low, high] = [side(-1), side(1)].sort((a, b) => a - b).map(share);
  return low === high ? `both sides rise to ${high}` : `one side rises to ${high} and the other to ${low}`;
}

/** The spot of a beam that stands a little beside the middle of the plate, at the workpiece and in the focus. */
export const offCentreFigure = figure({
  id: 'off-centre',
  from: { offCentre, offset: offsetTried, defocus },
  view: ({ offCentre, offset, defocus }): FigureSpec => {
    const { place, centred, here, focus } = offCentre;
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
      summary: `Beam ${formatQuantity(offset, '1', '%', 2)} of its 1/e² radius beside the middle: at the workpiece, ${share(defocus)} Rayleigh lengths from the focus, ${sidesSaid(place, here)}; in the focus ${sidesSaid(place, focus)}. Coherent light.`,
    };
  },
});
