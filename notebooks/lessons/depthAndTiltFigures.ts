import { fieldWidth, heightError, tilt } from '../../lib/design/depthInUse.ts';
import { depthTolerance } from '../../lib/design/depthOfFocus.ts';
import { light, rayleighLength, workpieceZ } from '../../lib/design/focus.ts';
import { profile } from '../../lib/design/spot.ts';
import { unshapedPeakFluence } from '../../lib/design/unshaped.ts';
import { niceEnd } from '../../lib/numerics/niceEnd.ts';
import { discOf } from '../../lib/optics/depthOfFocus.ts';
import { familyMap } from '../../lib/optics/familyMap.ts';
import type { Light } from '../../lib/optics/light.ts';
import type { RadialProfile } from '../../lib/optics/radialProfile.ts';
import { micro } from '../columns.ts';
import { type FigureSpec, figure } from '../document.ts';
import { lengthText, percentText } from '../shortTexts.ts';

const milli = 1e3;

/** The surface over the field, tilted, with the height error to both sides: its spread is asked. */
export const tiltedSurfaceFigure = figure({
  id: 'tilted-surface',
  from: { field: fieldWidth, tilt, height: heightError },
  view: ({ field, tilt, height }): FigureSpec => {
    const half = (milli * field) / 2;
    const rise = micro * (field / 2) * Math.tan(tilt);
    const error = micro * height;
    const x = Float64Array.of(-half, half);
    const y = Float64Array.of(-rise, rise);
    const end = niceEnd(1.2 * (rise + error));
    return {
      title: 'The surface over the field, seen from the side',
      x: { label: 'place in the field', unit: 'mm', domain: [-half, half] },
      y: { label: 'z of the surface, against the middle', unit: 'µm', domain: [-end, end] },
      series: [
        {
          label: 'where the surface may lie',
          role: 'band',
          x,
          y: y.map((z) => z - error),
          y2: y.map((z) => z + error),
        },
        { label: 'surface, tilted', role: 'main', x, y },
      ],
      summary:
        'The tilt moves one edge of the field towards the lens and the other away from it; the band is the height error, either way. Upright is drawn far larger than along.',
    };
  },
});

const planeCount = 105;
const radiusCount = 41;

/** Largest departure of the fluence from its mean over the plateau of `own`, in each plane. */
export function departures(light: Light, own: RadialProfile, z: number, planes: Float64Array): Float64Array {
  const disc = discOf(own) ?? 0;
  const radii = Float64Array.from({ length: radiusCount }, (_, i) => (disc * i) / (radiusCount - 1));
  const map = familyMap(light, Float64Array.from([z, ...planes]), radii);
  const row = (i: number) => map.subarray(i * radiusCount, (i + 1) * radiusCount);
  // Trapezoids in the square of the radius: each ring counts with its area.
  const area = (i: number) => radii[i]! ** 2 - radii[i - 1]! ** 2;
  const mean =
    row(0).reduce((sum, h, i, all) => sum + (i ? (area(i) * (h + all[i - 1]!)) / 2 : 0), 0) / disc ** 2;
  return planes.map((_, i) => row(i + 1).reduce((worst, h) => Math.max(worst, Math.abs(h / mean - 1)), 0));
}

/** How far the fluence departs over the plateau, plane by plane, against the tolerance. */
export const departureFigure = figure({
  id: 'departure',
  from: { light, profile, z: workpieceZ, length: rayleighLength, tolerance: depthTolerance },
  view: ({ light, profile, z, length, tolerance }): FigureSpec => {
    const end = 1.15 * length;
    const planes = Float64Array.from(
      { length: planeCount },
      (_, i) => z + end * ((2 * i) / (planeCount - 1) - 1),
    );
    return {
      title: 'How far the fluence departs from its mean in the focus',
      x: {
        label: 'z, behind the focal plane of the lens',
        unit: 'µm',
        domain: [micro * (z - end), micro * (z + end)],
      },
      y: { label: 'largest departure of the fluence', unit: '%', domain: [0, 400 * tolerance] },
      series: [
        {
          label: 'on the plateau',
          role: 'main',
          x: planes.map((at) => micro * at),
          y: departures(light, profile, z, planes).map((part) =>
            part > 4 * tolerance ? Number.NaN : 100 * part,
          ),
        },
      ],
      marks: [{ kind: 'horizontal', y: 100 * tolerance, label: 'tolerance', role: 'reference' }],
      summary: `The curve says how far the fluence departs anywhere on the plateau from its mean in the focus, up to four times the tolerance of ${percentText(tolerance)}. Below the line, the plane counts as in focus.`,
    };
  },
});

/** The plain beam through its focus: 1/e² width to both sides, and the Rayleigh length. */
export const waistFigure = figure({
  id: 'waist',
  from: { light, length: rayleighLength, peak: unshapedPeakFluence },
  view: ({ light, length }): FigureSpec => {
    const z = Float64Array.from({ length: 121 }, (_, i) => 2 * length * (i / 60 - 1));
    const waist = Math.sqrt((length * light.wavelength) / Math.PI);
    const radius = z.map((at) => micro * waist * Math.hypot(1, at / length));
    const end = niceEnd(1.1 * radius[0]!);
    const x = z.map((at) => micro * at);
    return {
      title: 'The plain beam through its focus',
      x: { label: 'z, behind the focus', unit: 'µm', domain: [x[0]!, x.at(-1)!] },
      y: { label: 'distance from the axis', unit: 'µm', domain: [-end, end] },
      series: [
        { label: 'inside the 1/e² radius', role: 'band', x, y: radius.map((r) => -r), y2: radius },
        { label: '1/e² radius', role: 'main', x, y: radius },
      ],
      marks: [-1, 1].map((side) => ({
        kind: 'vertical',
        x: side * micro * length,
        label: side < 0 ? 'a Rayleigh length before' : 'and behind',
        role: 'reference',
      })),
      summary: `In the focus the 1/e² radius is ${lengthText(waist)}. The lines stand one Rayleigh length, ${lengthText(length)}, before and behind it.`,
    };
  },
});
