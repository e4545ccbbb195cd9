import { focusRadius } from '../../lib/design/focus.ts';
import { niceEnd } from '../../lib/numerics/niceEnd.ts';
import { spaced } from '../../lib/optics/focusMaps.ts';
import { micro } from '../columns.ts';
import { type FigureSpec, figure, type MarkSpec } from '../document.ts';

/** The chart reaches this many 1/e² radii out. */
const radiiShown = 1.5;
const points = 201;

function drawSpot(radius: number): FigureSpec {
  const end = niceEnd(radius * micro * radiiShown);
  const x = spaced(0, end, points);
  return {
    title: 'A Gaussian spot from its axis outward',
    x: { label: 'distance from the axis', unit: 'µm', domain: [0, end] },
    y: { label: 'fluence, of the peak', unit: '%', domain: [0, 105] },
    series: [
      {
        label: 'fluence',
        role: 'main',
        x,
        y: x.map((r) => 100 * Math.exp(-2 * (r / (radius * micro)) ** 2)),
      },
    ],
    summary: 'The fluence is highest on the axis and falls smoothly outward; nowhere does the spot end.',
  };
}

/** The curve alone: where it is called wide is asked. */
export const spotCurveFigure = figure({
  id: 'spot-curve',
  from: { radius: focusRadius },
  view: ({ radius }): FigureSpec => drawSpot(radius),
});

/** The places of a Gaussian that have a name, as parts of its 1/e² radius. */
export const namedPlaces = {
  sigma: 1 / 2,
  'half the maximum': Math.sqrt(Math.LN2 / 2),
  '1/e': Math.SQRT1_2,
  '1/e²': 1,
} as const;

/** The same curve with every place that has a name. */
export const namedWidthsFigure = figure({
  id: 'named-widths',
  from: { radius: focusRadius },
  view: ({ radius }): FigureSpec => {
    const marks = Object.entries(namedPlaces).map(
      ([name, part]): MarkSpec => ({
        kind: 'point',
        x: micro * part * radius,
        y: 100 * Math.exp(-2 * part * part),
        label: name === 'sigma' ? 'one σ' : name,
        role: 'reference',
        above: true,
      }),
    );
    const part = (value: number) => value.toFixed(2);
    return {
      ...drawSpot(radius),
      title: 'One spot, four radii',
      marks,
      // Lengths would tell what is asked; parts of the radius are what the eye reads too.
      summary: `Radii of one spot, as parts of the one at 1/e²: one σ ${part(namedPlaces.sigma)}, half the maximum ${part(namedPlaces['half the maximum'])}, 1/e ${part(namedPlaces['1/e'])}.`,
    };
  },
});
