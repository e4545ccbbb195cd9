import { plateBeamDiameter } from '../../lib/design/expander.ts';
import { apertureDiameter, stepDiameter } from '../../lib/design/plate.ts';
import { formatQuantity } from '../../lib/graph/units.ts';
import { type FigureSpec, figure } from '../document.ts';
import { milli } from '../throughFocusFigures.ts';
import { beamSpec } from './beamOnPlate.ts';

const show = (length: number) => formatQuantity(length, 'm', 'mm', 3);

/** The beam over the radius, with the edge of the stop. */
export const beamInStopFigure = figure({
  id: 'beam-in-stop',
  from: { beam: plateBeamDiameter, aperture: apertureDiameter },
  view: ({ beam, aperture }): FigureSpec => ({
    ...beamSpec(beam, Math.max(beam, aperture)),
    title: 'The beam and the stop',
    marks: [{ kind: 'vertical', x: (aperture / 2) * milli, label: 'edge of the stop', role: 'today' }],
    summary: `The stop ends at a radius of ${show(aperture / 2)}: what lies further out does not pass.`,
  }),
});

/** The same with the edges of step and stop. */
export const beamOnStopFigure = figure({
  id: 'beam-on-stop',
  from: { beam: plateBeamDiameter, step: stepDiameter, aperture: apertureDiameter },
  view: ({ beam, step, aperture }): FigureSpec => ({
    ...beamSpec(beam, Math.max(beam, aperture)),
    title: 'The beam, the step and the stop',
    marks: [
      { kind: 'vertical', x: (step / 2) * milli, label: 'edge of the step', role: 'today' },
      {
        kind: 'vertical',
        x: (aperture / 2) * milli,
        label: 'edge of the stop',
        role: 'reference',
        above: true,
      },
    ],
    summary: `The step ends at a radius of ${show(step / 2)}, the stop at ${show(aperture / 2)}: what lies further out does not pass.`,
  }),
});
