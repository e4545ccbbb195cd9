import { ticks } from 'd3';
import type { AxisSpec, FigureSpec, SecondScale } from '../../document.ts';
import type { MapSpec } from '../../mapSpec.ts';
import { logarithmicTicks, logarithmOf } from './logarithm.ts';
import {
  labelSize,
  lineHeight,
  shorten,
  textWidth,
  tickSize,
  tickTexts,
  withUnit,
  wrapText,
} from './text.ts';

/** Wider than high, nearly square, or a frame of that height in px. */
export type Shape = 'wide' | 'tall' | number;

/** Ticks of one scale: positions in the axis' own unit, and their texts. */
export interface Ticks {
  readonly at: readonly number[];
  readonly texts: readonly string[];
}

/** One entry of the legend: index of the series, left end of its sample, baseline, and the text that fits. */
export interface LegendEntry {
  readonly series: number;
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

/** Lines of a label: first baseline, and the lines. */
export interface Label {
  readonly y: number;
  readonly lines: readonly string[];
}

/** The colour bar: left end and baseline, after its label or, where that is too narrow, on the line below. */
export interface ColourBarPlace {
  readonly x: number;
  readonly y: number;
  readonly label: { readonly y: number; readonly text: string };
}

/** Where everything sits, in px of the whole drawing. */
export interface Layout {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly top: number;
  readonly frameWidth: number;
  readonly frameHeight: number;
  readonly x: { readonly domain: readonly [number, number]; readonly ticks: Ticks; readonly label: Label };
  readonly y: {
    readonly domain: readonly [number, number];
    readonly ticks: Ticks;
    readonly label: Label;
    /** 0 of the axis is the 0 of its numbers; on a logarithmic one it is their 1. */
    readonly hasZero: boolean;
  };
  readonly secondX?: { readonly ticks: Ticks; readonly label: Label };
  readonly secondY?: { readonly ticks: Ticks; readonly label: Label };
  readonly legend: readonly LegendEntry[];
  readonly colourBar?: ColourBarPlace;
}

export const sampleWidth = 26;
export const sampleGap = 7;
const rowHeight = 19;
const entryGap = 20;
const tickRoom = 19;
/** Width of the strip of colours, and of its whole row with the longest short number at each end, px. */
export const barWidth = 120;
const barRoom = barWidth + 92;
/** Behind the highest number of a scale that values go beyond. */
export const beyond = ' and more';

/** Lays a figure out for a width in px; cheap (no drawing), so that a figure out of view can hold its place. */
export function layOut(spec: FigureSpec, width: number, shape: Shape): Layout {
  const [xDomain, yDomain] = [usable(spec.x), usable(spec.y)];
  const [usual, most] = frameHeights(shape, width);
  const yTicks = ticksUp(spec.y, yDomain, usual);
  const secondYTicks = spec.secondY && secondTicks(yDomain, spec.secondY, usual / 52);
  const left = Math.ceil(widest(yTicks) + 13);
  const right = secondYTicks
    ? Math.ceil(widest(secondYTicks) + 13)
    : Math.max(14, endRoom(ownTicks(spec.x, xDomain, width - left - 14), xDomain));
  const room = Math.max(60, width - left - right);
  const [frameWidth, frameHeight] = spec.equalScale
    ? inProportion(xDomain, yDomain, room, most)
    : [room, usual];
  const legend = layOutLegend(spec, width);
  const colourBar = spec.map && layOutColourBar(spec.map, legend.height, width);
  let row = colourBar ? colourBar.y + 12 : legend.height;
  const label = (text: string, room: number, y: number): Label => ({
    y,
    lines: wrapText(text, room, labelSize),
  });
  const [yText, secondYText] = [withUnit(spec.y.label, spec.y.unit), spec.secondY?.label ?? ''];
  const labelRoom = shareRoom(textWidth(yText, labelSize), textWidth(secondYText, labelSize), width);
  const yLabel = label(yText, labelRoom[0], row + 12);
  const secondYLabel = spec.secondY && label(secondYText, labelRoom[1], row + 12);
  row += Math.max(yLabel.lines.length, secondYLabel?.lines.length ?? 0) * lineHeight + 4;
  const secondXLabel = spec.secondX && label(spec.secondX.label, frameWidth, row + 16);
  if (secondXLabel) row += 4 + secondXLabel.lines.length * lineHeight + tickRoom;
  const top = Math.ceil(row + 8);
  const xLabel = label(withUnit(spec.x.label, spec.x.unit), frameWidth, top + frameHeight + tickRoom + 15);
  return {
    width,
    height: Math.ceil(xLabel.y + (xLabel.lines.length - 1) * lineHeight + 6),
    left,
    top,
    frameWidth,
    frameHeight,
    x: { domain: xDomain, ticks: ownTicks(spec.x, xDomain, frameWidth), label: xLabel },
    y: { domain: yDomain, ticks: yTicks, label: yLabel, hasZero: !spec.y.logarithmic },
    ...(spec.secondX && secondXLabel
      ? { secondX: { ticks: ticksAlong(xDomain, spec.secondX, frameWidth), label: secondXLabel } }
      : {}),
    ...(secondYTicks && secondYLabel ? { secondY: { ticks: secondYTicks, label: secondYLabel } } : {}),
    legend: legend.entries,
    ...(colourBar === undefined ? {} : { colourBar }),
  };
}

/** The height of a frame of this shape, and the greatest that one in proportion has; px. */
function frameHeights(shape: Shape, width: number): readonly [usual: number, most: number] {
  if (typeof shape === 'number') return [shape, shape];
  const [part, least, most] = shape === 'tall' ? [0.72, 280, 460] : [0.46, 220, 340];
  return [Math.round(within(width * part, least, most)), most];
}

/** How far the text of a tick at the right end reaches beyond the frame, px. */
function endRoom({ at, texts }: Ticks, [, end]: readonly [number, number]): number {
  return at.at(-1) === end ? Math.ceil(textWidth(texts.at(-1)!, tickSize) / 2) : 0;
}

/** Ticks along y. */
function ticksUp(axis: AxisSpec, domain: readonly [number, number], height: number): Ticks {
  if (axis.logarithmic) return logarithmicTicks(domain, height / 26);
  return ticksOf(domain, axis.ordinal ? domain[1] - domain[0] : height / 52);
}

/** Ticks along x. */
function ownTicks(axis: AxisSpec, domain: readonly [number, number], width: number): Ticks {
  return axis.logarithmic ? logarithmicTicks(domain, width / 40) : ticksAlong(domain, { factor: 1 }, width);
}

/** A domain that can be drawn, of logarithms where the axis is logarithmic: finite and not empty. */
function usable(axis: AxisSpec): readonly [number, number] {
  const [a, b] = axis.logarithmic ? (axis.domain.map(logarithmOf) as [number, number]) : axis.domain;
  if (!Number.isFinite(a) || !Number.isFinite(b)) return [0, 1];
  if (a !== b) return [a, b];
  const half = a === 0 ? 1 : Math.abs(a) / 2;
  return [a - half, a + half];
}

/** Width and height of a frame in the proportion of its domains, as large as the room and the greatest height allow. */
function inProportion(
  x: readonly [number, number],
  y: readonly [number, number],
  room: number,
  most: number,
): [number, number] {
  const ratio = Math.abs((y[1] - y[0]) / (x[1] - x[0]));
  const width = Math.min(room, most / ratio);
  return [Math.max(1, Math.round(width)), Math.max(1, Math.round(width * ratio))];
}

function within(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}

function ticksOf(domain: readonly [number, number], count: number): Ticks {
  const at = ticks(domain[0], domain[1], Math.max(2, Math.floor(count)));
  return { at, texts: tickTexts(at) };
}

/** Round values of the second scale, at their places on the first. */
function secondTicks(domain: readonly [number, number], scale: Scale, count: number): Ticks {
  const { factor, bend = 0, offset = 0 } = scale;
  if (!Number.isFinite(factor) || factor === 0) return { at: [], texts: [] };
  const [low, high] = domain.map((x) => (factor * x) / (1 + bend * x) + offset) as [number, number];
  const round = ticksOf([low, high], count);
  const at = round.at.map((value) => {
    const straight = (value - offset) / factor;
    return straight / (1 - bend * straight);
  });
  return { at, texts: round.texts };
}

type Scale = Omit<SecondScale, 'label'>;

/** As many ticks along x as their texts leave room for; from 60 px apart down. */
function ticksAlong(domain: readonly [number, number], scale: Scale, width: number): Ticks {
  for (let count = Math.floor(width / 60); ; count--) {
    const chosen = secondTicks(domain, scale, count);
    if (count <= 2 || chosen.at.length * (widest(chosen) + 12) <= width) return chosen;
  }
}

/** Room for two labels on one line: what each needs, or a share of its need where the line is too short. */
function shareRoom(first: number, second: number, width: number): [number, number] {
  if (second === 0) return [width, 0];
  const free = width - 16;
  if (first + second <= free) return [free - second, second];
  const share = within(first / (first + second), 0.3, 0.7);
  return [free * share, free * (1 - share)];
}

function layOutColourBar(map: MapSpec, top: number, width: number): ColourBarPlace {
  const text = shorten(withUnit(map.label, map.unit), width, labelSize);
  const end = textWidth(text, labelSize) + 14;
  const beside = end + barRoom + (map.openEnd ? textWidth(beyond, tickSize) : 0) <= width;
  const label = { y: top + 13, text };
  return beside ? { x: end, y: top + 13, label } : { x: 0, y: top + 13 + rowHeight, label };
}

function widest(of: Ticks): number {
  return Math.max(0, ...of.texts.map((text) => textWidth(text, tickSize)));
}

/** Entries side by side, a new row where the next does not fit. A lone curve named like the axis needs none. */
function layOutLegend(spec: FigureSpec, width: number): { entries: LegendEntry[]; height: number } {
  const named = spec.series.length > 1 || spec.series[0]?.label !== spec.y.label;
  const entries: LegendEntry[] = [];
  let [x, row] = [0, 0];
  for (const [series, { label }] of spec.series.entries()) {
    if (!named || label === '') continue;
    const text = shorten(label, width - sampleWidth - sampleGap, labelSize);
    const room = sampleWidth + sampleGap + textWidth(text, labelSize);
    if (x > 0 && x + room > width) [x, row] = [0, row + 1];
    entries.push({ series, x, y: row * rowHeight + 13, text });
    x += room + entryGap;
  }
  return { entries, height: entries.length === 0 ? 0 : (row + 1) * rowHeight + 8 };
}
