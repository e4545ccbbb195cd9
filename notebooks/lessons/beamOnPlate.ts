import { plateBeamDiameter } from '../../lib/design/expander.ts';
import { stepDiameter } from '../../lib/design/plate.ts';
import { formatQuantity } from '../../lib/graph/units.ts';
import { niceEnd } from '../../lib/numerics/niceEnd.ts';
import { spaced } from '../../lib/optics/focusMaps.ts';
import { type FigureSpec, figure } from '../document.ts';
import { milli } from '../throughFocusFigures.ts';

/** Points of the curve: a Gaussian is smooth. */
const points = 201;
/** The chart reaches this many 1/e² radii out, where the light has fallen to a fiftieth. */
const radiiShown = 1.4;

/** Irradiance of the beam at the plate over the radius, without its 1/e² radius written in. */
export const beamProfileFigure = figure({
  id: 'beam-profile',
  from: { beam: plateBeamDiameter },
  view: ({ beam }) => beamSpec(beam),
});

/** The same with the edge of the step. */
export const beamOnPlateFigure = figure({
  id: 'beam-on-plate',
  from: { beam: plateBeamDiameter, step: stepDiameter },
  view: ({ beam, step }): FigureSpec => ({
    ...beamSpec(beam, Math.max(beam, step)),
    title: 'The beam on the plate',
    marks: [
      { kind: 'vertical', x: (step / 2) * milli, label: 'edge of the step', role: 'today' },
      { kind: 'vertical', x: (beam / 2) * milli, label: '1/e² radius', role: 'reference', above: true },
    ],
    summary: `The step ends at a radius of ${show(step / 2)}; the beam has fallen to 1/e², 13.5\u202f%, at ${show(beam / 2)}.`,
  }),
});

const show = (length: number) => formatQuantity(length, 'm', 'mm', 3);

/** Irradiance of a beam of that 1/e² diameter, out to beyond the 1/e² radius of one as wide as `shown`. */
export function beamSpec(beam: number, shown = beam): FigureSpec {
  const end = niceEnd((shown / 2) * milli * radiiShown);
  const x = spaced(0, end, points);
  const radius = (beam / 2) * milli;
  const y = x.map((r) => Math.exp(-2 * (r / radius) ** 2));
  return {
    title: 'The beam before the plate',
    x: { label: 'distance from the axis', unit: 'mm', domain: [0, end] },
    y: { label: 'irradiance', unit: 'of that on the axis', domain: [0, 1] },
    series: [{ label: 'irradiance of the beam', role: 'main', x, y }],
    summary: 'The irradiance of the beam is highest on its axis and falls smoothly outward; it has no edge.',
  };
}
