import { formatQuantity } from '../lib/graph/units.ts';
import type { AxisSpec, FigureSpec, MarkSpec } from './document.ts';
import type { MapSpec } from './mapSpec.ts';

/** Ends of an axis, in the unit shown. */
export type Ends = readonly [number, number];

/**
 * A figure with other ends of its axes, those left out as they were. Marks outside are left out, and so is a place to
 * move that is not there any more; second scales follow. A map, and an axis of places in an order, hold nothing beyond
 * their ends, so that these can be drawn in but not out. Ends that cannot be drawn change nothing.
 */
export function withRanges(spec: FigureSpec, x: Ends | undefined, y: Ends | undefined): FigureSpec {
  const [xDomain, yDomain] = [endsFor(spec, spec.x, x), endsFor(spec, spec.y, y)];
  if (!xDomain && !yDomain) return spec;
  const now = {
    ...spec,
    x: { ...spec.x, domain: xDomain ?? spec.x.domain },
    y: { ...spec.y, domain: yDomain ?? spec.y.domain },
  };
  const { marks, moves, map, ...rest } = now;
  return {
    ...rest,
    ...(marks && { marks: marks.filter((mark) => isInside(mark, now)) }),
    ...(moves && within(moves.at, now.x.domain) && { moves }),
    ...(map && { map: cropped(map, spec, now), summary: `${spec.summary} ${drawnSaid(now)}` }),
  };
}

/** Which part of a map is drawn, since its summary speaks of the whole. */
function drawnSaid({ x, y }: FigureSpec): string {
  const ends = ({ domain, unit }: AxisSpec) =>
    `${domain.map((end) => formatQuantity(end, '1', '1', 3)).join(' to ')}${unit === '1' ? '' : `\u202f${unit}`}`;
  return `Drawn is ${ends(x)} across and ${ends(y)} up.`;
}

/** Why these ends cannot be those of an axis; undefined where they can. */
export function endsProblem(ends: Ends): string | undefined {
  if (!ends.every(Number.isFinite)) return 'Both ends of an axis have to be numbers, or both empty.';
  return ends[0] === ends[1] ? 'The two ends of an axis have to differ.' : undefined;
}

function endsFor(spec: FigureSpec, axis: AxisSpec, ends: Ends | undefined): Ends | undefined {
  if (!ends || endsProblem(ends) !== undefined) return undefined;
  const sorted: Ends = ends[0] < ends[1] ? ends : [ends[1], ends[0]];
  if (axis.logarithmic && sorted[0] <= 0) return undefined;
  if (!spec.map && !axis.ordinal) return sorted;
  const [low, high] = [Math.min(...axis.domain), Math.max(...axis.domain)];
  const inside: Ends = [Math.max(low, sorted[0]), Math.min(high, sorted[1])];
  return inside[0] < inside[1] ? inside : undefined;
}

const within = (at: number, [a, b]: Ends): boolean => at >= Math.min(a, b) && at <= Math.max(a, b);

function isInside({ kind, x, y }: MarkSpec, { x: across, y: up }: FigureSpec): boolean {
  const inX = kind === 'horizontal' || x === undefined || within(x, across.domain);
  const inY = kind === 'vertical' || y === undefined || within(y, up.domain);
  return inX && inY;
}

/** The part of a map between other ends, by as many cells: each the one that lies there. */
function cropped(map: MapSpec, before: FigureSpec, now: FigureSpec): MapSpec {
  const { columns, mirrored, ...rest } = map;
  // The first row is the middle one of a mirrored map, and there once.
  const rows = mirrored ? 2 * map.rows - 1 : map.rows;
  const values = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    const part = partOf((row + 0.5) / rows, now.y.domain, before.y.domain);
    const cell = cellOf(part, rows);
    const from = mirrored ? Math.abs(cell - (map.rows - 1)) : cell;
    for (let column = 0; column < columns; column++) {
      const at = cellOf(partOf((column + 0.5) / columns, now.x.domain, before.x.domain), columns);
      values[row * columns + column] = map.values[from * columns + at]!;
    }
  }
  return { ...rest, columns, rows, values };
}

/** A place given in parts of one span, in parts of the other. */
function partOf(part: number, [a, b]: Ends, [from, to]: Ends): number {
  return (a + part * (b - a) - from) / (to - from);
}

function cellOf(part: number, count: number): number {
  return Math.min(count - 1, Math.max(0, Math.floor(part * count)));
}
