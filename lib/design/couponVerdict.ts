import { derived } from '../graph/define.ts';
import { spotAt } from '../optics/spot.ts';
import { markOf } from '../process/marks.ts';
import { type CouponMark, judgePlanes, type PlaneVerdict } from '../process/planeVerdict.ts';
import { fitterWithPlate } from './fitMarks.ts';
import { light, unshapedPeak } from './focus.ts';
import { opticsTransmission, plateTransmission, usedPulseEnergy } from './losses.ts';
import { spots, usedMarks } from './spots.ts';

export const planeVerdicts = derived({
  id: 'coupon.planeVerdicts',
  name: 'measured marks plane by plane',
  symbol: '\\text{verdict}(z_j, N_k)',
  unit: 'none',
  about:
    'For each plane and number of pulses in the table of measured spots, whether the marks are those of the profile predicted there: one threshold describes their areas, it agrees with that of the other planes, and marks are hollow where they should be.',
  from: {
    marks: usedMarks,
    table: spots,
    light,
    peak: unshapedPeak,
    energy: usedPulseEnergy,
    optics: opticsTransmission,
    plate: plateTransmission,
  },
  compute: ({ marks, table, light, peak, energy, ...passing }): readonly PlaneVerdict[] => {
    const inner = new Map(table.rows.map(({ row, innerDiameter }) => [row, innerDiameter]));
    const measured = marks.map((mark): CouponMark => {
      const innerDiameter = inner.get(mark.row);
      return innerDiameter === undefined ? mark : { ...mark, innerDiameter };
    });
    // Fluence of relative irradiance 1 a joule of the table.
    const unit = peak / energy;
    const planes = new Map<number, ReturnType<typeof spotAt>>();
    const planeAt = (z: number) => {
      const spot = planes.get(z) ?? spotAt(light, z);
      planes.set(z, spot);
      return spot;
    };
    return judgePlanes(measured, {
      fitPlane: fitterWithPlate(light, passing),
      predict: (energy, z, threshold) => markOf(planeAt(z), threshold / (energy * unit)),
    });
  },
  shownAs: (verdicts) => {
    const confirmed = verdicts.filter(({ verdict }) => verdict === 'confirmed').length;
    return `${confirmed} of ${verdicts.length} confirmed`;
  },
  formula: 'A(E)=A\\{F>F_\\text{th}\\}\\text{ in each }z_j',
  source: 'garcia2021',
  heavy: 'search',
});
