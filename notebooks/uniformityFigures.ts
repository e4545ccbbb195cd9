import { largestModulation } from '../lib/design/comparisonInputs.ts';
import { lineSpacing } from '../lib/design/scanInputs.ts';
import { modulation, unshapedModulation } from '../lib/design/uniformity.ts';
import {
  acrossLines,
  lineProfiles,
  modulationBySpacing,
  noModulation,
} from '../lib/design/uniformityCharts.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { largest } from './columns.ts';
import { type FigureSpec, figure } from './document.ts';
import { fluenceText, lengthText, percentText } from './shortTexts.ts';

const micrometres = (values: Float64Array) => values.map((value) => 1e6 * value);
const percent = (values: Float64Array) => values.map((value) => 100 * value);

/** What the modulation with the plate has of minima; names the first three. */
function minimaText(minima: Float64Array, least: Float64Array): string {
  if (minima.length === 0) return 'With the plate it has no minimum after a rise.';
  const left = (value: number) =>
    value < noModulation ? `less than ${percentText(noModulation)}` : percentText(value);
  const each = Array.from(minima.subarray(0, 3), (at) => at).map(
    (at, i) => `${lengthText(at)} (${left(least[i]!)})`,
  );
  const more = minima.length > each.length ? `, the first of ${minima.length}` : '';
  const last = each.pop()!;
  const named = each.length === 0 ? `a minimum at ${last}` : `minima at ${each.join(', ')} and ${last}`;
  return `With the plate it does not only rise: after a rise it has ${named}${more}.`;
}

/** Modulation against line spacing for both beams, with what is let pass. */
export const modulationFigure = figure({
  id: 'modulation-by-spacing',
  from: { curve: modulationBySpacing, today: lineSpacing, limit: largestModulation },
  view: ({ curve: { spacing, shaped, plain, minima, least }, today, limit }): FigureSpec => {
    const x = micrometres(spacing);
    const end = x.at(-1)!;
    return {
      title: 'Modulation across the lines, against line spacing',
      x: { label: 'line spacing', unit: 'µm', domain: [0, end] },
      y: { label: 'modulation of the accumulated fluence', unit: '%', domain: [0, 100] },
      series: [
        { label: 'with the plate', role: 'main', x, y: percent(shaped) },
        { label: 'plate taken out', role: 'reference', x, y: percent(plain) },
      ],
      marks: [
        ...(1e6 * today < end
          ? [{ kind: 'vertical', x: 1e6 * today, label: 'today', role: 'today' } as const]
          : []),
        ...(limit < 1
          ? [{ kind: 'horizontal', y: 100 * limit, label: 'largest allowed', role: 'reference' } as const]
          : []),
      ],
      summary: `At ${lengthText(spacing[119]!)} the modulation is ${percentText(shaped[119]!)} with the plate and ${percentText(plain[119]!)} without it, at ${lengthText(spacing.at(-1)!)} ${percentText(shaped.at(-1)!)} and ${percentText(plain.at(-1)!)}. ${minimaText(minima, least)}`,
    };
  },
});

/** Accumulated fluence across three lines. */
export const acrossLinesFigure = figure({
  id: 'across-lines',
  from: { curve: acrossLines, spacing: lineSpacing, m: modulation, plain: unshapedModulation },
  view: ({ curve, spacing, m, plain }): FigureSpec => {
    const x = micrometres(curve.y);
    const joules = (values: Float64Array) => values.map((value) => value / 1e4);
    const [shaped, unshaped] = [joules(curve.shaped), joules(curve.plain)];
    const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length;
    const line = (i: number) =>
      ({ kind: 'vertical', x: 1e6 * spacing * i, label: i === 0 ? 'line' : '', role: 'reference' }) as const;
    return {
      title: 'Accumulated fluence across three lines of a wide field',
      x: { label: 'distance from the middle line', unit: 'µm', domain: [x[0]!, x.at(-1)!] },
      y: {
        label: 'accumulated fluence',
        unit: 'J/cm²',
        domain: [0, niceEnd(1.15 * largest(shaped, unshaped))],
      },
      series: [
        { label: 'with the plate', role: 'main', x, y: shaped },
        { label: 'plate taken out', role: 'reference', x, y: unshaped },
      ],
      marks: [line(-1), line(0), line(1)],
      summary: `Lines lie ${lengthText(spacing)} apart. With the plate the mean is ${fluenceText(mean(curve.shaped))} and the modulation ${percentText(m)}, with the plate taken out ${fluenceText(mean(curve.plain))} and ${percentText(plain)}.`,
    };
  },
});

/** A line beside a pulse, each relative to its own highest. */
export const lineProfileFigure = figure({
  id: 'line-profile',
  from: { profiles: lineProfiles },
  view: ({ profiles: { y, shaped, plain, shapedPulse, plainPulse } }): FigureSpec => {
    const x = micrometres(y);
    const width = (values: Float64Array) => {
      const inside = values.reduce((count, value) => count + (value > 0.5 ? 1 : 0), 0);
      return lengthText(inside * (y[1]! - y[0]!), 2);
    };
    return {
      title: 'What one line leaves, beside one pulse',
      x: { label: 'distance from the middle', unit: 'µm', domain: [x[0]!, x.at(-1)!] },
      y: { label: 'fluence over its own highest', unit: '%', domain: [0, 105] },
      series: [
        { label: 'line, with the plate', role: 'main', x, y: percent(shaped) },
        { label: 'one pulse, with the plate', role: 'second', x, y: percent(shapedPulse) },
        { label: 'line, plate taken out', role: 'reference', x, y: percent(plain) },
        { label: 'one pulse, plate taken out', role: 'third', x, y: percent(plainPulse) },
      ],
      summary: `At half height the line is ${width(shaped)} wide with the plate and one pulse ${width(shapedPulse)}; with the plate taken out ${width(plain)} and ${width(plainPulse)}.`,
    };
  },
});
