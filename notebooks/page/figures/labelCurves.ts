import type { SeriesSpec } from '../../document.ts';
import type { Scale } from './curves.ts';

/** A rectangle in px of the frame. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** How many of the curves run through a box; bands do not count, words read well on them. */
export function countCrossing(series: readonly SeriesSpec[], scale: Scale, box: Box): number {
  let count = 0;
  for (const one of series) if (!one.y2 && runsThrough(one, scale, box)) count++;
  return count;
}

function runsThrough({ x, y }: SeriesSpec, scale: Scale, box: Box): boolean {
  const { xOrigin, xScale, yOrigin, yScale } = scale;
  let [lastX, lastY] = [Number.NaN, Number.NaN];
  for (let i = 0; i < Math.min(x.length, y.length); i++) {
    const nowX = (x[i]! - xOrigin) * xScale;
    const nowY = (y[i]! - yOrigin) * yScale;
    // A value after a gap stands alone.
    const [fromX, fromY] = lastX + lastY - (lastX + lastY) === 0 ? [lastX, lastY] : [nowX, nowY];
    if (cuts(fromX, fromY, nowX, nowY, box)) return true;
    [lastX, lastY] = [nowX, nowY];
  }
  return false;
}

/** Whether the line from a to b shares a point with the box: what is left of it after each side has cut (Liang and Barsky). */
function cuts(ax: number, ay: number, bx: number, by: number, box: Box): boolean {
  let [from, to] = [0, 1];
  const sides: readonly [number, number][] = [
    [ax - bx, ax - box.left],
    [bx - ax, box.right - ax],
    [ay - by, ay - box.top],
    [by - ay, box.bottom - ay],
  ];
  for (const [step, room] of sides) {
    if (!(step - step + (room - room) === 0)) return false;
    if (step === 0 && room < 0) return false;
    if (step < 0) from = Math.max(from, room / step);
    if (step > 0) to = Math.min(to, room / step);
  }
  return from <= to;
}
