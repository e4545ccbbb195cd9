import { defocus } from '../lib/design/focus.ts';
import { windowHigh, windowLow } from '../lib/design/rippleWindow.ts';
import { gainByPlane, insideByWidth } from '../lib/design/rippleWindowCharts.ts';
import { formatNumber } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { largest } from './columns.ts';
import { type FigureSpec, figure, type MarkSpec } from './document.ts';
import { percentText } from './shortTexts.ts';

/** Part of the field inside against the width of the window, both beams with their peak at its upper bound. */
export const insideFigure = figure({
  id: 'inside-by-width',
  from: { inside: insideByWidth, low: windowLow, high: windowHigh },
  view: ({ inside: { ratio, shaped, plain }, low, high }): FigureSpec => {
    const parts = (values: Float64Array) => values.map((value) => 100 * value);
    const width = high / low;
    const [first, last] = [ratio[0]!, ratio.at(-1)!];
    const middle = ratio.indexOf(1.5);
    return {
      title: 'Part of the field inside, against the width of the window',
      x: { label: 'upper over lower bound', unit: '1', domain: [1, last] },
      y: { label: 'part of the field inside', unit: '%', domain: [0, 100] },
      series: [
        { label: 'with the plate', role: 'main', x: ratio, y: parts(shaped) },
        { label: 'plate taken out', role: 'reference', x: ratio, y: parts(plain) },
      ],
      marks:
        width > 1 && width < last
          ? [{ kind: 'vertical', x: width, label: `today, ${formatNumber(width, 3)}`, role: 'today' }]
          : [],
      summary: `Both beams with their peak on the surface at the upper bound, scanned alike. At an upper bound of 1.5 times the lower ${percentText(shaped[middle]!)} of the field lies inside with the plate and ${percentText(plain[middle]!)} without it; at ${formatNumber(first, 3)} times ${percentText(shaped[0]!)} and ${percentText(plain[0]!)}, at ${formatNumber(last, 3)} times ${percentText(shaped.at(-1)!)} and ${percentText(plain.at(-1)!)}.${falls(shaped) || falls(plain) ? ' Wider is not always more: with the peak further above the lower bound more pulses count at a place, and may be more than are allowed.' : ''}`,
    };
  },
});

/** True where the part inside falls anywhere as the window widens, by more than is lost in the sum. */
function falls(parts: Float64Array): boolean {
  return parts.some((part, i) => i > 0 && part < parts[i - 1]! - 1e-3);
}

/** Gain of a single pulse against the plane, with the best one, the flat one and today's. */
export const planeGainFigure = figure({
  id: 'gain-by-plane',
  from: { gains: gainByPlane, defocus },
  view: ({ gains: { planes, best, flat }, defocus }): FigureSpec => {
    const x = Float64Array.from(planes, (plane) => plane.defocus);
    const gain = Float64Array.from(planes, (plane) => plane.gain);
    const dip = Float64Array.from(planes, (plane) => plane.axisDip);
    const point = (plane: { defocus: number; gain: number }, label: string): MarkSpec => ({
      kind: 'point',
      x: plane.defocus,
      y: plane.gain,
      label,
      role: 'reference',
    });
    const end = niceEnd(1.1 * largest(gain, Float64Array.of(1)));
    return {
      title: 'Gain of a single pulse, plane by plane',
      x: { label: 'distance behind the focus in Rayleigh lengths', unit: '1', domain: [0, 1] },
      y: { label: 'gain over a Gaussian; dip of the axis', unit: '1', domain: [0, end] },
      series: [
        { label: 'gain, both peaks at the upper bound', role: 'main', x, y: gain },
        { label: 'dip of the axis below the peak', role: 'second', x, y: dip },
      ],
      marks: [
        { kind: 'horizontal', y: 1, label: 'a Gaussian', role: 'reference' },
        point(best, 'best'),
        ...(flat === null || flat.defocus === best.defocus ? [] : [point(flat, 'without a dip')]),
        ...(defocus >= 0 && defocus <= 1
          ? [{ kind: 'vertical', x: defocus, label: 'workpiece', role: 'today' } as const]
          : []),
      ],
      summary: `The best plane lies at ${formatNumber(best.defocus, 3)} with a gain of ${formatNumber(best.gain, 3)} and an axis ${percentText(best.axisDip)} below the peak${flat === null ? '; none is truly flat' : `; the first without a dip at ${formatNumber(flat.defocus, 3)} gains ${formatNumber(flat.gain, 3)}`}. The planes are 0.025 apart.`,
    };
  },
});
