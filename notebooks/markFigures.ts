import { usedPulseEnergy } from '../lib/design/losses.ts';
import { markGrowths, markStretches, unshapedMarkStretches } from '../lib/design/markCharts.ts';
import {
  markDiameter,
  markInnerDiameter,
  unshapedMarkDiameter,
  unshapedMarkInnerDiameter,
} from '../lib/design/marks.ts';
import { peakFluence, width } from '../lib/design/spot.ts';
import { thresholdAtN } from '../lib/design/threshold.ts';
import type { Quantity, ValueOf } from '../lib/graph/quantity.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { largest, micro } from './columns.ts';
import { type FigureSpec, figure, figures, type SeriesRole, type SeriesSpec } from './document.ts';
import { outlinesOf, surfaceOf } from './markShape.ts';

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
  },
  view: ({ shaped, plain, width, diameter, inner, plainDiameter, plainInner }): readonly FigureSpec[] => {
    const reach = niceEnd(0.6 * micro * Math.max(width, diameter, plainDiameter));
    const axis = { label: 'distance from the axis', unit: 'µm', domain: [-reach, reach] } as const;
    const said = (outer: number, centre: number) =>
      outer === 0
        ? 'No mark.'
        : `The mark is ${show(markDiameter, outer)} wide${centre > 0 ? ` and its centre stays unmarked over ${show(markInnerDiameter, centre)}` : ''}.`;
    const panel = (title: string, stretches: Stretches, summary: string): FigureSpec => ({
      title,
      x: axis,
      y: axis,
      equalScale: true,
      series: markSeries(stretches),
      summary,
    });
    return [
      panel('Mark with the plate, to scale', shaped, said(diameter, inner)),
      panel('Mark with the plate taken out, to scale', plain, said(plainDiameter, plainInner)),
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

/** Diameters in µm, with gaps where there is none. */
const drawn = (diameters: Float64Array) => diameters.map((d) => (d > 0 ? d * micro : Number.NaN));

/** Curves that are alike are drawn once: planes to either side of a symmetric focus. */
function alike(a: Float64Array, b: Float64Array): boolean {
  return a.every((value, i) => Math.abs(value - b[i]!) <= 1e-6 * Math.max(value, b[i]!));
}

function growthSeries({ energies, shaped, unshaped }: Growth): SeriesSpec[] {
  const x = energies.map((energy) => energy * micro);
  const behind = shaped.find(({ place }) => place === 'behind');
  const planes = shaped.flatMap((plane) => {
    const twin = plane.place === 'before' && behind && alike(plane.outer, behind.outer);
    if (twin) return [];
    const isTwin =
      plane.place === 'behind' &&
      shaped.some((one) => one.place === 'before' && alike(one.outer, plane.outer));
    const label = isTwin ? 'a Rayleigh length to either side' : places[plane.place].label;
    return [{ ...plane, label, role: places[plane.place].role }];
  });
  return [
    ...planes.map(({ label, role, outer }) => ({ label, role, x, y: drawn(outer) })),
    ...planes
      .filter(({ inner }) => largest(inner) > 0)
      .map(({ role, inner, label }) => ({ label: `unmarked centre ${label}`, role, x, y: drawn(inner) })),
    { label: 'plate taken out, where the workpiece stands', role: 'reference', x, y: drawn(unshaped.outer) },
  ];
}

/** Diameter of the mark against pulse energy in several planes. */
export const growthFigure = figure({
  id: 'mark-growth',
  from: {
    growth: markGrowths,
    energy: usedPulseEnergy,
    diameter: markDiameter,
    peak: peakFluence,
    threshold: thresholdAtN,
  },
  view: ({ growth, energy, diameter, peak, threshold }): FigureSpec => {
    const series = growthSeries(growth);
    const { energies } = growth;
    const first = (energy * threshold) / peak;
    return {
      title: 'Diameter of the mark against pulse energy',
      x: {
        label: 'pulse energy, where it is measured',
        unit: 'µJ',
        domain: [energies[0]! * micro, energies.at(-1)! * micro],
        logarithmic: true,
      },
      y: {
        label: 'diameter of the mark',
        unit: 'µm',
        domain: [0, niceEnd(1.05 * largest(...series.map(({ y }) => y)))],
      },
      series,
      marks: [{ kind: 'vertical', x: energy * micro, label: show(usedPulseEnergy, energy), role: 'today' }],
      summary: `Where the workpiece stands marks begin at ${formatReadable(first, 'J', 'uJ', 3)}; at today’s ${show(usedPulseEnergy, energy)} ${diameter > 0 ? `the mark is ${show(markDiameter, diameter)} wide` : 'there is none'}.`,
    };
  },
});
