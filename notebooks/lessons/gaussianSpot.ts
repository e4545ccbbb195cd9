import { focusRadius, unshapedPeak } from '../../lib/design/focus.ts';
import { formatQuantity } from '../../lib/graph/units.ts';
import { niceEnd } from '../../lib/numerics/niceEnd.ts';
import { spaced } from '../../lib/optics/focusMaps.ts';
import { micro, perSquareCentimetre } from '../columns.ts';
import { type FigureSpec, figure } from '../document.ts';

/** Points of the curve: a Gaussian is smooth. */
const points = 201;
/** The chart reaches this many 1/e² radii out. */
const radiiShown = 1.6;

const show = (fluence: number) => formatQuantity(fluence, 'J/m^2', 'J/cm^2', 3);

/** A Gaussian spot, its peak, and the energy over the area of its 1/e² circle. */
export const gaussianSpotFigure = figure({
  id: 'gaussian-spot',
  from: { peak: unshapedPeak, radius: focusRadius },
  view: ({ peak, radius }): FigureSpec => {
    const end = niceEnd(radius * micro * radiiShown);
    const x = spaced(0, end, points);
    const top = peak * perSquareCentimetre;
    const y = x.map((r) => top * Math.exp(-2 * (r / (radius * micro)) ** 2));
    return {
      title: 'Peak and mean of a Gaussian spot',
      x: { label: 'distance from the axis', unit: 'µm', domain: [0, end] },
      y: { label: 'fluence per pulse', unit: 'J/cm²', domain: [0, niceEnd(top * 1.05)] },
      series: [{ label: 'fluence', role: 'main', x, y }],
      marks: [
        { kind: 'horizontal', y: top, label: 'peak', role: 'reference' },
        { kind: 'horizontal', y: top / 2, label: 'energy over the 1/e² circle', role: 'reference' },
        { kind: 'vertical', x: radius * micro, label: '1/e² radius', role: 'reference' },
      ],
      summary: `The peak is ${show(peak)}; the energy of the pulse over the area of the 1/e² circle is half of that, ${show(peak / 2)}.`,
    };
  },
});
