import { coupon, type PlannedCoupon } from '../lib/design/coupon.ts';
import { formatReadable } from '../lib/graph/units.ts';
import type { CouponSpot } from '../lib/process/coupon.ts';
import { circles, points } from './circles.ts';
import { couponColumns } from './couponTable.ts';
import { type AxisSpec, type FigureSpec, figure, type SeriesSpec } from './document.ts';

const milli = 1e3;
/** Circles of the places, in millimetres. */
const circlesOf = (spots: readonly CouponSpot[], diameterOf: (spot: CouponSpot) => number) =>
  circles(
    spots.map((spot) => ({ x: milli * spot.x, y: milli * spot.y, diameter: milli * diameterOf(spot) })),
  );

function axis(label: string, values: readonly number[], pitch: number): AxisSpec {
  const [from, to] = [Math.min(...values) - pitch, Math.max(...values) + pitch];
  return { label, unit: 'mm', domain: [milli * from, milli * to] };
}

/** A coupon drawn to scale: predicted outer contours, unmarked centres, and places where nothing is expected. */
export function couponPicture(plan: PlannedCoupon): FigureSpec {
  const { spots, pitch, grid } = plan;
  const unmarked = spots.filter(({ mark }) => mark.outerDiameter === 0);
  const hollow = spots.filter(({ mark }) => mark.innerDiameter > 0).length;
  const series: SeriesSpec[] = [
    { label: 'predicted mark', role: 'main', ...circlesOf(spots, ({ mark }) => mark.outerDiameter) },
    { label: 'unmarked centre', role: 'second', ...circlesOf(spots, ({ mark }) => mark.innerDiameter) },
    {
      label: 'no mark expected',
      role: 'reference',
      ...points(unmarked.map(({ x, y }) => ({ x: milli * x, y: milli * y }))),
    },
  ];
  const show = (length: number, unit: string) => formatReadable(length, 'm', unit, 3);
  const planes = grid.planes.map((z) => show(z, 'mm')).join(', ');
  const parts = [
    unmarked.length > 0 && `${unmarked.length} stay without a mark`,
    hollow > 0 && `${hollow} have an unmarked centre`,
  ].filter((part) => part !== false);
  return {
    title: 'The coupon, to scale',
    x: axis(
      'along the energies',
      spots.map(({ x }) => x),
      pitch,
    ),
    y: axis(
      'along planes, pulses and repeats',
      spots.map(({ y }) => y),
      pitch,
    ),
    equalScale: true,
    series: series.filter(({ x }) => x.length > 0),
    // The file of the chart is the table to fill in.
    data: couponColumns(plan),
    summary: `${spots.length} spots, ${show(pitch, 'um')} from one to the next; energies rise to the right, and the rows go upward through z = ${planes}${grid.pulses.length > 1 ? `, each with ${grid.pulses.join(', ')} pulses` : ''}.${parts.length > 0 ? ` As predicted, ${parts.join(' and ')}.` : ''}`,
  };
}

export const couponFigure = figure({
  id: 'coupon-figure',
  from: { coupon },
  view: ({ coupon }) => couponPicture(coupon),
});
