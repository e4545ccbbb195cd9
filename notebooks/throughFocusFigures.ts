import { axisCurves, type FamilyMap, map, mapScale } from '../lib/design/familyMap.ts';
import { unshapedPeak, workpieceZ } from '../lib/design/focus.ts';
import { levelOnMap } from '../lib/design/markCharts.ts';
import {
  focusCaustic,
  focusCausticMeaning,
  focusCausticOffset,
  pointsOfCaustic,
} from '../lib/design/measuredFocus.ts';
import { dip, kind, peakFluence, profile, width } from '../lib/design/spot.ts';
import { fluenceWithoutPlate } from '../lib/design/unshaped.ts';
import type { Quantity } from '../lib/graph/quantity.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { valueAt } from '../lib/numerics/panelledFunction.ts';
import { spaced } from '../lib/optics/focusMaps.ts';
import { largest, micro, perSquareCentimetre } from './columns.ts';
import { type AxisSpec, type FigureSpec, figure, type MarkSpec } from './document.ts';
import { highestPlaces } from './highestPlaces.ts';
import { causticSeries, radiusNames } from './measuredSpotBlocks.ts';
import { thresholdOnMapSaid, thresholdSeries } from './thresholdOnMap.ts';

export const milli = 1e3;
/** A logarithmic map reaches down to this part of its peak: three powers of ten. */
const lowestShown = 1e-3;

const show = (quantity: Quantity, value: unknown) => shownValue(quantity, { value });

/** The axis along z, in millimetres. */
function zAxis({ low, high }: FamilyMap['extent']): AxisSpec {
  return { label: 'z, behind the focal plane of the lens', unit: 'mm', domain: [low * milli, high * milli] };
}

/** Where the workpiece stands on the chart, as a line that the hand moves. */
function workpieceMark(z: number): MarkSpec {
  return { kind: 'vertical', x: z * milli, label: `workpiece, ${show(workpieceZ, z)}`, role: 'today' };
}

const outsideSaid = (z: number, { low, high }: FamilyMap['extent']) =>
  z < low || z > high ? ` The workpiece at ${show(workpieceZ, z)} lies outside this chart.` : '';

/** Irradiance over radius and z, with the plane of the workpiece to be dragged. */
export const mapFigure = figure({
  id: 'map',
  from: {
    map,
    scale: mapScale,
    unshapedPeak,
    z: workpieceZ,
    caustic: focusCaustic,
    offset: focusCausticOffset,
    meaning: focusCausticMeaning,
    threshold: levelOnMap,
  },
  view: ({ map, scale, unshapedPeak, z, caustic, offset, meaning, threshold }): FigureSpec => {
    const unit = unshapedPeak * perSquareCentimetre;
    const top = map.highest * unit;
    const reach = map.extent.radius * micro;
    const logarithmic = scale === 'logarithmic';
    return {
      title: 'Fluence through the focus',
      x: zAxis(map.extent),
      y: { label: 'distance from the axis', unit: 'µm', domain: [-reach, reach] },
      series: [
        ...(threshold === null ? [] : [thresholdSeries(map, threshold)]),
        ...(caustic ? causticSeries(pointsOfCaustic(caustic, offset), true) : []),
      ],
      marks: [workpieceMark(z)],
      moves: { input: workpieceZ, at: z * milli, perUnit: 1 / milli },
      map: {
        columns: map.columns,
        rows: map.rows,
        values: map.values,
        perValue: unit,
        range: logarithmic ? [lowestShown * top, top] : [0, top],
        logarithmic,
        mirrored: true,
        label: logarithmic ? 'fluence per pulse, logarithmic' : 'fluence per pulse',
        unit: 'J/cm²',
      },
      summary: `${placeOfPeak(map, top)} The map covers z from ${formatReadable(map.extent.low, 'm', 'mm', 3)} to ${formatReadable(map.extent.high, 'm', 'mm', 3)}.${threshold === null ? '' : thresholdOnMapSaid(map, threshold, unshapedPeak)}${caustic ? ` Rings: the caustic “${caustic.name}”, ${radiusNames[meaning]}.` : ''}${outsideSaid(z, map.extent)}`,
      hint: 'Drag the line, or press arrow keys on its handle, to move the workpiece.',
    };
  },
});

