import { toUnit } from '../lib/graph/units.ts';
import type { AxisSpec, DataColumn, FigureSpec, SeriesSpec } from './document.ts';
import { listed } from './shortTexts.ts';

/** A kept design's own chart of the same block. */
export interface KeptFigure {
  readonly name: string;
  readonly spec: FigureSpec;
}

/** More would hide today's curve. */
export const mostOverlays = 4;

/** What of a kept design can be laid over a chart: its curves, none where they are today's own, or no axes to lay them on. */
type Laid =
  | { readonly name: string; readonly series: readonly SeriesSpec[]; readonly x: Domain; readonly y: Domain }
  | { readonly name: string; readonly why: 'same' | 'axes' };

type Domain = readonly [number, number];

/**
 * A chart with the main curves of kept designs over it, thin and dashed, under the names of these; the axes hold both. The
 * file and the summary tell of them too. Maps stay as they are, and so does what has no curve.
 */
export function overlaid(spec: FigureSpec, kept: readonly KeptFigure[]): FigureSpec {
  if (spec.map || spec.series.length === 0 || kept.length === 0) return spec;
  const laid = kept.slice(0, mostOverlays).map((one) => layOver(spec, one));
  const drawn = laid.filter((one) => 'series' in one);
  const series = drawn.flatMap((one) => one.series);
  return {
    ...spec,
    x: wideEnough(
      spec.x,
      drawn.map(({ x }) => x),
    ),
    y: wideEnough(
      spec.y,
      drawn.map(({ y }) => y),
    ),
    // Below today's: what is drawn last lies on top, and the legend goes on in this order.
    series: [...spec.series, ...series],
    ...(spec.data && { data: [...spec.data, ...series.flatMap((one) => columnsOf(spec, one))] }),
    summary: [spec.summary, ...overlaysSaid(laid)].join(' '),
  };
}

function layOver(spec: FigureSpec, { name, spec: other }: KeptFigure): Laid {
  const x = conversion(other.x, spec.x);
  const y = conversion(other.y, spec.y);
  const mains = spec.series.filter(({ role }) => role === 'main').map(({ label }) => label);
  const curves = other.series.filter(
    ({ role, label, y2 }) => !y2 && (role === 'main' || mains.includes(label)),
  );
  if (!x || !y || curves.length === 0) return { name, why: 'axes' };
  const converted = curves.map((one) => ({ ...one, x: valuesBy(x, one.x), y: valuesBy(y, one.y) }));
  const others = converted.filter((one) => !spec.series.some((today) => sameCurve(today, one)));
  if (others.length === 0) return { name, why: 'same' };
  return {
    name,
    series: others.map(({ label, x, y }) => ({
      label: others.length === 1 ? name : `${name}, ${label}`,
      role: 'kept',
      x,
      y,
    })),
    x: other.x.domain.map(x) as [number, number],
    y: other.y.domain.map(y) as [number, number],
  };
}

/** How values of one axis become those of another; undefined where these hold different things. */
function conversion(from: AxisSpec, to: AxisSpec): ((value: number) => number) | undefined {
  if (from.label !== to.label || from.logarithmic !== to.logarithmic) return undefined;
  if (from.unit === to.unit) return asItIs;
  try {
    toUnit(1, from.unit, to.unit);
    return (value) => toUnit(value, from.unit, to.unit);
  } catch {
    return undefined;
  }
}

const asItIs = (value: number) => value;

const valuesBy = (convert: (value: number) => number, values: Float64Array) =>
  convert === asItIs ? values : values.map(convert);

const sameCurve = (one: SeriesSpec, other: SeriesSpec) =>
  sameValues(one.x, other.x) && sameValues(one.y, other.y);

function sameValues(one: Float64Array, other: Float64Array): boolean {
  return one.length === other.length && one.every((value, i) => Object.is(value, other[i]));
}

function wideEnough(axis: AxisSpec, others: readonly Domain[]): AxisSpec {
  const ends = [axis.domain, ...others].flat();
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const [from, to] = axis.domain;
  // An axis may run downwards.
  return { ...axis, domain: from <= to ? [low, high] : [high, low] };
}

function columnsOf({ x, y }: FigureSpec, { label, ...values }: SeriesSpec): DataColumn[] {
  return [
    { name: `${x.label}, ${label}`, unit: x.unit, values: values.x },
    { name: `${y.label}, ${label}`, unit: y.unit, values: values.y },
  ];
}

/** What is drawn besides, and what is not, in sentences. */
function overlaysSaid(laid: readonly Laid[]): string[] {
  const named = (pick: (one: Laid) => boolean) => laid.filter(pick).map(({ name }) => `‘${name}’`);
  const drawn = named((one) => 'series' in one);
  const same = named((one) => 'why' in one && one.why === 'same');
  const other = named((one) => 'why' in one && one.why === 'axes');
  return [
    ...(drawn.length > 0 ? [`In thin dashes also drawn: ${listed(drawn)}.`] : []),
    ...(same.length > 0 ? [`${listed(same)} ${same.length === 1 ? 'lies' : 'lie'} on today’s curve.`] : []),
    ...(other.length > 0 ? [`${listed(other)} cannot be drawn on these axes.`] : []),
  ];
}
/** Why a kept design is missing from a chart. */
export function notDrawnSaid(name: string, why: string): string {
  return `‘${name}’ is not drawn: ${why.replace(/\.$/, '')}.`;
}

/** Work for a kept design's chart, and how far it is. */
export function overlayWorkSaid(name: string, part: number | undefined): string {
  return part === undefined
    ? `Working out ‘${name}’ for this chart …`
    : `Working out ‘${name}’ for this chart: ${Math.round(100 * part)}\u202f% done.`;
}
