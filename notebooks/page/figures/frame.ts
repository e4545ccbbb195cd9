import * as Plot from '@observablehq/plot';
import { svgElement } from '../element.ts';
import type { Label, Layout, Ticks } from './layout.ts';
import type { Palette } from './palette.ts';
import { labelSize, lineHeight, tickSize } from './text.ts';

/** Axes, ticks and labels: the part of a figure that stays while values change. */
export function drawFrame(
  document: Document,
  layout: Layout,
  palette: Palette,
  onMap: boolean,
): SVGSVGElement {
  const svg = Plot.plot({
    document,
    className: 'figure-svg',
    width: layout.width,
    height: layout.height,
    marginLeft: layout.left,
    marginTop: layout.top,
    marginRight: layout.width - layout.left - layout.frameWidth,
    marginBottom: layout.height - layout.top - layout.frameHeight,
    x: { type: 'linear', domain: [...layout.x.domain], axis: null },
    y: { type: 'linear', domain: [...layout.y.domain], axis: null },
    marks: frameMarks(layout, palette, onMap),
  }) as SVGSVGElement;
  // Plot's own style element and inner aria-labels: the page has a style, and a <g> may not carry a name (axe).
  for (const style of svg.querySelectorAll('style')) style.remove();
  for (const group of svg.querySelectorAll('[aria-label]')) group.removeAttribute('aria-label');
  svg.setAttribute('font-family', palette.font);
  svg.setAttribute('font-size', String(tickSize));
  svg.setAttribute('fill', palette.ink);
  svg.append(...labels(document, layout, palette));
  return svg;
}

function frameMarks(layout: Layout, palette: Palette, onMap: boolean): Plot.Markish[] {
  const look = (ticks: Ticks) => ({
    label: null,
    tickSize: 4,
    tickPadding: 4,
    stroke: palette.muted,
    strokeWidth: 0.75,
    fill: palette.muted,
    tickFormat: (_: unknown, index: number) => ticks.texts[index]!,
  });
  const { x, y, secondX, secondY } = layout;
  const hairline = { stroke: palette.muted, strokeWidth: 0.75 };
  const [low, high] = [Math.min(...y.domain), Math.max(...y.domain)];
  return [
    ...(onMap
      ? [Plot.frame(hairline)]
      : [Plot.gridY([...y.ticks.at], { stroke: palette.line, strokeOpacity: 0.55 })]),
    ...(y.hasZero && low < 0 && high > 0 && !onMap
      ? [Plot.ruleY([0], { stroke: palette.muted, strokeOpacity: 0.6, strokeWidth: 0.75 })]
      : []),
    ...(onMap ? [] : [Plot.frame({ ...hairline, anchor: 'bottom' })]),
    ...(secondX && !onMap ? [Plot.frame({ ...hairline, anchor: 'top' })] : []),
    ...(secondY && !onMap ? [Plot.frame({ ...hairline, anchor: 'right' })] : []),
    Plot.axisX([...x.ticks.at], { ...look(x.ticks), anchor: 'bottom' }),
    Plot.axisY([...y.ticks.at], { ...look(y.ticks), anchor: 'left', tickSize: onMap || secondY ? 4 : 0 }),
    ...(secondX
      ? [Plot.axisX([...secondX.ticks.at], { ...look(secondX.ticks), anchor: 'top' as const })]
      : []),
    ...(secondY
      ? [Plot.axisY([...secondY.ticks.at], { ...look(secondY.ticks), anchor: 'right' as const })]
      : []),
  ];
}

function labels(document: Document, layout: Layout, palette: Palette): SVGElement[] {
  const middle = layout.left + layout.frameWidth / 2;
  const draw = (name: string, label: Label | undefined, x: number, anchor: string) =>
    label ? [drawLabel(document, name, label, x, anchor, palette)] : [];
  return [
    ...draw('x', layout.x.label, middle, 'middle'),
    ...draw('y', layout.y.label, 0, 'start'),
    ...draw('second-x', layout.secondX?.label, middle, 'middle'),
    ...draw('second-y', layout.secondY?.label, layout.width, 'end'),
  ];
}

function drawLabel(
  document: Document,
  name: string,
  label: Label,
  x: number,
  anchor: string,
  palette: Palette,
): SVGElement {
  const lines = label.lines.map((line, index) =>
    svgElement(document, 'tspan', { x, y: label.y + index * lineHeight }, line),
  );
  return svgElement(
    document,
    'text',
    {
      class: `figure-label figure-label-${name}`,
      'text-anchor': anchor,
      'font-size': labelSize,
      fill: palette.ink,
    },
    ...lines,
  );
}
