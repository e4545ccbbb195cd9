import { extent } from 'd3';
import { counterClockwise } from '../lib/design/micrographResults.ts';
import { firstMicrograph, type Micrograph, otherMicrograph } from '../lib/design/micrographs.ts';
import type { ValueOf, ValuesOf } from '../lib/graph/quantity.ts';
import { formatReadable } from '../lib/graph/units.ts';
import type { ImagePreview } from '../lib/measured/imagePreview.ts';
import type { RipplePicture } from '../lib/measured/ripplePicture.ts';
import { micro } from './columns.ts';
import { type AxisSpec, type FigureSpec, figures, type SeriesSpec } from './document.ts';
import { regularityCells, weakCells } from './micrographWords.ts';
import { arrow, type Point } from './rippleDirectionFigure.ts';
import { angleText } from './shortTexts.ts';

const measuredOf = ({ foundIfThere, previewIfThere, knownPitch, scanAngle }: Micrograph) => ({
  found: foundIfThere,
  preview: previewIfThere,
  pitch: knownPitch,
  scan: scanAngle,
});
const [a, b] = [measuredOf(firstMicrograph), measuredOf(otherMicrograph)];
/** What charts of both pictures are drawn from: either picture may be missing. */
export const bothPictures = {
  foundA: a.found,
  previewA: a.preview,
  pitchA: a.pitch,
  scanA: a.scan,
  foundB: b.found,
  previewB: b.preview,
  pitchB: b.pitch,
  scanB: b.scan,
};

/** One picture as it is drawn. */
export interface Shown {
  readonly letter: 'A' | 'B';
  readonly found: RipplePicture;
  readonly preview: ImagePreview;
  /** Of the axes, and units of them a pixel. */
  readonly unit: string;
  readonly perPixel: number;
  readonly scan: number;
}

/** The pictures that are there. */
export function shownOf(values: ValuesOf<typeof bothPictures>): Shown[] {
  const one = (
    letter: Shown['letter'],
    found: RipplePicture | null,
    preview: ImagePreview | null,
    [pitch, scan]: readonly [ValueOf<typeof a.pitch>, number],
  ): Shown[] => {
    if (!found || !preview) return [];
    const scaled = pitch === null ? { unit: 'px', perPixel: 1 } : { unit: 'µm', perPixel: pitch * micro };
    return [{ letter, found, preview, scan, ...scaled }];
  };
  const { foundA, previewA, pitchA, scanA, foundB, previewB, pitchB, scanB } = values;
  return [...one('A', foundA, previewA, [pitchA, scanA]), ...one('B', foundB, previewB, [pitchB, scanB])];
}

/** Axes over square cells of `side` pixels, from the middle of the first to that of the last, as maps are drawn. */
function axesOf({ found: { region }, perPixel, unit }: Shown, side: number, columns: number, rows: number) {
  const span = (from: number, count: number): [number, number] => [
    (from + 0.5 * side) * perPixel,
    (from + (count - 0.5) * side) * perPixel,
  ];
  const [top, bottom] = span(region.top, rows);
  const x: AxisSpec = { label: 'across the picture', unit, domain: span(region.left, columns) };
  const y: AxisSpec = { label: 'down the picture', unit, domain: [bottom, top] };
  return { x, y, equalScale: true };
}

/** Points counter-clockwise about the middle of the part, y upwards, in units of the axes. */
function overPicture({ found: { region }, perPixel }: Shown, points: readonly Point[]) {
  const [x, y] = [region.left + region.width / 2, region.top + region.height / 2];
  return {
    x: Float64Array.from(points, ([right]) => (x + right) * perPixel),
    y: Float64Array.from(points, ([, up]) => (y - up) * perPixel),
  };
}

const turned = (angle: number, size: number): Point => [size * Math.cos(angle), size * Math.sin(angle)];
const times = (points: readonly Point[], size: number) => points.map(([x, y]): Point => [size * x, size * y]);

