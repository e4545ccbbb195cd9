import { coupon, type PlannedCoupon } from '../lib/design/coupon.ts';
import { fullEnergy, setting } from '../lib/design/couponInputs.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { phrase, says } from './prose.ts';

/** Fewest energies with a mark that a fit of a threshold in one plane asks for. */
const fewestMarked = 4;

/** Of each plane and number of pulses how many energies leave a mark. */
function markedEnergies({ spots, grid }: PlannedCoupon): number[] {
  return grid.planes.flatMap((z) =>
    grid.pulses.map((N) => {
      const marked = spots.filter((spot) => spot.z === z && spot.pulses === N && spot.mark.area > 0);
      return new Set(marked.map(({ energy }) => energy)).size;
    }),
  );
}

/** How large the coupon is. */
export const couponSizeSaid = says({ coupon }, ({ coupon }) => {
  const { spots, pitch } = coupon;
  const side = (of: 'x' | 'y') => {
    const most = spots.reduce((end, spot) => Math.max(end, spot[of]), 0);
    return formatReadable(most + pitch, 'm', 'mm', 3);
  };
  return `The coupon has ${spots.length} ${spots.length === 1 ? 'spot' : 'spots'} and wants a clean surface of ${side('x')} by ${side('y')}.`;
});

/** Whether its energies reach from below the threshold far enough above it. */
export const couponRangeSaid = says({ coupon }, ({ coupon }) => {
  const counts = markedEnergies(coupon);
  const all = coupon.grid.energies.length;
  const [least, most] = [Math.min(...counts), Math.max(...counts)];
  if (most === 0) return 'As predicted none of them leaves a mark: raise the highest energy.';
  if (least < fewestMarked)
    return `As predicted ${least === 0 ? 'no energy leaves' : `only ${least} of ${all} energies ${least === 1 ? 'leaves' : 'leave'}`} a mark in one of the rows; a threshold with its uncertainty takes ${fewestMarked} or more: raise the highest energy, or take more energies.`;
  if (most === all)
    return 'As predicted every energy leaves a mark in at least one of the rows: begin lower, so that in every row the last energy without a mark is seen too.';
  return `As predicted ${least === most ? least : `${least} to ${most}`} of ${all} energies leave a mark in each row, and the lowest leave none, which says as much of the threshold.`;
});

/** What is set for each energy. */
export const couponSettingSaid = says({ coupon, setting, fullEnergy }, ({ setting }) =>
  setting === 'power'
    ? 'Beside each energy stands the average power that a meter reads while every pulse is let through.'
    : phrase`Beside each energy stands the part that the attenuator lets through, ${fullEnergy} with it open.`,
);
