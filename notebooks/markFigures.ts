import { usedPulseEnergy } from '../lib/design/losses.ts';
import { markStretches, unshapedMarkStretches } from '../lib/design/markCharts.ts';
import { growthAgainst, growthShows, markGrowths } from '../lib/design/markGrowths.ts';
import {
  markArea,
  markDiameter,
  marked,
  markInnerDiameter,
  unshapedMarkDiameter,
  unshapedMarked,
  unshapedMarkInnerDiameter,
} from '../lib/design/marks.ts';
import { peakFluence, width } from '../lib/design/spot.ts';
import { incubationExponent, pulsesOnPlace, thresholdAtN } from '../lib/design/threshold.ts';
import type { Quantity, ValueOf } from '../lib/graph/quantity.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { largest, micro } from './columns.ts';
import { type FigureSpec, figure, figures, type SeriesRole, type SeriesSpec } from './document.ts';
import { outlinesOf, surfaceOf } from './markShape.ts';
import { energyText } from './shortTexts.ts';

const show = (quantity: Quantity, value: number) => shownValue(quantity, { value });

type Stretches = ValueOf<typeof markStretches>;

/** The marked surface, filled, with its outlines. */
function markSeries(stretches: Stretches): SeriesSpec[] {
  return [
    // The outline first: a second curve of a role is dashed.
    { label: '', role: 'main', ...outlinesOf(stretches, micro) },
    { label: 'marked', role: 'main', ...surfaceOf(stretches, micro) },
  ];
}

/** The predicted marks from above, to scale, with the plate and without it. */
export const markFigure = figures({
  id: 'mark',
  from: {
    shaped: markStretches,
    plain: unshapedMarkStretches,
    width,
    diameter: markDiameter,
    inner: markInnerDiameter,
    plainDiameter: unshapedMarkDiameter,
    plainInner: unshapedMarkInnerDiameter,
    mark: marked,
    plainMark: unshapedMarked,
  },
  view: (values): readonly FigureSpec[] => {
    const { shaped, plain, width, diameter, inner, plainDiameter, plainInner, mark, plainMark } = values;
    const reach = niceEnd(0.6 * micro * Math.max(width, diameter, plainDiameter));
    const axis = { label: 'distance from the axis', unit: 'µm', domain: [-reach, reach] } as const;
    const said = (outer: number, centre: number, cut: boolean) =>
      outer === 0
        ? 'No mark.'
        : `The mark is ${cut ? 'at least ' : ''}${show(markDiameter, outer)} wide${centre > 0 ? ` and its centre stays unmarked over ${show(markInnerDiameter, centre)}` : ''}.`;
    const panel = (title: string, stretches: Stretches, summary: string): FigureSpec => ({
      title,
      x: axis,
      y: axis,
      equalScale: true,
      series: markSeries(stretches),
      summary,
    });
    return [
      panel('Mark with the plate, to scale', shaped, said(diameter, inner, mark.cut)),
      panel('Mark with the plate taken out, to scale', plain, said(plainDiameter, plainInner, plainMark.cut)),
    ];
  },
});

type Growth = ValueOf<typeof markGrowths>;
type Place = Growth['shaped'][number]['place'];

const places: Readonly<Record<Place, { readonly label: string; readonly role: SeriesRole }>> = {
  workpiece: { label: 'where the workpiece stands', role: 'main' },
  focus: { label: 'in the focus', role: 'second' },
  before: { label: 'a Rayleigh length nearer to the lens', role: 'third' },
  behind: { label: 'a Rayleigh length further', role: 'third' },
};

/** Lengths or areas in µm or µm², with gaps where there is none. */
const drawn = (values: Float64Array, scale: number) => values.map((v) => (v > 0 ? v * scale : Number.NaN));

/** Curves that are alike are drawn once: planes to either side of a symmetric focus. */
function alike(a: Float64Array, b: Float64Array): boolean {
  return a.every((value, i) => Math.abs(value - b[i]!) <= 1e-6 * Math.max(value, b[i]!));
}

