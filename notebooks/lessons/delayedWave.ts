import { wavelength } from '../../lib/design/laser.ts';
import { stepPhase } from '../../lib/design/plate.ts';
import { spaced } from '../../lib/optics/focusMaps.ts';
import { micro } from '../columns.ts';
import { type FigureSpec, figure } from '../document.ts';

/** Points of the curves, and waves that are shown. */
const points = 301;
const wavesDrawn = 2.5;

/** The light behind the plate at one moment: beside the step, and through it. */
export const delayedWaveFigure = figure({
  id: 'delayed-wave',
  from: { phase: stepPhase, wavelength },
  view: ({ phase, wavelength }): FigureSpec => {
    const end = wavesDrawn * wavelength * micro;
    const x = spaced(0, end, points);
    const turn = (place: number) => (2 * Math.PI * place) / (wavelength * micro);
    return {
      title: 'The light behind the plate at one moment',
      x: { label: 'distance behind the plate, along the beam', unit: 'µm', domain: [0, end] },
      y: { label: 'field of the light', unit: 'of its highest', domain: [-1, 1] },
      series: [
        // What is late has come less far: its crests lie nearer to the plate.
        {
          label: 'through the step',
          role: 'main',
          x,
          y: x.map((place) => Math.sin(turn(place) + phase)),
        },
        { label: 'beside the step', role: 'second', x, y: x.map((place) => Math.sin(turn(place))) },
      ],
      summary:
        'The light through the step is late: its crests have come less far than those beside the step.',
    };
  },
});
