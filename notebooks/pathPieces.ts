import { type Hatch, type HatchLine, lineAt, lineCount, lineOffset } from '../lib/process/hatch.ts';
import { turnOf } from '../lib/process/pulsePlaces.ts';
import { overscan, type ScanMotion } from '../lib/process/scanTime.ts';

export type Point = readonly [x: number, y: number];
const gap: Point = [Number.NaN, Number.NaN];

/** What the drawing shows: from `out` outside the lower left corner to `size` inside it, metres. */
export interface PathWindow {
  readonly size: number;
  readonly out: number;
}

/** One line of the first pass in what is shown: its turn from 0, its height above the corner, and whether it runs back. */
export interface DrawnLine {
  readonly turn: number;
  readonly y: number;
  readonly back: boolean;
}

/** As wide as two spots, eight lines at least and thirty at most, and no wider than the field. */
export function windowOf({ width, height, lineSpacing }: Hatch, diameter: number): PathWindow {
  const size = Math.min(Math.max(2 * diameter, 8 * lineSpacing), 30 * lineSpacing, Math.max(width, height));
  return { size, out: 0.35 * size };
}

/** Lines of the first pass in what is shown, from the lowest up. */
export function linesDrawn(hatch: Hatch, { size }: PathWindow): readonly DrawnLine[] {
  const count = lineCount(hatch, 0);
  const height = (index: number) => lineOffset(hatch, 0, index) + hatch.height / 2;
  const number = Math.min(count, Math.floor((size - height(0)) / hatch.lineSpacing) + 1);
  return Array.from({ length: Math.max(0, number) }, (_, index) => {
    const turn = turnOf(count, hatch.interlacing, index);
    return { turn, y: height(index), back: hatch.directions === 'both' && turn % 2 === 1 };
  });
}

/** Cuts a way into what lies within what is shown, a gap where it leaves. */
function cut(points: readonly Point[], { size, out }: PathWindow): Point[] {
  const inside = ([x, y]: Point) => x >= -out && x <= size && y >= -out && y <= size;
  return [...points.map((point) => (inside(point) ? point : gap)), gap];
}

/** Half an ellipse from one line’s end to the next line’s beginning, `reach` beyond x = 0. */
function bow(from: number, to: number, reach: number): Point[] {
  return Array.from({ length: 41 }, (_, i): Point => {
    const part = (Math.PI * i) / 40;
    return [-reach * Math.sin(part), from + ((to - from) * (1 - Math.cos(part))) / 2];
  });
}

/**
 * The ways between lines at the left edge, from the corner: beyond the edge by the overscan, or along the edge. Where all
 * lines run the same way the way back is drawn half-way between the lines.
 */
export function waysBetween(
  hatch: Hatch,
  motion: Pick<ScanMotion, 'speed' | 'acceleration' | 'turnRound'>,
  shown: PathWindow,
): Point[] {
  const lines = [...linesDrawn(hatch, shown)].sort((a, b) => a.turn - b.turn);
  const reach = motion.turnRound === 'outside' ? overscan(motion.speed, motion.acceleration) : 0;
  return lines.flatMap((line, i) => {
    const next = lines[i + 1];
    if (next === undefined || next.turn !== line.turn + 1) return [];
    if (hatch.directions === 'both') return line.back ? cut(bow(line.y, next.y, reach), shown) : [];
    const middle = (line.y + next.y) / 2;
    const far = Math.min(reach, shown.out);
    return cut(
      [
        [shown.size, middle],
        [-far, middle],
        [-far, next.y],
        [0, next.y],
      ],
      shown,
    );
  });
}

/** A line of the hatch, from the corner, cut to what is shown by its ends. */
function within({ fromX, fromY, toX, toY }: HatchLine, corner: Point, { size }: PathWindow): Point[] {
  let [start, end] = [0, 1];
  const [x, y] = [fromX - corner[0], fromY - corner[1]];
  for (const [at, step] of [
    [x, toX - fromX],
    [y, toY - fromY],
  ] as const) {
    if (Math.abs(step) < 1e-12 * Math.hypot(toX - fromX, toY - fromY)) {
      if (at < 0 || at > size) return [];
      continue;
    }
    const ends = [-at / step, (size - at) / step];
    start = Math.max(start, Math.min(...ends));
    end = Math.min(end, Math.max(...ends));
  }
  const place = (part: number): Point => [x + part * (toX - fromX), y + part * (toY - fromY)];
  return start < end ? [place(start), place(end), gap] : [];
}

/** Lines of a later pass in what is shown. */
export function linesOfPass(hatch: Hatch, pass: number, shown: PathWindow): Point[] {
  const corner: Point = [-hatch.width / 2, -hatch.height / 2];
  const count = lineCount(hatch, pass);
  const [c, s] = [Math.cos(pass * hatch.angle), Math.sin(pass * hatch.angle)];
  const offsets = [0, shown.size].flatMap((dx) =>
    [0, shown.size].map((dy) => c * (corner[1] + dy) - s * (corner[0] + dx)),
  );
  const index = (offset: number) => (offset - lineOffset(hatch, pass, 0)) / hatch.lineSpacing;
  const first = Math.max(0, Math.ceil(index(Math.min(...offsets))));
  const last = Math.min(count - 1, Math.floor(index(Math.max(...offsets))));
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) =>
    within(lineAt(hatch, pass, turnOf(count, hatch.interlacing, first + i)), corner, shown),
  ).flat();
}
