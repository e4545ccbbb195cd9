import type { FigureSpec, SeriesSpec } from '../../document.ts';
import type { MapSpec } from '../../mapSpec.ts';
import { setAttributes, svgElement } from '../element.ts';
import { bandPath, isScattered, linePath, type Scale, scaleOf } from './curves.ts';
import { drawFrame } from './frame.ts';
import { type Layout, layOut, type Shape } from './layout.ts';
import { bandOpacity, type ColourBar, createColourBar, drawLegend } from './legend.ts';
import { straightened } from './logarithm.ts';
import { pixelRows } from './mapPicture.ts';
import { createMarks, type DrawnMarks } from './marks.ts';
import { type Palette, type Scheme, type Stroke, strokeOf } from './palette.ts';

/** A figure as one SVG: the frame once, then curves, marks and labels rewritten in place. */
export interface Drawing {
  readonly svg: SVGSVGElement;
  readonly layout: Layout;
  /** Whether this drawing can take the values in place; else a new one is needed. */
  fits(spec: FigureSpec, width: number): boolean;
  update(spec: FigureSpec): void;
  /** Title and summary for those who do not see it; `update` does this too. */
  announce(spec: FigureSpec): void;
  /** Colours of the scale beside a map. */
  paint(scheme: Scheme): void;
}

interface Parts {
  readonly paths: readonly SVGPathElement[];
  /** Paper beneath the curves of a map. */
  readonly halos: readonly SVGPathElement[];
  readonly marks: DrawnMarks;
  readonly colourBar: ColourBar | undefined;
}

/** Draws a figure at a width in px; `palette` decides whether its paints follow the page. */
export function createDrawing(
  document: Document,
  spec: FigureSpec,
  width: number,
  shape: Shape,
  palette: Palette,
): Drawing {
  const layout = layOut(spec, width, shape);
  const key = frameKey(spec, width);
  const scale = scaleOf(layout.x.domain, layout.y.domain, layout.frameWidth, layout.frameHeight);
  const svg = drawFrame(document, layout, palette, spec.map !== undefined);
  svg.setAttribute('role', 'img');
  const parts = drawParts(document, spec, layout, palette, svg);
  const announce = ({ title, summary }: FigureSpec) =>
    setAttributes(svg, { 'aria-label': title, 'aria-description': summary });
  return {
    svg,
    layout,
    fits: (other, otherWidth) => frameKey(other, otherWidth) === key,
    announce,
    update: (now) => {
      announce(now);
      updateParts(parts, now, scale);
    },
    paint: (scheme) => parts.colourBar?.paint(scheme),
  };
}

/** Everything that the frame depends on; the rest can change in place. */
function frameKey(spec: FigureSpec, width: number): string {
  const series = spec.series.map(({ label, role, x, y, y2 }) => [
    label,
    role,
    y2 !== undefined,
    isScattered(x, y),
  ]);
  const marks = spec.marks?.map(({ kind, role }) => [kind, role]);
  return JSON.stringify([
    width,
    spec.x,
    spec.y,
    spec.secondX,
    spec.secondY,
    spec.equalScale,
    series,
    marks,
    spec.map && [spec.map.label, spec.map.unit, spec.map.openEnd, spec.map.mirrored, spec.map.grey],
  ]);
}

function drawParts(
  document: Document,
  spec: FigureSpec,
  layout: Layout,
  palette: Palette,
  svg: SVGSVGElement,
): Parts {
  const onMap = spec.map !== undefined;
  const strokes = strokesOf(spec.series, palette);
  const paths = spec.series.map((series, index) => drawCurve(document, series, strokes[index]!, palette));
  const halos = onMap
    ? spec.series.map((series, index) => drawHalo(document, series, strokes[index]!, palette))
    : [];
  // Bands lie beneath, the main curve on top.
  const order = [...paths.keys()].sort((a, b) => depth(spec.series[a]!) - depth(spec.series[b]!));
  const marks = createMarks(document, spec.marks ?? [], layout, palette, onMap);
  const colourBar = onMap ? createColourBar(document, layout, palette, spec.map!.grey) : undefined;
  const curves = [...halos, ...order.map((index) => paths[index]!)];
  svg.append(
    inFrame(document, layout, svgElement(document, 'g', { class: 'figure-curves' }, ...curves)),
    svgElement(document, 'g', { transform: `translate(${layout.left},${layout.top})` }, marks.element),
    ...drawLegend(document, spec, layout, strokes, palette),
    ...(colourBar ? [colourBar.element] : []),
  );
  return { paths, halos, marks, colourBar };
}