/** The lines over a picture: the wave vector and a ridge where ripples were found, and the scan as typed. */
function linesOver(shown: Shown): SeriesSpec[] {
  const { found, scan } = shown;
  const { width, height } = found.region;
  // A head of an arrow is 0.45 long.
  const unit = Math.min(width, height) / 12;
  const place = (points: readonly Point[]) => overPicture(shown, times(points, unit));
  const along = arrow(turned(scan + Math.PI, 2), turned(scan, 2), false);
  const corner: Point = [-width / unit / 2 + 2.6, -height / unit / 2 + 2.6];
  const beside = along.map(([x, y]): Point => [x + corner[0], y + corner[1]]);
  const lines: SeriesSpec[] = [{ label: 'scan, as typed', role: 'third', ...place(beside) }];
  if (!found.main) return lines;
  const across = counterClockwise(found.main.direction);
  const ridge = [turned(across - Math.PI / 2, 4.5), turned(across + Math.PI / 2, 4.5)];
  return [
    { label: 'wave vector', role: 'main', ...place(arrow([0, 0], turned(across, 3.5), false)) },
    { label: 'along a ridge', role: 'second', ...place(ridge) },
    ...lines,
  ];
}

/** Both pictures as they were measured, with what was found drawn over them. */
export const micrographPictures = figures({
  id: 'micrograph-pictures',
  from: bothPictures,
  view: (values): readonly FigureSpec[] =>
    shownOf(values).map((shown) => {
      const { letter, found, preview } = shown;
      const said = found.main
        ? `The wave vector lies at ${angleText(counterClockwise(found.main.direction))}, counter-clockwise from the right; the ridges run at right angles to it.`
        : 'No ripples were found in it.';
      return {
        title: `Micrograph ${letter}, as measured`,
        ...axesOf(shown, preview.block, preview.columns, preview.rows),
        series: linesOver(shown),
        map: {
          ...preview,
          range: extent(preview.values) as [number, number],
          grey: true,
          label: 'grey value',
          unit: 'counts',
        },
        summary: `${said} Turn the typed direction of the scan until its arrow lies as the beam ran.`,
      };
    }),
});

/** A map's rows from the lowest, as charts count. */
export function upwards(values: Float64Array, columns: number): Float64Array {
  const rows = values.length / columns;
  return values.map((_, i) => values[(rows - 1 - Math.floor(i / columns)) * columns + (i % columns)]!);
}

/** Lines drawn across a map at most: more would run into one another on a phone. */
const mostLines = 20;
/** Below this regularity a cell has no direction worth a line. */
const directed = 0.3;

/** Short lines along the ridges of every cell, or every few where there are many; picture coordinates, gaps between. */
function localRidges({ found: { region, orientation }, perPixel }: Shown): SeriesSpec {
  const { columns, rows, cell, values, directions } = orientation.regularity;
  const every = Math.ceil(Math.max(columns, rows) / mostLines);
  const half = 0.4 * cell * every;
  const [x, y]: [number[], number[]] = [[], []];
  for (let row = every; row + every < rows; row += every)
    for (let column = every; column + every < columns; column += every) {
      const at = row * columns + column;
      if (values[at]! < directed) continue;
      const [right, down] = [(column + 0.5) * cell + region.left, (row + 0.5) * cell + region.top];
      const ridge = directions[at]! + Math.PI / 2;
      const [dx, dy] = [half * Math.cos(ridge), half * Math.sin(ridge)];
      x.push(right - dx, right + dx, Number.NaN);
      y.push(down - dy, down + dy, Number.NaN);
    }
  const scaled = (places: number[]) => Float64Array.from(places, (place) => place * perPixel);
  return { label: 'along the ridges, cell by cell', role: 'third', x: scaled(x), y: scaled(y) };
}

/** How regular both pictures are in each of their parts, and which way the ridges run there. */
export const regularityFigures = figures({
  id: 'micrograph-regularity',
  from: bothPictures,
  view: (values): readonly FigureSpec[] =>
    shownOf(values).map((shown) => {
      const { letter, found } = shown;
      const { values: cells, columns, rows, cell } = found.orientation.regularity;
      const [least, most] = extent(cells) as [number, number];
      const size = formatReadable(cell * shown.perPixel, '1', '1', 3);
      return {
        title: `Local regularity of micrograph ${letter}`,
        ...axesOf(shown, cell, columns, rows),
        series: [localRidges(shown)].filter(({ x }) => x.length > 0),
        map: {
          columns,
          rows,
          values: upwards(cells, columns),
          range: [0, 1],
          label: 'local regularity',
          unit: '1',
        },
        summary: `From ${least.toFixed(2)} to ${most.toFixed(2)} in cells ${size} ${shown.unit} wide: 1 where all gradients of a cell lie along one line, near 0 where no direction is preferred. ${weakCells(found)} of ${regularityCells(found)} lie below 0.5. Smoothed over ${formatReadable(found.orientation.smoothing, '1', '1')} px.`,
      };
    }),
});
