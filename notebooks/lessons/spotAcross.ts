import { light, unshapedPeak, workpieceZ } from '../../lib/design/focus.ts';
import { profile, width } from '../../lib/design/spot.ts';
import type { ValueOf } from '../../lib/graph/quantity.ts';
import { niceEnd } from '../../lib/numerics/niceEnd.ts';
import { spaced } from '../../lib/optics/focusMaps.ts';
import type { Light } from '../../lib/optics/light.ts';
import { crossings, type RadialProfile } from '../../lib/optics/radialProfile.ts';
import { roundProfileAt } from '../../lib/optics/roundSpot.ts';
import { fluenceColumn, largest, micro } from '../columns.ts';
import { type FigureSpec, figure } from '../document.ts';

/** Points of a curve from the axis outward. */
const points = 301;
/** The chart reaches this part of the spot's width out from the axis: beyond its edge. */
const widthsShown = 0.85;

/** First radius beyond `beyond`, in metres, at which a profile has fallen to that irradiance; 0 where it never does. */
export function fallenTo(profile: RadialProfile, irradiance: number, beyond: number): number {
  return crossings(profile, irradiance).find((radius) => radius > beyond) ?? 0;
}

/** The same light as a perfect Gaussian of the same diameter at the plate would give. */
export function perfectProfile(light: Light, z: number): RadialProfile {
  return roundProfileAt({ ...light, beamPropagationRatio: 1 }, z);
}

interface Spot {
  readonly profile: ValueOf<typeof profile>;
  readonly unshapedPeak: number;
  readonly width: number;
}

function spec({ profile, unshapedPeak, width }: Spot, perfect?: RadialProfile): FigureSpec {
  const end = niceEnd(width * micro * widthsShown);
  const x = spaced(0, end, points);
  const y = fluenceColumn(profile, unshapedPeak, x);
  const other = perfect && fluenceColumn(perfect, unshapedPeak, x);
  return {
    title: 'The spot, from its axis outward',
    x: { label: 'distance from the axis', unit: 'µm', domain: [0, end] },
    y: {
      label: 'fluence per pulse',
      unit: 'J/cm²',
      domain: [0, niceEnd(largest(y, other ?? y) * 1.05)],
    },
    series: [
      { label: perfect ? 'this beam' : 'fluence on the workpiece', role: 'main', x, y },
      ...(other ? [{ label: 'perfect beam, M² = 1', role: 'reference', x, y: other } as const] : []),
    ],
    summary: perfect
      ? 'Fluence of one pulse over the distance from the axis, for this beam and for a perfect one of the same diameter and energy.'
      : 'Fluence of one pulse on the workpiece over the distance from the axis.',
  };
}

/** Fluence from the axis outward, to read off. */
export const spotAcrossFigure = figure({
  id: 'spot-across',
  from: { profile, unshapedPeak, width },
  view: (spot) => spec(spot),
});

/** The same beside that of a perfect beam. */
export const spotAndPerfectFigure = figure({
  id: 'spot-and-perfect',
  from: { profile, unshapedPeak, width, light, z: workpieceZ },
  view: ({ light, z, ...spot }) => spec(spot, perfectProfile(light, z)),
});
