import { extent } from 'd3';
import { markPitch, markRegion } from '../lib/design/markPicture.ts';
import { markDiameter } from '../lib/design/marks.ts';
import {
  foundMark,
  markPreview,
  pictureDiameter,
  pictureDiameterUncertainty,
  pictureInnerDiameter,
  predictedMark,
} from '../lib/design/pictureMark.ts';
import type { Quantity } from '../lib/graph/quantity.ts';
import { shownValue } from '../lib/graph/shown.ts';
import type { ContourLine } from '../lib/measured/markContours.ts';
import type { Mark } from '../lib/process/marks.ts';
import { micro } from './columns.ts';
import { type DataColumn, type FigureSpec, figure, type SeriesSpec } from './document.ts';

const show = (quantity: Quantity, value: number) => shownValue(quantity, { value });

/** Lines in µm one behind the other, with a gap after each. */
function columnsOf(lines: readonly ContourLine[], perPixel: number): { x: Float64Array; y: Float64Array } {
  const column = (axis: 0 | 1) =>
    Float64Array.from(
      lines.flatMap((line) => [...line.map((corner) => corner[axis] * perPixel), Number.NaN]),
    );
  return { x: column(0), y: column(1) };
}

/** Circles of those diameters in metres about the middle of the mark, in µm. */
function circles(diameters: readonly number[], [x, y]: readonly [number, number]) {
  const steps = 96;
  const round = (diameter: number) =>
    Array.from({ length: steps + 1 }, (_, i): [number, number] => {
      const angle = (2 * Math.PI * i) / steps;
      const radius = (diameter / 2) * micro;
      return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
    });
  return columnsOf(diameters.filter((diameter) => diameter > 0).map(round), 1);
}

function contourData(series: readonly SeriesSpec[]): DataColumn[] {
  return series.flatMap(({ label, x, y }) => [
    { name: `${label}, x`, unit: 'µm', values: x },
    { name: `${label}, y`, unit: 'µm', values: y },
  ]);
}

/** Edges of the frame in µm. */
interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The predicted mark where it shows in the frame, and the words about it. */
function predictedIn(
  predicted: Mark | null,
  [x, y]: readonly [number, number],
  { left, right, top, bottom }: Frame,
): { readonly mark?: Mark; readonly beside: string } {
  if (predicted === null || predicted.outerDiameter === 0) return { beside: '' };
  const radius = (predicted.outerDiameter / 2) * micro;
  const width = show(markDiameter, predicted.outerDiameter);
  const farthest = Math.hypot(Math.max(x - left, right - x), Math.max(y - top, bottom - y));
  if (radius >= farthest)
    return { beside: ` The predicted mark, ${width} wide, is larger than what is shown here.` };
  const whole = radius <= Math.min(x - left, right - x, y - top, bottom - y);
  const reach = whole ? '' : `; ${width} wide, it reaches beyond what is shown here`;
  return {
    mark: predicted,
    beside: ` The predicted mark is drawn about the same middle as discs of equal area${reach}.`,
  };
}

/** The picture of the mark with its contours, and the predicted mark about the same middle. */
export const markPictureFigure = figure({
  id: 'mark-picture-figure',
  needs: [foundMark, markPreview, markPitch],
  shape: 'tall',
  from: {
    preview: markPreview,
    found: foundMark,
    region: markRegion,
    pitch: markPitch,
    diameter: pictureDiameter,
    uncertainty: pictureDiameterUncertainty,
    inner: pictureInnerDiameter,
    predicted: predictedMark,
  },
  view: ({ preview, found, region, pitch, diameter, uncertainty, inner, predicted }): FigureSpec => {
    const perPixel = pitch * micro;
    const { outer, holes } = found.contours;
    const middle = found.centre.map((place) => place * perPixel) as unknown as [number, number];
    // The values stand for blocks of pixels: the frame goes from the middle of the first to the middle of the last.
    const span = (from: number, count: number): [number, number] => [
      (from + 0.5 * preview.block) * perPixel,
      (from + (count - 0.5) * preview.block) * perPixel,
    ];
    const [top, bottom] = span(region.top, preview.rows);
    const [left, right] = span(region.left, preview.columns);
    const { mark, beside } = predictedIn(predicted, middle, { left, right, top, bottom });
    const series: SeriesSpec[] = [
      { label: 'outer contour', role: 'main', ...columnsOf([outer], perPixel) },
      ...(holes.length > 0
        ? [{ label: 'inner contour', role: 'second', ...columnsOf(holes, perPixel) } as const]
        : []),
      ...(mark
        ? [
            {
              label: 'predicted mark',
              role: 'third',
              ...circles([mark.outerDiameter, mark.innerDiameter], middle),
            } as const,
          ]
        : []),
    ];
    const hollow = inner > 0 ? `, its unmarked centre ${show(pictureInnerDiameter, inner)}` : '';
    return {
      title: 'The mark in its picture',
      x: { label: 'across the picture', unit: 'µm', domain: [left, right] },
      y: { label: 'down the picture', unit: 'µm', domain: [bottom, top] },
      equalScale: true,
      series,
      map: {
        ...preview,
        range: extent(preview.values) as [number, number],
        grey: true,
        label: 'grey value',
        unit: 'counts',
      },
      data: contourData(series),
      summary: `The outer contour encloses a disc of ${show(pictureDiameter, diameter)} ± ${show(pictureDiameterUncertainty, uncertainty)}${hollow}. It follows the grey half way between the mark and its surroundings: judge by eye whether that is the edge you mean.${beside}`,
    };
  },
});
