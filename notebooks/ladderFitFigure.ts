import { ladderFit, ladderZero } from '../lib/design/ladderFit.ts';
import type { LadderMarks } from '../lib/design/ladderMarks.ts';
import type { ValueOf } from '../lib/graph/quantity.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import type { LadderCurve } from '../lib/process/ladderCurve.ts';
import type { SpotMark } from '../lib/process/spotMark.ts';
import { points } from './circles.ts';
import { largest, micro } from './columns.ts';
import { type AxisSpec, type FigureSpec, figures, type SeriesSpec } from './document.ts';

const milli = 1e3;

type Fit = ValueOf<typeof ladderFit>;

const diameterOf = ({ area }: SpotMark) => 2 * micro * Math.sqrt(area / Math.PI);

/** A predicted diameter along z, with a gap where there is no mark. */
function curveSeries({ readings, diameters }: LadderCurve): Pick<SeriesSpec, 'x' | 'y'> {
  return {
    x: readings.map((z) => milli * z),
    y: diameters.map((d) => (d > 0 ? micro * d : Number.NaN)),
  };
}

const ways = { 1: 'readings away from the lens', [-1]: 'readings towards the lens' } as const;

function seriesOf(marks: readonly SpotMark[], curves: readonly LadderCurve[]): SeriesSpec[] {
  const at = (some: readonly SpotMark[]) =>
    points(some.map((mark) => ({ x: milli * mark.z, y: diameterOf(mark) })));
  const seen = marks.filter(({ area }) => area > 0);
  const empty = marks.filter(({ area }) => area === 0);
  const fitted = curves.map((curve, i): SeriesSpec => {
    const label = curves.length === 1 ? 'fitted' : `fitted, ${ways[curve.direction]}`;
    return { label, role: i === 0 ? 'second' : 'reference', ...curveSeries(curve) };
  });
  return [
    { label: 'measured', role: 'main', ...at(seen) },
    ...fitted,
    ...(empty.length > 0 ? [{ label: 'no mark seen', role: 'third', ...at(empty) } as const] : []),
  ];
}

/** Readings of both rows, in millimetres, and diameters up to the largest. */
function axesOf(
  { shaped, unshaped }: LadderMarks,
  { curves }: Fit,
): { readonly x: AxisSpec; readonly y: AxisSpec } {
  const all = [...shaped, ...unshaped];
  const readings = all.map(({ z }) => milli * z);
  const [low, high] = [Math.min(...readings), Math.max(...readings)];
  const margin = 0.03 * (high - low) || 0.01;
  const drawn = [...curves.shaped, ...curves.unshaped].map(({ diameters }) => micro * largest(diameters));
  const top = Math.max(...drawn, ...all.map(diameterOf));
  return {
    x: { label: 'reading of z', unit: 'mm', domain: [low - margin, high + margin] },
    y: {
      label: 'diameter of a disc with the area of the mark',
      unit: 'µm',
      domain: [0, niceEnd(1.05 * top)],
    },
  };
}

function panel(plate: boolean, marks: LadderMarks, fit: Fit): FigureSpec {
  const key = plate ? 'shaped' : 'unshaped';
  const row = marks[key];
  const curves = fit.curves[key];
  const energies = row.map(({ energy }) => energy);
  const alike = Math.max(...energies) < 1.02 * Math.min(...energies);
  const energy = formatReadable(curves[0]!.energy, 'J', 'uJ', 3);
  const zero = shownValue(ladderZero, { value: fit.zero.value });
  const count = row.filter(({ area }) => area > 0).length;
  const drawnFor = alike ? `at ${energy}` : `at ${energy}, the middle of their energies`;
  return {
    title: `Marks along z ${plate ? 'with the plate' : 'without the plate'}`,
    ...axesOf(marks, fit),
    series: seriesOf(row, curves),
    marks: [{ kind: 'vertical', x: milli * fit.zero.value, label: `focus, ${zero}`, role: 'today' }],
    summary: `${count} of ${row.length} places ${plate ? 'with the plate' : 'without the plate'} are marked; the ${curves.length === 1 ? 'curve is' : 'curves are'} the fitted prediction ${drawnFor}, with the focus at ${zero}.`,
  };
}

/** Measured diameters against the reading of z with the fitted prediction over them, a chart for each row. */
export const ladderFitFigure = figures({
  id: 'ladder-fit',
  needs: [ladderFit],
  from: { fit: ladderFit },
  // The marks that were fitted: while another table is being fitted the one given is of other marks.
  view: ({ fit }): readonly FigureSpec[] =>
    [true, false]
      .filter((plate) => fit.marks[plate ? 'shaped' : 'unshaped'].length > 0)
      .map((plate) => panel(plate, fit.marks, fit)),
});
