import type { MarkSpec, SeriesSpec } from '../../document.ts';
import type { Scale } from './curves.ts';
import { type Box, countCrossing } from './labelCurves.ts';
import type { Layout } from './layout.ts';

/** A place for a label in px of the frame: left end, first baseline, width, and the px its further lines take. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly more: number;
}

/** What a label must keep clear of. */
export interface Drawn {
  readonly marks: readonly MarkSpec[];
  readonly series: readonly SeriesSpec[];
}

const ascent = 10;
const descent = 3;
/** From one line of a mark's label to the next, px. */
export const step = 13.5;

/** Where a mark stands, px of the frame; a line has 0 for the coordinate it does not have. */
export function pixelsOf(mark: MarkSpec, scale: Scale): [number, number] {
  const x = mark.kind === 'horizontal' ? 0 : ((mark.x ?? Number.NaN) - scale.xOrigin) * scale.xScale;
  const y = mark.kind === 'vertical' ? 0 : ((mark.y ?? Number.NaN) - scale.yOrigin) * scale.yScale;
  return [x, y];
}

/** Places for a label, the nicest first; `above` leaves out those below a point. */
export function candidates(
  kind: MarkSpec['kind'],
  x: number,
  y: number,
  label: { width: number; more: number },
  layout: Layout,
  above = false,
): Place[] {
  const { frameWidth: width, frameHeight: height } = layout;
  const [right, left] = [x + 6, x - 6 - label.width];
  const at = (placeX: number, placeY: number): Place => ({ x: placeX, y: placeY, ...label });
  if (kind === 'vertical') {
    const bottom = height - 8 - label.more;
    const between = [88, 118, 148, 178, 208, 238].filter((row) => row < bottom - 30);
    return [13, 28, 43, 58, bottom, bottom - 15, ...between].flatMap((row) => [
      at(right, row),
      at(left, row),
    ]);
  }
  if (kind === 'horizontal') {
    const free = width - label.width;
    const starts = [free - 6, 6, free / 2, 0.75 * free, 0.25 * free];
    return starts.flatMap((start) => [at(start, y - 5), at(start, y + 14)]);
  }
  const middle = y + 4 - label.more / 2;
  const rows = [y - 9 - label.more, ...(above ? [] : [y + 18])].flatMap((row) => [
    at(right, row),
    at(left, row),
  ]);
  return [at(x + 9, middle), at(x - 9 - label.width, middle), ...rows];
}

/** The candidate that leaves the frame least, lies over labels least and is crossed by the fewest marks and curves. */
export function bestPlace(
  list: readonly Place[],
  mark: MarkSpec,
  { marks: all, series }: Drawn,
  scale: Scale,
  layout: Layout,
  taken: readonly Place[],
): Place {
  let best = list[0]!;
  let least = Number.POSITIVE_INFINITY;
  for (const [index, candidate] of list.entries()) {
    let cost = index * 0.5 + 100 * outside(candidate, layout);
    for (const other of taken) cost += 50 * overlap(candidate, other);
    for (const other of all) if (other !== mark && crosses(other, candidate, scale)) cost += 8;
    // No term is negative: what costs enough already need not be held against every piece of the curves.
    if (cost >= least) continue;
    cost += 6 * countCrossing(series, scale, boxOf(candidate));
    if (cost < least) [best, least] = [candidate, cost];
  }
  return best;
}

/** The label with a little room about it. */
function boxOf({ x, y, width, more }: Place): Box {
  return { left: x - 2, right: x + width + 2, top: y - ascent - 2, bottom: y + more + descent + 1 };
}

/** Px by which a label leaves the frame. */
function outside(place: Place, layout: Layout): number {
  const horizontal = Math.max(0, 2 - place.x) + Math.max(0, place.x + place.width + 2 - layout.frameWidth);
  return (
    horizontal +
    Math.max(0, ascent - place.y) +
    Math.max(0, place.y + place.more + descent - layout.frameHeight)
  );
}

/** Smaller side of the overlap of two labels, px. */
function overlap(a: Place, b: Place): number {
  const x = Math.min(a.x + a.width, b.x + b.width) + 4 - Math.max(a.x, b.x);
  const y = Math.min(a.y + a.more, b.y + b.more) + descent + ascent - Math.max(a.y, b.y);
  return Math.max(0, Math.min(x, y));
}

function crosses(mark: MarkSpec, place: Place, scale: Scale): boolean {
  const [x, y] = pixelsOf(mark, scale);
  const inX = x > place.x - 5 && x < place.x + place.width + 5;
  const inY = y > place.y - ascent - 3 && y < place.y + place.more + descent + 3;
  if (mark.kind === 'vertical') return inX;
  return mark.kind === 'horizontal' ? inY : inX && inY;
}