function placeOfPeak(map: FamilyMap, top: number): string {
  const { values, columns, rows, extent, highest, highestByPlane } = map;
  const radius = (extent.radius * Math.floor(values.indexOf(highest) / columns)) / (rows - 1);
  const place = radius === 0 ? 'on the axis' : `${formatReadable(radius, 'm', 'um', 2)} from the axis`;
  return `The highest fluence, ${formatReadable(top, 'J/cm^2', 'J/cm^2', 3)}, lies ${place} at z = ${highestPlaces(highestByPlane, extent)}.`;
}

/** Fluence on the axis over z, with the plate and without its step. */
export const axisCurveFigure = figure({
  id: 'axis-curve',
  from: { curves: axisCurves, unshapedPeak, fluenceWithoutPlate, z: workpieceZ },
  view: ({ curves, unshapedPeak, fluenceWithoutPlate, z }): FigureSpec => {
    const { extent, shaped, unshaped } = curves;
    const x = spaced(extent.low * milli, extent.high * milli, shaped.length);
    const withPlate = shaped.map((value) => value * unshapedPeak * perSquareCentimetre);
    const without = unshaped.map((value) => value * fluenceWithoutPlate * perSquareCentimetre);
    const end = niceEnd(largest(withPlate) * 1.05);
    return {
      title: 'Fluence on the axis through the focus',
      x: zAxis(extent),
      y: { label: 'fluence on the axis per pulse', unit: 'J/cm²', domain: [0, end] },
      series: [
        { label: 'with the plate', role: 'main', x, y: withPlate },
        { label: 'plate taken out, same energy', role: 'reference', x, y: without },
      ],
      marks: [workpieceMark(z)],
      moves: { input: workpieceZ, at: z * milli, perUnit: 1 / milli },
      summary: `With the plate the axis is brightest at z = ${highestPlaces(withPlate, extent)}, with ${formatReadable(largest(withPlate), 'J/cm^2', 'J/cm^2', 3)}; with the plate taken out it reaches ${formatReadable(largest(without), 'J/cm^2', 'J/cm^2', 3)} at z = ${highestPlaces(without, extent)}${largest(without) > end ? ', beyond this chart' : ''}.${outsideSaid(z, extent)}`,
    };
  },
});

/** Points along each side of the picture of the spot; odd, so that one lies on the axis. */
const pictureSide = 181;

/** The spot as it would be seen from above. */
export const spotPictureFigure = figure({
  id: 'spot-picture',
  shape: 'tall',
  from: { profile, unshapedPeak, width, peakFluence, kind, dip, z: workpieceZ },
  view: ({ profile, unshapedPeak, kind, z, ...spot }): FigureSpec => {
    const reach = niceEnd(spot.width * micro * 1.1);
    const unit = unshapedPeak * perSquareCentimetre;
    const axis = { label: 'distance from the axis', unit: 'µm', domain: [-reach, reach] } as const;
    return {
      title: 'The spot on the workpiece',
      x: axis,
      y: axis,
      equalScale: true,
      series: [],
      map: {
        columns: pictureSide,
        rows: pictureSide,
        values: roundPicture((radius) => valueAt(profile, radius / micro) * unit, reach),
        range: [0, spot.peakFluence * perSquareCentimetre],
        label: 'fluence per pulse',
        unit: 'J/cm²',
      },
      summary: `At z = ${show(workpieceZ, z)} the spot is ${kind === 'peaked' ? 'peaked' : `a ${kind}`}, ${show(width, spot.width)} wide, with a peak fluence of ${show(peakFluence, spot.peakFluence)} per pulse${spot.dip < dip.zeroBelow! ? '' : ` and a dip of ${show(dip, spot.dip)} on the axis`}.`,
    };
  },
});

/** A round function over a square of half-width `reach`; read once along a radius, since pictures follow the hand. */
function roundPicture(valueAtRadius: (radius: number) => number, reach: number): Float64Array {
  const perStep = 4;
  const half = (pictureSide - 1) / 2;
  const step = reach / half / perStep;
  const along = Float64Array.from({ length: Math.ceil(half * Math.SQRT2) * perStep + 2 }, (_, i) =>
    Math.max(0, valueAtRadius(i * step)),
  );
  const values = new Float64Array(pictureSide * pictureSide);
  for (let row = 0; row < pictureSide; row++) {
    for (let column = 0; column < pictureSide; column++) {
      const place = Math.hypot(row - half, column - half) * perStep;
      const at = Math.floor(place);
      values[row * pictureSide + column] = along[at]! + (place - at) * (along[at + 1]! - along[at]!);
    }
  }
  return values;
}
