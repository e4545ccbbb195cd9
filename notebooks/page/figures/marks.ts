import type { MarkSpec } from '../../document.ts';
import { setAttributes, svgElement } from '../element.ts';
import type { Scale } from './curves.ts';
import { bestPlace, candidates, type Drawn, type Place, pixelsOf, step } from './labelPlaces.ts';
import type { Layout } from './layout.ts';
import type { Palette } from './palette.ts';
import { shorten, textWidth, tickSize, wrapText } from './text.ts';

/** The elements of one mark; its label sits where it is in nobody's way. */
interface DrawnMark {
  /** Paper beneath the line, so that it reads on a map. */
  readonly under: SVGElement;
  readonly shape: SVGElement;
  readonly text: SVGTextElement;
}

export interface DrawnMarks {
  readonly element: SVGElement;
  update(now: Drawn, scale: Scale): void;
}

const size = tickSize + 0.5;

/** Draws lines and points with their labels in the frame; kinds and roles are fixed, positions and words follow. */
export function createMarks(
  document: Document,
  marks: readonly MarkSpec[],
  layout: Layout,
  palette: Palette,
  onMap: boolean,
): DrawnMarks {
  const drawn = marks.map((mark) => drawMark(document, mark, palette, onMap));
  // Reference first and today last, so that the accent lies on top.
  const order = [...drawn.keys()].sort((a, b) => rank(marks[a]!) - rank(marks[b]!));
  const shapes = order.flatMap((index) => [drawn[index]!.under, drawn[index]!.shape]);
  const texts = order.map((index) => drawn[index]!.text);
  const element = svgElement(document, 'g', { class: 'figure-marks' }, ...shapes, ...texts);
  return {
    element,
    update(now, scale) {
      const places: Place[] = [];
      for (const index of [...order].reverse())
        place(drawn[index]!, now.marks[index]!, now, scale, layout, places);
    },
  };
}

function rank(mark: MarkSpec): number {
  return mark.role === 'today' ? 1 : 0;
}

function drawMark(document: Document, mark: MarkSpec, palette: Palette, onMap: boolean): DrawnMark {
  const today = mark.role === 'today';
  const paint = today ? palette.accent : palette.muted;
  const point = mark.kind === 'point';
  const shape = point
    ? svgElement(document, 'circle', {
        r: 4,
        fill: today ? paint : palette.paper,
        stroke: today ? palette.paper : paint,
        'stroke-width': 1.25,
      })
    : svgElement(document, 'path', {
        fill: 'none',
        stroke: paint,
        'stroke-width': today ? 1.25 : 1,
        'stroke-dasharray': today ? undefined : '3 3',
      });
  const under = svgElement(document, point ? 'circle' : 'path', {
    ...(point ? { r: 5.5, fill: palette.paper } : { fill: 'none', stroke: palette.paper, 'stroke-width': 3 }),
    opacity: onMap ? 0.7 : 0,
  });
  const text = svgElement(document, 'text', {
    'font-size': size,
    fill: today ? palette.accent : palette.muted,
    stroke: palette.paper,
    'stroke-width': 5,
    'stroke-linejoin': 'round',
    'paint-order': 'stroke',
  });
  shape.setAttribute('class', `figure-mark figure-mark-${mark.role}`);
  return { under, shape, text };
}

function place(
  drawn: DrawnMark,
  mark: MarkSpec,
  all: Drawn,
  scale: Scale,
  layout: Layout,
  places: Place[],
): void {
  const { frameWidth: width, frameHeight: height } = layout;
  const [x, y] = pixelsOf(mark, scale);
  const shown = within(x, width) && within(y, height);
  for (const element of [drawn.under, drawn.shape, drawn.text])
    setAttributes(element, { display: shown ? undefined : 'none' });
  if (!shown) return;
  const [shownX, shownY] = [Math.round(x * 10) / 10, Math.round(y * 10) / 10];
  for (const element of [drawn.under, drawn.shape]) {
    if (mark.kind === 'point') setAttributes(element, { cx: shownX, cy: shownY });
    else
      setAttributes(element, {
        d: mark.kind === 'vertical' ? `M${shownX},0V${height}` : `M0,${shownY}H${width}`,
      });
  }
  // Long words at a vertical line or a point are broken: at 390 px a third of the frame is some 90 px.
  const lines =
    mark.kind === 'horizontal'
      ? [shorten(mark.label, width - 12, size)]
      : wrapText(mark.label, Math.max(76, width * 0.28), size);
  const label = {
    width: Math.max(...lines.map((line) => textWidth(line, size))),
    more: (lines.length - 1) * step,
  };
  const best = bestPlace(
    candidates(mark.kind, x, y, label, layout, mark.above),
    mark,
    all,
    scale,
    layout,
    places,
  );
  places.push(best);
  // An estimated width errs to the wide side: the end that is near the line is the anchor.
  const leftOfMark = mark.kind === 'horizontal' ? best.x > width / 2 : best.x + label.width / 2 < x;
  setAttributes(drawn.text, { 'text-anchor': leftOfMark ? 'end' : 'start' });
  writeLines(drawn.text, lines, round(leftOfMark ? best.x + label.width : best.x), best.y);
}

function writeLines(text: SVGTextElement, lines: readonly string[], x: number, y: number): void {
  while (text.childNodes.length > lines.length) text.lastChild!.remove();
  for (const [index, line] of lines.entries()) {
    const span =
      (text.childNodes[index] as SVGTSpanElement | undefined) ??
      text.appendChild(svgElement(text.ownerDocument, 'tspan'));
    if (span.textContent !== line) span.textContent = line;
    setAttributes(span, { x, y: round(y + index * step) });
  }
}

const round = (value: number) => Math.round(value * 10) / 10;
const within = (value: number, end: number) => value >= -0.5 && value <= end + 0.5;
