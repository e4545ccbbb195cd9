import { leastSide, type PictureRegion } from '../../../lib/measured/markLevels.ts';

/** A place in a picture, in pixels from its upper left corner. */
export interface PicturePoint {
  readonly x: number;
  readonly y: number;
}

/** A line from one place to another. */
export interface PictureLine {
  readonly start: PicturePoint;
  readonly end: PicturePoint;
}

/** Width and height of a picture in pixels. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

const within = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));

/** The nearest place in the picture. */
export function inPicture({ x, y }: PicturePoint, { width, height }: PictureSize): PicturePoint {
  return { x: within(x, 0, width), y: within(y, 0, height) };
}

/** Whole pixels from one place to another along an axis, as many as the least side where they are closer. */
function side(from: number, to: number, most: number): readonly [start: number, length: number] {
  const [low, high] = [Math.round(Math.min(from, to)), Math.round(Math.max(from, to))];
  const length = Math.min(most, Math.max(leastSide, high - low));
  // What is too small grows away from the corner that stays.
  const start = high - low >= length || to >= from ? low : high - length;
  return [within(start, 0, most - length), length];
}

/** The part of whole pixels between two opposite corners; `anchor` stays where the part would be too small. */
export function regionBetween(anchor: PicturePoint, other: PicturePoint, size: PictureSize): PictureRegion {
  const [from, to] = [inPicture(anchor, size), inPicture(other, size)];
  const [left, width] = side(from.x, to.x, size.width);
  const [top, height] = side(from.y, to.y, size.height);
  return { left, top, width, height };
}

/** A line between two places in the picture, to a tenth of a pixel. */
export function lineBetween(start: PicturePoint, end: PicturePoint, size: PictureSize): PictureLine {
  const tenth = (value: number) => Math.round(10 * value) / 10;
  const near = (point: PicturePoint) => {
    const { x, y } = inPicture(point, size);
    return { x: tenth(x), y: tenth(y) };
  };
  return { start: near(start), end: near(end) };
}

/** Upper left and lower right corner of a part. */
export function cornersOf({
  left,
  top,
  width,
  height,
}: PictureRegion): readonly [PicturePoint, PicturePoint] {
  return [
    { x: left, y: top },
    { x: left + width, y: top + height },
  ];
}

/** What an arrow key moves by in pixels, ten times as far with Shift; undefined for other keys. */
export function keyStep(key: string, far: boolean): PicturePoint | undefined {
  const step = far ? 10 : 1;
  const steps: Readonly<Record<string, PicturePoint>> = {
    ArrowLeft: { x: -step, y: 0 },
    ArrowRight: { x: step, y: 0 },
    ArrowUp: { x: 0, y: -step },
    ArrowDown: { x: 0, y: step },
  };
  return Object.hasOwn(steps, key) ? steps[key] : undefined;
}
