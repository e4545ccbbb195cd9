import { focusRadius, rayleighLength } from '../../lib/design/focus.ts';
import { usedBeamPropagationRatio } from '../../lib/design/rawBeam.ts';
import { niceEnd } from '../../lib/numerics/niceEnd.ts';
import { spaced } from '../../lib/optics/focusMaps.ts';
import { micro } from '../columns.ts';
import { type FigureSpec, figure, type SeriesSpec } from '../document.ts';
import { milli } from '../throughFocusFigures.ts';

/** Points of a curve, and Rayleigh lengths shown to either side. */
const points = 201;
const lengthsShown = 2.5;

interface Waist {
  readonly radius: number;
  readonly length: number;
}

/** 1/e² radius along z, µm over mm. */
function curve(
  { radius, length }: Waist,
  reach: number,
  named: Pick<SeriesSpec, 'label' | 'role'>,
): SeriesSpec {
  const x = spaced(-reach, reach, points);
  return { ...named, x, y: x.map((z) => radius * micro * Math.hypot(1, z / (length * milli))) };
}

function spec(perfect: Waist, ratio: number, both: boolean): FigureSpec {
  const reach = niceEnd(lengthsShown * perfect.length * milli);
  const real = { radius: perfect.radius * ratio, length: perfect.length * ratio };
  const flawless = curve(perfect, reach, { label: 'perfect beam, M² = 1', role: 'reference' });
  const top = curve(real, reach, { label: 'this beam', role: 'main' });
  return {
    title: 'How wide the beam is through its focus',
    x: { label: 'z, behind the focus', unit: 'mm', domain: [-reach, reach] },
    y: { label: '1/e² radius', unit: 'µm', domain: [0, niceEnd(top.y[0]! * 1.05)] },
    series: both ? [top, flawless] : [flawless],
    summary: both
      ? 'Far from the focus both beams are equally wide; in it this beam is wider, and it stays narrow for longer.'
      : 'A perfect beam is narrowest in its focus and opens to both sides.',
  };
}

const from = { radius: focusRadius, length: rayleighLength, ratio: usedBeamPropagationRatio };

/** A perfect beam through its focus. */
export const perfectWaistFigure = figure({
  id: 'perfect-waist',
  from,
  view: ({ ratio, ...perfect }) => spec(perfect, ratio, false),
});

/** The same beside the real beam that is as wide at the lens. */
export const bothWaistsFigure = figure({
  id: 'both-waists',
  from,
  view: ({ ratio, ...perfect }) => spec(perfect, ratio, true),
});
