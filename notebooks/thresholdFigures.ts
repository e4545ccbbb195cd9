import { unshapedPeak } from '../lib/design/focus.ts';
import { markDiameter, marked, unshapedMarkDiameter, unshapedMarked } from '../lib/design/marks.ts';
import { peakFluence, profile, width } from '../lib/design/spot.ts';
import {
  incubationExponent,
  pulsesOnPlace,
  thresholdAtN,
  thresholdFloor,
  thresholdFluence,
} from '../lib/design/threshold.ts';
import { fluenceScale, thresholdAtNUncertainty } from '../lib/design/thresholdChart.ts';
import { fluenceWithoutPlate, unshapedPeakFluence, unshapedProfile } from '../lib/design/unshaped.ts';
import type { Quantity } from '../lib/graph/quantity.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { thresholdAt } from '../lib/process/incubation.ts';
import { pulsesAbout } from '../lib/process/markGrowth.ts';
import { fluenceColumn, largest, micro, perSquareCentimetre, symmetric } from './columns.ts';
import { type FigureSpec, figure, type MarkSpec, type SeriesSpec } from './document.ts';

const show = (quantity: Quantity, value: number) => shownValue(quantity, { value });

/** Both profiles against the threshold, with its uncertainty as a band. */
export const thresholdProfileFigure = figure({
  id: 'profile-threshold',
  from: {
    profile,
    unshapedProfile,
    unit: unshapedPeak,
    plainUnit: fluenceWithoutPlate,
    width,
    mark: markDiameter,
    plainMark: unshapedMarkDiameter,
    cut: marked,
    plainCut: unshapedMarked,
    peak: peakFluence,
    plainPeak: unshapedPeakFluence,
    threshold: thresholdAtN,
    u: thresholdAtNUncertainty,
    scale: fluenceScale,
  },
  view: (values): FigureSpec => {
    const { threshold, u, scale, mark, plainMark } = values;
    const reach = niceEnd(micro * Math.max(1.1 * values.width, 0.65 * mark, 0.65 * plainMark));
    const x = symmetric(reach, 401);
    const shaped = fluenceColumn(values.profile, values.unit, x);
    const plain = fluenceColumn(values.unshapedProfile, values.plainUnit, x);
    const level = threshold * perSquareCentimetre;
    const top = largest(shaped, plain, Float64Array.of((threshold + u) * perSquareCentimetre));
    const logarithmic = scale === 'logarithmic';
    const said = (diameter: number, quantity: Quantity, cut: boolean) =>
      diameter > 0 ? `a mark ${cut ? 'at least ' : ''}${show(quantity, diameter)} wide` : 'no mark';
    return {
      title: 'Where the fluence is above the threshold',
      x: { label: 'distance from the axis', unit: 'µm', domain: [-reach, reach] },
      y: {
        label: logarithmic ? 'fluence per pulse, logarithmic' : 'fluence per pulse',
        unit: 'J/cm²',
        domain: logarithmic ? [decadeBelow(level / 4), 1.5 * top] : [0, niceEnd(1.05 * top)],
        ...(logarithmic ? { logarithmic } : {}),
      },
      series: [
        { label: 'with the plate', role: 'main', x, y: shaped },
        { label: 'plate taken out, same energy', role: 'reference', x, y: plain },
        ...uncertaintyBand([-reach, reach], threshold, u),
      ],
      marks: [thresholdMark(threshold)],
      summary: `Where a curve lies above the line, the surface is marked: ${said(mark, markDiameter, values.cut.cut)} with the plate, ${said(plainMark, unshapedMarkDiameter, values.plainCut.cut)} without it. The peaks are ${show(peakFluence, values.peak)} and ${show(unshapedPeakFluence, values.plainPeak)}; the threshold is ${show(thresholdAtN, threshold)}${u > 0 ? `, its standard uncertainty ${show(thresholdAtNUncertainty, u)}` : ''}.`,
    };
  },
});

/** The power of ten at or below a number above 0. */
function decadeBelow(value: number): number {
  return 10 ** Math.floor(Math.log10(value));
}

function uncertaintyBand(ends: readonly [number, number], threshold: number, u: number): SeriesSpec[] {
  if (u === 0) return [];
  const level = (value: number) => Float64Array.of(value, value).map((F) => F * perSquareCentimetre);
  return [
    {
      label: 'standard uncertainty of the threshold',
      role: 'band',
      x: Float64Array.from(ends),
      y: level(Math.max(0, threshold - u)),
      y2: level(threshold + u),
    },
  ];
}

function thresholdMark(threshold: number): MarkSpec {
  return {
    kind: 'horizontal',
    y: threshold * perSquareCentimetre,
    label: `threshold, ${show(thresholdAtN, threshold)}`,
    role: 'today',
  };
}

/** Threshold against pulses on a place, with and without the floor. */
export const incubationFigure = figure({
  id: 'incubation',
  from: {
    first: thresholdFluence,
    N: pulsesOnPlace,
    S: incubationExponent,
    floor: thresholdFloor,
    now: thresholdAtN,
  },
  view: ({ first, N, S, floor, now }): FigureSpec => {
    const x = pulsesAbout(N);
    const law = (floor: number) =>
      x.map((n) => thresholdAt({ first, exponent: S, floor }, n) * perSquareCentimetre);
    const withFloor = law(floor);
    return {
      title: 'Threshold against the pulses on a place',
      x: { label: 'pulses on a place', unit: '1', domain: [1, x.at(-1)!], logarithmic: true },
      y: {
        label: 'threshold fluence of each pulse',
        unit: 'J/cm²',
        domain: [0, niceEnd(1.05 * largest(withFloor))],
      },
      series: [
        { label: 'threshold', role: 'main', x, y: withFloor },
        ...(floor > 0
          ? [{ label: 'the power law without a floor', role: 'reference', x, y: law(0) } as const]
          : []),
      ],
      marks: [
        {
          kind: 'vertical',
          x: N,
          label: `${show(pulsesOnPlace, N)} ${N === 1 ? 'pulse' : 'pulses'}`,
          role: 'today',
        },
        ...(floor > 0
          ? [
              {
                kind: 'horizontal',
                y: floor * perSquareCentimetre,
                label: `floor, ${show(thresholdFloor, floor)}`,
                role: 'reference',
              } as const,
            ]
          : []),
      ],
      summary: `${show(thresholdFluence, first)} for one pulse${N === 1 ? '' : `, ${show(thresholdAtN, now)} for each of ${show(pulsesOnPlace, N)}`}${floor > 0 ? `, and never below the floor of ${show(thresholdFloor, floor)}` : ''}.`,
    };
  },
});
