import type { FigureSpec, SeriesSpec } from '../../document.ts';
import type { MapSpec } from '../../mapSpec.ts';
import { setAttributes, svgElement } from '../element.ts';
import { isScattered, ring } from './curves.ts';
import { barWidth, beyond, type Layout, type LegendEntry, sampleGap, sampleWidth } from './layout.ts';
import { colourAt } from './mapPicture.ts';
import type { Palette, Scheme, Stroke } from './palette.ts';
import { labelSize, shortNumber, textWidth, tickSize } from './text.ts';

/** A line sample and the name of each curve, above the chart. */
export function drawLegend(
  document: Document,
  spec: FigureSpec,
  layout: Layout,
  strokes: readonly Stroke[],
  palette: Palette,
): SVGElement[] {
  return layout.legend.flatMap((entry) => {
    const sample = drawSample(document, spec.series[entry.series]!, entry, strokes[entry.series]!, palette);
    const x = entry.x + sampleWidth + sampleGap;
    const look = { x, y: entry.y, 'font-size': labelSize, 'text-anchor': 'start', fill: palette.ink };
    return [sample, svgElement(document, 'text', look, entry.text)];
  });
}

function drawSample(
  document: Document,
  { role, x, y, y2 }: SeriesSpec,
  place: LegendEntry,
  stroke: Stroke,
  palette: Palette,
): SVGElement {
  const middle = place.y - 4;
  if (y2) {
    const box = { x: place.x, y: middle - 5, width: sampleWidth, height: 10 };
    return svgElement(document, 'rect', {
      ...box,
      fill: stroke.paint,
      'fill-opacity': bandOpacity(role, palette),
    });
  }
  const look = { fill: 'none', stroke: stroke.paint, 'stroke-width': stroke.width };
  if (isScattered(x, y)) {
    return svgElement(document, 'circle', { cx: place.x + sampleWidth / 2, cy: middle, r: ring, ...look });
  }
  const d = `M${place.x},${middle}h${sampleWidth}`;
  return svgElement(document, 'path', { d, ...look, 'stroke-dasharray': stroke.dashes });
}

/** A band in its own paint needs only the palette's opacity; one in a curve's paint is thinned to let curves show. */
export function bandOpacity(role: string, palette: Palette): number {
  return role === 'band' ? palette.bandOpacity : 0.16;
}

/** The scale of a map's colours; the texts at its ends follow the range. */
export interface ColourBar {
  readonly element: SVGElement;
  update(map: MapSpec): void;
  paint(scheme: Scheme): void;
}

const barHeight = 9;
/** Strips of the bar: 2.5 px each, below what the eye separates in a smooth scale. */
const strips = 48;

/** Draws the colour bar in its row: lowest value, strip of colours, highest value, label with unit. */
export function createColourBar(
  document: Document,
  layout: Layout,
  palette: Palette,
  grey = false,
): ColourBar {
  const { x: start, y: baseline, label } = layout.colourBar!;
  const strip = Array.from({ length: strips }, (_, index) =>
    // Half a pixel of overlap hides the seams between neighbours.
    svgElement(document, 'rect', {
      x: (index * barWidth) / strips,
      width: barWidth / strips + (index < strips - 1 ? 0.5 : 0),
      height: barHeight,
    }),
  );
  const outline = svgElement(document, 'rect', {
    width: barWidth,
    height: barHeight,
    fill: 'none',
    stroke: palette.muted,
    'stroke-width': 0.5,
  });
  const bar = svgElement(document, 'g', {}, ...strip, outline);
  const text = (x: number, y: number, fill: string, ...words: string[]) =>
    svgElement(document, 'text', { x, y, fill, 'text-anchor': 'start' }, ...words);
  const [low, high] = [text(start, baseline, palette.muted), text(start, baseline, palette.muted)];
  const name = text(0, label.y, palette.ink, label.text);
  name.setAttribute('font-size', String(labelSize));
  return {
    element: svgElement(document, 'g', { class: 'figure-colours' }, low, bar, high, name),
    update({ range, openEnd }) {
      low.textContent = shortNumber(range[0]);
      high.textContent = `${shortNumber(range[1])}${openEnd ? beyond : ''}`;
      const left = start + textWidth(low.textContent, tickSize) + 5;
      setAttributes(bar, { transform: `translate(${left},${baseline - 9})` });
      setAttributes(high, { x: left + barWidth + 5 });
    },
    paint(scheme) {
      for (const [index, rect] of strip.entries())
        rect.setAttribute('fill', colourAt((index + 0.5) / strips, scheme, grey));
    },
  };
}
