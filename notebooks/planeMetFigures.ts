import { shownDepth } from '../lib/design/alongBeam.ts';
import { depthTolerance, planeDepth } from '../lib/design/depthOfFocus.ts';
import { field, fieldPlanes, zMet } from '../lib/design/fieldPlanes.ts';
import { workpieceZ } from '../lib/design/focus.ts';
import { profilesMet } from '../lib/design/planesMet.ts';
import { levelLines } from '../lib/numerics/levelLines.ts';
import type { Stretch } from '../lib/optics/depthInUse.ts';
import type { PlanesMet } from '../lib/process/planesMet.ts';
import { largest, micro } from './columns.ts';
import { type FigureSpec, figure, type MarkSpec, type SeriesSpec } from './document.ts';
import { percentText } from './shortTexts.ts';
import { milli } from './throughFocusFigures.ts';

/** Where the surface stands against the focus over the field, with the outline of what stays within the tolerance. */
export const fieldPlanesFigure = figure({
  id: 'field-planes',
  from: { planes: fieldPlanes, field, depth: planeDepth, tolerance: depthTolerance },
  view: ({ planes: { columns, rows, z, room }, field: { width, height }, depth, tolerance }): FigureSpec => {
    const [low, high] = [Math.min(...z), Math.max(...z)];
    const none = depth.deviation > tolerance;
    const line = levelLines({ columns, rows, values: room }, 0);
    const place = (at: number, count: number, length: number) => milli * length * (at / (count - 1) - 0.5);
    const x = line.x.map((at) => place(at, columns, width));
    const y = line.y.map((at) => place(at, rows, height));
    return {
      title: 'Where the surface stands against the focus over the field',
      x: {
        label: 'x, along the first lines',
        unit: 'mm',
        domain: [(-milli * width) / 2, (milli * width) / 2],
      },
      y: { label: 'y', unit: 'mm', domain: [(-milli * height) / 2, (milli * height) / 2] },
      equalScale: true,
      series: none || x.length === 0 ? [] : [{ label: 'here the tolerance is left', role: 'second', x, y }],
      map: {
        columns,
        rows,
        values: z,
        perValue: micro,
        range: [micro * low, micro * high],
        label: 'z, behind the focal plane',
        unit: 'µm',
      },
      summary: `Over the field the surface stands between z = ${shownDepth(low)} and ${shownDepth(high)}, height error and thermal shift not counted. ${none ? 'In the plane set the plateau is less even than the tolerance: there is no depth of focus, and no outline.' : outlineSaid(room)}`,
    };
  },
});

function outlineSaid(room: Float64Array): string {
  const inside = room.reduce((count, at) => count + (at >= 0 ? 1 : 0), 0);
  if (inside === room.length) return 'All of it stays within the depth of focus at the worst of both.';
  if (inside === 0) return 'None of it stays within the depth of focus at the worst of both.';
  return 'The line is where the worst of both leaves the depth of focus.';
}

/** Peak and dip in the planes met, and in those around. */
export const profilesMetFigure = figure({
  id: 'profiles-met',
  from: { profiles: profilesMet, met: zMet, depth: planeDepth, tolerance: depthTolerance, set: workpieceZ },
  view: ({ profiles, met, depth, tolerance, set }): FigureSpec => {
    const x = profiles.z.map((z) => z * milli);
    const percent = (values: Float64Array) => values.map((value) => 100 * value);
    const [peak, dip] = [percent(profiles.peak), percent(profiles.dip)];
    const at = (z: number, label: string): MarkSpec => ({
      kind: 'vertical',
      x: z * milli,
      label,
      role: 'reference',
    });
    const top = Math.max(110, 1.05 * largest(peak));
    const none = depth.deviation > tolerance;
    const ends = [depth.from, depth.to].map(
      (z) => milli * Math.min(profiles.z.at(-1)!, Math.max(profiles.z[0]!, z)),
    );
    const band: SeriesSpec = {
      label: 'planes in focus',
      role: 'band',
      x: Float64Array.from(ends),
      y: Float64Array.of(0, 0),
      y2: Float64Array.of(top, top),
    };
    return {
      title: 'The profile in the planes met over the field',
      x: { label: 'z, behind the focal plane of the lens', unit: 'mm', domain: [x[0]!, x.at(-1)!] },
      y: { label: 'part', unit: '%', domain: [0, top] },
      series: [
        ...(none ? [] : [band]),
        { label: 'peak fluence, of that where it is set', role: 'main', x, y: peak },
        { label: 'dip of the axis below the peak', role: 'second', x, y: dip },
      ],
      marks: [
        { kind: 'vertical', x: set * milli, label: 'set', role: 'today' },
        ...(met.from < met.to ? [at(met.from, 'nearest met'), at(met.to, 'furthest met')] : []),
      ],
      summary: metSaid(profiles, met),
    };
  },
});

function metSaid({ lowest, highest, deepest }: PlanesMet, { from, to }: Stretch): string {
  const dip = `the axis lies at most ${percentText(deepest.dip)} below the peak`;
  if (from === to)
    return `Over the whole field the surface meets one plane, z = ${shownDepth(from)}; ${dip}. The curves show what it would meet to either side.`;
  return `Among the planes met over the field, z = ${shownDepth(from)} to ${shownDepth(to)}, the peak fluence is lowest at z = ${shownDepth(lowest.z)} with ${percentText(lowest.peak)} of that where the workpiece is set, highest at ${shownDepth(highest.z)} with ${percentText(highest.peak)}; ${dip}.`;
}