/** Planes with their words and roles; twins to either side of the workpiece as one. */
function planesOf({ shaped }: Growth) {
  return shaped.flatMap((plane) => {
    const other = { before: 'behind', behind: 'before' }[plane.place as string];
    const twin = shaped.some(({ place, outer }) => place === other && alike(outer, plane.outer));
    if (twin && plane.place === 'before') return [];
    const label = twin ? 'a Rayleigh length to either side' : places[plane.place].label;
    return [{ ...plane, label, role: places[plane.place].role }];
  });
}

const takenOut = { label: 'plate taken out, where the workpiece stands', role: 'reference' } as const;

function diameterSeries(growth: Growth, x: Float64Array): SeriesSpec[] {
  const planes = planesOf(growth);
  return [
    ...planes.map(({ label, role, outer }) => ({ label, role, x, y: drawn(outer, micro) })),
    ...planes
      .filter(({ inner }) => largest(inner) > 0)
      .map(({ role, inner, label }) => ({
        label: `unmarked centre ${label}`,
        role,
        x,
        y: drawn(inner, micro),
      })),
    { ...takenOut, x, y: drawn(growth.unshaped.outer, micro) },
  ];
}

function areaSeries(growth: Growth, x: Float64Array): SeriesSpec[] {
  const square = micro * micro;
  return [
    ...planesOf(growth).map(({ label, role, area }) => ({ label, role, x, y: drawn(area, square) })),
    { ...takenOut, x, y: drawn(growth.unshaped.area, square) },
  ];
}

/** Diameter or area of the mark against pulse energy, or against the pulses on a place, in several planes. */
export const growthFigure = figure({
  id: 'mark-growth',
  from: {
    growth: markGrowths,
    against: growthAgainst,
    shows: growthShows,
    energy: usedPulseEnergy,
    N: pulsesOnPlace,
    S: incubationExponent,
    diameter: markDiameter,
    area: markArea,
    mark: marked,
    peak: peakFluence,
    threshold: thresholdAtN,
  },
  view: (values): FigureSpec => {
    const { growth, against, shows, energy, N, S, diameter, area, mark, peak, threshold } = values;
    const overPulses = against === 'pulses';
    const x = overPulses ? growth.pulses : growth.energies.map((E) => E * micro);
    const series = shows === 'area' ? areaSeries(growth, x) : diameterSeries(growth, x);
    const first = energyText((energy * threshold) / peak);
    const least = mark.cut ? 'at least ' : '';
    const size =
      shows === 'area'
        ? `has ${least}${show(markArea, area)}`
        : `is ${least}${show(markDiameter, diameter)} wide`;
    const nowSaid = area === 0 ? 'there is none' : `the mark ${size}`;
    const pulsesSaid = `${show(pulsesOnPlace, N)} ${N === 1 ? 'pulse' : 'pulses'}`;
    const still =
      S === 1 ? ' Pulses do not prepare the place for one another here: the incubation exponent is 1.' : '';
    return {
      title: `${shows === 'area' ? 'Marked area' : 'Diameter of the mark'} against ${overPulses ? 'the pulses on a place' : 'pulse energy'}`,
      x: overPulses
        ? { label: 'pulses on a place', unit: '1', domain: [1, x.at(-1)!], logarithmic: true }
        : {
            label: 'pulse energy, where it is measured',
            unit: 'µJ',
            domain: [x[0]!, x.at(-1)!],
            logarithmic: true,
          },
      y: {
        label: shows === 'area' ? 'marked area' : 'diameter of the mark',
        unit: shows === 'area' ? 'µm²' : 'µm',
        domain: [0, niceEnd(1.05 * largest(...series.map(({ y }) => y)))],
      },
      series,
      marks: [
        overPulses
          ? { kind: 'vertical', x: N, label: pulsesSaid, role: 'today' }
          : { kind: 'vertical', x: energy * micro, label: show(usedPulseEnergy, energy), role: 'today' },
      ],
      summary: overPulses
        ? `Each pulse has ${show(usedPulseEnergy, energy)}; with today’s ${pulsesSaid} on a place ${nowSaid}.${still}`
        : `Where the workpiece stands marks begin at ${first}; at today’s ${show(usedPulseEnergy, energy)} ${nowSaid}.`,
    };
  },
});