function updateParts(parts: Parts, spec: FigureSpec, scale: Scale): void {
  const { series, marks = [] } = straightened(spec);
  for (const [index, { x, y, y2 }] of series.entries()) {
    const path = y2 ? bandPath(x, y, y2, scale) : linePath(x, y, scale);
    parts.paths[index]!.setAttribute('d', path);
    parts.halos[index]?.setAttribute('d', path);
  }
  parts.marks.update({ marks, series }, scale);
  if (spec.map) parts.colourBar?.update(spec.map);
}

function strokesOf(series: readonly SeriesSpec[], palette: Palette): Stroke[] {
  return series.map(({ role, x, y }, index) => {
    const earlier = series.slice(0, index).filter((other) => other.role === role).length;
    const stroke = strokeOf(role, earlier, palette);
    // Dashes would break the rings open.
    return isScattered(x, y) ? { ...stroke, width: 1.5, dashes: undefined } : stroke;
  });
}

function depth({ role, y2 }: SeriesSpec): number {
  return y2 ? 0 : { band: 1, kept: 1, reference: 1, third: 2, second: 3, main: 4 }[role];
}

function drawCurve(
  document: Document,
  { role, y2 }: SeriesSpec,
  stroke: Stroke,
  palette: Palette,
): SVGPathElement {
  const look = y2
    ? { fill: stroke.paint, 'fill-opacity': bandOpacity(role, palette) }
    : { fill: 'none', stroke: stroke.paint, 'stroke-width': stroke.width, 'stroke-dasharray': stroke.dashes };
  return svgElement(document, 'path', { class: 'figure-curve', 'stroke-linejoin': 'round', ...look });
}

function drawHalo(document: Document, { y2 }: SeriesSpec, stroke: Stroke, palette: Palette): SVGPathElement {
  return svgElement(document, 'path', {
    class: 'figure-halo',
    fill: 'none',
    stroke: y2 ? 'none' : palette.paper,
    'stroke-width': stroke.width + 2,
    'stroke-linejoin': 'round',
    opacity: 0.75,
  });
}

/** Clips to the frame without an id: a nested <svg>, one px larger so that a line along the edge keeps its width. */
function inFrame(document: Document, layout: Layout, ...children: Node[]): SVGSVGElement {
  const [width, height] = [layout.frameWidth + 2, layout.frameHeight + 2];
  const box = { x: layout.left - 1, y: layout.top - 1, width, height, viewBox: `-1 -1 ${width} ${height}` };
  return svgElement(document, 'svg', box, ...children);
}

/**
 * The map's picture within the frame. Values stand at grid points, the first and last on the edges of the frame, so
 * half a cell is cut off all round.
 */
export function placeMap(document: Document, drawing: Drawing, map: MapSpec, dataUrl: string): void {
  const { left, top, frameWidth, frameHeight } = drawing.layout;
  const rows = pixelRows(map);
  const viewBox = `0.5 0.5 ${Math.max(map.columns - 1, 1)} ${Math.max(rows - 1, 1)}`;
  const box = {
    x: left,
    y: top,
    width: frameWidth,
    height: frameHeight,
    viewBox,
    preserveAspectRatio: 'none',
  };
  const image = svgElement(document, 'image', {
    width: map.columns,
    height: rows,
    href: dataUrl,
    preserveAspectRatio: 'none',
  });
  drawing.svg.prepend(svgElement(document, 'svg', { class: 'figure-map', ...box }, image));
}
