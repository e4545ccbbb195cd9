import { contours, extent, polygonArea } from 'd3';
import type { PictureRegion } from './markLevels.ts';

/** A closed line through the picture, x and y of each corner in pixels from the upper left of the whole picture. */
export type ContourLine = readonly (readonly [x: number, y: number])[];

/** The largest mark of a picture; lengths and areas in pixels. */
export interface MarkContours {
  readonly outer: ContourLine;
  readonly holes: readonly ContourLine[];
  readonly outerArea: number;
  /** Of the largest hole. */
  readonly innerArea: number;
  /** Inside the outer line, without the holes. */
  readonly area: number;
  readonly width: number;
  readonly height: number;
  readonly touchesEdge: boolean;
  /** Further parts of at least a tenth of its size. */
  readonly others: number;
}

/** Holes below this share of the mark are grains, not an unmarked centre. */
const leastHole = 0.004;

const sizeOf = (line: ContourLine) => Math.abs(polygonArea(line as [number, number][]));

/** The largest part above a level of values on a grid of pixels, by marching squares; undefined where none is. */
export function largestMark(
  values: Float64Array,
  { left, top, width, height }: PictureRegion,
  level: number,
): MarkContours | undefined {
  const found = contours()
    .size([width, height])
    .contour(values as unknown as number[], level);
  const parts = (found.coordinates as unknown as ContourLine[][])
    .map((lines) => ({ lines, size: sizeOf(lines[0]!) }))
    .sort((one, other) => other.size - one.size);
  const [first, ...rest] = parts;
  if (!first) return undefined;
  const [outer, ...inner] = first.lines as [ContourLine, ...ContourLine[]];
  const holes = inner.filter((line) => sizeOf(line) >= leastHole * first.size);
  const sizes = holes.map(sizeOf);
  const [xMin, xMax] = extent(outer, ([x]) => x) as [number, number];
  const [yMin, yMax] = extent(outer, ([, y]) => y) as [number, number];
  const place = (line: ContourLine): ContourLine => line.map(([x, y]) => [x + left, y + top]);
  return {
    outer: place(outer),
    holes: holes.map(place),
    outerArea: first.size,
    innerArea: Math.max(0, ...sizes),
    area: first.size - sizes.reduce((sum, size) => sum + size, 0),
    width: xMax - xMin,
    height: yMax - yMin,
    // Lines at the edge of the grid run half a pixel inside it or on it.
    touchesEdge: xMin < 1 || yMin < 1 || xMax > width - 1 || yMax > height - 1,
    others: rest.filter(({ size }) => size >= 0.1 * first.size).length,
  };
}
