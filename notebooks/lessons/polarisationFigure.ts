import { polarisationAngle } from '../../lib/design/rippleInputs.ts';
import { type FigureSpec, figure, type SeriesSpec } from '../document.ts';
import { arrow, type Point } from '../rippleDirectionFigure.ts';
import { angleText } from '../shortTexts.ts';

const columns = (points: readonly Point[]): Pick<SeriesSpec, 'x' | 'y'> => ({
  x: Float64Array.from(points, ([x]) => x),
  y: Float64Array.from(points, ([, y]) => y),
});

/** Polarisation and scan alone: the ridges are asked. */
export const polarisationFigure = figure({
  id: 'polarisation',
  shape: 'tall',
  from: { angle: polarisationAngle },
  view: ({ angle }): FigureSpec => {
    const end = (size: number): Point => [size * Math.cos(angle), size * Math.sin(angle)];
    return {
      title: 'The workpiece from above',
      x: { label: 'x, along the scan', unit: 'µm', domain: [-5, 5] },
      y: { label: 'y', unit: 'µm', domain: [-5, 5] },
      equalScale: true,
      series: [
        { label: 'polarisation', role: 'second', ...columns(arrow(end(-3), end(3), true)) },
        { label: 'direction of the scan', role: 'third', ...columns(arrow([-4, -4.4], [4, -4.4], false)) },
      ],
      summary: `The field swings at ${angleText(angle)} to the scan, which runs to the right.`,
    };
  },
});
