import { centreAmplitude, outerAmplitude } from '../../lib/design/explain.ts';
import { niceEnd } from '../../lib/numerics/niceEnd.ts';
import { spaced } from '../../lib/optics/focusMaps.ts';
import { largest } from '../columns.ts';
import { type FigureSpec, figure } from '../document.ts';

/** Points of the curve, a cosine. */
const points = 241;
/** The chart ends here, in waves. */
export const wavesShown = 1.5;

/** Irradiance on the axis in the focus against the phase of the step, without the phase of today written in. */
export const axisOverPhaseFigure = figure({
  id: 'axis-over-phase',
  from: { centre: centreAmplitude, outer: outerAmplitude },
  view: ({ centre, outer }): FigureSpec => {
    const x = spaced(0, wavesShown, points);
    const y = x.map((waves) => centre ** 2 + outer ** 2 + 2 * centre * outer * Math.cos(2 * Math.PI * waves));
    return {
      title: 'The middle of the focus against the delay of the step',
      x: { label: 'delay of the step', unit: 'waves', domain: [0, wavesShown] },
      y: {
        label: 'irradiance on the axis in the focus',
        unit: 'of the beam without a step',
        domain: [0, niceEnd(largest(y))],
      },
      series: [{ label: 'irradiance on the axis', role: 'main', x, y }],
      summary:
        'The middle of the focus is darkest at a delay of half a wave, as bright as without a step at a whole wave, and dark again at one wave and a half.',
    };
  },
});
